// All trades, in the order in which their findings are told. Adding a trade is a folder and one line here.

import { airQuality } from './air-quality/air-quality.ts';
import { airflow } from './airflow/airflow.ts';
import { draught } from './draught/draught.ts';
import { heat } from './heat/heat.ts';
import type { Trade } from './measure.ts';

export const trades: readonly Trade[] = [heat, airflow, draught, airQuality];
