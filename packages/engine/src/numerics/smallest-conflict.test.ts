import { describe, expect, it } from 'vitest';
import { meetingSet } from './meeting-set.ts';
import { randomStream } from './random.ts';
import { type CanHold, type SmallestConflict, smallestConflict } from './smallest-conflict.ts';

/** A judge by the conflicts that there are: a set cannot hold when it has all of one. */
const byConflicts =
  (conflicts: readonly (readonly number[])[]) =>
  async (kept: readonly number[]): Promise<CanHold> =>
    conflicts.some((conflict) => conflict.every((member) => kept.includes(member))) ? 'no' : 'yes';

const search = (count: number, conflicts: readonly (readonly number[])[], budget = 1000) =>
  smallestConflict(count, byConflicts(conflicts), { budget });

function subsets(count: number): number[][] {
  return Array.from({ length: 2 ** count }, (_, bits) =>
    Array.from({ length: count }, (_each, at) => at).filter((at) => (bits >> at) & 1),
  ).sort((a, b) => a.length - b.length);
}

function randomSets(random: () => number, count: number, sets: number): number[][] {
  return Array.from({ length: sets }, () => {
    const size = 1 + Math.floor(random() * 4);
    return [...new Set(Array.from({ length: size }, () => Math.floor(random() * count)))].sort((a, b) => a - b);
  });
}

describe('a smallest conflict', () => {
  it('exact: taking out one after the other ends at three demands where two conflict; the smallest is found and proved', async () => {
    const conflicts = [
      [0, 3],
      [3, 4, 5],
    ];
    const found = (await search(6, conflicts))!;
    expect(found).toMatchObject({ set: [0, 3], smallest: true, irreducible: true, atLeast: 2 });
    // With no more questions allowed it stops at the irreducible one, and says that.
    expect(await search(6, conflicts, 0)).toMatchObject({
      set: [3, 4, 5],
      smallest: false,
      irreducible: true,
      atLeast: 1,
    });
  });

  it('limit: none where all can hold, nor where that cannot be told', async () => {
    expect(await search(5, [])).toBeUndefined();
    expect(await smallestConflict(3, async () => 'unknown', { budget: 10 })).toBeUndefined();
  });

  it('limit: one that cannot hold alone', async () => {
    expect(await search(4, [[0, 1], [2]])).toMatchObject({ set: [2], smallest: true, atLeast: 1 });
  });

  it('property: as small as any found by trying all sets, over 300 random families', async () => {
    const random = randomStream(7);
    let larger = 0;
    for (let round = 0; round < 300; round += 1) {
      const count = 4 + Math.floor(random() * 6);
      const conflicts = randomSets(random, count, 1 + Math.floor(random() * 5));
      const least = subsets(count).find((set) =>
        conflicts.some((each) => each.every((member) => set.includes(member))),
      );
      const found = (await search(count, conflicts)) as SmallestConflict;
      expect(found.set).toHaveLength(least!.length);
      expect(found).toMatchObject({ smallest: true, irreducible: true, atLeast: least!.length });
      expect(await byConflicts(conflicts)(found.set)).toBe('no');
      const first = (await search(count, conflicts, 0)) as SmallestConflict;
      if (first.set.length > found.set.length) larger += 1;
    }
    // Otherwise nothing was shown: irreducible sets are often not smallest.
    expect(larger).toBeGreaterThan(15);
  });

  it('property: what a judge cannot tell is never taken for a proof', async () => {
    const random = randomStream(11);
    for (let round = 0; round < 100; round += 1) {
      const conflicts = randomSets(random, 7, 3);
      const hidden = new Set(randomSets(random, 7, 40).map((set) => set.join(' ')));
      const judge = byConflicts(conflicts);
      const found = await smallestConflict(7, async (kept) => (hidden.has(kept.join(' ')) ? 'unknown' : judge(kept)), {
        budget: 1000,
      });
      const least = Math.min(...conflicts.map((each) => each.length));
      expect(await judge(found!.set)).toBe('no');
      expect(found!.atLeast).toBeLessThanOrEqual(least);
      if (found!.smallest) expect(found!.set).toHaveLength(least);
    }
  });

  it('property: keeps to its budget and can be stopped', async () => {
    const conflicts = Array.from({ length: 12 }, (_, at) => [at, at + 12, at + 24]);
    const few = (await search(40, conflicts, 25))!;
    expect(few).toMatchObject({ smallest: false, irreducible: true });
    const whole = (await search(40, conflicts, 0))!;
    expect(few.asked - whole.asked).toBeLessThanOrEqual(26);
    expect(await smallestConflict(40, byConflicts(conflicts), { budget: 100, stop: () => true })).toBeUndefined();
  });
});

describe('a smallest set that meets all', () => {
  it('property: as small as any found by trying all sets', () => {
    const random = randomStream(3);
    for (let round = 0; round < 300; round += 1) {
      const sets = randomSets(random, 8, 1 + Math.floor(random() * 8));
      const least = subsets(8).find((all) => sets.every((set) => set.some((member) => all.includes(member))))!;
      const met = meetingSet(sets, 8, 8) as readonly number[];
      expect(met).toHaveLength(least.length);
      expect(sets.every((set) => set.some((member) => met.includes(member)))).toBe(true);
      expect(meetingSet(sets, 8, least.length - 1)).toBeUndefined();
    }
  });
});
