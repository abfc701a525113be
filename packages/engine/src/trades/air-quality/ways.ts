// Where everything went that the day's jobs gave off: by which way into the room, outdoors, into filters, onto surfaces.
// Room air that only passes through is not counted: what leaves is reckoned above the room's own level.

import type { AirPath } from '../../network/network.ts';
import { massFlow } from '../air-ways.ts';
import { courseFrom, courseOf, integralOf } from '../course.ts';
import type { DayRun } from '../measure.ts';
import { type ProductWeights, weighted } from '../product-weights.ts';
import { outletsOf } from './outlets.ts';

export interface Ways {
  /** Units over the day, into the room. */
  readonly filteredExhaust: number;
  readonly openPaths: number;
  readonly leaksFansOn: number;
  readonly leaksFansOff: number;
  readonly doors: number;
  /** Elsewhere. */
  readonly outdoors: number;
  readonly caught: number;
  readonly deposited: number;
}

export function intoRoom({ filteredExhaust, openPaths, leaksFansOn, leaksFansOff, doors }: Ways): number {
  return filteredExhaust + openPaths + leaksFansOn + leaksFansOff + doors;
}

/** Units per m³ by which a zone's air lies above the room's, and its slope per second. */
interface Above {
  readonly values: Float64Array;
  readonly slopes: Float64Array;
}

export function waysOf(run: DayRun, contaminant: string): Ways {
  const { network } = run.record;
  const { inside, plain, cleaning, turned, within, always } = outletsOf(run);
  const levels = new Map([...inside].map((zone) => [zone, aboveRoom(run, contaminant, zone)] as const));
  const carried = (zone: string, weights: ProductWeights): number => {
    const { values, slopes } = levels.get(zone)!;
    return weighted(weights, values, slopes);
  };
  const ways = {
    filteredExhaust: 0,
    openPaths: 0,
    leaksFansOn: 0,
    leaksFansOff: 0,
    doors: 0,
    outdoors: 0,
    caught: 0,
    deposited: 0,
  };
  for (const { zone, way, weights } of plain) ways[way] += carried(zone, weights);
  for (const { zone, path, outdoors, weights } of cleaning) {
    const removed = path.filterEfficiency[contaminant] ?? 0;
    const carbon = carbonCaught(run, path.name, contaminant);
    const all = carried(zone, weights);
    const passed = Math.max(all * (1 - removed) - carbon, 0);
    ways.caught += all - passed;
    ways[outdoors ? 'outdoors' : removed + carbon > 0 ? 'filteredExhaust' : 'openPaths'] += passed;
  }
  for (const path of within) {
    const removed = path.filterEfficiency[contaminant] ?? 0;
    if (removed > 0) ways.caught += removed * eitherWay(run, path, levels);
    ways.caught += carbonCaught(run, path.name, contaminant);
  }
  for (const { name, zone, efficiency, weights } of turned) {
    const removed = efficiency[contaminant] ?? 0;
    if (removed > 0) ways.caught += removed * carried(zone, weights);
    ways.caught += carbonCaught(run, name, contaminant);
  }
  const settling = network.contaminants.find(({ name }) => name === contaminant)?.deposition ?? {};
  for (const { name, volume } of network.zones)
    if (inside.has(name) && settling[name] !== undefined)
      ways.deposited += settling[name] * volume * carried(name, always);
  return ways;
}

function aboveRoom({ record, assembly }: DayRun, contaminant: string, zone: string): Above {
  const { names, values: levels } = record.concentrations[contaminant]!;
  const table = record.concentrationSlopes?.[contaminant];
  const [inner, room] = [names.indexOf(zone), names.indexOf(assembly.room)];
  const count = record.times.length;
  const [values, slopes] = [new Float64Array(count), new Float64Array(count)];
  for (let row = 0, at = 0; row < count; row += 1, at += names.length) {
    const above = levels[at + inner]! - levels[at + room]!;
    if (!(above > 0)) continue;
    values[row] = above;
    if (table !== undefined) slopes[row] = table.values[at + inner]! - table.values[at + room]!;
  }
  return { values, slopes };
}

/** Units that a path inside the cabinet carries over the day, whichever way it runs. */
function eitherWay(run: DayRun, path: AirPath, levels: ReadonlyMap<string, Above>): number {
  const { constants } = run.record.network;
  const flow = massFlow(run, path.name).values;
  const [from, to] = [levels.get(path.from)!.values, levels.get(path.to)!.values];
  const carried = courseFrom(run.record, (row) => Math.abs(flow[row]!) * (flow[row]! > 0 ? from : to)[row]!);
  return integralOf(carried) / constants.referenceDensity;
}

/** Units that the carbon beds of a path or recirculation took up over the day; negative when they gave back. */
export function carbonCaught({ record }: DayRun, where: string, contaminant: string): number {
  return record.network.carbonBeds
    .filter((bed) => bed.in === where)
    .reduce((sum, bed) => {
      const vapour = bed.vapours.find((candidate) => candidate.contaminant === contaminant);
      const column = `${bed.name}/${contaminant}`;
      if (vapour === undefined || !record.carbonLoads.names.includes(column)) return sum;
      const { values } = courseOf(record, record.carbonLoads, column);
      return sum + ((values[values.length - 1]! - values[0]!) * bed.mass) / vapour.kilogramsPerUnit;
    }, 0);
}
