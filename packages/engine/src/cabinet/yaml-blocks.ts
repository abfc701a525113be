// A file read in blocks, each from one key at the left edge to the next. Blocks that were read before are not read again: their
// nodes, and all that was understood of these, stay the same objects. It comes to the same as reading the text as a whole, which is
// done wherever a block cannot stand alone, and for every text with faults.

import { Document, type Node, type Pair, type Range, visit, YAMLMap } from 'yaml';
import { keyOf } from './source-tree.ts';
import { placesIn, readYaml, type YamlDocument } from './yaml-document.ts';

/** Aliases bind blocks together; a tab, a carriage return or anything at the left edge that is no word may be more than it seems. */
const BOUND = /[&*\t\r]|^[^\w\s#]/m;
const KEY_AT_THE_EDGE = /^\w/gm;

/** Nobody edits longer texts by hand, and many blocks take longer than the whole. */
const LONGEST = 200_000;
const MOST_BLOCKS = 200;

interface Block {
  readonly pair: Pair<Node, Node | null>;
}

/** Which block a node belongs to. Its place is shared by the copies that edits make of it. */
const homes = new WeakMap<Range, Block>();

/** Blocks of the text that was read last, by their own text. */
let known: ReadonlyMap<string, Block> = new Map();

/** Texts that were read last: an edit starts from one, and what it comes to is asked about next. */
const kept: YamlDocument[] = [];
const KEPT = 2;

/** The same answer as `readYaml`, sooner when most of the text was read before. */
export function readInBlocks(file: string, text: string): ReturnType<typeof readYaml> {
  const before = kept.find((document) => document.text === text && document.file === file);
  if (before !== undefined) return before;
  const read = joined(file, text) ?? readYaml(file, text);
  if (!('complaints' in read)) {
    kept.unshift(read);
    kept.splice(KEPT);
  }
  return read;
}

function joined(file: string, text: string): YamlDocument | undefined {
  if (text.length > LONGEST || BOUND.test(text)) return undefined;
  const starts = [...text.matchAll(KEY_AT_THE_EDGE)].map(({ index }) => index);
  if (starts.length === 0 || starts.length > MOST_BLOCKS) return undefined;
  starts[0] = 0; // remarks before the first key
  const blocks = new Map<string, Block>();
  const places = new Map<Block, number>();
  for (const [at, start] of starts.entries()) {
    const own = text.slice(start, starts[at + 1]);
    const block = known.get(own) ?? readBlock(own);
    if (block === undefined) return undefined;
    blocks.set(own, block);
    places.set(block, start);
  }
  const pairs = [...places.keys()].map(({ pair }) => pair);
  if (new Set(pairs.map(keyOf)).size !== starts.length) return undefined;
  known = blocks;
  const document = new Document(undefined, { uniqueKeys: false, prettyErrors: false }) as unknown as Document.Parsed;
  const root = new YAMLMap(document.schema);
  root.items = pairs;
  root.range = [0, text.length, text.length];
  (document as { contents: unknown }).contents = root;
  const rangeOf = ({ range }: Node): readonly [number, number] | undefined => {
    if (range === undefined || range === null) return undefined;
    const home = homes.get(range);
    const from = home === undefined ? 0 : places.get(home)!;
    return [range[0] + from, range[1] + from];
  };
  const span = placesIn(file, text);
  const spanOf = (node: Node) => span(...(rangeOf(node) ?? [0, 0]));
  return { file, text, document, root, rangeOf, spanOf, resolve: (node) => node };
}

/** A block that is one key with its value and has no faults. */
function readBlock(text: string): Block | undefined {
  const read = readYaml('', text);
  if ('complaints' in read || read.root.items.length !== 1) return undefined;
  const block: Block = { pair: read.root.items[0] as Block['pair'] };
  visit(read.document, {
    Node: (_key, { range }) => {
      if (range !== undefined && range !== null) homes.set(range, block);
    },
  });
  return block;
}
