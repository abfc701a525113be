// Where everything went that the day's jobs gave off: by which way into the room, outdoors, into filters, onto surfaces.
// Room air that only passes through is not counted: what leaves is reckoned above the room's own level.

import type { AirPath } from '../../network/network.ts';
import { fanShares, insideZones, levelOf, massFlow } from '../air-ways.ts';
import { type Course, courseFrom, courseOf, integralOf, integralOfProduct } from '../course.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import { exhaustsOf } from '../plant.ts';
import { courseOn } from '../switched.ts';

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
  const { record, assembly } = run;
  const { network } = record;
  const { referenceDensity } = network.constants;
  const inside = insideZones(run);
  const above = (zone: string): Course => aboveRoom(run, contaminant, zone);
  const leaks = new Set(assembly.leaks.map(({ name }) => name));
  const built = new Set(Object.values(assembly.paths).map(({ name }) => name));
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

  for (const path of network.paths) {
    const [fromInside, toInside] = [inside.has(path.from), inside.has(path.to)];
    if (!fromInside && !toInside) continue;
    const removed = path.filterEfficiency[contaminant] ?? 0;
    const carbon = carbonCaught(run, path.name, contaminant);
    if (fromInside && toInside) {
      if (removed > 0) ways.caught += (removed * eitherWay(run, path, above)) / referenceDensity;
      ways.caught += carbon;
      continue;
    }
    const [inner, outer] = fromInside ? [path.from, path.to] : [path.to, path.from];
    const leaving = leavingBy(run, path, fromInside ? 1 : -1);
    if (leaving === undefined) continue;
    const all = integralOfProduct(leaving, above(inner)) / referenceDensity;
    const passed = Math.max(all * (1 - removed) - carbon, 0);
    ways.caught += all - passed;
    if (outer !== assembly.room) ways.outdoors += passed;
    else if (path.type === 'tall-opening') ways.doors += passed;
    else if (leaks.has(path.name)) {
      const on =
        all > 0 ? integralOfProduct(whileFansOn(run, path, leaving), above(inner)) / referenceDensity / all : 0;
      ways.leaksFansOn += passed * on;
      ways.leaksFansOff += passed * (1 - on);
    } else if (built.has(path.name) && removed + carbon > 0) ways.filteredExhaust += passed;
    else ways.openPaths += passed;
  }
  for (const { name, a, b } of network.exchanges) {
    const [inner, outer] = inside.has(a) && !inside.has(b) ? [a, b] : inside.has(b) && !inside.has(a) ? [b, a] : [];
    if (inner === undefined || outer !== assembly.room) continue;
    ways.doors += integralOfProduct(courseOf(record, record.exchanges, name), above(inner));
  }
  for (const { name, zone, flow, efficiency, active } of network.recirculations) {
    const removed = efficiency[contaminant] ?? 0;
    if (removed > 0) ways.caught += removed * flow * integralOfProduct(courseOn(run, active), above(zone));
    ways.caught += carbonCaught(run, name, contaminant);
  }
  const settling = network.contaminants.find(({ name }) => name === contaminant)?.deposition ?? {};
  for (const { name, volume } of network.zones)
    if (inside.has(name) && settling[name] !== undefined)
      ways.deposited += settling[name] * volume * integralOf(above(name));
  return ways;
}

/** Units per m³ by which a zone's air lies above the room's. */
function aboveRoom(run: DayRun, contaminant: string, zone: string): Course {
  return keptWith(run.record, `above room:${contaminant}:${zone}`, () => {
    const [inner, room] = [levelOf(run, contaminant, zone), levelOf(run, contaminant, run.assembly.room)];
    const above = courseFrom(run.record, (row) => Math.max(inner.values[row]! - room.values[row]!, 0));
    if (inner.slopes === undefined || room.slopes === undefined) return above;
    const { values: slopes } = courseFrom(run.record, (row) =>
      above.values[row]! > 0 ? inner.slopes![row]! - room.slopes![row]! : 0,
    );
    return { ...above, slopes };
  });
}

/** kg/s that leave the cabinet by a path; undefined when none ever does. `outward` is the sign of its flow outward. */
function leavingBy(run: DayRun, path: AirPath, outward: 1 | -1): Course | undefined {
  return keptWith(run.record, `leaving:${path.name}`, () => {
    const net = massFlow(run, path.name).values;
    const counter = courseOf(run.record, run.record.counterFlows, path.name).values;
    // A tall opening lets air out beside a net inflow: the flow against the net one.
    const leaving = courseFrom(run.record, (row) => Math.max(outward * net[row]!, 0) + counter[row]!);
    return leaving.values.some((value) => value > 0) ? leaving : undefined;
  });
}

function whileFansOn(run: DayRun, path: AirPath, leaving: Course): Course {
  return keptWith(run.record, `leaving, fans on:${path.name}`, () => {
    const exhausts = exhaustsOf(run.cabinet).flatMap((id) => fanShares(run, id));
    return courseFrom(run.record, (row) =>
      exhausts.some(({ values }) => values[row]! > 0) ? leaving.values[row]! : 0,
    );
  });
}

/** kg/s times units per m³ through a path inside the cabinet, whichever way it runs, over the day. */
function eitherWay(run: DayRun, path: AirPath, above: (zone: string) => Course): number {
  const flow = massFlow(run, path.name).values;
  const [from, to] = [above(path.from).values, above(path.to).values];
  return integralOf(courseFrom(run.record, (row) => Math.abs(flow[row]!) * (flow[row]! > 0 ? from : to)[row]!));
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
