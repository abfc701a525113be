// What a machine does in a fault that its day tells of: a bed that heats on whatever is asked of it, hours without power.

import type { Day, Job, Machine } from '../cabinet/cabinet.ts';
import type { MachineMode, ScheduleEntry, When } from './network.ts';

/** Names of modes that no job can have: ids hold no dots. */
const WITHOUT_POWER = 'fault.without-power';
const BED_STUCK = 'fault.bed-stuck';
/** A temperature that no bed comes to, K: asked for it, the bed heats at full power. */
const NEVER_REACHED = 2000;

/** While the machine prints: in any mode but idle, unless its day has modes that are no print. */
export function printingOf(machine: string, { jobs, powerCut }: Day): When {
  const own = Object.entries(jobs).filter(([, job]) => job.machine === machine);
  const plain = powerCut === undefined && !own.some(([, { bedStuck }]) => bedStuck === true);
  return plain ? { machine } : { machine, modes: own.map(([name]) => name) };
}

/** From when on the bed of a machine heats without being asked, s. */
export function stuckFrom(machine: string, { jobs }: Day): number | undefined {
  const starts = Object.values(jobs).flatMap((job) =>
    job.machine === machine && job.bedStuck === true ? [job.start] : [],
  );
  return starts.length === 0 ? undefined : Math.min(...starts);
}

export function withStuckBed(mode: MachineMode, stuck: number | undefined, job: Job): MachineMode {
  return stuck === undefined || job.start < stuck ? mode : { ...mode, bedSet: NEVER_REACHED };
}

export interface FaultModes {
  readonly stuck: number | undefined;
  readonly modes: readonly MachineMode[];
  readonly schedule: readonly ScheduleEntry[];
}

/** Modes and hours in which a machine does not print, but is not at rest either. */
export function faultModes(id: string, { standby }: Machine, day: Day, electronicsHeat: string): FaultModes {
  const stuck = stuckFrom(id, day);
  const own = Object.values(day.jobs).filter(({ machine }) => machine === id);
  const busy = own.map(({ start, duration }) => [start, start + duration] as const);
  const cut = day.powerCut === undefined ? [] : [day.powerCut];
  const schedule: ScheduleEntry[] = cut.map(([start, end]) => ({ machine: id, mode: WITHOUT_POWER, start, end }));
  if (stuck !== undefined)
    schedule.push(
      ...gapsBetween([...busy, ...cut], stuck, day.length).map(([start, end]) => ({
        machine: id,
        mode: BED_STUCK,
        start,
        end,
      })),
    );
  return {
    stuck,
    schedule,
    modes: [
      ...(cut.length === 0 ? [] : [{ name: WITHOUT_POWER, powers: [], emissions: [] }]),
      ...(stuck === undefined
        ? []
        : [
            {
              name: BED_STUCK,
              bedSet: NEVER_REACHED,
              powers: [{ node: electronicsHeat, watts: standby }],
              emissions: [],
            },
          ]),
    ],
  };
}

/** What is left of a stretch between stretches that are taken. */
function gapsBetween(
  taken: readonly (readonly [number, number])[],
  from: number,
  to: number,
): (readonly [number, number])[] {
  const gaps: (readonly [number, number])[] = [];
  let here = from;
  for (const [start, end] of [...taken].sort((a, b) => a[0] - b[0])) {
    if (start > here) gaps.push([here, Math.min(start, to)]);
    here = Math.max(here, end);
  }
  if (here < to) gaps.push([here, to]);
  return gaps;
}
