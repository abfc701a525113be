// A sweep in a network file: one number of one named part takes several values, and each gives an answer of its own.

import { isMap, isSeq, type Node, Pair, Scalar, type YAMLMap } from 'yaml';
import { quoted } from '../cabinet/complaint.ts';
import { nearest } from '../cabinet/nearest.ts';
import { fileKeys } from './file-keys.ts';
import { openMap } from './file-map.ts';
import { complain, nameOf, type Reading, readList, readNumber, scalarOf } from './file-value.ts';

/** Every value is a run of its own. */
const MOST_VALUES = 1000;

export interface Sweep {
  /** The key that is swept, as `part.key`. */
  readonly what: string;
  readonly values: readonly number[];
  /** Puts one of the values into the tree; the network is read again afterwards. */
  readonly set: (value: number) => void;
}

/** Keys of the parts that a sweep may turn, for guessing at mistyped ones. */
const numberKeys: readonly string[] = [
  fileKeys.orifice,
  fileKeys.crack,
  fileKeys.fixedFlow,
  fileKeys.zone,
  fileKeys.conductance,
  fileKeys.heatSource,
].flatMap((keys) => Object.values(keys).flatMap((key) => key.flatMap(({ exact }) => exact)));

/**
 * `sweep: {path: inlet, key: area_m2, values: [...]}`, `sweep: {path: inlet, area_m2: [...]}` or
 * `sweep: {key: inlet.area_m2, values: [...]}`; without a key the area is meant. The part is found by its name in any list of the file; a dotted key goes deeper.
 */
export function readSweep(reading: Reading, node: Node): Sweep | undefined {
  const target = reading.document.resolve(node);
  const shorthand = isMap(target) ? shorthandOf(reading, target as YAMLMap<Node, Node>) : undefined;
  const keys: Partial<typeof fileKeys.sweep> & Record<string, (typeof fileKeys.sweep)['part']> =
    shorthand === undefined ? fileKeys.sweep : { ...fileKeys.sweep, shorthand: [shorthand.spelling] };
  const map = openMap(reading, node, 'the sweep', keys as typeof fileKeys.sweep);
  const written = shorthand?.key ?? map.text('key', map.has('part') ? 'area_m2' : undefined);
  const valuesNode = shorthand?.values ?? map.at('values');
  if (valuesNode === undefined) map.list('values');
  const path = written.replace(/^paths[./]/, '').split(/[./](?!\d)/);
  const part = map.has('part') ? map.text('part') : (path.shift() ?? '');
  const values = (valuesNode === undefined ? [] : readList(reading, valuesNode, 'values')).map((item) =>
    readNumber(reading, item, 'a value of the sweep', {}),
  );
  if (valuesNode !== undefined && values.length === 0) {
    complain(reading, valuesNode, 'list-empty', 'the sweep has no value', 'at least one number', 'add values');
  }
  if (valuesNode !== undefined && values.length > MOST_VALUES) {
    const what = `the sweep has ${values.length} values`;
    complain(reading, valuesNode, 'list-long', what, `at most ${MOST_VALUES} values`, 'take out some');
    return undefined;
  }
  const partNode = map.at('part') ?? map.at('key') ?? node;
  const owners = partsNamed(reading, part);
  if (owners.length === 0) {
    const guess = nearest(part, allNames(reading));
    complain(
      reading,
      partNode,
      'name-unknown',
      `there is no part ${quoted(part)}`,
      'the name of a path, zone, node or source',
      guess === undefined ? 'name a part of this file' : `did you mean ${guess}?`,
    );
    return undefined;
  }
  const places = owners.map((owner) => placeOf(reading, owner, path)).filter((place) => place !== undefined);
  const place = places[0];
  if (place === undefined) {
    const guess = nearest(path.join('.'), numberKeys);
    complain(
      reading,
      map.at('key') ?? node,
      'key-unknown',
      `${part} has no number ${quoted(path.join('.'))}`,
      'a key of that part, with a number',
      guess === undefined ? 'name a key of that part' : `did you mean ${guess}?`,
    );
    return undefined;
  }
  return { what: [part, ...path].join('.'), values, set: place };
}

/** `area_m2: [0, 0.001]` beside `path: inlet`. */
function shorthandOf(reading: Reading, map: YAMLMap<Node, Node>) {
  const known = Object.values(fileKeys.sweep).flatMap((key) => key.flatMap(({ exact }) => exact));
  for (const { key, value } of map.items) {
    const name = nameOf(key);
    if (known.includes(name) || value === null || !isSeq(reading.document.resolve(value))) continue;
    if (!numberKeys.includes(name)) continue;
    return { key: name, values: value, spelling: { unit: '', scale: 1, shift: 0, exact: [name], loose: [] } };
  }
  return undefined;
}

/** Every map with this name, in whatever list of the file. */
function partsNamed(reading: Reading, name: string): readonly YAMLMap<Node, Node>[] {
  return listItems(reading).filter((item) => ownNameOf(reading, item) === name);
}

function allNames(reading: Reading): readonly string[] {
  return listItems(reading)
    .map((item) => ownNameOf(reading, item))
    .filter((name) => name !== '');
}

function listItems(reading: Reading): readonly YAMLMap<Node, Node>[] {
  return (reading.document.root as YAMLMap<Node, Node>).items.flatMap(({ value }) => {
    const list = value === null ? null : reading.document.resolve(value);
    return isSeq(list)
      ? list.items.map((item) => reading.document.resolve(item as Node)).filter((item) => isMap(item))
      : [];
  }) as unknown as readonly YAMLMap<Node, Node>[];
}

function ownNameOf(reading: Reading, item: YAMLMap<Node, Node>): string {
  const name = item.items.find(({ key }) => nameOf(key) === 'name')?.value ?? null;
  const written = name === null ? undefined : scalarOf(reading, name);
  return typeof written === 'string' || typeof written === 'number' ? `${written}` : '';
}

/** How to put a number under a key; an area or count that the file leaves to the sweep is added. */
function placeOf(
  reading: Reading,
  owner: YAMLMap<Node, Node>,
  path: readonly string[],
): ((value: number) => void) | undefined {
  let map = owner;
  for (const step of path.slice(0, -1)) {
    const next = map.items.find(({ key }) => nameOf(key) === step)?.value ?? null;
    const inner = next === null ? null : reading.document.resolve(next);
    if (!isMap(inner)) return undefined;
    map = inner as YAMLMap<Node, Node>;
  }
  const last = path.at(-1) ?? '';
  const pair = map.items.find(({ key }) => nameOf(key) === last);
  if (pair === undefined && (path.length > 1 || !numberKeys.includes(last))) return undefined;
  if (pair !== undefined && pair.value !== null && typeof scalarOf(reading, pair.value) !== 'number') return undefined;
  return (value) => {
    const scalar = new Scalar(value) as unknown as Node;
    const range = (pair?.value ?? owner).range;
    if (range) scalar.range = range;
    const present = map.items.find(({ key }) => nameOf(key) === last);
    if (present === undefined) map.items.push(new Pair(new Scalar(last) as unknown as Node, scalar));
    else present.value = scalar;
  };
}
