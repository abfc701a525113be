// A name that the person typed and the file does not have.

import { nearest } from '@stillair/engine';

/** `there is no day "wusual"; did you mean usual?` */
export function unknownName(what: string, name: string, known: readonly string[]): string {
  const near = nearest(name, known);
  return `there is no ${what} "${name}"; ${near === undefined ? `there are: ${known.join(', ')}` : `did you mean ${near}?`}`;
}
