// Edits of a cabinet file: `set`, `add` and `remove` by path, in order. They change the YAML document in place, so that
// comments stay, and everything they put in knows the place of the edit.

import {
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  type Node,
  Pair,
  visit,
  type YAMLMap,
  type YAMLSeq,
} from 'yaml';
import type { Edit } from './cabinet.ts';
import { type Complaint, formatComplaint, quoted, type Span } from './complaint.ts';
import { splitPath } from './edit-path.ts';
import { nearest } from './nearest.ts';
import { oneOf } from './shape.ts';
import { keyOf } from './source-tree.ts';
import { readYaml, type YamlDocument } from './yaml-document.ts';

/** One change of an edit. */
export interface Change {
  readonly kind: 'set' | 'add' | 'remove';
  readonly path: string;
  readonly value?: unknown;
  /** Where the change is written. */
  readonly where: Span;
}

/** Maps from ids to parts: a part with a new id is put in as a whole by `add`, never by the way. */
const PART_MAPS: readonly string[] = [
  'bays',
  'shelves',
  'machines',
  'air',
  'sensors',
  'heats',
  'days',
  'people',
  'cabinet.doors',
];

function holdsParts(path: readonly string[]): boolean {
  return PART_MAPS.includes(path.join('.')) || (path[0] === 'days' && path[2] === 'jobs' && path.length === 3);
}

/** The changes of edits, in order; `placeOf` says where each is written. */
export function changesOf(
  edits: readonly Edit[],
  placeOf: (edit: number, kind: Change['kind'], path: string) => Span,
): Change[] {
  return edits.flatMap(({ set = {}, add = {}, remove = [] }, edit) => [
    ...Object.entries(set).map(
      ([path, value]): Change => ({ kind: 'set', path, value, where: placeOf(edit, 'set', path) }),
    ),
    ...Object.entries(add).map(
      ([path, value]): Change => ({ kind: 'add', path, value, where: placeOf(edit, 'add', path) }),
    ),
    ...remove.map((path): Change => ({ kind: 'remove', path, where: placeOf(edit, 'remove', path) })),
  ]);
}

export interface Edited {
  readonly document: YamlDocument;
  /** Places of the nodes that the changes put in. */
  readonly inserted: ReadonlyMap<Node, Span>;
  readonly complaints: readonly Complaint[];
}

/** A changed copy of a document; a change that cannot be done is a complaint, and the others are done all the same. */
export function applyChanges(source: YamlDocument, changes: readonly Change[]): Edited {
  const document = source.document.clone() as Document.Parsed;
  const inserted = new Map<Node, Span>();
  const complaints: Complaint[] = [];
  for (const change of changes) {
    const complaint = applyChange(document, change, inserted);
    if (complaint !== undefined) complaints.push(complaint);
  }
  return { document: { ...source, document, root: document.contents as YAMLMap }, inserted, complaints };
}

/**
 * The text with the edits done and everything else kept: comments, order, blank lines.
 *
 * @throws Error when the text is no YAML or an edit cannot be done; the message is the complaint.
 * @example One value replaced, the comment kept
 * ```ts
 * editText('a: 1 mm # note\n', [{ set: { a: '2 mm' } }]).trim(); // => a: 2 mm # note
 * ```
 */
export function editText(text: string, edits: readonly Edit[]): string {
  let now = text;
  const place = (edit: number, kind: Change['kind'], path: string): Span => placeOfOwn(edit, kind, path);
  for (const change of changesOf(edits, place)) {
    const source = readYaml('edited text', now);
    if ('complaints' in source) throw new Error(source.complaints.map(formatComplaint).join('\n'));
    now = replaceScalar(source, change) ?? rewrite(source, change);
  }
  return now;
}

/** The place of an edit that stands in no file. */
export function placeOfOwn(edit: number, kind: Change['kind'], path: string): Span {
  const lineText = `${kind}: ${path}`;
  return { file: 'edit', line: edit + 1, column: kind.length + 3, length: Math.max(1, path.length), lineText };
}

/** A plain value in place of a plain value changes those characters and no others. */
function replaceScalar({ document, text }: YamlDocument, { kind, path, value }: Change): string | undefined {
  if (kind !== 'set' || (typeof value === 'object' && value !== null)) return undefined;
  const segments = splitPath(path);
  const node: unknown = segments === undefined ? undefined : document.getIn(segments, true);
  if (!isScalar(node) || node.range === undefined || node.range === null || node.type?.startsWith('BLOCK') === true)
    return undefined;
  if (node.anchor !== undefined || node.tag !== undefined) return undefined;
  const fresh = document.createNode(value) as { toString(): string };
  const written = typeof value === 'string' ? scalarText(value) : String(fresh);
  return text.slice(0, node.range[0]) + written + text.slice(node.range[1]);
}

/** A text as a YAML scalar that is right inside and outside flow brackets. */
function scalarText(value: string): string {
  const plain = /^[\p{L}\p{N}°µ][^\n\r:#,[\]{}"'&*!|>@`]*$/u.test(value) && !/\s$/.test(value);
  const clock = /^\d+:\d\d(:\d\d)?$/.test(value);
  const another = /^(?:true|false|null|0[xo].*|[\d.]+(?:e[+-]?\d*)?)$/i.test(value);
  return (plain && !another) || clock ? value : JSON.stringify(value);
}

function rewrite(source: YamlDocument, change: Change): string {
  const { document, complaints } = applyChanges(source, [change]);
  if (complaints.length > 0) throw new Error(complaints.map(formatComplaint).join('\n'));
  return document.document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function applyChange(document: Document.Parsed, change: Change, inserted: Map<Node, Span>): Complaint | undefined {
  const { kind, path, where, value } = change;
  const segments = splitPath(path);
  if (segments === undefined) return pathWrong(path, where);
  const last = segments.at(-1)!;
  let parent: Node = document.contents as unknown as Node;
  for (const [depth, segment] of segments.slice(0, -1).entries()) {
    const next = childOf(document, parent, segment);
    if (next === undefined && kind !== 'remove' && isMap(parent) && !holdsParts(segments.slice(0, depth))) {
      const created = document.createNode({}) as YAMLMap;
      inserted.set(created, where);
      parent.items.push(new Pair(keyNode(document, segment, where, inserted), created));
      parent = created;
      continue;
    }
    if (next === undefined || !(isMap(next) || isSeq(next)))
      return pathAstray(segments.slice(0, depth + 1), parent, next, where);
    parent = next;
  }
  if (isMap(parent)) return changeMap(document, parent, last, change, inserted);
  if (isSeq(parent)) return changeList(document, parent, last, change, inserted);
  return pathAstray(segments, parent, undefined, where);

  function changeMap(
    owner: Document.Parsed,
    map: YAMLMap,
    key: string,
    { kind: what }: Change,
    places: Map<Node, Span>,
  ): Complaint | undefined {
    const at = (map.items as Pair[]).findIndex((pair) => keyOf(pair) === key);
    if (what === 'remove') {
      if (at < 0) return pathAstray(segments!, map, undefined, where);
      map.items.splice(at, 1);
      return undefined;
    }
    if (what === 'add' && at >= 0) return alreadyThere(path, where);
    const node = freshNode(owner, value, where, places);
    if (at >= 0) (map.items[at] as Pair).value = node;
    else map.items.push(new Pair(keyNode(owner, key, where, places), node));
    return undefined;
  }

  function changeList(
    owner: Document.Parsed,
    list: YAMLSeq,
    key: string,
    { kind: what }: Change,
    places: Map<Node, Span>,
  ): Complaint | undefined {
    const index = /^\d+$/.test(key) ? Number(key) : -1;
    const end = what === 'add' ? list.items.length : list.items.length - 1;
    if (index < 0 || index > end) return pathAstray(segments!, list, undefined, where);
    if (what === 'remove') list.items.splice(index, 1);
    else list.items.splice(index, what === 'add' ? 0 : 1, freshNode(owner, value, where, places));
    return undefined;
  }
}

function childOf(document: Document.Parsed, parent: Node, segment: string): Node | undefined {
  const found = isMap(parent)
    ? (parent.items as Pair<Node, Node | null>[]).find((pair) => keyOf(pair) === segment)?.value
    : isSeq(parent) && /^\d+$/.test(segment)
      ? (parent.items[Number(segment)] as Node | undefined)
      : undefined;
  if (!isAlias(found)) return found ?? undefined;
  // What stands behind an alias is changed for this place alone.
  const own = (found.resolve(document) as Node | undefined)?.clone() as Node | undefined;
  if (own === undefined) return undefined;
  visit(own as Parameters<typeof visit>[0], {
    Node: (_key, node) => {
      if ('anchor' in node) delete node.anchor;
    },
  });
  const items = (parent as YAMLMap | YAMLSeq).items as unknown[];
  const at = items.findIndex((item) => item === found || (item as Pair).value === found);
  if (isMap(parent)) (items[at] as Pair).value = own;
  else items[at] = own;
  return own;
}

function keyNode(document: Document.Parsed, key: string, where: Span, inserted: Map<Node, Span>): Node {
  return freshNode(document, key, where, inserted);
}

function freshNode(document: Document.Parsed, value: unknown, where: Span, inserted: Map<Node, Span>): Node {
  const node = document.createNode(value === undefined ? null : value) as Node;
  inserted.set(node, where);
  visit(node as Parameters<typeof visit>[0], { Node: (_key, inner) => void inserted.set(inner as Node, where) });
  return node;
}

function pathWrong(path: string, where: Span): Complaint {
  return {
    code: 'path-wrong',
    what: `${quoted(path)} is no path`,
    where,
    allowed: 'keys and ids with dots between, such as air.exhaust.parts.0.fan; an id with a dot in "quotation marks"',
    mend: 'write the keys that lead to the value',
  };
}

function pathAstray(segments: readonly string[], parent: Node, found: Node | undefined, where: Span): Complaint {
  const last = segments.at(-1)!;
  const known = isMap(parent)
    ? (parent.items as Pair[]).map(keyOf).filter((key) => !key.startsWith('_'))
    : isSeq(parent)
      ? parent.items.map((_, index) => String(index))
      : [];
  const guess = isMap(parent) ? nearest(last, known) : undefined;
  const above = segments.length === 1 ? 'the file' : quoted(segments.slice(0, -1).join('.'));
  const single = found !== undefined;
  return {
    code: 'path-astray',
    what: single
      ? `${quoted(segments.join('.'))} is a single value, which holds nothing`
      : `there is no ${quoted(last)} in ${above}`,
    where,
    allowed: single ? 'a path to something that is there' : `what is there: ${oneOf(known) || 'nothing'}`,
    mend: single
      ? `set ${segments.join('.')} as a whole`
      : guess === undefined
        ? 'follow the keys of the file; lists count from 0'
        : `did you mean ${quoted(guess)}?`,
  };
}

function alreadyThere(path: string, where: Span): Complaint {
  return {
    code: 'path-taken',
    what: `${quoted(path)} is there already`,
    where,
    allowed: 'an id that is not taken',
    mend: 'use set to replace it, or choose another id',
  };
}
