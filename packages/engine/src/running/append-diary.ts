// An entry put into the text of a diary, below the last of its kind: every other character of the person's stays.

import { isScalar, isSeq, type Node, type Pair } from 'yaml';
import { inline } from '../cabinet/edit-in-place.ts';
import { keyOf, sourceTree } from '../cabinet/source-tree.ts';
import { readYaml, type YamlDocument } from '../cabinet/yaml-document.ts';

export type EntryList = 'done' | 'jobs';
/** As it is to stand in the file; what is undefined is left out. */
export type Entry = Readonly<Record<string, string | number | undefined>>;

/** A diary that begins. */
export function newDiary(title: string, began: string): string {
  return [
    '# What was done to the cabinet, and which jobs ran. Dates are year-month-day; "stillair care" reads it and adds to it.',
    'diary: 1',
    `title: ${inline(title)}`,
    `began: ${began} # in use since then, with every part new`,
    '',
  ].join('\n');
}

/** The line of an entry, to be shown or put in. */
export function entryLine(entry: Entry): string {
  const given = Object.entries(entry).filter(([, value]) => value !== undefined);
  return `- { ${given.map(([key, value]) => `${key}: ${inline(value)}`).join(', ')} }`;
}

/** The text with the entry; undefined when it cannot be put in without a rewrite of what is there. */
export function appendEntry(text: string, list: EntryList, entry: Entry): string | undefined {
  const source = readYaml('', text);
  if ('complaints' in source) return undefined;
  const written = put(source, list, entryLine(entry));
  return written !== undefined && onlyAdded(source, written, list, entry) ? written : undefined;
}

function put({ text, root }: YamlDocument, list: EntryList, line: string): string | undefined {
  const pair = (root.items as Pair<Node, Node | null>[]).find((item) => keyOf(item) === list);
  if (pair === undefined) {
    if (root.flow === true) return undefined;
    return `${text}${text.endsWith('\n') ? '' : '\n'}${list}:\n  ${line}\n`;
  }
  const { key, value } = pair;
  const empty =
    value === null || (isScalar(value) && value.value === null) || (isSeq(value) && value.items.length === 0);
  if (empty) {
    const range = value?.range;
    const flow = isSeq(value) && range !== undefined && range !== null;
    const end = flow ? range[1] : (key.range?.[1] ?? 0) + 1;
    const bare = flow ? `${text.slice(0, range[0]).trimEnd()}${text.slice(range[1])}` : text;
    return below(bare, flow ? text.slice(0, range[0]).trimEnd().length : end, `  ${line}`);
  }
  if (!isSeq(value) || value.flow === true) return undefined;
  const items = value.items as Node[];
  const [start, end] = [items[0]?.range?.[0], items.at(-1)?.range?.[1]];
  if (start === undefined || end === undefined) return undefined;
  const dash = text.lastIndexOf('-', start - 1);
  const indent = text.slice(text.lastIndexOf('\n', dash) + 1, dash);
  if (indent.trim() !== '') return undefined;
  return below(text, text.slice(0, end).trimEnd().length, `${indent}${line}`);
}

/** A line of its own below the line in which a place lies; remarks at that line's end stay there. */
function below(text: string, place: number, line: string): string {
  const lineEnd = text.indexOf('\n', place);
  const at = lineEnd < 0 ? text.length : lineEnd;
  return `${text.slice(0, at)}\n${line}${text.slice(at)}${lineEnd < 0 ? '\n' : ''}`;
}

/** Whether everything that was there is there still, and one entry more. */
function onlyAdded(before: YamlDocument, written: string, list: EntryList, entry: Entry): boolean {
  const after = readYaml('', written);
  if ('complaints' in after) return false;
  const [old, now] = [before, after].map((document) => sourceTree(document).plain);
  const added = Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined));
  const expected = { ...old, [list]: [...((old![list] as unknown[] | null | undefined) ?? []), added] };
  return JSON.stringify(expected) === JSON.stringify(now);
}
