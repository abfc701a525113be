// Reads the maps of a network file: finds keys under any of their spellings, and complains of what is missing or unknown.

import { isMap, isScalar, type Node, type Pair } from 'yaml';
import { quoted } from '../cabinet/complaint.ts';
import { nearest } from '../cabinet/nearest.ts';
import { documentedName, type FileKey, type FileKeys, type Spelling, spellingOf } from './file-key.ts';
import {
  type Bounds,
  complain,
  nameOf,
  type Reading,
  readChoice,
  readList,
  readNumber,
  readText,
  scalarOf,
  shownNode,
} from './file-value.ts';

/** A map of the file opened with the keys that it may have. After a complaint its values stand for nothing, and the file is not used. */
export interface FileMap<Name extends string> {
  readonly node: Node;
  readonly has: (name: Name) => boolean;
  readonly at: (name: Name) => Node | undefined;
  /** What one written unit of this key is in SI. */
  readonly scaleOf: (name: Name) => number;
  readonly number: (name: Name, bounds?: Bounds, otherwise?: number) => number;
  readonly text: (name: Name, otherwise?: string) => string;
  readonly choice: <Choice extends string>(name: Name, choices: readonly Choice[], otherwise?: Choice) => Choice;
  readonly flag: (name: Name, otherwise: boolean) => boolean;
  /** The items of a list; a single map counts as a list of one where `one` is set. */
  readonly list: (name: Name, single?: 'single') => readonly Node[];
}

/** Opens a map that may have these keys; keys that it may not have are complained of at once. */
export function openMap<Name extends string>(
  reading: Reading,
  node: Node,
  kind: string,
  keys: FileKeys<Name>,
): FileMap<Name> {
  const found = new Map<Name, { value: Node; key: Node; spelling: Spelling }>();
  const target = reading.document.resolve(node);
  if (isMap(target)) {
    for (const pair of target.items) sort(reading, kind, keys, pair as Pair<Node, Node | null>, found);
  } else {
    complain(
      reading,
      node,
      'not-a-map',
      `${kind} is ${shownNode(reading, node)}`,
      example(keys),
      `write ${kind} as a map`,
    );
  }
  const at = (name: Name): Node | undefined => found.get(name)?.value;
  const missing = (name: Name): void => {
    if (!isMap(target)) return;
    const key = documentedName(keys[name]);
    complain(reading, node, 'key-missing', `${kind} has no ${key}`, `the keys ${listed(keys)}`, `add ${key}`);
  };
  return {
    node,
    has: (name) => found.has(name),
    scaleOf: (name) => found.get(name)?.spelling.scale ?? 1,
    at,
    number(name, bounds = {}, otherwise) {
      const entry = found.get(name);
      if (entry !== undefined) return readNumber(reading, entry.value, nameOf(entry.key), bounds, entry.spelling);
      if (otherwise === undefined) missing(name);
      return otherwise ?? Number.NaN;
    },
    text(name, otherwise) {
      const entry = found.get(name);
      if (entry !== undefined) return readText(reading, entry.value, nameOf(entry.key));
      if (otherwise === undefined) missing(name);
      return otherwise ?? '';
    },
    choice(name, choices, otherwise) {
      const entry = found.get(name);
      if (entry !== undefined) return readChoice(reading, entry.value, nameOf(entry.key), choices);
      if (otherwise === undefined) missing(name);
      return otherwise ?? choices[0]!;
    },
    flag(name, otherwise) {
      const value = at(name);
      if (value === undefined) return otherwise;
      const written = scalarOf(reading, value);
      if (written === true || written === 'on' || written === 'yes') return true;
      if (written === false || written === 'off' || written === 'no') return false;
      complain(
        reading,
        value,
        'not-a-choice',
        `${shownNode(reading, value)} is neither`,
        'true or false',
        'write one of the two',
      );
      return otherwise;
    },
    list(name, single) {
      const value = at(name);
      return value === undefined ? [] : readList(reading, value, documentedName(keys[name]), single);
    },
  };
}

/** Notes and keys that begin with _ belong to the person. */
const personal = /^_|^(note|notes|comment|description)$/;

function sort<Name extends string>(
  reading: Reading,
  kind: string,
  keys: FileKeys<Name>,
  { key, value }: Pair<Node, Node | null>,
  found: Map<Name, { value: Node; key: Node; spelling: Spelling }>,
): void {
  const written = nameOf(key);
  if (personal.test(written)) return;
  for (const name of Object.keys(keys) as Name[]) {
    const spelling = spellingOf(keys[name], written);
    if (spelling === undefined) continue;
    if (found.has(name)) {
      const other = nameOf(found.get(name)!.key);
      complain(
        reading,
        key,
        'key-twice',
        `${quoted(written)} says the same as ${quoted(other)}`,
        'one of the two',
        `take out ${written} or ${other}`,
      );
    } else if (value === null || (isScalar(value) && value.value === null)) {
      complain(
        reading,
        key,
        'value-missing',
        `${quoted(written)} has no value`,
        `a value for ${written}`,
        `write a value or take ${written} out`,
      );
      found.set(name, { value: key, key, spelling });
    } else found.set(name, { value, key, spelling });
    return;
  }
  const guess = nearest(
    written,
    Object.values<FileKey>(keys).flatMap((all) => all.flatMap(({ exact }) => exact)),
  );
  const mend =
    guess === undefined ? 'take it out, or begin it with _ if it is a note of your own' : `did you mean ${guess}?`;
  complain(reading, key, 'key-unknown', `${kind} has no key ${quoted(written)}`, `the keys ${listed(keys)}`, mend);
}

function listed(keys: FileKeys): string {
  return Object.values(keys).map(documentedName).join(', ');
}

function example(keys: FileKeys): string {
  return `a map with the keys ${listed(keys)}`;
}
