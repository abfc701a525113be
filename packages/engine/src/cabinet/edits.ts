// Edits of a cabinet file: `set`, `add` and `remove` by path, in order, as changes that know where they are written; and the
// text of a file with edits done to it.

import { isScalar } from 'yaml';
import type { Edit } from './cabinet.ts';
import { formatComplaint, type Span } from './complaint.ts';
import { applyChanges, type Change } from './edit-document.ts';
import { splitPath } from './edit-path.ts';
import { readYaml, type YamlDocument } from './yaml-document.ts';

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
