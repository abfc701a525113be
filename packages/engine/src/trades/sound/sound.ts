// The sound trade: how loud it is where people are, from which source, by which way, and what would quieten it.

import { asks, type Trade } from '../measure.ts';
import { cabinetLoss } from './cabinet-loss.ts';
import { fanNoise } from './fan-noise.ts';
import { noise } from './noise.ts';
import { structureBorne } from './structure-borne.ts';

export const sound: Trade = {
  id: 'sound',
  title: 'Sound',
  measure: (run) => [...noise(run), ...cabinetLoss(run), ...fanNoise(run)],
  standing: asks(structureBorne),
};
