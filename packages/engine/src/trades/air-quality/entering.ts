// What the air that enters the cabinet brings with it: the room's level, or that of outdoors where wind or an inlet lets their air in.

import { insideZones, pathsAround } from '../air-ways.ts';
import { columnIn } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';

/** Units per m³ row by row, and their slope per second. */
export interface Level {
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

/** A way in from outdoors, and its share of all the air that enters, row by row. */
interface Inflow {
  readonly zone: string;
  readonly filterEfficiency: Readonly<Record<string, number>>;
  readonly share: Float64Array;
}

/**
 * The mixture that enters at each moment. The air inside follows it by a few air changes: after the wind has turned, what came from
 * outdoors counts as given off for that long.
 */
export function levelOfEntering(run: DayRun, contaminant: string): Level {
  const { record, assembly } = run;
  const table = record.concentrations[contaminant]!;
  const rates = record.concentrationSlopes?.[contaminant]?.values;
  const rows = record.times.length;
  const level = { values: new Float64Array(rows), slopes: new Float64Array(rows) };
  const { names, values: levels } = table;
  for (let row = 0, room = columnIn(table, assembly.room); row < rows; row += 1, room += names.length) {
    level.values[row] = levels[room]!;
    level.slopes[row] = rates?.[room] ?? 0;
  }
  for (const { zone, filterEfficiency, share } of inflowsFromOutdoors(run)) {
    const passes = 1 - (filterEfficiency[contaminant] ?? 0);
    const [outside, room] = [columnIn(table, zone), columnIn(table, assembly.room)];
    for (let row = 0, at = 0; row < rows; row += 1, at += names.length) {
      level.values[row]! += share[row]! * (passes * levels[at + outside]! - levels[at + room]!);
      level.slopes[row]! -= share[row]! * (rates?.[at + room] ?? 0);
    }
  }
  return level;
}

function inflowsFromOutdoors(run: DayRun): readonly Inflow[] {
  return keptWith(run.record, 'inflows from outdoors:', () => {
    const { record, assembly } = run;
    const inside = insideZones(run);
    const around = pathsAround(run, inside).map((path) => ({
      path,
      outer: inside.has(path.from) ? path.to : path.from,
      sign: inside.has(path.from) ? -1 : 1,
    }));
    if (around.every(({ outer }) => outer === assembly.room)) return [];
    const { flows, times } = record;
    const enters = ({ path, sign }: (typeof around)[number]): Float64Array => {
      const column = columnIn(flows, path.name);
      return Float64Array.from(times, (_, row) => Math.max(sign * flows.values[row * flows.names.length + column]!, 0));
    };
    const all = new Float64Array(times.length);
    const entering = around.map((way) => ({ way, flow: enters(way) }));
    for (const { flow } of entering) for (let row = 0; row < all.length; row += 1) all[row]! += flow[row]!;
    return entering
      .filter(({ way: { outer }, flow }) => outer !== assembly.room && flow.some((each) => each > 0))
      .map(({ way: { outer, path }, flow }) => ({
        zone: outer,
        filterEfficiency: path.filterEfficiency,
        share: flow.map((each, row) => (all[row]! > 0 ? each / all[row]! : 0)),
      }));
  });
}
