// What a YAML tree must keep to before anybody reads it: every key once and a word, aliases that lead somewhere and end.

import { isAlias, isMap, isPair, isScalar, isSeq, type Node, type YAMLMap } from 'yaml';
import { type Complaint, quoted, type Span } from './complaint.ts';

/** Largest tree after every `*alias` is replaced by what it stands for; no text of the largest size has more without aliases. */
const MAX_EXPANDED_NODES = 1_000_000;

export interface YamlStructure {
  readonly complaints: readonly Complaint[];
  /** What each alias stands for. */
  readonly targets: ReadonlyMap<Node, Node>;
}

/** Walks the tree once. The depth of the tree must be bounded already. */
export function readStructure(contents: Node | null, spanOf: (node: Node) => Span): YamlStructure {
  const complaints: Complaint[] = [];
  const targets = new Map<Node, Node>();
  const anchors = new Map<string, Node>();
  /** Nodes that each finished node stands for, aliases counted with what they stand for. */
  const sizes = new Map<Node, number>();
  let exploded = false;
  const visit = (node: Node): number => {
    if (isAlias(node)) {
      const target = anchors.get(node.source);
      const size = target === undefined ? undefined : sizes.get(target);
      if (target !== undefined) targets.set(node, target);
      if (size === undefined) complaints.push(aliasAstray(node.source, target !== undefined, spanOf(node)));
      return size ?? 1;
    }
    if ('anchor' in node && typeof node.anchor === 'string') anchors.set(node.anchor, node);
    let size = 1;
    if (isMap(node)) {
      complaints.push(...keyComplaints(node, spanOf));
      for (const { key, value } of node.items) size += visitAny(key) + visitAny(value);
    } else if (isSeq(node)) {
      for (const item of node.items) size += visitAny(item);
    }
    sizes.set(node, size);
    if (size > MAX_EXPANDED_NODES && !exploded) {
      exploded = true;
      complaints.push(aliasesExplode(spanOf(node)));
    }
    return size;
  };
  const visitAny = (part: unknown): number => {
    if (isPair(part)) return visitAny(part.key) + visitAny(part.value);
    return part === null || typeof part !== 'object' ? 0 : visit(part as Node);
  };
  if (contents !== null) visit(contents);
  return { complaints, targets };
}

function keyComplaints(map: YAMLMap, spanOf: (node: Node) => Span): Complaint[] {
  const seen = new Map<string, Span>();
  const complaints: Complaint[] = [];
  for (const { key } of map.items) {
    if (!isScalar(key) || key.value === null || typeof key.value === 'object') {
      const where = spanOf(key === null ? map : (key as Node));
      complaints.push({
        code: 'key-not-text',
        what: 'this key is not a word',
        where,
        allowed: 'a word or a number before the colon',
        mend: 'look for a missing or doubled colon, or put the key in quotation marks',
      });
      continue;
    }
    const name = `${key.value as string | number | boolean | bigint}`;
    const where = spanOf(key);
    const earlier = seen.get(name);
    if (earlier === undefined) seen.set(name, where);
    else {
      complaints.push({
        code: 'key-twice',
        what: `${quoted(name)} stands in this map already, on line ${earlier.line}`,
        where,
        allowed: 'every key once in its map',
        mend: 'take out one of the two, or give one another name',
      });
    }
  }
  return complaints;
}

function aliasAstray(source: string, insideItself: boolean, where: Span): Complaint {
  return {
    code: 'alias-astray',
    what: insideItself ? `*${source} stands inside what it names` : `nothing before this line is marked &${source}`,
    where,
    allowed: 'an alias of something that is complete further up',
    mend: 'write the value out, or put it in quotation marks if it is a text that begins with *',
  };
}

function aliasesExplode(where: Span): Complaint {
  return {
    code: 'aliases-explode',
    what: `written out, this has more than ${MAX_EXPANDED_NODES} values`,
    where,
    allowed: `at most ${MAX_EXPANDED_NODES} values once every alias is written out`,
    mend: 'take the aliases of aliases out',
  };
}
