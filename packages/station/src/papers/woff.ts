// Unpacks a font from WOFF 1.0 (W3C Recommendation, 2012): the same tables, uncompressed, so that they are read once and not at
// every use.

import { inflateSync } from 'node:zlib';

const WOFF = 0x774f4646;

/** The bytes of the TrueType or OpenType font inside, but for the tables with the tags `without`. */
export function fromWoff(woff: Buffer, without: readonly string[] = []): Buffer {
  if (woff.length < 44 || woff.readUInt32BE(0) !== WOFF) throw new RangeError('fromWoff: these bytes are no WOFF font');
  const tables = Array.from({ length: woff.readUInt16BE(12) }, (_, at) => {
    const entry = 44 + 20 * at;
    const [offset, packed, length] = [4, 8, 12].map((place) => woff.readUInt32BE(entry + place)) as [
      number,
      number,
      number,
    ];
    const bytes = woff.subarray(offset, offset + packed);
    return {
      tag: woff.subarray(entry, entry + 4),
      sum: woff.readUInt32BE(entry + 16),
      bytes: packed < length ? inflateSync(bytes) : bytes,
    };
  }).filter(({ tag }) => !without.includes(tag.toString('latin1')));
  const count = tables.length;
  const head = Buffer.alloc(12 + 16 * count);
  const power = Math.floor(Math.log2(count));
  head.writeUInt32BE(woff.readUInt32BE(4), 0);
  head.writeUInt16BE(count, 4);
  head.writeUInt16BE(16 * 2 ** power, 6);
  head.writeUInt16BE(power, 8);
  head.writeUInt16BE(16 * (count - 2 ** power), 10);
  let offset = head.length;
  const bodies = tables.map(({ tag, sum, bytes }, at) => {
    const entry = 12 + 16 * at;
    tag.copy(head, entry);
    head.writeUInt32BE(sum, entry + 4);
    head.writeUInt32BE(offset, entry + 8);
    head.writeUInt32BE(bytes.length, entry + 12);
    const padded = Buffer.concat([bytes, Buffer.alloc(-bytes.length & 3)]);
    offset += padded.length;
    return padded;
  });
  return Buffer.concat([head, ...bodies]);
}
