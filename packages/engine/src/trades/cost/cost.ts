// The cost trade: what the cabinet costs to make, to run, and what a part out of it costs. It claims no pay-back.

import type { DayTrade, StandingTrade } from '../measure.ts';
import { bill } from './bill.ts';
import { carcasses } from './carcasses.ts';
import { running } from './running.ts';

export const cost: StandingTrade & DayTrade = {
  id: 'cost',
  title: 'Cost',
  standing: (cabinet) => [...bill(cabinet), ...carcasses(cabinet)],
  measure: (run) => running(run),
};
