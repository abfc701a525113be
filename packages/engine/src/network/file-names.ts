// Names that a network file gives to its parts, and the places where it uses them.

import type { Node } from 'yaml';
import { quoted, type Span } from '../cabinet/complaint.ts';
import { nearest } from '../cabinet/nearest.ts';
import type { FileMap } from './file-map.ts';
import { complain, type Reading, readList, readText } from './file-value.ts';

export type NameKind =
  | 'zone'
  | 'node'
  | 'wall node'
  | 'sensor'
  | 'surface'
  | 'wall'
  | 'star'
  | 'source'
  | 'path'
  | 'fan'
  | 'exchange'
  | 'machine'
  | 'thermostat'
  | 'contaminant'
  | 'recirculation'
  | 'carbon bed'
  | `modes of ${string}`;

/** Nobody mends more at once, and guessing at every wrong name of a large file takes long. */
const ENOUGH = 200;

/** Whatever has a temperature shares one list of names. */
export const PLACES: readonly NameKind[] = ['zone', 'node', 'wall node'];
export const SOLIDS: readonly NameKind[] = ['node', 'wall node'];
const SHARED: readonly (readonly NameKind[])[] = [[...PLACES, 'sensor']];

/** Notes a name; the same name twice is complained of. False when the name cannot be had. */
export function define(reading: Reading, kind: NameKind, node: Node, name: string): boolean {
  if (name === '') return false;
  if (name in {}) {
    complain(
      reading,
      node,
      'name-reserved',
      `${quoted(name)} cannot be a name here`,
      'another word',
      'choose another name',
    );
    return false;
  }
  const family = SHARED.find((kinds) => kinds.includes(kind)) ?? [kind];
  const earlier = family.map((member) => reading.names.get(member)?.get(name)).find((span) => span !== undefined);
  if (earlier !== undefined) {
    const what = `${quoted(name)} is the name of something on line ${earlier.line} already`;
    complain(
      reading,
      node,
      'name-twice',
      what,
      `every ${kind} with a name of its own`,
      'give one of the two another name',
    );
    return false;
  }
  note(reading, kind, node, name);
  return true;
}

/** Notes a name that may be used by several. */
export function note(reading: Reading, kind: NameKind, node: Node, name: string): void {
  const known = reading.names.get(kind) ?? new Map<string, Span>();
  if (!known.has(name)) known.set(name, reading.document.spanOf(node));
  reading.names.set(kind, known);
}

/** The name in a map's `name` key, or `otherwise` for parts that need none. */
export function ownName(reading: Reading, kind: NameKind, map: FileMap<'name'>, otherwise?: string): string {
  const name = map.text('name', otherwise);
  define(reading, kind, map.at('name') ?? map.node, name);
  return name;
}

/** The name under a key, which must be that of one of these kinds. */
export function referred<Key extends string>(
  reading: Reading,
  map: FileMap<Key>,
  key: Key,
  kinds: readonly NameKind[],
): string {
  const name = map.text(key);
  const node = map.at(key);
  if (node !== undefined) mustExist(reading, node, name, kinds);
  return name;
}

/** The names in a list. */
export function referredList(
  reading: Reading,
  node: Node,
  what: string,
  kinds: readonly NameKind[],
): readonly string[] {
  return readList(reading, node, what).map((item) => {
    const name = readText(reading, item, what);
    mustExist(reading, item, name, kinds);
    return name;
  });
}

/** Asks, once all names are known, whether this one is among them. */
export function mustExist(reading: Reading, node: Node, name: string, kinds: readonly NameKind[]): void {
  if (name === '') return;
  reading.later.push(() => {
    if (kinds.some((kind) => reading.names.get(kind)?.has(name)) || reading.complaints.length > ENOUGH) return;
    const known = kinds.flatMap((kind) => [...(reading.names.get(kind)?.keys() ?? [])]);
    const guess = nearest(name, known);
    const allowed =
      known.length === 0 ? `a ${kinds.join(' or ')}, but the file has none` : `one of ${shortList(known)}`;
    const mend = guess === undefined ? `name a ${kinds[0]} of this file` : `did you mean ${guess}?`;
    complain(reading, node, 'name-unknown', `there is no ${kinds.join(' or ')} ${quoted(name)}`, allowed, mend);
  });
}

function shortList(names: readonly string[]): string {
  return names.length <= 12 ? names.join(', ') : `${names.slice(0, 12).join(', ')} and ${names.length - 12} more`;
}
