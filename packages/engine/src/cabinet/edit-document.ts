// A YAML document with changes done to it. What lies on the way to a change is copied, all else is shared with the document
// that was, so that a change costs as little as it is; and whatever a change puts in knows where the change is written.

import { type Document, isAlias, isMap, isSeq, type Node, Pair, visit, type YAMLMap, type YAMLSeq } from 'yaml';
import { type Complaint, quoted, type Span } from './complaint.ts';
import { splitPath } from './edit-path.ts';
import { nearest } from './nearest.ts';
import { oneOf } from './shape.ts';
import { keyOf } from './source-tree.ts';
import type { YamlDocument } from './yaml-document.ts';

/** One change of an edit. */
export interface Change {
  readonly kind: 'set' | 'add' | 'remove';
  readonly path: string;
  readonly value?: unknown;
  /** Where the change is written. */
  readonly where: Span;
}

export interface Edited {
  readonly document: YamlDocument;
  /** Places of the nodes that the changes put in. */
  readonly inserted: ReadonlyMap<Node, Span>;
  readonly complaints: readonly Complaint[];
}

/** Maps from ids to parts: a part with a new id is put in as a whole by `add`, never by the way. */
const PART_MAPS: readonly string[] = [
  'bays',
  'shelves',
  'machines',
  'air',
  'sensors',
  'heats',
  'cameras',
  'days',
  'people',
  'cabinet.doors',
];

function holdsParts(path: readonly string[]): boolean {
  return PART_MAPS.includes(path.join('.')) || (path[0] === 'days' && path[2] === 'jobs' && path.length === 3);
}

/** The document under change: nodes in `own` belong to it alone, the others to the document that was as well. */
interface Draft {
  readonly document: Document.Parsed;
  readonly own: Set<Node>;
  readonly inserted: Map<Node, Span>;
}

/** A changed copy of a document; a change that cannot be done is a complaint, and the others are done all the same. */
export function applyChanges(source: YamlDocument, changes: readonly Change[]): Edited {
  const document = shallowCopy(source.document);
  const root = shallowCopy(source.root);
  (document as { contents: unknown }).contents = root;
  root.items = [...root.items];
  const draft: Draft = { document, own: new Set([root]), inserted: new Map() };
  const complaints = changes.flatMap((change) => applyChange(draft, root, change) ?? []);
  return { document: { ...source, document, root }, inserted: draft.inserted, complaints };
}

function applyChange(draft: Draft, root: YAMLMap, change: Change): Complaint | undefined {
  const { kind, path, where } = change;
  const segments = splitPath(path);
  if (segments === undefined) return pathWrong(path, where);
  let parent: Node = root;
  for (const [depth, segment] of segments.slice(0, -1).entries()) {
    const next = ownChild(draft, parent, segment);
    if (next === undefined && kind !== 'remove' && isMap(parent) && !holdsParts(segments.slice(0, depth))) {
      const created = draft.document.createNode({}) as YAMLMap;
      draft.own.add(created);
      draft.inserted.set(created, where);
      parent.items.push(new Pair(freshNode(draft, segment, where), created));
      parent = created;
    } else if (next === undefined || !(isMap(next) || isSeq(next))) {
      return pathAstray(segments.slice(0, depth + 1), parent, next, where);
    } else parent = next;
  }
  if (isMap(parent)) return changeMap(draft, parent, segments, change);
  if (isSeq(parent)) return changeList(draft, parent, segments, change);
  return pathAstray(segments, parent, undefined, where);
}

function changeMap(draft: Draft, map: YAMLMap, segments: readonly string[], change: Change): Complaint | undefined {
  const { kind, path, value, where } = change;
  const key = segments.at(-1)!;
  const at = (map.items as Pair[]).findIndex((pair) => keyOf(pair) === key);
  if (kind === 'remove') {
    if (at < 0) return pathAstray(segments, map, undefined, where);
    map.items.splice(at, 1);
    return undefined;
  }
  if (kind === 'add' && at >= 0) return alreadyThere(path, where);
  const node = freshNode(draft, value, where);
  if (at < 0) map.items.push(new Pair(freshNode(draft, key, where), node));
  else map.items[at] = new Pair(map.items[at]!.key, node);
  return undefined;
}

function changeList(draft: Draft, list: YAMLSeq, segments: readonly string[], change: Change): Complaint | undefined {
  const { kind, value, where } = change;
  const key = segments.at(-1)!;
  const index = /^\d+$/.test(key) ? Number(key) : -1;
  const end = kind === 'add' ? list.items.length : list.items.length - 1;
  if (index < 0 || index > end) return pathAstray(segments, list, undefined, where);
  if (kind === 'remove') list.items.splice(index, 1);
  else list.items.splice(index, kind === 'add' ? 0 : 1, freshNode(draft, value, where));
  return undefined;
}

/** The child of a map or list of the draft, made the draft's own. What stands behind an alias changes for this place alone. */
function ownChild(draft: Draft, parent: Node, segment: string): Node | undefined {
  if (!isMap(parent) && !isSeq(parent)) return undefined;
  const items = parent.items as unknown[];
  const at = isMap(parent)
    ? parent.items.findIndex((pair) => keyOf(pair as Pair) === segment)
    : /^\d+$/.test(segment)
      ? Number(segment)
      : -1;
  const pair = isMap(parent) ? (parent.items[at] as Pair<Node, Node | null> | undefined) : undefined;
  const child = (isMap(parent) ? pair?.value : (items[at] as Node | undefined)) ?? undefined;
  if (child === undefined || draft.own.has(child)) return child;
  const own = isAlias(child) ? withoutAnchors(child.resolve(draft.document) as Node | undefined) : copied(child);
  if (own === undefined) return undefined;
  draft.own.add(own);
  items[at] = pair === undefined ? own : new Pair(pair.key, own);
  return own;
}

function copied(node: Node): Node {
  const copy = shallowCopy(node);
  if (isMap(copy) || isSeq(copy)) copy.items = [...copy.items];
  return copy;
}

function withoutAnchors(node: Node | undefined): Node | undefined {
  const own = node?.clone() as Node | undefined;
  if (own === undefined) return undefined;
  visit(own as Parameters<typeof visit>[0], {
    Node: (_key, inner) => {
      if ('anchor' in inner) delete inner.anchor;
    },
  });
  return own;
}

/** The same kind of object with the same members; nothing below it is copied. */
function shallowCopy<T extends object>(object: T): T {
  return Object.create(Object.getPrototypeOf(object) as object, Object.getOwnPropertyDescriptors(object)) as T;
}

function freshNode(draft: Draft, value: unknown, where: Span): Node {
  const node = draft.document.createNode(value === undefined ? null : value) as Node;
  visit(node as Parameters<typeof visit>[0], {
    Node: (_key, inner) => {
      draft.own.add(inner as Node);
      draft.inserted.set(inner as Node, where);
    },
  });
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
