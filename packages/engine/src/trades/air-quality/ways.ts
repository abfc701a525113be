// Where everything went that the day's jobs gave off: by which way into the room, outdoors, into filters, onto surfaces.
// Air that only passes through is not counted: what leaves is reckoned above the level of the air that enters.

import type { AirPath } from '../../network/network.ts';
import { massFlow } from '../air-ways.ts';
import { columnIn, columnOf, integralOf } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import { type ProductWeights, weighted } from '../product-weights.ts';
import { zeros } from '../zeros.ts';
import { type Level, levelOfEntering } from './entering.ts';
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
  const entering = levelOfEntering(run, contaminant);
  const above = keptWith(run, 'above entering:', () => ({
    values: zeros(times.length),
    slopes: zeros(times.length),
  }));
  for (const { name: here, volume } of network.zones) {
    if (!inside.has(here)) continue;
    putAbove(run, contaminant, here, entering, above);
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
    if (removed > 0) ways.caught += removed * eitherWay(run, path, contaminant, entering);
    ways.caught += carbonCaught(run, path.name, contaminant);
  }
  return ways;
}

/**
 * Units per m³ by which a zone's air lies above the air that enters, and its slope per second. Written into the arrays given: thousands of
 * runs ask for dozens of these.
 */
function putAbove(
  { record }: DayRun,
  contaminant: string,
  zone: string,
  entering: Level,
  { values, slopes }: Level,
): void {
  const table = record.concentrations[contaminant]!;
  const { names, values: levels } = table;
  const rates = record.concentrationSlopes?.[contaminant]?.values;
  for (let row = 0, at = columnIn(table, zone); row < values.length; row += 1, at += names.length) {
    const above = levels[at]! - entering.values[row]!;
    values[row] = Math.max(above, 0);
    slopes[row] = above > 0 && rates !== undefined ? rates[at]! - entering.slopes[row]! : 0;
  }
}

/** Units that a path inside the cabinet carries over the day, whichever way it runs. */
function eitherWay(run: DayRun, path: AirPath, contaminant: string, entering: Level): number {
  const { constants } = run.record.network;
  const flow = massFlow(run, path.name).values;
  const table = run.record.concentrations[contaminant]!;
  const [from, to] = [columnOf(table, path.from), columnOf(table, path.to)];
  const carried = zeros(flow.length);
  for (let row = 0; row < carried.length; row += 1)
    carried[row] = Math.abs(flow[row]!) * Math.max((flow[row]! > 0 ? from : to)[row]! - entering.values[row]!, 0);
  return integralOf({ times: run.record.times, values: carried }) / constants.referenceDensity;
}

/** Units that the carbon beds of a path or recirculation took up over the day; negative when they gave back. */
export function carbonCaught({ record }: DayRun, where: string, contaminant: string): number {
  return record.network.carbonBeds
    .filter((bed) => bed.in === where)
    .reduce((sum, bed) => {
      const vapour = bed.vapours.find((candidate) => candidate.contaminant === contaminant);
      const column = `${bed.name}/${contaminant}`;
      if (vapour === undefined || !record.carbonLoads.names.includes(column)) return sum;
      const values = columnOf(record.carbonLoads, column);
      return sum + ((values[values.length - 1]! - values[0]!) * bed.mass) / vapour.kilogramsPerUnit;
    }, 0);
}
