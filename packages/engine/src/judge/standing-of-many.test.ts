// Answers that are kept are those that are worked out anew, whatever number of the cabinet is changed and whatever the file is edited to.

import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInput } from '../cabinet/set-input.ts';
import { constructionOf } from '../joinery/construction.ts';
import { litPrint } from '../trades/light/lit.ts';
import { heardBy } from '../trades/sound/places.ts';
import { trades } from '../trades/trades.ts';
import { numbersOfDays, standingOfMany } from './pipeline.ts';
import { variantRunner } from './variants.ts';

function example(name: string): { file: string; text: string; cabinet: Cabinet } {
  const file = `${name}.yaml`;
  const text = readFileSync(new URL(`../../../../examples/${file}`, import.meta.url), 'utf8');
  const answer = readCabinet(file, text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file, text, cabinet: answer.cabinet };
}

interface Place {
  readonly path: string;
  readonly value: number;
}

/** All numbers below a path. */
function numbersIn(node: unknown, path: string): Place[] {
  if (typeof node === 'number') return [{ path, value: node }];
  if (typeof node !== 'object' || node === null) return [];
  return Object.entries(node).flatMap(([key, below]) => numbersIn(below, `${path}.${key}`));
}

/** What is kept by the parts that it rests on; undefined where the change leaves nothing that can be worked out. */
function resting(cabinet: Cabinet, standing: (cabinet: Cabinet) => unknown): unknown {
  try {
    return [
      standing(cabinet),
      Object.keys(cabinet.people).map((person) => heardBy(cabinet, person)),
      Object.keys(cabinet.machines).map((machine) => litPrint(cabinet, machine)),
      constructionOf(cabinet),
    ];
  } catch (error) {
    return String(error);
  }
}

describe.each(['tool-library', 'school-locker', 'winter-shed'])('what rests on parts of %s', (name) => {
  const { file, text, cabinet } = example(name);

  it('metamorphic: any number changed, one after another, comes to the same as a cabinet never seen before', () => {
    const kept = standingOfMany();
    const parts = Object.entries(cabinet)
      .map(([part, value]) => numbersIn(value, part))
      .filter((numbers) => numbers.length > 0);
    const place = fc.constantFrom(...parts).chain((numbers) => fc.constantFrom(...numbers));
    fc.assert(
      fc.property(place, fc.constantFrom(0.9, 1.02, 2), ({ path, value }, by) => {
        const one = setInput(cabinet, path, by * value || 1);
        expect(resting(one, kept), path).toEqual(resting(structuredClone(one), standingOfMany()));
      }),
      { numRuns: 120 },
    );
  });

  it('metamorphic: edit after edit of the file comes to the same as each by itself', () => {
    const runner = variantRunner({ file, text });
    const edits: (readonly Edit[])[] = [
      ...Object.values(cabinet.options).map((option) => option.edits),
      [{ set: { 'room.humidity': '61 %' } }],
      [{ set: { 'cabinet.finish': 'black matt' } }],
      [],
    ];
    for (const each of [...edits, ...edits.toReversed()]) {
      const outcome = runner({ edits: each, inputs: {}, days: [] });
      const answer = readCabinet(file, text, each);
      if (answer.ok) expect(outcome).toEqual(numbersOfDays(answer.cabinet, trades, undefined, []));
    }
  });
});
