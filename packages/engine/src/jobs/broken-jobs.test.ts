// Job files with faults, and every word of what is said about them. `UPDATE=1 npx vitest run …/broken-jobs.test.ts` writes the texts
// anew; they are then read by eye, as wording is part of the program.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { usualRules } from './job.ts';
import { endJob, openJob, takeBytes } from './read-job.ts';

const folder = join(import.meta.dirname, '../../cases/broken-jobs');
const files = readdirSync(folder).filter((name) => name.endsWith('.gcode'));

describe('broken job files', () => {
  it('exact: there are twenty of them or more', () => {
    expect(files.length).toBeGreaterThanOrEqual(20);
  });

  it.each(files)('exact: %s is told word for word', (file) => {
    const job = openJob(file, usualRules);
    takeBytes(job, readFileSync(join(folder, file)));
    const answer = endJob(job);
    expect(answer.ok, 'it must not be read').toBe(false);
    if (answer.ok) return;
    const told = `${[...answer.complaints.map(formatComplaint), `and ${answer.more} more`].join('\n\n')}\n`;
    const expected = join(folder, file.replace(/\.gcode$/, '.txt'));
    if (process.env['UPDATE'] === '1') writeFileSync(expected, told);
    expect(told).toBe(readFileSync(expected, 'utf8'));
    expect(told).not.toMatch(/undefined|NaN|\[object|\binvalid\b|please|!|{"code"/i);
  });

  it('exact: a line without end is refused before it fills the memory', () => {
    for (const [byte, code] of [
      [71, 'job-line-long'],
      [0, 'job-binary'],
    ] as const) {
      const job = openJob('endless.gcode', usualRules);
      const piece = new Uint8Array(65_536).fill(byte);
      for (let at = 0; at < 100; at++) takeBytes(job, piece);
      expect(job.rest.length).toBe(0);
      const answer = endJob(job);
      expect(answer.ok ? [] : answer.complaints.map((one) => one.code)).toEqual([code]);
    }
  });
});
