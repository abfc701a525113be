// Published removals of four enclosures against what their nearest likeness here removes (cases/enclosures). Held apart: no
// default was set by them. What is outside its band is said to be so in docs/validation.md.

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInput } from '../cabinet/set-input.ts';
import { concentrationSeries, integral } from '../day/series.ts';
import { runDay } from './pipeline.ts';
import { sampleInputs } from './sample-variants.ts';

const DRAWS = 60;
const SEED = 20;
const text = readFileSync(join(import.meta.dirname, '../../cases/enclosures/cabinet.yaml'), 'utf8');

const base = read();
const titles = Object.keys(base.cabinet.options);
const exposures = new Map(titles.map((option) => [option, exposureOf(option)]));

function read(option?: string) {
  const edits = option === undefined ? [] : base.cabinet.options[option]!.edits;
  const answer = readCabinet('cabinet.yaml', text, edits);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  return answer;
}

/** The room's concentration summed over the day, by contaminant, one a draw. */
function exposureOf(option: string): Record<'particles' | 'PM2.5', readonly number[]> {
  const { cabinet, origins } = read(option);
  const columns = sampleInputs(assumedInputs(origins), DRAWS, SEED);
  const records = Array.from({ length: DRAWS }, (_, draw) => {
    const made = [...columns].reduce((one, [path, values]) => setInput(one, path, values[draw]!), cabinet);
    return runDay(made, 'print').record;
  });
  const sumOf = (contaminant: string) =>
    records.map((record) => integral(concentrationSeries(record, contaminant, 'room')));
  return { particles: sumOf('particles'), 'PM2.5': sumOf('PM2.5') };
}

/** Removals of all options whose name begins so, all draws, in rising order. */
function removals(option: string, contaminant: 'particles' | 'PM2.5'): readonly number[] {
  const open = exposures.get('open')![contaminant];
  return titles
    .filter((title) => title.startsWith(option))
    .flatMap((title) => exposures.get(title)![contaminant].map((sum, draw) => 1 - sum / open[draw]!))
    .sort((a, b) => a - b);
}

function at(sorted: readonly number[], share: number): number {
  return sorted[Math.floor(share * sorted.length)]!;
}

/** Whether the published removal lies in the band by number and in that by mass. */
function holds(option: string, published: number): boolean {
  return (['particles', 'PM2.5'] as const).every((contaminant) => {
    const sorted = removals(option, contaminant);
    return at(sorted, 0.1) <= published && published <= at(sorted, 0.9);
  });
}

it('property: enclosures rank as published: exhaust and full before alone, leaky last', () => {
  for (const contaminant of ['particles', 'PM2.5'] as const) {
    const middle = (option: string) => at(removals(option, contaminant), 0.5);
    expect(middle('full')).toBeGreaterThan(middle('alone'));
    expect(middle('on-exhaust')).toBeGreaterThan(middle('alone'));
    expect(middle('alone')).toBeGreaterThan(middle('leaky'));
  }
});

it('cross: three of four published removals lie in the band', () => {
  expect(holds('leaky', 0.286)).toBe(true);
  expect(holds('full', 0.998)).toBe(true);
  expect(holds('alone', 0.89)).toBe(true);
});

it('cross: an enclosure on an exhaust leaks nothing here, where 96 % were measured', () => {
  expect(at(removals('on-exhaust', 'particles'), 0.1)).toBeGreaterThan(0.99);
  expect(holds('on-exhaust', 0.96)).toBe(false);
});
