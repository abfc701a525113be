// Where everything went that the day's jobs gave off: by which way into the room, outdoors, into filters, onto surfaces.
// Room air that only passes through is not counted: what leaves is reckoned above the room's own level.

import type { AirPath } from '../../network/network.ts';
import { levelOf, massFlow } from '../air-ways.ts';
import { columnIn, courseFrom, courseOf, integralOf } from '../course.ts';
import { keptWith } from '../kept.ts';
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
  const { network, times } = run.record;
  const { inside, plain, cleaning, turned, within, always } = outletsOf(run);
  const settling = network.contaminants.find(({ name }) => name === contaminant)?.deposition ?? {};
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
  const above = keptWith(run.record, 'above room:', () => ({
    values: new Float64Array(times.length),
    slopes: new Float64Array(times.length),
  }));
  for (const { name: here, volume } of network.zones) {
    if (!inside.has(here)) continue;
    putAboveRoom(run, contaminant, here, above);
    const carried = (weights: ProductWeights): number => weighted(weights, above.values, above.slopes);
    for (const { zone, way, weights } of plain) if (zone === here) ways[way] += carried(weights);
    for (const { zone, path, outdoors, weights } of cleaning) {
      if (zone !== here) continue;
      const removed = path.filterEfficiency[contaminant] ?? 0;
      const carbon = carbonCaught(run, path.name, contaminant);
      const all = carried(weights);
      const passed = Math.max(all * (1 - removed) - carbon, 0);
      ways.caught += all - passed;
      ways[outdoors ? 'outdoors' : removed + carbon > 0 ? 'filteredExhaust' : 'openPaths'] += passed;
    }
    for (const { zone, efficiency, weights } of turned) {
      const removed = efficiency[contaminant] ?? 0;
      if (zone === here && removed > 0) ways.caught += removed * carried(weights);
    }
    if (settling[here] !== undefined) ways.deposited += settling[here] * volume * carried(always);
  }
  for (const { name } of network.recirculations) ways.caught += carbonCaught(run, name, contaminant);
  for (const path of within) {
    const removed = path.filterEfficiency[contaminant] ?? 0;
    if (removed > 0) ways.caught += removed * eitherWay(run, path, contaminant);
    ways.caught += carbonCaught(run, path.name, contaminant);
  }
  return ways;
}

/** Written into the arrays given: thousands of runs ask for dozens of these. */
function putAboveRoom(
  { record, assembly }: DayRun,
  contaminant: string,
  zone: string,
  { values, slopes }: Above,
): void {
  const table = record.concentrations[contaminant]!;
  const { values: levels, names } = table;
  const rates = record.concentrationSlopes?.[contaminant]?.values;
  let [inner, room] = [columnIn(table, zone), columnIn(table, assembly.room)];
  for (let row = 0; row < values.length; row += 1, inner += names.length, room += names.length) {
    const above = levels[inner]! - levels[room]!;
    values[row] = Math.max(above, 0);
    slopes[row] = above > 0 && rates !== undefined ? rates[inner]! - rates[room]! : 0;
  }
}

/** Units that a path inside the cabinet carries over the day, whichever way it runs. */
function eitherWay(run: DayRun, path: AirPath, contaminant: string): number {
  const { constants } = run.record.network;
  const flow = massFlow(run, path.name).values;
  const level = (zone: string): Float64Array => levelOf(run, contaminant, zone).values;
  const [from, to, room] = [level(path.from), level(path.to), level(run.assembly.room)];
  const carried = courseFrom(
    run.record,
    (row) => Math.abs(flow[row]!) * Math.max((flow[row]! > 0 ? from : to)[row]! - room[row]!, 0),
  );
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
