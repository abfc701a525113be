// A change done in the characters that it is about, and in no others: the person's own spacing, quotes and comments stay.
// What cannot be done so is left to a rewrite of the document.

import { isMap, isScalar, isSeq, type Node, type Pair, stringify, type YAMLMap } from 'yaml';
import type { Change } from './edit-document.ts';
import { splitPath } from './edit-path.ts';
import { keyOf } from './source-tree.ts';
import type { YamlDocument } from './yaml-document.ts';

/** The text with the change, or nothing when it takes more than these characters. */
export function editInPlace(source: YamlDocument, change: Change): string | undefined {
  const segments = splitPath(change.path);
  if (segments === undefined) return undefined;
  const parent: unknown = segments.length === 1 ? source.root : source.document.getIn(segments.slice(0, -1), true);
  const key = segments.at(-1)!;
  if (!isMap(parent))
    return change.kind === 'set' ? replaced(source, nodeAt(source, segments), change.value) : undefined;
  const at = (parent.items as Pair[]).findIndex((pair) => keyOf(pair) === key);
  if (change.kind === 'remove') return at < 0 ? undefined : removed(source, parent, at);
  if (at >= 0) return change.kind === 'set' ? replaced(source, nodeAt(source, segments), change.value) : undefined;
  return parent.flow === true
    ? addedInFlow(source, parent, key, change.value)
    : addedInBlock(source, parent, key, change.value);
}

function nodeAt({ document }: YamlDocument, segments: readonly string[]): Node | undefined {
  return document.getIn(segments, true) as Node | undefined;
}

/** A single value, or a list or map in brackets, in place of another. */
function replaced({ text, rangeOf }: YamlDocument, node: Node | undefined, value: unknown): string | undefined {
  const range = node === undefined ? undefined : rangeOf(node);
  if (range === undefined || isMarked(node)) return undefined;
  const single = isScalar(node) && node.type?.startsWith('BLOCK') !== true;
  const bracketed = (isMap(node) || isSeq(node)) && node.flow === true;
  return single || bracketed ? spliced(text, range[0], range[1], inline(value)) : undefined;
}

function isMarked(node: Node | undefined): boolean {
  return (
    node !== undefined &&
    (('anchor' in node && node.anchor !== undefined) ||
      ('tag' in node && node.tag !== undefined && !isMap(node) && !isSeq(node)))
  );
}

function addedInFlow({ text, rangeOf }: YamlDocument, map: YAMLMap, key: string, value: unknown): string | undefined {
  const range = rangeOf(map);
  if (range === undefined || text[range[1] - 1] !== '}') return undefined;
  const inside = text.slice(range[0] + 1, range[1] - 1);
  if (inside.includes('#')) return undefined;
  const end = range[0] + 1 + inside.trimEnd().length;
  const pair = `${inline(key)}: ${inline(value)}`;
  if (inside.trim() === '') return spliced(text, range[0], range[1], `{ ${pair} }`);
  return spliced(text, end, end, inside.trimEnd().endsWith(',') ? ` ${pair}` : `, ${pair}`);
}

/** A line of its own after the last one of the map. */
function addedInBlock(source: YamlDocument, map: YAMLMap, key: string, value: unknown): string | undefined {
  const [first] = map.items as Pair<Node, Node | null>[];
  const last = (map.items as Pair<Node, Node | null>[]).at(-1);
  const { text, rangeOf } = source;
  const start = first === undefined ? undefined : rangeOf(first.key)?.[0];
  const end = last === undefined ? undefined : endOf(source, last.value ?? last.key);
  if (start === undefined || end === undefined) return undefined;
  const indent = start - (text.lastIndexOf('\n', start - 1) + 1);
  if (text.slice(start - indent, start).trim() !== '') return undefined; // the first key stands behind a dash
  const lineEnd = text.indexOf('\n', end);
  const at = lineEnd < 0 ? text.length : lineEnd;
  const space = ' '.repeat(indent);
  const lines = blockLines(key, value).map((line) => `${space}${line}`);
  return spliced(text, at, at, `\n${lines.join('\n')}`);
}

/** Where the last single value in a node ends; nothing for values of several lines. */
function endOf(source: YamlDocument, node: Node): number | undefined {
  if ((isMap(node) || isSeq(node)) && node.flow !== true) {
    const last: unknown = node.items.at(-1);
    const pair = last as Pair<Node, Node | null> | undefined;
    const inner = isMap(node) ? (pair?.value ?? pair?.key) : (last as Node | undefined);
    return inner === undefined ? undefined : endOf(source, inner);
  }
  return isScalar(node) && node.type?.startsWith('BLOCK') === true ? undefined : source.rangeOf(node)?.[1];
}

function removed(source: YamlDocument, map: YAMLMap, at: number): string | undefined {
  const items = map.items as Pair<Node, Node | null>[];
  const { key, value } = items[at]!;
  const { text, rangeOf } = source;
  const start = rangeOf(key)?.[0];
  const end = endOf(source, value ?? key);
  if (start === undefined || end === undefined || items.length === 1) return undefined;
  if (map.flow === true) {
    const before = at === 0 ? undefined : endOf(source, items[at - 1]!.value ?? items[at - 1]!.key);
    const following = items[at + 1]?.key;
    const next = following === undefined ? undefined : rangeOf(following)?.[0];
    if (before !== undefined) return spliced(text, before, end, '');
    return next === undefined ? undefined : spliced(text, start, next, '');
  }
  const lineStart = text.lastIndexOf('\n', start - 1) + 1;
  const lineEnd = text.indexOf('\n', end);
  if (text.slice(lineStart, start).trim() !== '') return undefined;
  return spliced(text, lineStart, lineEnd < 0 ? text.length : lineEnd + 1, '');
}

function spliced(text: string, from: number, to: number, by: string): string {
  return text.slice(0, from) + by + text.slice(to);
}

/** A value on one line, right inside and outside brackets. */
export function inline(value: unknown): string {
  if (typeof value === 'string') return scalarText(value);
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (typeof value === 'object' && value !== null)
    return `{ ${Object.entries(value)
      .map(([key, each]) => `${inline(key)}: ${inline(each)}`)
      .join(', ')} }`;
  return value === undefined || value === null ? 'null' : stringify(value).trim();
}

/** Maps of a few single values on one line, others over several. */
function blockLines(key: string, value: unknown): string[] {
  const short = `${inline(key)}: ${inline(value)}`;
  if (short.length <= 100 || typeof value !== 'object' || value === null) return [short];
  const lines = stringify(value, { lineWidth: 0 }).trimEnd().split('\n');
  return [`${inline(key)}:`, ...lines.map((line) => `  ${line}`)];
}

/** A text as a YAML scalar that is right inside and outside flow brackets. */
function scalarText(value: string): string {
  const plain = /^[\p{L}\p{N}°µ][^\n\r:#,[\]{}"'&*!|>@`]*$/u.test(value) && !/\s$/.test(value);
  const clock = /^\d+:\d\d(:\d\d)?$/.test(value);
  const another = /^(?:true|false|null|0[xo].*|[\d.]+(?:e[+-]?\d*)?)$/i.test(value);
  return (plain && !another) || clock ? value : JSON.stringify(value);
}
