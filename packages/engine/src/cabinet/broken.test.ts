// Files with faults, and every word of what is said about them. `UPDATE=1 npx vitest run …/broken.test.ts` writes the texts
// anew; they are then read by eye, as wording is part of the program.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from './complaint.ts';
import { readCabinet } from './read-cabinet.ts';

const folder = join(import.meta.dirname, '../../cases/broken');
const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));

describe('broken cabinet files', () => {
  it('exact: there are a hundred of them or more', () => {
    expect(files.length).toBeGreaterThanOrEqual(100);
  });

  it.each(files)('exact: %s is told word for word', (file) => {
    const answer = readCabinet(file, readFileSync(join(folder, file), 'utf8'));
    expect(answer.ok, 'it must not be read').toBe(false);
    if (answer.ok) return;
    const told = `${answer.complaints.map(formatComplaint).join('\n\n')}\n`;
    const expected = join(folder, file.replace(/\.yaml$/, '.txt'));
    if (process.env['UPDATE'] === '1') writeFileSync(expected, told);
    expect(told).toBe(readFileSync(expected, 'utf8'));
    expect(told).not.toMatch(/undefined|NaN|\[object|\binvalid\b|please|!|{"code"/i);
  });
});
