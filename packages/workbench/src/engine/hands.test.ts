import { describe, expect, it } from 'vitest';
import { type Helper, openHands } from './hands.ts';
import type { Help, Helped } from './protocol.ts';

/** A helper that doubles numbers, after as many turns as it is slow; or breaks at a number. */
function doubling(slow: number, breaksAt?: number): { readonly helper: Helper; readonly did: number[] } {
  const did: number[] = [];
  const helper: Helper = {
    onmessage: null,
    onerror: null,
    postMessage: ({ ticket, task }: Help) => {
      const answer = (turns: number): void => {
        if (turns > 0) setImmediate(() => answer(turns - 1));
        else if (task === breaksAt) helper.onerror?.({} as ErrorEvent);
        else {
          did.push(task as number);
          helper.onmessage?.({
            data: { kind: 'helped', ticket, outcome: 2 * (task as number) },
          } as MessageEvent<Helped>);
        }
      };
      answer(slow);
    },
  };
  return { helper, did };
}

const numbers = Array.from({ length: 12 }, (_, at) => at);
const double = (task: number): number => 2 * task;
const doubled = numbers.map(double);
const always = { finished: () => undefined, stop: () => false };
const work = { runs: 'variants', text: '', here: double } as const;

describe('many hands', () => {
  it('exact: outcomes stand in the order of the tasks, whoever did them and however slowly', async () => {
    const all = [doubling(3), doubling(1)];
    const waiting = [...all];
    const hands = openHands(2, () => waiting.pop()!.helper);
    let finished = 0;
    const outcomes = await hands.spread<number, number>(work)(numbers, { ...always, finished: () => finished++ });
    expect(outcomes).toEqual(doubled);
    expect(finished).toBe(12);
    expect(all.every(({ did }) => did.length > 0)).toBe(true);
  });

  it('exact: what is not run after a stop is missing, and the rest stands', async () => {
    const hands = openHands(1, () => doubling(1).helper);
    let finished = 0;
    const outcomes = await hands.spread<number, number>(work)(numbers, {
      finished: () => finished++,
      stop: () => finished >= 5,
    });
    expect(outcomes).toHaveLength(12);
    const known = outcomes.flatMap((outcome, at) => (outcome === undefined ? [] : [[outcome, double(at)]]));
    expect(known.length).toBeGreaterThanOrEqual(5);
    expect(known.length).toBeLessThan(8);
    expect(known.every(([got, want]) => got === want)).toBe(true);
  });

  it('exact: what a helper breaks at is done by the one that asked', async () => {
    const hands = openHands(1, () => doubling(0, 1).helper);
    expect(await hands.spread<number, number>(work)(numbers, always)).toEqual(doubled);
  });

  it('exact: a few tasks start nobody', async () => {
    const hands = openHands(2, () => {
      throw new Error('started');
    });
    expect(await hands.spread<number, number>(work)([1, 2], always)).toEqual([2, 4]);
  });
});
