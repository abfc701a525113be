// The structure trade: do shelves carry what stands on them, now and after years; do doors hang and does the cabinet stand.

import { asks, type Trade } from '../measure.ts';
import { doorHinges } from './hinges.ts';
import { shelves } from './shelves.ts';
import { stability } from './stability.ts';

export const structure: Trade = {
  id: 'structure',
  title: 'Structure',
  standing: asks(shelves, doorHinges, stability),
};
