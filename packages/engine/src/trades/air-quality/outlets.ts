// By which outlets the cabinet's air leaves over the day: worked out once for a record, asked for by every contaminant.

import type { AirPath } from '../../network/network.ts';
import { insideZones } from '../air-ways.ts';
import { columnOf, scaled } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import { fansDraw } from '../moments.ts';
import { type ProductWeights, productWeights } from '../product-weights.ts';
import { courseOn } from '../switched.ts';
import { zeros } from '../zeros.ts';

export type Way = 'openPaths' | 'leaksFansOn' | 'leaksFansOff' | 'doors' | 'outdoors';

/** Air that leaves a zone by all outlets of one way that clean nothing. */
export interface PlainOutlets {
  readonly zone: string;
  readonly way: Way;
  readonly weights: ProductWeights;
}

/** A path with a filter or carbon in it. */
export interface CleaningOutlet {
  readonly zone: string;
  readonly path: AirPath;
  readonly outdoors: boolean;
  readonly weights: ProductWeights;
}

/** Air that a filter in a zone turns round. */
export interface Turned {
  readonly zone: string;
  readonly name: string;
  readonly efficiency: Readonly<Record<string, number>>;
  readonly weights: ProductWeights;
}

export interface Outlets {
  readonly inside: ReadonlySet<string>;
  readonly plain: readonly PlainOutlets[];
  readonly cleaning: readonly CleaningOutlet[];
  readonly turned: readonly Turned[];
  /** Paths between zones inside that clean what passes. */
  readonly within: readonly AirPath[];
  /** Of a flow of 1 all day. */
  readonly always: ProductWeights;
}

export function outletsOf(run: DayRun): Outlets {
  return keptWith(run, 'outlets:', () => findOutlets(run));
}

function findOutlets(run: DayRun): Outlets {
  const { record, assembly } = run;
  const { network, times } = record;
  const { referenceDensity } = network.constants;
  const inside = insideZones(run);
  const leaks = new Set(assembly.leaks.map(({ name }) => name));
  const carbon = new Set(network.carbonBeds.map((bed) => bed.in));
  const draws = fansDraw(run).values;
  const sums = new Map<string, { zone: string; way: Way; flow: Float64Array }>();
  const cleaning: CleaningOutlet[] = [];
  const within: AirPath[] = [];
  const sumOf = (zone: string, way: Way): Float64Array => {
    const key = `${way} ${zone}`;
    const sum = sums.get(key) ?? { zone, way, flow: zeros(times.length) };
    sums.set(key, sum);
    return sum.flow;
  };
  const leaving = zeros(times.length);

  for (const path of network.paths) {
    const [fromInside, toInside] = [inside.has(path.from), inside.has(path.to)];
    if (!fromInside && !toInside) continue;
    const cleans = carbon.has(path.name) || Object.values(path.filterEfficiency).some((share) => share > 0);
    if (fromInside && toInside) {
      if (cleans) within.push(path);
      continue;
    }
    const zone = fromInside ? path.from : path.to;
    const outdoors = (fromInside ? path.to : path.from) !== assembly.room;
    if (!putLeaving(run, path, fromInside ? 1 : -1, 1 / referenceDensity, leaving)) continue;
    if (cleans) {
      const weights = productWeights(times, leaving);
      if (weights !== undefined) cleaning.push({ zone, path, outdoors, weights });
    } else if (outdoors) addTo(sumOf(zone, 'outdoors'), leaving);
    else if (path.type === 'tall-opening') addTo(sumOf(zone, 'doors'), leaving);
    else if (leaks.has(path.name)) {
      const [on, off] = [sumOf(zone, 'leaksFansOn'), sumOf(zone, 'leaksFansOff')];
      for (let row = 0; row < leaving.length; row += 1) {
        const sum = draws[row]! > 0 ? on : off;
        sum[row]! += leaving[row]!;
      }
    } else addTo(sumOf(zone, 'openPaths'), leaving);
  }
  for (const { name, a, b } of network.exchanges) {
    const [inner, outer] = inside.has(a) && !inside.has(b) ? [a, b] : inside.has(b) && !inside.has(a) ? [b, a] : [];
    if (inner === undefined || outer !== assembly.room) continue;
    addTo(sumOf(inner, 'doors'), columnOf(record.exchanges, name));
  }
  return {
    inside,
    plain: [...sums.values()].flatMap(({ zone, way, flow }) => {
      const weights = productWeights(times, flow);
      return weights === undefined ? [] : [{ zone, way, weights }];
    }),
    cleaning,
    turned: network.recirculations.flatMap(({ name, zone, flow, efficiency, active }) => {
      const weights = productWeights(times, scaled(courseOn(run, active), flow).values);
      return weights === undefined ? [] : [{ name, zone, efficiency, weights }];
    }),
    within,
    always: productWeights(times, zeros(times.length).fill(1))!,
  };
}

function addTo(sum: Float64Array, flow: Float64Array): void {
  for (let row = 0; row < sum.length; row += 1) sum[row]! += flow[row]!;
}

/** Flow out of the cabinet by a path, times a factor, into an array; false when none ever does. `outward` is the sign of its flow outward. */
function putLeaving(
  { record }: DayRun,
  path: AirPath,
  outward: 1 | -1,
  factor: number,
  leaving: Float64Array,
): boolean {
  const net = columnOf(record.flows, path.name);
  // A tall opening lets air out beside a net inflow: the flow against the net one.
  const counter = path.type === 'tall-opening' ? columnOf(record.counterFlows, path.name) : undefined;
  let any = false;
  for (let row = 0; row < leaving.length; row += 1) {
    const flow = factor * (Math.max(outward * net[row]!, 0) + (counter === undefined ? 0 : counter[row]!));
    leaving[row] = flow;
    if (flow > 0) any = true;
  }
  return any;
}
