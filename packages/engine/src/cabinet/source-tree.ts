// The file as plain data, with the place in the text of everything in it.

import { isAlias, isMap, isScalar, isSeq, type Node, type Pair } from 'yaml';
import type { Span } from './complaint.ts';
import type { YamlDocument } from './yaml-document.ts';

export type FilePath = readonly (string | number)[];

export interface SourceTree {
  /** Maps, lists, texts, numbers, yes/no; keys that begin with `_` are left out: they are the person's own. */
  readonly plain: Readonly<Record<string, unknown>>;
  /** Where a value stands (or the nearest thing that stands), or some characters of its text. */
  readonly valueSpan: (path: FilePath, at?: number, length?: number) => Span;
  /** Where its key stands. */
  readonly keySpan: (path: FilePath) => Span;
}

/** `inserted`: places of nodes that an edit put in, which have none of their own. */
export function sourceTree(document: YamlDocument, inserted: ReadonlyMap<Node, Span> = new Map()): SourceTree {
  const resolve = (node: Node): Node =>
    isAlias(node) ? ((node.resolve(document.document) as Node | undefined) ?? node) : node;
  const top = document.spanOf({ range: [0, 1, 1] } as unknown as Node);

  const spanOf = (node: Node | undefined): Span | undefined => {
    if (node === undefined) return undefined;
    return inserted.get(node) ?? (document.rangeOf(node) === undefined ? undefined : document.spanOf(node));
  };
  const valueSpan = (path: FilePath, at?: number, length?: number): Span => {
    const found = lookUp(document.root, path, resolve);
    // A short text may stand for a map: the text is then the place of everything that it says.
    if (found.depth < path.length && !isScalar(found.node)) return keySpan(path.slice(0, found.depth));
    const { node, key } = found;
    const span = spanOf(node);
    if (span === undefined || !isScalar(node) || node.value === null) return spanOf(key) ?? span ?? top;
    if (at === undefined || inserted.has(node)) return span;
    const quotes =
      node.type === 'PLAIN' ? 0 : node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE' ? 1 : undefined;
    const fits = quotes !== undefined && span.lineText.slice(span.column - 1 + quotes).startsWith(node.source ?? '');
    if (!fits || at + quotes >= span.length) return span;
    return {
      ...span,
      column: span.column + quotes + at,
      length: Math.max(1, Math.min(length ?? 1, span.length - at - quotes)),
    };
  };
  const keySpan = (path: FilePath): Span => {
    for (let depth = path.length; depth > 0; depth--) {
      const found = lookUp(document.root, path.slice(0, depth), resolve);
      if (found.depth < depth) continue;
      const span = spanOf(found.key) ?? spanOf(found.node);
      if (span !== undefined) return span;
    }
    return top;
  };
  // Nodes never change once they are read, but what stands behind an alias may.
  const known = document.text.includes('*') ? undefined : plainKnown;
  return { plain: plainMap(document.root, resolve, known), valueSpan, keySpan };
}

interface Found {
  readonly node: Node | undefined;
  readonly key: Node | undefined;
  /** Segments of the path that exist. */
  readonly depth: number;
}

function lookUp(root: Node, path: FilePath, resolve: (node: Node) => Node): Found {
  let node: Node | undefined = root;
  let key: Node | undefined;
  for (const [depth, segment] of path.entries()) {
    const parent: Node | undefined = node === undefined ? undefined : resolve(node);
    if (isMap(parent)) {
      const pair: Pair<Node, Node | null> | undefined = (parent.items as Pair<Node, Node | null>[]).find(
        (item) => keyOf(item) === String(segment),
      );
      if (pair === undefined) return { node, key, depth };
      key = pair.key;
      node = pair.value ?? undefined;
    } else if (isSeq(parent)) {
      const item = parent.items[Number(segment)] as Node | undefined;
      if (item === undefined) return { node, key, depth };
      key = undefined;
      node = item;
    } else return { node, key, depth };
  }
  return { node, key, depth: path.length };
}

/** The text of a pair's key. */
export function keyOf({ key }: Pair): string {
  return isScalar(key) ? String(key.value) : String(key);
}

/** Plain data of maps and lists that were read before: an edited file shares all but what its edits touch. */
const plainKnown = new WeakMap<Node, unknown>();

type Known = WeakMap<Node, unknown> | undefined;

function plainMap(map: Node, resolve: (node: Node) => Node, known: Known): Record<string, unknown> {
  const plain: Record<string, unknown> = {};
  if (!isMap(map)) return plain;
  for (const pair of map.items as Pair<Node, Node | null>[]) {
    const key = keyOf(pair);
    if (!key.startsWith('_')) plain[key] = plainOf(pair.value, resolve, known);
  }
  return plain;
}

function plainOf(written: Node | null, resolve: (node: Node) => Node, known: Known): unknown {
  if (written === null) return null;
  const node = resolve(written);
  if (isMap(node) || isSeq(node)) {
    if (known?.has(node) === true) return known.get(node);
    const plain = isMap(node)
      ? plainMap(node, resolve, known)
      : (node.items as Node[]).map((item) => plainOf(item, resolve, known));
    known?.set(node, plain);
    return plain;
  }
  if (!isScalar(node)) return null;
  const { value } = node;
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? value : null;
}
