// The airflow trade: what each fan really moves, what starves it, how much air passes each bay and which way the gaps leak.

import type { DayTrade } from '../measure.ts';
import { bays } from './bays.ts';
import { fans } from './fans.ts';
import { leakPressures } from './leak-pressure.ts';

export const airflow: DayTrade = {
  id: 'airflow',
  title: 'Airflow',
  measure: (run) => [...fans(run), ...bays(run), ...leakPressures(run)],
};
