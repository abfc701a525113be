// The heat trade: how warm every part of the cabinet gets, against what prints, electronics, boards and hands bear.

import type { DayTrade } from '../measure.ts';
import { bayAir } from './bay-air.ts';
import { doorRecovery } from './door-recovery.ts';
import { energy } from './energy.ts';
import { machineAir } from './machine-air.ts';
import { printAir } from './print-air.ts';
import { surfaces } from './surfaces.ts';

export const heat: DayTrade = {
  id: 'heat',
  title: 'Heat',
  measure: (run) => [
    ...printAir(run),
    ...machineAir(run),
    ...bayAir(run),
    ...doorRecovery(run),
    ...surfaces(run),
    ...energy(run),
  ],
};
