// What the air that enters the cabinet brings with it: the room's level, or that of outdoors where wind or an inlet lets their air in.

import { insideZones, levelOf, pathsAround } from '../air-ways.ts';
import { columnOf } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import { zeros } from '../zeros.ts';

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
  const { values: room, slopes: rates } = levelOf(run, contaminant, assembly.room);
  const roomRates = rates ?? zeros(room.length);
  const inflows = inflowsFromOutdoors(run);
  if (inflows.length === 0) return { values: room, slopes: roomRates };
  const level = { values: room.slice(), slopes: roomRates.slice() };
  for (const { zone, filterEfficiency, share } of inflows) {
    const passes = 1 - (filterEfficiency[contaminant] ?? 0);
    const outside = columnOf(record.concentrations[contaminant]!, zone);
    for (let row = 0; row < room.length; row += 1) {
      level.values[row]! += share[row]! * (passes * outside[row]! - room[row]!);
      level.slopes[row]! -= share[row]! * roomRates[row]!;
    }
  }
  return level;
}

function inflowsFromOutdoors(run: DayRun): readonly Inflow[] {
  return keptWith(run, 'inflows from outdoors:', () => {
    const { record, assembly } = run;
    const inside = insideZones(run);
    const around = pathsAround(run, inside).map((path) => ({
      path,
      outer: inside.has(path.from) ? path.to : path.from,
      sign: inside.has(path.from) ? -1 : 1,
    }));
    if (around.every(({ outer }) => outer === assembly.room)) return [];
    const entering = around.map((way) => ({ way, flow: inwardOnly(columnOf(record.flows, way.path.name), way.sign) }));
    const all = zeros(record.times.length);
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

function inwardOnly(flow: Float64Array, sign: number): Float64Array {
  const inward = zeros(flow.length);
  for (let row = 0; row < inward.length; row += 1) inward[row] = Math.max(sign * flow[row]!, 0);
  return inward;
}
