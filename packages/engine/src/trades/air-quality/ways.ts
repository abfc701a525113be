// Where everything went that the day's jobs gave off: by which way into the room, outdoors, into filters, onto surfaces.
// Room air that only passes through is not counted: what leaves is reckoned above the room's own level.

import type { AirPath } from '../../network/network.ts';
import { fanShares, insideZones, massFlow } from '../air-ways.ts';
import { type Course, courseFrom, courseOf, integralOf } from '../course.ts';
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
  const { record, assembly, cabinet } = run;
  const { network } = record;
  const { referenceDensity } = network.constants;
  const inside = insideZones(run);
  const levels = record.concentrations[contaminant]!;
  const room = courseOf(record, levels, assembly.room);
  const above = (zone: string): Course => {
    const level = courseOf(record, levels, zone);
    return courseFrom(record, (row) => Math.max(level.values[row]! - room.values[row]!, 0));
  };
  const exhausts = exhaustsOf(cabinet).flatMap((id) => fanShares(run, id));
  const fansOn = courseFrom(record, (row) => (exhausts.some(({ values }) => values[row]! > 0) ? 1 : 0));
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
    const outward =
      inside.has(path.from) && !inside.has(path.to) ? 1 : inside.has(path.to) && !inside.has(path.from) ? -1 : 0;
    const within = inside.has(path.from) && inside.has(path.to);
    if (outward === 0 && !within) continue;
    const removed = path.filterEfficiency[contaminant] ?? 0;
    const carbon = carbonCaught(run, path.name, contaminant);
    if (within) {
      if (removed > 0) ways.caught += (removed * integralOf(throughput(run, path, above, 0))) / referenceDensity;
      ways.caught += carbon;
      continue;
    }
    const passing = throughput(run, path, above, outward);
    const all = integralOf(passing) / referenceDensity;
    const passed = Math.max(all * (1 - removed) - carbon, 0);
    ways.caught += all - passed;
    const outer = outward > 0 ? path.to : path.from;
    if (outer !== assembly.room) ways.outdoors += passed;
    else if (path.type === 'tall-opening') ways.doors += passed;
    else if (leaks.has(path.name)) {
      const on =
        all > 0
          ? integralOf(courseFrom(record, (row) => passing.values[row]! * fansOn.values[row]!)) / referenceDensity / all
          : 0;
      ways.leaksFansOn += passed * on;
      ways.leaksFansOff += passed * (1 - on);
    } else if (built.has(path.name) && removed + carbon > 0) ways.filteredExhaust += passed;
    else ways.openPaths += passed;
  }
  for (const { name, a, b } of network.exchanges) {
    const [inner, outer] = inside.has(a) && !inside.has(b) ? [a, b] : inside.has(b) && !inside.has(a) ? [b, a] : [];
    if (inner === undefined || outer !== assembly.room) continue;
    const flow = courseOf(record, record.exchanges, name);
    const level = above(inner);
    ways.doors += integralOf(courseFrom(record, (row) => flow.values[row]! * level.values[row]!));
  }
  for (const { name, zone, flow, efficiency, active } of network.recirculations) {
    const on = courseOn(run, active);
    const level = above(zone);
    const turned = flow * integralOf(courseFrom(record, (row) => on.values[row]! * level.values[row]!));
    ways.caught += (efficiency[contaminant] ?? 0) * turned + carbonCaught(run, name, contaminant);
  }
  const settling = network.contaminants.find(({ name }) => name === contaminant)?.deposition ?? {};
  for (const zone of inside) {
    const volume = network.zones.find(({ name }) => name === zone)!.volume;
    ways.deposited += (settling[zone] ?? 0) * volume * integralOf(above(zone));
  }
  return ways;
}

/** kg/s of air times units per m³ above the room's: outward only, or either way inside the cabinet (`outward` 0). */
function throughput(run: DayRun, path: AirPath, above: (zone: string) => Course, outward: number): Course {
  const flow = massFlow(run, path.name);
  const counter = courseOf(run.record, run.record.counterFlows, path.name);
  if (outward === 0) {
    const [from, to] = [above(path.from), above(path.to)];
    return courseFrom(
      run.record,
      (row) => Math.abs(flow.values[row]!) * (flow.values[row]! > 0 ? from : to).values[row]!,
    );
  }
  const level = above(outward > 0 ? path.from : path.to);
  return courseFrom(run.record, (row) => {
    const net = outward * flow.values[row]!;
    // A tall opening lets air out beside a net inflow: the flow against the net one.
    return (net > 0 ? net + counter.values[row]! : counter.values[row]!) * level.values[row]!;
  });
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
