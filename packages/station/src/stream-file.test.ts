import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { streamFile } from './stream-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'stillair-stream-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('streamFile', () => {
  it('exact: gives every byte once, in pieces', async () => {
    const bytes = Uint8Array.from({ length: 600_000 }, (_, at) => (at * 31) % 251);
    writeFileSync(join(folder, 'long.gcode'), bytes);
    const stream = await streamFile(join(folder, 'long.gcode'));
    expect(stream).toMatchObject({ ok: true, bytes: 600_000 });
    const pieces: Uint8Array[] = [];
    if (stream.ok) for await (const piece of stream.pieces) pieces.push(piece.slice());
    expect(pieces.length).toBeGreaterThan(2);
    expect(Buffer.concat(pieces).equals(bytes)).toBe(true);
  });

  it('says what is wrong with a name, and which is near', async () => {
    expect(await streamFile(folder)).toEqual({ ok: false, problem: 'it is a folder, not a file' });
    expect(await streamFile(join(folder, 'lnog.gcode'))).toEqual({
      ok: false,
      problem: 'there is no such file (did you mean long.gcode?)',
    });
  });
});
