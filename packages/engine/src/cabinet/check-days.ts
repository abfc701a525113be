// Machines, materials, days and their jobs; overrides, limits and prices.

import { formatClock, formatDuration } from '../units/format.ts';
import { isFault, parseQuantity } from '../units/quantity.ts';
import { kindOf } from '../units/unit-table.ts';
import { kindsOf, partGroups } from './catalogue.ts';
import { type Check, keysOf, knownOnes, mustBeKnown } from './check.ts';
import { checkCurve, mustNameBay } from './check-air.ts';
import { bayIds } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import { splitPath } from './edit-path.ts';
import { limitKinds } from './limits.ts';
import { nearest } from './nearest.ts';
import { findOverride, overrideRegistry } from './overrides.ts';
import { oneOf } from './shape.ts';
import type { FilePath } from './source-tree.ts';
import type { DaySpec, JobSpec } from './spec.ts';

const DAY = 86_400;

/** Stands in the ids of findings for what no day changes. */
export const NO_DAY = 'standing';

export function checkMachines(check: Check): void {
  const { machines = {}, materials = {}, parts } = check.spec;
  for (const [id, machine] of Object.entries(machines)) {
    const path: FilePath = ['machines', id];
    mustBeKnown(check, [...path, 'kind'], 'kind of machine', machine.kind, kindsOf(parts, 'machines'));
    mustNameBay(check, path, machine.bay);
  }
  for (const [id, { like }] of Object.entries(materials)) {
    const known = kindsOf(parts, 'materials');
    if (like !== undefined) mustBeKnown(check, ['materials', id, 'like'], 'material', like, known);
    else if (!known.includes(id)) {
      check.say(
        ['materials', id],
        {
          code: 'key-missing',
          what: `${quoted(id)} is not in the catalogue, and it does not say what it is like`,
          allowed: `like: ${oneOf(known)}`,
          mend: 'add like: and the material that it resembles most',
        },
        { key: true },
      );
    }
  }
  for (const [id, { curve }] of Object.entries(parts?.fans ?? {})) {
    if (curve !== undefined) checkCurve(check, ['parts', 'fans', id, 'curve'], curve);
  }
}

export function checkDays(check: Check): void {
  const { days } = check.spec;
  if (days !== undefined && check.ids('days').length === 0) {
    check.say(
      ['days'],
      {
        code: 'days-none',
        what: 'there is no day in it',
        allowed: 'at least one day',
        mend: 'add usual: with the jobs of a usual day',
      },
      { key: true },
    );
  }
  if (days?.[NO_DAY] !== undefined) {
    check.say(
      ['days', NO_DAY],
      {
        code: 'id-taken',
        what: `a day cannot be called ${quoted(NO_DAY)}: findings that no day changes are called so`,
        allowed: 'any other id',
        mend: 'give the day another id',
      },
      { key: true },
    );
  }
  for (const [id, day] of Object.entries(days ?? {})) checkDay(check, ['days', id], day);
}

function checkDay(check: Check, path: FilePath, day: DaySpec): void {
  const length = day.length?.value ?? DAY;
  const machines = check.ids('machines');
  const materials = [...check.ids('materials'), ...kindsOf(check.spec.parts, 'materials')];
  const busy = new Map<string, { id: string; start: number; end: number }[]>();
  for (const [id, job] of Object.entries(day.jobs ?? {})) {
    const at: FilePath = [...path, 'jobs', id];
    mustBeKnown(check, [...at, 'material'], 'material', job.material, materials);
    if (job.machine !== undefined && !mustBeKnown(check, [...at, 'machine'], 'machine', job.machine, machines))
      continue;
    if (job.machine === undefined && machines.length !== 1) {
      check.say(
        at,
        {
          code: 'key-missing',
          what: `there is no "machine" in ${quoted(at.join('.'))}, and there are ${machines.length} machines`,
          allowed: machines.length === 0 ? 'a machine, but there is none' : oneOf(machines),
          mend: machines.length === 0 ? 'add the machine first' : 'add machine: and the one that prints it',
        },
        { key: true },
      );
      continue;
    }
    checkEnd(check, at, job.start, job.for.value, length, 'for', 'start');
    clash(check, at, id, job, busy, job.machine ?? machines[0]!);
  }
  const doors = [...(check.spec.cabinet?.door === undefined ? [] : ['door']), ...keysOf(check.spec.cabinet?.doors)];
  const written = check.tree.plain['cabinet'];
  const allDoors = [
    ...new Set([
      ...doors,
      ...keysOf((written as { doors?: unknown } | undefined)?.doors),
      ...(keysOf(written).includes('door') ? ['door'] : []),
    ]),
  ];
  for (const [index, opening] of (day.doors ?? []).entries()) {
    const at: FilePath = [...path, 'doors', index];
    if (opening.door !== undefined) mustBeKnown(check, [...at, 'door'], 'door', opening.door, allDoors);
    else if (allDoors.length !== 1) {
      check.say(at, {
        code: 'key-missing',
        what: `it does not say which door, and there are ${allDoors.length}`,
        allowed: allDoors.length === 0 ? 'a door, but the cabinet has none' : oneOf(allDoors),
        mend: allDoors.length === 0 ? 'add the door to the cabinet' : 'add door: and its id',
      });
    }
    checkEnd(check, at, opening.at, opening.for.value, length, 'for', 'at');
  }
}

function checkEnd(
  check: Check,
  path: FilePath,
  start: number,
  duration: number,
  length: number,
  lasts: string,
  begins: string,
): void {
  if (start >= length) {
    check.say([...path, begins], {
      code: 'beyond-the-day',
      what: `it begins at ${formatClock(start)}, when the day of ${formatDuration(length)} is over`,
      allowed: `from 0:00 to ${formatClock(length)}`,
      mend: 'begin it earlier, or give the day a longer length:',
    });
  } else if (start + duration > length) {
    check.say([...path, lasts], {
      code: 'beyond-the-day',
      what: `it ends at ${formatClock(start + duration)}, after the day of ${formatDuration(length)}`,
      allowed: `at most ${formatDuration(length - start)} from ${formatClock(start)} on`,
      mend: `give the day length: ${formatDuration(Math.ceil((start + duration) / DAY) * DAY)}, or split the job`,
    });
  }
}

function clash(
  check: Check,
  path: FilePath,
  id: string,
  job: JobSpec,
  busy: Map<string, { id: string; start: number; end: number }[]>,
  machine: string,
): void {
  const end = job.start + job.for.value;
  const others = busy.get(machine) ?? [];
  const other = others.find((known) => job.start < known.end && known.start < end);
  if (other !== undefined) {
    check.say([...path, 'start'], {
      code: 'jobs-clash',
      what: `${quoted(machine)} still prints ${quoted(other.id)}, from ${formatClock(other.start)} to ${formatClock(other.end)}`,
      allowed: 'one job at a time on a machine',
      mend: `start it at ${formatClock(other.end)}, or on another machine`,
    });
  }
  busy.set(machine, [...others, { id, start: job.start, end }]);
}

export function checkRegistries(check: Check): void {
  const { overrides = {}, limits = {}, prices = {}, currency, options = {} } = check.spec;
  for (const [path, written] of Object.entries(overrides)) checkOverride(check, path, written);
  for (const [id, written] of Object.entries(limits)) {
    const at: FilePath = ['limits', id];
    const kind = Object.hasOwn(limitKinds, id) ? limitKinds[id] : undefined;
    if (kind === undefined) unknownKey(check, at, 'limit', id, Object.keys(limitKinds));
    else checkQuantity(check, at, kind, written);
  }
  const kinds = partGroups.flatMap((group) => kindsOf(check.spec.parts, group));
  const money = currency ?? 'EUR';
  if (!/^[A-Z]{3}$/.test(money)) {
    check.say(['currency'], {
      code: 'currency-wrong',
      what: `${quoted(money)} is no currency`,
      allowed: 'three capital letters, such as EUR',
      mend: 'write the three letters of the currency',
    });
  }
  for (const [kind, price] of Object.entries(prices)) {
    const at: FilePath = ['prices', kind];
    if (!kinds.includes(kind)) unknownKey(check, at, 'kind of part', kind, kinds);
    if (price.currency !== money) {
      check.say(at, {
        code: 'currency-wrong',
        what: `it is in ${price.currency}, but the file reckons in ${money}`,
        allowed: `an amount in ${money}`,
        mend: `convert it, or write currency: ${price.currency} at the top`,
      });
    }
  }
  for (const id of Object.keys(options)) {
    if (id === 'base')
      check.say(
        ['options', id],
        {
          code: 'id-wrong',
          what: '"base" means the file without options',
          allowed: 'any other id',
          mend: 'give the option another id',
        },
        { key: true },
      );
  }
}

function checkOverride(check: Check, name: string, written: string | number): void {
  const at: FilePath = ['overrides', name];
  const segments = splitPath(name);
  const found = segments === undefined ? undefined : findOverride(segments);
  if (found === undefined) {
    unknownKey(
      check,
      at,
      'override',
      name,
      overrideRegistry.map((override) => override.path),
    );
    return;
  }
  const known: Readonly<Record<string, readonly string[]>> = {
    faces: ['front', 'back', 'left', 'right', 'top', 'bottom'],
    doors: [...(check.spec.cabinet?.door === undefined ? [] : ['door']), ...keysOf(check.spec.cabinet?.doors)],
    shelves: shelfIds(check),
    bays: bayIds(check),
    machines: check.ids('machines'),
    air: check.ids('air'),
  };
  const section = segments![0]!;
  for (const id of found.ids) {
    if (!(known[section] ?? []).includes(id))
      unknownKey(
        check,
        at,
        section === 'shelves' ? 'shelf' : section === 'air' ? 'air path' : section.slice(0, -1),
        id,
        known[section] ?? [],
      );
  }
  const path = check.spec.air?.[found.ids[0] ?? ''];
  if (
    found.override.path === 'air.*.effective-area' &&
    path !== undefined &&
    path.hole === undefined &&
    !(path.parts ?? []).some(({ part }) => part === 'hole')
  ) {
    check.say(
      at,
      {
        code: 'override-idle',
        what: `${quoted(found.ids[0]!)} has no hole whose area this could replace`,
        allowed: 'an air path with hole:, or a hole among its parts',
        mend: 'add the hole to the path',
      },
      { key: true },
    );
  }
  checkQuantity(check, at, found.override.kind, written);
}

/** Shelves that the file names, and the boards between bays that it does not. */
function shelfIds(check: Check): readonly string[] {
  const bays = bayIds(check);
  const pairs = bays.flatMap((a, index) => bays.slice(index + 1).map((b) => `${a}-${b}`));
  return [...check.ids('shelves'), ...pairs];
}

function checkQuantity(
  check: Check,
  path: FilePath,
  kind: Parameters<typeof kindOf>[0],
  written: string | number,
): void {
  const read = parseQuantity(kind, String(written));
  if (isFault(read)) {
    const { at, length, ...fault } = read;
    check.say(path, fault, { at, length });
  } else if (read.value < 0 && kind !== 'temperature-difference' && kind !== 'sound-level') {
    check.say(path, {
      code: 'value-out-of-bounds',
      what: `${quoted(String(written))} is below 0`,
      allowed: `${kindOf(kind).called} of 0 or more`,
      mend: 'check the number',
    });
  }
}

function unknownKey(check: Check, path: FilePath, what: string, wanted: string, known: readonly string[]): void {
  const guess = nearest(wanted, known);
  check.say(
    path,
    {
      code: `${what.replaceAll(' ', '-')}-unknown`,
      what: `there is no ${what} ${quoted(wanted)}`,
      allowed: knownOnes(what, wanted, known),
      mend: guess === undefined ? 'name one of these' : `did you mean ${quoted(guess)}?`,
    },
    { key: true },
  );
}
