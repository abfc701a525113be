// All trades, in the order in which their findings are told. Adding a trade is a folder and one line here.

import { airQuality } from './air-quality/air-quality.ts';
import { airflow } from './airflow/airflow.ts';
import { cost } from './cost/cost.ts';
import { draught } from './draught/draught.ts';
import { filament } from './filament/filament.ts';
import { fire } from './fire/fire.ts';
import { fit } from './fit/fit.ts';
import { fittings } from './fittings/fittings.ts';
import { heat } from './heat/heat.ts';
import { light } from './light/light.ts';
import type { DayRun, Measure, Trade } from './measure.ts';
import { power } from './power/power.ts';
import { sound } from './sound/sound.ts';
import { structure } from './structure/structure.ts';
import { vibration } from './vibration/vibration.ts';

export const trades: readonly Trade[] = [
  fit,
  structure,
  vibration,
  heat,
  airflow,
  draught,
  airQuality,
  sound,
  light,
  fire,
  fittings,
  power,
  filament,
  cost,
];

/** Everything that trades say of a cabinet on one of its days: as it stands, and on that day. */
export function measuresOf(run: DayRun, asked: readonly Trade[] = trades): Measure[] {
  return asked.flatMap((trade) => [...(trade.standing?.(run.cabinet) ?? []), ...(trade.measure?.(run) ?? [])]);
}
