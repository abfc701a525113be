// What makes a bay as warm as it is at one moment: heat given off in it, what the passing air carries off, what is left to the walls.

import { formatClock } from '../../units/format.ts';
import { massFlow, temperatureOf } from '../air-ways.ts';
import { courseOf, valueAt } from '../course.ts';
import type { DayRun, Step } from '../measure.ts';
import { machinesIn } from '../plant.ts';
import { courseOn } from '../switched.ts';

/** s */
const JUST_BEFORE = 1e-3;

export interface BayBalance {
  /** W */
  readonly beds: number;
  readonly machines: number;
  readonly others: number;
  /** Carried off by air leaving the bay's zones, less what entering air brings, W. */
  readonly carried: number;
}

/** Just before the time: peaks sit where a job ends, and what made them is what ran until then. */
export function balanceAt(run: DayRun, bay: string, until: number): BayBalance {
  const time = Math.max(until - JUST_BEFORE, 0);
  const { record, assembly } = run;
  const { network, bedPowers } = record;
  const here = new Set(assembly.bays[bay]!.zones);
  let [beds, machines, others, carried] = [0, 0, 0, 0];
  for (const id of machinesIn(run.cabinet, bay)) {
    const places = assembly.machines[id]!;
    const inside = new Set([...here, places.frame, ...(places.chamber === undefined ? [] : [places.chamber])]);
    if (bedPowers.names.includes(id)) beds += valueAt(courseOf(record, bedPowers, id), time);
    const mode = network.schedule.find(
      (entry) => entry.machine === id && entry.start <= time && time < entry.end,
    )?.mode;
    const powers = network.machines
      .find(({ name }) => name === id)
      ?.modes.find(({ name }) => name === (mode ?? 'idle'))?.powers;
    for (const { node, watts } of powers ?? []) if (inside.has(node)) machines += watts;
  }
  for (const { name, bed } of network.machines)
    if (run.cabinet.machines[name] === undefined && bed !== undefined && here.has(bed.node))
      others += valueAt(courseOf(record, bedPowers, name), time);
  for (const { node, watts, active, profile } of network.heatSources)
    if (here.has(node) && profile === undefined) others += watts * valueAt(courseOn(run, active), time);
  for (const path of network.paths) {
    if (here.has(path.from) === here.has(path.to)) continue;
    const flow = valueAt(massFlow(run, path.name), time);
    const [outer, inner, inward] = here.has(path.to) ? [path.from, path.to, flow] : [path.to, path.from, -flow];
    if (!(inward > 0)) continue;
    const rise = valueAt(temperatureOf(run, inner), time) - valueAt(temperatureOf(run, outer), time);
    carried += inward * network.constants.heatCapacity * rise;
  }
  return { beds, machines, others, carried };
}

/** Steps that tell a bay's warmth at one moment. */
export function balanceSteps(run: DayRun, bay: string, time: number): Step[] {
  const { beds, machines, others, carried } = balanceAt(run, bay, time);
  const ids = machinesIn(run.cabinet, bay);
  return [
    {
      text: `room at ${formatClock(time)}`,
      value: valueAt(temperatureOf(run, 'room'), time),
      unit: 'temperature',
      inputs: ['room.temperature', 'room.heatLoss', 'room.heatCapacity'],
    },
    {
      text: 'heat of the beds in this bay then: what they lose at the air’s temperature, or full power while heating',
      value: beds,
      unit: 'power',
      formula: 'bed power = convection + radiation + underside at its set-point',
      inputs: [...ids.map((id) => `machines.${id}.bed.powerMax`), 'factors.bedLoss'],
    },
    {
      text: 'heat of nozzles, motors, electronics and supplies in this bay then',
      value: machines,
      unit: 'power',
      inputs: ids.flatMap((id) => [`machines.${id}.hotEnd`, `machines.${id}.motors`, `machines.${id}.electronics`]),
    },
    ...(others > 0 ? [{ text: 'heat of lamps, fans and driers in this bay then', value: others, unit: 'power' }] : []),
    {
      text: 'carried off by the air that passes through the bay then',
      value: carried,
      unit: 'power',
      formula: 'Σ ṁ cp (T_bay − T_entering)',
      inputs: ['factors.fanFlow', 'factors.leakage'],
    },
    {
      text: 'left for boards, door and what they store',
      value: beds + machines + others - carried,
      unit: 'power',
      inputs: ['factors.insideFilm', 'factors.outsideFilm'],
    },
    ...ownValues(run),
  ];
}

/** What the file puts in place of derived quantities, where this day used it. */
function ownValues({ assembly }: DayRun): Step[] {
  const used = assembly.overridesUsed.map((path) => `overrides.${path}`);
  return used.length === 0
    ? []
    : [{ text: 'values of the file in place of what is worked out otherwise', inputs: used }];
}
