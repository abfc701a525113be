import { expect, it } from 'vitest';
import { fixture } from './fixture-files.ts';
import { openEvaluator } from './workers.ts';

const source = { file: 'hall.yaml', text: fixture('hall.yaml') };
const variants = [20, 25].map((celsius) => ({ edits: [{ set: { 'room.temperature': `${celsius} °C` } }], inputs: {} }));

it('gives the outcomes in the order of the variants, and tells each', async () => {
  const { evaluate, close } = openEvaluator(source, { workers: 1, stop: new AbortController().signal });
  let finished = 0;
  const outcomes = await evaluate(variants, { finished: () => finished++, stop: () => false });
  await close();
  const peaks = outcomes.map((outcome) => outcome?.values['heat/peak-air/lower/usual']);
  expect(finished).toBe(2);
  expect(peaks[1]! - peaks[0]!).toBeGreaterThan(3);
});

it('leaves out what comes after the person has stopped it', async () => {
  const stopping = new AbortController();
  const { evaluate } = openEvaluator(source, { workers: 1, stop: stopping.signal });
  const outcomes = await evaluate(variants, { finished: () => stopping.abort(), stop: () => false });
  expect(outcomes.map((outcome) => outcome === undefined)).toEqual([false, true]);
});
