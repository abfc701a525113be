// Edits of a cabinet file: `set`, `add` and `remove` by path, in order, as changes that know where they are written; and the
// text of a file with edits done to it.

import type { Edit } from './cabinet.ts';
import { formatComplaint, type Span } from './complaint.ts';
import { applyChanges, type Change } from './edit-document.ts';
import { editInPlace } from './edit-in-place.ts';
import { readInBlocks } from './yaml-blocks.ts';
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
 * @param file - Its name, for messages. Texts that are read under the same name afterwards have been read already.
 * @throws Error when the text is no YAML or an edit cannot be done; the message is the complaint.
 * @example One value replaced, the comment kept
 * ```ts
 * editText('a: 1 mm # note\n', [{ set: { a: '2 mm' } }]).trim(); // => a: 2 mm # note
 * ```
 */
export function editText(text: string, edits: readonly Edit[], file: string = 'edited text'): string {
  let now = text;
  const place = (edit: number, kind: Change['kind'], path: string): Span => placeOfOwn(edit, kind, path);
  for (const change of changesOf(edits, place)) {
    const source = readInBlocks(file, now);
    if ('complaints' in source) throw new Error(source.complaints.map(formatComplaint).join('\n'));
    now = changed(source, change);
  }
  return now;
}

/** The place of an edit that stands in no file. */
export function placeOfOwn(edit: number, kind: Change['kind'], path: string): Span {
  const lineText = `${kind}: ${path}`;
  return { file: 'edit', line: edit + 1, column: kind.length + 3, length: Math.max(1, path.length), lineText };
}

/** The change in place, where that comes to the same as the change of the document; else the document written anew. */
function changed(source: YamlDocument, change: Change): string {
  const { document, complaints } = applyChanges(source, [change]);
  if (complaints.length > 0) throw new Error(complaints.map(formatComplaint).join('\n'));
  const inPlace = editInPlace(source, change);
  if (inPlace !== undefined) {
    const again = readInBlocks(source.file, inPlace);
    if (!('complaints' in again) && JSON.stringify(again.document.toJS()) === JSON.stringify(document.document.toJS()))
      return inPlace;
  }
  return writtenAnew(source, change);
}

/** Remarks between the blocks of a text stand in its document only when that was read as a whole. */
function writtenAnew({ file, text }: YamlDocument, change: Change): string {
  const whole = readYaml(file, text);
  if ('complaints' in whole) throw new Error(whole.complaints.map(formatComplaint).join('\n'));
  const { document } = applyChanges(whole, [change]).document;
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}
