// The cabinet of a file with one of the file's own options done to it.

import { editText, type ReadSource, readCabinet } from '@stillair/engine';
import { unknownName } from './unknown-name.ts';

/** The file with one of its options done to it, and without any further options. */
export function withOption(source: ReadSource, id: string | undefined): ReadSource | string {
  if (id === undefined) return source;
  const option = source.cabinet.options[id];
  const known = Object.keys(source.cabinet.options);
  if (option === undefined)
    return known.length === 0 ? `there is no option "${id}"; the file has none` : unknownName('option', id, known);
  const text = editText(source.text, [...option.edits, { remove: ['options'] }]);
  const answer = readCabinet(source.file, text);
  return answer.ok
    ? { file: source.file, text, cabinet: answer.cabinet, origins: answer.origins }
    : `the option "${id}" cannot be done: ${answer.complaints[0]?.what ?? ''}`;
}
