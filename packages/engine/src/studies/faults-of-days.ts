// Faults of doors, beds, power and room, each in every day of the file that is asked about.

import type { Cabinet, Day, Door, Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import { type Fault, faultId } from './fault.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
/** Judgement: a seal that no longer meets its frame; a door that was not latched. Mean gaps all round. */
const WORN_SEAL = 3;
const AJAR = 10;
const CUT = 2 * HOUR;
const HOT_ROOM = 35;
/** An unheated room follows outdoors: this much warmer than its mean, and never below freezing. */
const UNHEATED_RISE = 3;
const COLDEST_ROOM = 2;

/** Hours and minutes as the file writes them; hours beyond 24 are the next day. */
const clock = (seconds: number): string =>
  `${Math.floor(seconds / HOUR)}:${String(Math.floor((seconds % HOUR) / 60)).padStart(2, '0')}`;

const everyDay = (
  days: Readonly<Record<string, Day>>,
  of: (day: Day, id: string) => Readonly<Record<string, unknown>>,
): Edit => ({
  set: Object.fromEntries(
    Object.entries(days).flatMap(([id, day]) =>
      Object.entries(of(day, id)).map(([key, value]) => [`${joinPath(['days', id])}.${key}`, value]),
    ),
  ),
});

const firstStart = ({ jobs }: Day): number => Math.min(9 * HOUR, ...Object.values(jobs).map(({ start }) => start));

export function faultsOfDoors({ doors, days }: Pick<Cabinet, 'doors' | 'days'>): Fault[] {
  return Object.entries(doors).flatMap(([id, door]): Fault[] => [
    ...gap('seal worn', id, door, WORN_SEAL, `the seal of ${id} is worn: ${WORN_SEAL} mm are left all round`),
    ...gap('door ajar', id, door, AJAR, `${id} is not latched: it stands ${AJAR} mm ajar`),
    {
      id: faultId('door left open', id),
      kind: 'door left open',
      part: id,
      says: `${id} is left open from the first print on`,
      edits: [
        everyDay(days, (day) => {
          const at = Math.floor(Math.min(firstStart(day), day.length - 60) / 60) * 60;
          const others = day.doorOpenings.filter((opening) => opening.door !== id);
          const lasts = Math.floor(Math.min(DAY, day.length - at) / 60);
          return {
            doors: [
              ...others.map(({ door: other, start, duration }) => ({
                door: other,
                at: clock(start),
                for: `${duration} s`,
              })),
              { door: id, at: clock(at), for: `${lasts} min` },
            ],
          };
        }),
      ],
    },
  ]);
}

/** The one door may be written as its leaf alone: then its whole map is put in. */
function gap(
  kind: 'seal worn' | 'door ajar',
  id: string,
  { build, sealGap, sealDepth }: Door,
  width: number,
  says: string,
): Fault[] {
  if (sealGap >= width / 1000) return [];
  const path = id === 'door' ? ['cabinet', 'door'] : ['cabinet', 'doors', id];
  const leaf = build.layers
    .filter(({ lining }) => lining !== true)
    .map(({ material, thickness }) => `${material} ${Math.round(1e4 * thickness) / 10} mm`);
  const whole = { 'made-of': leaf, 'seal-gap': `${width} mm`, 'seal-depth': `${Math.round(1e4 * sealDepth) / 10} mm` };
  return [
    {
      id: faultId(kind, id),
      kind,
      part: id,
      says,
      edits: [{ set: { [joinPath([...path, 'seal-gap'])]: `${width} mm` } }],
      otherwise: [{ set: { [joinPath(path)]: whole } }],
    },
  ];
}

export function faultsOfMachines({ machines, days }: Pick<Cabinet, 'machines' | 'days'>): Fault[] {
  return Object.keys(machines).flatMap((id): Fault[] => {
    const stuck = everyDay(days, ({ jobs }) => {
      const [first] = Object.entries(jobs)
        .filter(([, job]) => job.machine === id)
        .sort((a, b) => a[1].start - b[1].start);
      return first === undefined ? {} : { [`${joinPath(['jobs', first[0]])}.bed-stuck`]: 'yes' };
    });
    const bed: Fault = {
      id: faultId('bed stuck on', id),
      kind: 'bed stuck on',
      part: id,
      says: `the bed of ${id} heats at full power from its first print on`,
      edits: [stuck],
    };
    const heater = machines[id]!.chamber?.heater ?? 0;
    const chamber: Fault = {
      id: faultId('heater stuck on', id),
      kind: 'heater stuck on',
      part: id,
      says: `the heater in the chamber of ${id} heats at full power while it prints`,
      edits: [{ set: { [joinPath(['machines', id, 'chamber', 'heater-set'])]: '200 °C' } }],
    };
    return [...(Object.keys(stuck.set ?? {}).length > 0 ? [bed] : []), ...(heater > 0 ? [chamber] : [])];
  });
}

/** Faults of what surrounds the cabinet. */
export function faultsAround({ days, room, outdoors }: Pick<Cabinet, 'days' | 'room' | 'outdoors'>): Fault[] {
  const mean = (course: Day['roomTemperature'] & object): number =>
    course.reduce((sum, [, value]) => sum + value, 0) / course.length - 273.15;
  const cut = everyDay(days, (day) => {
    const start = middleOfFirst(day);
    return start === undefined ? {} : { 'power-cut': `${clock(start)} to ${clock((start + CUT) % DAY)}` };
  });
  const cold = everyDay(days, (day) => {
    const left = Math.max(mean(day.outdoorTemperature ?? outdoors.temperature) + UNHEATED_RISE, COLDEST_ROOM);
    return left < mean(day.roomTemperature ?? room.temperature) - UNHEATED_RISE
      ? { 'room-temperature': `${Math.round(left)} °C` }
      : {};
  });
  const hot = everyDay(days, () => ({ 'room-temperature': `${HOT_ROOM} °C` }));
  const some = ({ set = {} }: Edit): boolean => Object.keys(set).length > 0;
  const faults: Fault[] = [
    {
      id: 'power cut',
      kind: 'power cut',
      says: 'the power fails for two hours in the middle of the first print, and comes back',
      edits: [cut],
    },
    {
      id: 'room unheated',
      kind: 'room unheated',
      says: `the heating of the room fails: it is ${UNHEATED_RISE} K warmer than outdoors`,
      edits: [cold],
    },
    { id: 'room hot', kind: 'room hot', says: `the room is at ${HOT_ROOM} °C`, edits: [hot] },
  ];
  return faults.filter(({ edits: [edit] }) => some(edit!));
}

/** Half way through the day's first print, to five minutes; a cut is written with times of one day. */
function middleOfFirst({ jobs }: Day): number | undefined {
  const [first] = Object.values(jobs).sort((a, b) => a.start - b.start);
  if (first === undefined) return undefined;
  const middle = Math.floor((first.start + first.duration / 2) / 300) * 300;
  return middle < DAY ? middle : Math.ceil(first.start / 300) * 300;
}
