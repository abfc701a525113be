// What moves the air at one print: jets of openings, fans that turn the air round, air that passes through, suction.

import { captureVelocity } from '@stillair/physics';
import type { CabinetPath } from '../../cabinet/cabinet.ts';
import { bayInflow, piecesOf, volumeFlow } from '../air-ways.ts';
import { type Course, courseFrom, scaled, within } from '../course.ts';
import { sumOf } from '../draws.ts';
import type { DayRun } from '../measure.ts';
import { turnsAirRound } from '../plant.ts';
import type { Print } from '../prints.ts';
import { courseOn } from '../switched.ts';
import { zeros } from '../zeros.ts';
import { type JetReach, jetAtPart } from './jet-at-part.ts';
import { distanceTo, openingOf, type Target, targetOf } from './openings.ts';

export interface Contribution {
  readonly kind: 'jet' | 'turned' | 'through' | 'suction';
  /** Id of the path, or of the bay. */
  readonly from: string;
  /** Over the job, m/s. */
  readonly speed: Course;
  /** In the opening, m/s, and how the jet gets from there to the part. */
  readonly opening?: Course;
  readonly reach?: JetReach;
}

export function contributionsTo(run: DayRun, print: Print): Contribution[] {
  const { cabinet } = run;
  const { bay } = print.machine;
  const target = targetOf(cabinet, print);
  // A machine's own chamber keeps the bay's jets off.
  if (print.machine.chamber !== undefined) return [chamberAir(run, print)];
  const served = Object.entries(cabinet.paths).filter(([, { from, to }]) => from === bay || to === bay);
  return [
    ...served.flatMap(([id, path]) =>
      turnsAirRound(path) ? turned(run, print, id, path, target) : ends(run, print, id, path, target),
    ),
    through(run, print),
  ];
}

/** A path that begins or ends in the bay: a jet while air enters by it, a sink while air leaves by it. */
function ends(run: DayRun, print: Print, id: string, path: CabinetPath, target: Target): Contribution[] {
  const { cabinet } = run;
  const into = path.to === print.machine.bay;
  const opening = openingOf(cabinet, path, cabinet.bays[print.machine.bay]!, into);
  if (opening === undefined) return [];
  // Backwards through a fan or filter the air leaves by the path's first part, without aim: straight in.
  const reach = jetAtPart(opening, into ? path.blows : 'in', target);
  const distance = distanceTo(target, opening.place);
  const { times, values: flow } = within(flowThrough(run, id), print.start, print.end);
  const inOpening = zeros(flow.length);
  const suction = zeros(flow.length);
  for (let row = 0; row < flow.length; row += 1) {
    const inward = into ? flow[row]! : -flow[row]!;
    inOpening[row] = Math.max(inward, 0) * (1 / opening.area);
    suction[row] = captureVelocity(Math.max(-inward, 0), distance, opening.area, true);
  }
  const jet = { times, values: inOpening };
  return [
    { kind: 'jet', from: id, speed: scaled(jet, reach.share), opening: jet, reach },
    { kind: 'suction', from: id, speed: { times, values: suction } },
  ];
}

/** m³/s through a whole path, whatever number of pieces it has. */
function flowThrough(run: DayRun, id: string): Course {
  return sumOf(
    run,
    piecesOf(run, id).map((piece) => volumeFlow(run, piece)),
  );
}

/** A fan that turns the bay's air round blows where its path says. */
function turned(run: DayRun, print: Print, id: string, path: CabinetPath, target: Target): Contribution[] {
  const { cabinet, assembly, record } = run;
  const opening = openingOf(cabinet, path, cabinet.bays[print.machine.bay]!, true);
  const places = assembly.paths[id]!;
  const source = record.network.recirculations.find(({ name }) => name === places.name);
  if (opening === undefined || source === undefined) return [];
  const on = within(courseOn(run, source.active), print.start, print.end);
  const inOpening = scaled(on, source.flow / opening.area);
  const reach = jetAtPart(opening, path.blows, target);
  return [{ kind: 'turned', from: id, speed: scaled(inOpening, reach.share), opening: inOpening, reach }];
}

/** Air that passes through the bay, spread over its smallest section: the mean that no aiming avoids. */
function through(run: DayRun, print: Print): Contribution {
  const { cabinet } = run;
  const { bay } = print.machine;
  const { x, z } = cabinet.bays[bay]!;
  const [width, height, depth] = [x[1] - x[0], z[1] - z[0], cabinet.inside.depth];
  const section = Math.min(width * depth, width * height, depth * height);
  const inflow = within(bayInflow(run, bay), print.start, print.end);
  return { kind: 'through', from: bay, speed: scaled(inflow, 1 / section) };
}

/** What a chamber's own exhaust and filter move, spread over the chamber's smallest section. */
function chamberAir(run: DayRun, print: Print): Contribution {
  const { size, exhaustFlow, recirculation } = print.machine.chamber!;
  const section = Math.min(size.width * size.depth, size.width * size.height, size.depth * size.height);
  const speed = courseFrom(run.record, () => (exhaustFlow + recirculation) / section);
  return { kind: 'through', from: `${print.machineId}.chamber`, speed: within(speed, print.start, print.end) };
}
