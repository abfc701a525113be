// Reads single values of a network file into SI, and says what is wrong with those that are not what they should be.

import { isMap, isScalar, isSeq, type Node, type YAMLMap } from 'yaml';
import { type Complaint, quoted, type Span } from '../cabinet/complaint.ts';
import { nearest } from '../cabinet/nearest.ts';
import type { YamlDocument } from '../cabinet/yaml-document.ts';
import type { Spelling } from './file-key.ts';

/** What the parts of one file share while it is read. */
export interface Reading {
  readonly document: YamlDocument;
  readonly complaints: Complaint[];
  /** Questions that wait until every name is known. */
  readonly later: (() => void)[];
  /** Where each name was given, by the kind of thing it names. */
  readonly names: Map<string, Map<string, Span>>;
}

/** Bounds of a number, in SI. */
export interface Bounds {
  readonly least?: number;
  readonly above?: number;
  readonly most?: number;
  readonly below?: number;
  readonly whole?: true;
}

export const POSITIVE: Bounds = { above: 0 };
export const NOT_NEGATIVE: Bounds = { least: 0 };
export const SHARE: Bounds = { least: 0, most: 1 };

export function complain(
  reading: Reading,
  node: Node,
  code: string,
  what: string,
  allowed: string,
  mend: string,
): void {
  reading.complaints.push({ code, what, where: reading.document.spanOf(node), allowed, mend });
}

export function nameOf(key: Node): string {
  return isScalar(key) ? `${key.value as string | number | boolean}` : '';
}

export function readNumber(reading: Reading, node: Node, name: string, bounds: Bounds, spelling?: Spelling): number {
  const { unit = '', scale = 1, shift = 0 } = spelling ?? {};
  const written = scalarOf(reading, node);
  const allowed = `${bounds.whole ? 'a whole number' : 'a number'}${boundsText(bounds, scale, shift)}${unit === '' ? '' : ` (${unitText(unit)})`}`;
  if (typeof written !== 'number' || !Number.isFinite(written)) {
    complain(
      reading,
      node,
      'not-a-number',
      `${name} is ${shownNode(reading, node)}`,
      allowed,
      'write a plain number; the unit stands in the key',
    );
    return Number.NaN;
  }
  const value = toSi(written, scale) + shift;
  if (!keeps(value, bounds)) {
    complain(reading, node, 'out-of-bounds', `${name} is ${written}`, allowed, 'check the sign and the unit');
    return Number.NaN;
  }
  return value;
}

/** Divides by whole factors, so that 18 mm are 0.018 m to the last digit. */
export function toSi(written: number, scale: number): number {
  return scale < 1 ? written / (1 / scale) : written * scale;
}

function keeps(value: number, { least, above, most, below, whole }: Bounds): boolean {
  return (
    (least === undefined || value >= least) &&
    (above === undefined || value > above) &&
    (most === undefined || value <= most) &&
    (below === undefined || value < below) &&
    (whole === undefined || Number.isInteger(value))
  );
}

function boundsText({ least, above, most, below }: Bounds, scale: number, shift: number): string {
  const inFile = (value: number): string => Number(((value - shift) / scale).toPrecision(9)).toString();
  const parts = [
    least === undefined ? [] : [`${inFile(least)} or more`],
    above === undefined ? [] : [`above ${inFile(above)}`],
    most === undefined ? [] : [`at most ${inFile(most)}`],
    below === undefined ? [] : [`below ${inFile(below)}`],
  ].flat();
  return parts.length === 0 ? '' : `, ${parts.join(' and ')}`;
}

function unitText(unit: string): string {
  return unit.replace('_', '/').replace('C', '°C');
}

/** A word; numbers are taken as words too, so that a machine may be called 2. */
export function readText(reading: Reading, node: Node, name: string): string {
  const written = scalarOf(reading, node);
  if (typeof written === 'string' && written.trim() !== '') return written;
  if (typeof written === 'number' || typeof written === 'boolean') return `${written}`;
  complain(reading, node, 'not-a-word', `${name} is ${shownNode(reading, node)}`, 'a word', 'write a word');
  return '';
}

export function readChoice<Choice extends string>(
  reading: Reading,
  node: Node,
  name: string,
  choices: readonly Choice[],
): Choice {
  const written = readText(reading, node, name);
  const plain = (word: string): string => word.toLowerCase().replaceAll('-', '_');
  const choice = choices.find((candidate) => plain(candidate) === plain(written));
  if (choice !== undefined) return choice;
  const guess = nearest(written, choices);
  const mend = guess === undefined ? 'write one of these' : `did you mean ${guess}?`;
  if (written !== '')
    complain(reading, node, 'not-a-choice', `${name} is ${quoted(written)}`, choices.join(', '), mend);
  return choices[0]!;
}

export function readList(reading: Reading, node: Node, name: string, single?: 'single'): readonly Node[] {
  const target = reading.document.resolve(node);
  if (isSeq(target)) return target.items as Node[];
  if (single && isMap(target)) return [node];
  complain(
    reading,
    node,
    'not-a-list',
    `${name} is ${shown(target)}`,
    `a list${single ? ' or one map' : ''}`,
    'begin every item with "- "',
  );
  return [];
}

/** The entries of a map from names to something: the modes of a machine, the efficiencies of a filter. */
export function readEntries(
  reading: Reading,
  node: Node,
  name: string,
): readonly { readonly key: Node; readonly value: Node }[] {
  const target = reading.document.resolve(node);
  if (!isMap(target)) {
    complain(
      reading,
      node,
      'not-a-map',
      `${name} is ${shown(target)}`,
      'a map of names and values',
      `write ${name} as a map`,
    );
    return [];
  }
  return (target as YAMLMap<Node, Node | null>).items.map(({ key, value }) => ({ key, value: value ?? key }));
}

export function isTextNode(reading: Reading, node: Node): boolean {
  return typeof scalarOf(reading, node) === 'string';
}

export function isMapNode(reading: Reading, node: Node): boolean {
  return isMap(reading.document.resolve(node));
}

export function isListNode(reading: Reading, node: Node): boolean {
  return isSeq(reading.document.resolve(node));
}

export function scalarOf(reading: Reading, node: Node): unknown {
  const target = reading.document.resolve(node);
  return isScalar(target) ? target.value : undefined;
}

export function shownNode(reading: Reading, node: Node): string {
  return shown(reading.document.resolve(node));
}

function shown(node: Node): string {
  if (isMap(node)) return 'a map';
  if (isSeq(node)) return 'a list';
  if (!isScalar(node)) return 'nothing';
  return typeof node.value === 'string' ? quoted(node.value) : `${node.value as number | boolean | null}`;
}
