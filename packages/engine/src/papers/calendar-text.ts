// The form of a calendar that other programs read (RFC 5545): its frame, folded lines, escaped texts, names that stay.

import { textSeed } from '../numerics/random.ts';

/** Octets of a line before it is folded (RFC 5545, 3.1). */
const LINE = 75;

/** Events in the frame of a calendar, of which `what` is; lines end as the format wants them. */
export function calendarText(what: string, events: readonly string[]): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    `PRODID:-//stillair//${what} 1//EN`,
    'CALSCALE:GREGORIAN',
    ...events,
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}

/** 128 bits from a text, in the form of RFC 9562 for such (version 8). */
export function uidOf(key: string): string {
  const hex = ['a', 'b', 'c', 'd'].map((salt) => textSeed(`${salt}:${key}`).toString(16).padStart(8, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
}

/** Text of a property (RFC 5545, 3.3.11); what no text may hold is left out. */
export function escaped(text: string): string {
  return Array.from(text)
    .filter((sign) => sign >= ' ' || sign === '\n')
    .join('')
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll('\n', '\\n');
}

/** Lines of more than 75 octets go on behind a line end and a space; no sign is torn apart. */
function folded(line: string): string {
  const pieces: string[] = [];
  let [piece, octets] = ['', 0];
  for (const sign of line) {
    const size = octetsOf(sign);
    if (octets + size > LINE) {
      pieces.push(piece);
      [piece, octets] = [' ', 1];
    }
    piece += sign;
    octets += size;
  }
  return [...pieces, piece].join('\r\n');
}

function octetsOf(sign: string): number {
  const code = sign.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
