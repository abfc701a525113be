// Where a number came from, in words.

import type { Span } from './complaint.ts';
import type { Origin } from './origin.ts';

/** `place` says how a face names a place of the file; nothing is said of a number without an origin. */
export function originText(origin: Origin | undefined, place: (where: Span) => string): string {
  switch (origin?.kind) {
    case 'given':
      return `${origin.measured === undefined ? '' : `measured, from ${origin.measured}: `}${place(origin.where)}${origin.where.lineText.trim()}`;
    case 'catalogue':
      return `catalogue, ${origin.part} (${origin.source})`;
    case 'derived':
      return `derived: ${origin.how}`;
    case 'assumed':
      return `assumed: ${origin.why}`;
    case undefined:
      return '';
  }
}
