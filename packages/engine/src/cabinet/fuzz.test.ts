// Whatever is done to a file: an answer, never an exception, never a number that is none.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { formatComplaint } from './complaint.ts';
import { readCabinet } from './read-cabinet.ts';

const folder = join(import.meta.dirname, '../../cases/cabinet');
const texts = ['first.yaml', 'everything.yaml'].map((name) => readFileSync(join(folder, name), 'utf8'));
const words = [...new Set(texts.join('\n').match(/[\w.°%/]+|[{}[\],:]/g))];
const scraps = [
  '0',
  '-1',
  '1e400',
  '.nan',
  '.inf',
  'null',
  '{}',
  '[]',
  '~',
  '"',
  "'",
  '|',
  '&a',
  '*a',
  '- ',
  '? ',
  '!!float 3',
  '<<',
  '__proto__',
  'constructor',
  'toString',
  '\t',
  '\n',
  '#',
  '%',
  'µ',
  '±',
  ' to ',
  '°C',
  'mm',
  '9:00',
];

const change = fc.record({
  kind: fc.constantFrom('replace', 'insert', 'cut', 'swap'),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat(12),
  word: fc.constantFrom(...words, ...scraps),
});

it('property: mutated files are read or complained about, and nothing read is NaN', { timeout: 120_000 }, () => {
  fc.assert(
    fc.property(fc.constantFrom(...texts), fc.array(change, { minLength: 1, maxLength: 6 }), (text, changes) => {
      const mutated = changes.reduce(apply, text);
      const answer = readCabinet('fuzz.yaml', mutated);
      if (answer.ok) expect(allFinite(answer.cabinet), mutated).toBe(true);
      else
        for (const complaint of answer.complaints)
          expect(formatComplaint(complaint)).toMatch(/^fuzz\.yaml:\d+:\d+ {2}error {2}[a-z0-9-]+\n/);
    }),
    { numRuns: 400, seed: 20_240_501 },
  );
});

it('property: values exchanged for one another are read or complained about', { timeout: 120_000 }, () => {
  const lines = texts[1]!.split('\n');
  const values = [...new Set(texts[1]!.match(/(?<=: )[^{}[\],:#\n]+/g))];
  fc.assert(
    fc.property(fc.nat(lines.length - 1), fc.nat(20), fc.constantFrom(...values, ...scraps), (line, pick, value) => {
      const places = [...lines[line]!.matchAll(/(?<=: )[^{}[\],:#\n]+/g)];
      const place = places[pick % Math.max(1, places.length)];
      if (place === undefined) return;
      const changed = lines[line]!.slice(0, place.index) + value + lines[line]!.slice(place.index + place[0].length);
      const mutated = lines.with(line, changed).join('\n');
      const answer = readCabinet('fuzz.yaml', mutated);
      if (answer.ok) expect(allFinite(answer.cabinet), mutated).toBe(true);
    }),
    { numRuns: 400, seed: 20_240_502 },
  );
});

function apply(
  text: string,
  { kind, at, length, word }: { kind: string; at: number; length: number; word: string },
): string {
  const start = Math.floor(at * text.length);
  const end = Math.min(text.length, start + length);
  if (kind === 'insert') return text.slice(0, start) + word + text.slice(start);
  if (kind === 'cut') return text.slice(0, start) + text.slice(end);
  if (kind === 'swap')
    return text.slice(0, start) + text.slice(end, end + length) + text.slice(start, end) + text.slice(end + length);
  return text.slice(0, start) + word + text.slice(end);
}

function allFinite(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  return typeof value !== 'object' || value === null || Object.values(value).every(allFinite);
}
