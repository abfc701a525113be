// The cost trade: what the cabinet costs to make, to run, and what a part out of it costs. It claims no pay-back.

import { asks, type DayTrade, type StandingTrade } from '../measure.ts';
import { bill } from './bill.ts';
import { carcasses } from './carcasses.ts';
import { running } from './running.ts';

export const cost: StandingTrade & DayTrade = {
  id: 'cost',
  title: 'Cost',
  standing: asks(bill, carcasses),
  measure: (run) => running(run),
};
