// When something is on, and how something changes with time, as a network file writes them.

import type { Node } from 'yaml';
import { quoted } from '../cabinet/complaint.ts';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { referred } from './file-names.ts';
import { type Bounds, complain, isTextNode, type Reading, readList, readNumber, readText } from './file-value.ts';
import type { Profile, When } from './network.ts';

/** The `When` under a key; always when the key is absent. */
export function whenAt<Key extends string>(reading: Reading, map: FileMap<Key>, key: Key): When {
  const node = map.at(key);
  return node === undefined ? 'always' : readWhen(reading, node);
}

/** `always`, `never`, or a map with one key: windows, thermostat, machine (and modes), any_of, all_of, not. */
export function readWhen(reading: Reading, node: Node): When {
  if (isTextNode(reading, node)) {
    const word = readText(reading, node, 'this');
    if (word === 'always') return 'always';
    if (word === 'never') return { windows: [] };
    complain(
      reading,
      node,
      'not-a-choice',
      `${quoted(word)} is no time`,
      'always, never, {windows: [[start, end]]}, {thermostat: name}, {machine: name}',
      `if ${quoted(word)} is a thermostat, write {thermostat: ${word}}`,
    );
    return 'always';
  }
  const map = openMap(reading, node, 'this time', fileKeys.when);
  const given = (['windows', 'thermostat', 'machine', 'anyOf', 'allOf', 'not'] as const).filter((key) => map.has(key));
  if (given.length !== 1 || (map.has('modes') && given[0] !== 'machine')) {
    complain(
      reading,
      node,
      'not-one-time',
      `${given.length} of windows, thermostat, machine, any_of, all_of, not are given`,
      'exactly one of them; modes only beside machine',
      'keep one, or join them under any_of or all_of',
    );
    return 'always';
  }
  if (map.has('windows')) return { windows: readWindows(reading, map.list('windows')) };
  if (map.has('thermostat')) return { thermostat: referred(reading, map, 'thermostat', ['thermostat']) };
  if (map.has('machine')) {
    const machine = referred(reading, map, 'machine', ['machine']);
    if (!map.has('modes')) return { machine };
    const modes = map.list('modes').map((item) => {
      const mode = readText(reading, item, 'mode');
      mustExistInMachine(reading, item, machine, mode);
      return mode;
    });
    return { machine, modes };
  }
  if (map.has('anyOf')) return { anyOf: map.list('anyOf').map((item) => readWhen(reading, item)) };
  if (map.has('allOf')) return { allOf: map.list('allOf').map((item) => readWhen(reading, item)) };
  return { not: readWhen(reading, map.at('not')!) };
}

/** Asks later whether a machine has a mode; an unknown machine is complained of elsewhere. */
export function mustExistInMachine(reading: Reading, node: Node, machine: string, mode: string): void {
  reading.later.push(() => {
    if (mode !== 'idle' && reading.names.get('machine')?.has(machine)) mustHaveMode(reading, node, machine, mode);
  });
}

function mustHaveMode(reading: Reading, node: Node, machine: string, mode: string): void {
  const modes = [...(reading.names.get(`modes of ${machine}`)?.keys() ?? [])];
  if (modes.includes(mode)) return;
  complain(
    reading,
    node,
    'name-unknown',
    `${machine} has no mode ${quoted(mode)}`,
    `one of ${modes.join(', ')}, idle`,
    `name a mode of ${machine}`,
  );
}

function readWindows(reading: Reading, items: readonly Node[]): readonly (readonly [number, number])[] {
  return items.map((item) => {
    const [start, end] = readPair(reading, item, 'a window', {});
    if (end < start) {
      complain(
        reading,
        item,
        'end-before-start',
        `the window ends at ${end} before it starts at ${start}`,
        'start ≤ end, in s',
        'swap the two',
      );
    }
    return [start, end] as const;
  });
}

/** Straight lines through [time s, value], times rising; one number stands for a constant. */
export function readProfile(reading: Reading, node: Node, what: string, bounds: Bounds, shift = 0): Profile {
  let last = Number.NEGATIVE_INFINITY;
  const points = readList(reading, node, what).map((item) => {
    const [time, value] = readPair(reading, item, `a point of ${what}`, {
      ...(bounds.least === undefined ? {} : { least: bounds.least - shift }),
    });
    if (time <= last) {
      complain(
        reading,
        item,
        'times-not-rising',
        `the time ${time} follows ${last}`,
        'times that rise from point to point, in s',
        'put the points in order',
      );
    }
    last = time;
    return [time, value + shift] as const;
  });
  if (points.length === 0)
    complain(reading, node, 'list-empty', `${what} has no point`, 'at least one [time, value]', 'add a point');
  return points;
}

/** Two numbers in brackets; bounds hold for the second. */
export function readPair(reading: Reading, node: Node, what: string, bounds: Bounds): readonly [number, number] {
  const items = readList(reading, node, what);
  if (items.length !== 2) {
    complain(
      reading,
      node,
      'not-a-pair',
      `${what} has ${items.length} values`,
      'two numbers in brackets: [a, b]',
      'write two numbers',
    );
    return [Number.NaN, Number.NaN];
  }
  return [
    readNumber(reading, items[0]!, `the first of ${what}`, {}),
    readNumber(reading, items[1]!, `the second of ${what}`, bounds),
  ];
}
