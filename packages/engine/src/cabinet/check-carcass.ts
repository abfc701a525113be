// Does the carcass make sense: boards that exist, bays inside it that do not overlap, doors and shelves that lead somewhere.

import { formatQuantity } from '../units/format.ts';
import { kindsOf } from './catalogue.ts';
import { type Check, keysOf, mustBeKnown } from './check.ts';
import { checkStanding } from './check-standing.ts';
import { quoted } from './complaint.ts';
import { RESERVED } from './places.ts';
import type { FilePath } from './source-tree.ts';
import type { BaySpec, BuildSpec, DoorSpec } from './spec.ts';

/** Ranges may meet, or miss each other by less than a hair, m. */
const HAIR = 1e-6;
const THICKEST_SHELF = 0.08;

const mm = (length: number): string => formatQuantity('length', length);

export function checkCarcass(check: Check): void {
  const { cabinet, machines = {}, shelves = {} } = check.spec;
  if (cabinet !== undefined) {
    checkBuild(check, ['cabinet', 'made-of'], cabinet['made-of']);
    for (const [name, face] of Object.entries(cabinet.faces ?? {}))
      checkBuild(check, ['cabinet', 'faces', name, 'made-of'], face?.['made-of']);
    checkDoors(check);
    checkRoomHoldsCabinet(check);
  }
  for (const [id, shelf] of Object.entries(shelves)) checkBuild(check, ['shelves', id, 'made-of'], shelf['made-of']);
  for (const [id, machine] of Object.entries(machines))
    checkBuild(check, ['machines', id, 'chamber', 'made-of'], machine.chamber?.['made-of']);
  checkBays(check);
  checkShelves(check);
  checkStanding(check);
}

function checkBuild(check: Check, path: FilePath, build: BuildSpec | undefined): void {
  const known = kindsOf(check.spec.parts, 'boards');
  for (const [index, { board, length }] of (build?.layers ?? []).entries()) {
    const written = valueAt(check.tree.plain, path);
    const at = Array.isArray(written)
      ? [...path, index]
      : typeof written === 'object' && written !== null
        ? [...path, 'layers', ...(Array.isArray((written as { layers?: unknown }).layers) ? [index] : [])]
        : path;
    mustBeKnown(check, at, 'board', board, known, { at: 0, length });
  }
}

/** The place of one of several: an item of a list, or the one value that stands for a list. */
export function itemPath(check: Check, path: FilePath, index: number): FilePath {
  return Array.isArray(valueAt(check.tree.plain, path)) ? [...path, index] : path;
}

function valueAt(plain: unknown, path: FilePath): unknown {
  let value = plain;
  for (const segment of path)
    value = typeof value === 'object' && value !== null ? (value as Record<string | number, unknown>)[segment] : value;
  return value;
}

function checkDoors(check: Check): void {
  const { cabinet } = check.spec;
  const bays = bayIds(check);
  const doors: [string, DoorSpec, FilePath][] = Object.entries(cabinet?.doors ?? {}).map(([id, door]) => [
    id,
    door,
    ['cabinet', 'doors', id],
  ]);
  if (cabinet?.door !== undefined) {
    if (cabinet.doors !== undefined && Object.hasOwn(cabinet.doors, 'door')) {
      check.say(
        ['cabinet', 'doors', 'door'],
        {
          code: 'door-twice',
          what: 'there is a "door" already, in the line door:',
          allowed: 'one door of that name',
          mend: 'give this door another id',
        },
        { key: true },
      );
    }
    doors.unshift(['door', cabinet.door, ['cabinet', 'door']]);
  }
  const covered = new Map<string, string>();
  for (const [id, door, path] of doors) {
    checkBuild(
      check,
      valueAt(check.tree.plain, [...path, 'made-of']) === valueAt(check.tree.plain, path) ? path : [...path, 'made-of'],
      door['made-of'],
    );
    if (door.seal !== undefined)
      mustBeKnown(check, [...path, 'seal'], 'seal', door.seal, kindsOf(check.spec.parts, 'seals'));
    for (const [index, bay] of (door.bays ?? bays).entries()) {
      if (door.bays !== undefined && !mustBeKnown(check, itemPath(check, [...path, 'bays'], index), 'bay', bay, bays))
        continue;
      const place = `${door.face ?? 'front'} of ${bay}`;
      const other = covered.get(place);
      if (other !== undefined) {
        check.say(
          path,
          {
            code: 'door-twice',
            what: `${quoted(id)} and ${quoted(other)} both close the ${place}`,
            allowed: 'one door for each face of a bay',
            mend: 'say with bays: which bays each door opens',
          },
          { key: true },
        );
        break;
      }
      covered.set(place, id);
    }
  }
}

export function bayIds(check: Check): readonly string[] {
  return check.tree.plain['bays'] === undefined ? ['inside'] : check.ids('bays');
}

function checkBays(check: Check): void {
  const { bays, cabinet } = check.spec;
  if (check.tree.plain['bays'] !== undefined && check.ids('bays').length === 0) {
    check.say(
      ['bays'],
      {
        code: 'bays-none',
        what: 'there is no bay in it',
        allowed: 'at least one bay',
        mend: 'take the key out: the cabinet is then one bay',
      },
      { key: true },
    );
  }
  const [width, , height] = cabinet?.inside ?? [];
  for (const [id, bay] of Object.entries(bays ?? {})) {
    if (RESERVED.includes(id)) {
      check.say(
        ['bays', id],
        {
          code: 'id-wrong',
          what: `${quoted(id)} already means something else`,
          allowed: 'any other id',
          mend: 'call the bay by where it is, such as lower',
        },
        { key: true },
      );
    }
    for (const [axis, end] of [
      ['x', width],
      ['z', height],
    ] as const) {
      const range = bay[axis];
      if (range === undefined || end === undefined || (range[0] >= -HAIR && range[1] <= end + HAIR)) continue;
      check.say(['bays', id, axis], {
        code: 'bay-outside',
        what: `it reaches ${range[0] < -HAIR ? `below 0` : `to ${mm(range[1])}, but the inside ends at ${mm(end)}`}`,
        allowed: `from 0 mm to ${mm(end)}, the inside ${axis === 'x' ? 'width' : 'height'} of the cabinet`,
        mend: range[0] < -HAIR ? 'begin it at 0 mm' : `end it at ${mm(end)}, or make the inside larger`,
      });
    }
  }
  const all = Object.entries(bays ?? {});
  for (const [index, [id, bay]] of all.entries()) {
    for (const [other, its] of all.slice(0, index)) {
      if (unread(check, id, bay) || unread(check, other, its)) continue;
      if (gap(bay, its, 'x', width) > -HAIR || gap(bay, its, 'z', height) > -HAIR) continue;
      const axis = bay.z === undefined && bay.x !== undefined ? 'x' : 'z';
      check.say(
        bay[axis] === undefined ? ['bays', id] : ['bays', id, axis],
        {
          code: 'bays-overlap',
          what: `${quoted(id)} and ${quoted(other)} overlap by ${mm(-Math.max(gap(bay, its, 'x', width), gap(bay, its, 'z', height)))}`,
          allowed: 'bays side by side or one above another',
          mend: 'let one end where the other begins',
        },
        bay[axis] === undefined ? { key: true } : {},
      );
    }
  }
}

/** A range that stands in the text but could not be read: nothing can be said about where the bay lies. */
function unread(check: Check, id: string, bay: BaySpec): boolean {
  const written = valueAt(check.tree.plain, ['bays', id]);
  return (['x', 'z'] as const).some((axis) => bay[axis] === undefined && keysOf(written).includes(axis));
}

function gap(a: BaySpec, b: BaySpec, axis: 'x' | 'z', end = Infinity): number {
  const [from, to] = a[axis] ?? [0, end];
  const [otherFrom, otherTo] = b[axis] ?? [0, end];
  return Math.max(from, otherFrom) - Math.min(to, otherTo);
}

function checkShelves(check: Check): void {
  const bays = check.ids('bays');
  const seen = new Map<string, string>();
  for (const [id, { between }] of Object.entries(check.spec.shelves ?? {})) {
    const path: FilePath = ['shelves', id, 'between'];
    const known = between.map((bay, index) => mustBeKnown(check, [...path, index], 'bay', bay, bays));
    if (between.length !== 2 || between[0] === between[1]) {
      check.say(
        path,
        {
          code: 'shelf-wrong',
          what: `it lies between ${between.length === 2 ? 'a bay and itself' : `${between.length} ${between.length === 1 ? 'bay' : 'bays'}`}`,
          allowed: 'two different bays',
          mend: 'name the bay on either side',
        },
        { key: true },
      );
      continue;
    }
    if (known.includes(false)) continue;
    const [a, b] = between as [string, string];
    const key = a < b ? `${a}/${b}` : `${b}/${a}`;
    const other = seen.get(key);
    if (other !== undefined) {
      check.say(
        path,
        {
          code: 'shelf-twice',
          what: `${quoted(other)} already lies between ${quoted(a)} and ${quoted(b)}`,
          allowed: 'one shelf between two bays',
          mend: 'leave one of them',
        },
        { key: true },
      );
    }
    seen.set(key, id);
    const one = check.spec.bays?.[a];
    const its = check.spec.bays?.[b];
    const { cabinet } = check.spec;
    if (one === undefined || its === undefined || cabinet === undefined) continue;
    const [x, z] = [gap(one, its, 'x', cabinet.inside[0]), gap(one, its, 'z', cabinet.inside[2])];
    if (Math.min(x, z) < -HAIR && Math.max(x, z) <= THICKEST_SHELF) continue;
    check.say(
      path,
      {
        code: 'shelf-wrong',
        what: `${quoted(a)} and ${quoted(b)} do not meet`,
        allowed: `two bays with at most ${mm(THICKEST_SHELF)} between them`,
        mend: 'check the z and x of the two bays',
      },
      { key: true },
    );
  }
}

function checkRoomHoldsCabinet(check: Check): void {
  const { room, cabinet } = check.spec;
  const names = ['width', 'depth', 'height'];
  for (const [axis, length] of (room?.size ?? []).entries()) {
    const inside = cabinet!.inside[axis]!;
    const fits = axis === 2 ? inside < length : inside < Math.max(room!.size![0]!, room!.size![1]!);
    if (fits) continue;
    check.say(['room', 'size'], {
      code: 'room-too-small',
      what: `the ${names[axis]} of the cabinet's inside is ${mm(inside)}, more than the room has`,
      allowed: 'a room in which the cabinet can stand',
      mend: 'check the units of room size and cabinet inside',
    });
    return;
  }
}
