import { describe, expect, it } from 'vitest';
import type { Spread } from './hands.ts';
import { keepOutcomes, seldom } from './so-far.ts';

/** A study of two rounds, the second of which depends on the first. */
async function study(evaluate: Spread<string, number>): Promise<{ readonly sum: number; readonly missing: number }> {
  const hooks = { finished: () => undefined, stop: () => false };
  const first = await evaluate(['a', 'b', 'c'], hooks);
  const second = await evaluate(
    first.flatMap((outcome) => (outcome === undefined ? [] : [`after ${outcome}`])),
    hooks,
  );
  const all = [...first, ...second];
  const known = all.filter((each) => each !== undefined);
  return { sum: known.reduce((sum, each) => sum + each, 0), missing: all.length - known.length };
}

const lengths: Spread<string, number> = (tasks) => Promise.resolve(tasks.map((task) => task.length));

describe('what a study says so far', () => {
  it('limit: once all outcomes are known it is the study itself', async () => {
    const known = keepOutcomes<string, number>();
    const whole = await study(async (tasks, hooks) => {
      const outcomes = await lengths(tasks, hooks);
      for (const [at, task] of tasks.entries()) known.heard(task, outcomes[at]!);
      return outcomes;
    });
    expect(await study(known.evaluate)).toEqual(whole);
  });

  it('exact: what is not known yet counts as not run', async () => {
    const known = keepOutcomes<string, number>();
    known.heard('b', 1);
    expect(await study(known.evaluate)).toEqual({ sum: 1, missing: 3 });
  });

  it('exact: telling costs at most a seventh of the time, and never overlaps itself', async () => {
    let now = 0;
    let told = 0;
    const tell = seldom(
      () => {
        told += 1;
        now += 1000;
        return Promise.resolve();
      },
      () => now,
    );
    for (; now < 70_000; now += 50) {
      tell();
      tell();
      await new Promise((resolve) => setImmediate(resolve));
    }
    expect(told).toBeGreaterThan(5);
    expect(told).toBeLessThanOrEqual(10);
  });
});
