// The draught trade: how fast the air is at each print, against what its material bears and what its own warmth sets moving.

import type { DayTrade } from '../measure.ts';
import { airSpeed } from './air-speed.ts';

export const draught: DayTrade = {
  id: 'draught',
  title: 'Draught at the print',
  measure: (run) => airSpeed(run),
};
