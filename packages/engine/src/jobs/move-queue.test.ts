import fc from 'fast-check';
import { expect, it } from 'vitest';
import { addMove, openQueue, SUM, stop } from './move-queue.ts';

type Move = { readonly length: number; readonly angle: number; readonly speed: number };

function seconds(moves: readonly Move[], ahead: number): number {
  const queue = openQueue({ deviation: 0.00002, ahead });
  for (const { length, angle, speed } of moves) {
    const [x, y] = [Math.cos(angle), Math.sin(angle)];
    addMove(queue, 0, length, speed, speed, 1, 0, x, y, 0, x, y, 0);
  }
  stop(queue);
  return queue.sums[SUM.printing]!;
}

const move = fc.record({
  length: fc.double({ min: 1e-5, max: 0.02, noNaN: true }),
  angle: fc.double({ min: 0, max: 0.5, noNaN: true }),
  speed: fc.constantFrom(0.02, 0.05, 0.2),
});

it('property: a window longer than the way to brake comes to the same as one over the whole file', () => {
  fc.assert(
    fc.property(fc.array(move, { minLength: 1, maxLength: 2000 }), (moves) => {
      expect(seconds(moves, 256)).toBeCloseTo(seconds(moves, 4000), 9);
    }),
    { numRuns: 40 },
  );
});

it('property: who sees less far ahead is never faster', () => {
  // Straight on in pieces so short that braking takes hundreds of them: the window is felt.
  const moves = Array.from({ length: 3000 }, () => ({ length: 2e-5, angle: 0, speed: 0.2 }));
  const times = [1, 8, 64, 512, 4000].map((ahead) => seconds(moves, ahead));
  expect(times).toEqual([...times].sort((a, b) => b - a));
  expect(times[0]).toBeGreaterThan(times[4]! * 1.0001);
});

it('exact: marks are told at the beginning of their move, in their order', () => {
  const marks = [3, 600, 600, 999];
  const told: number[] = [];
  const queue = openQueue({
    deviation: 0.00002,
    onMark: (clock) => {
      told.push(clock);
      return marks[told.length] ?? Infinity;
    },
  });
  queue.nextMark = marks[0]!;
  for (let at = 0; at < 1000; at++) addMove(queue, 2, 0.001, 0.1, 0.1, 1, 0, 0, 0, 0, 0, 0, 0);
  stop(queue);
  const each = 2 * Math.sqrt(0.001);
  expect(told).toHaveLength(4);
  for (const [at, mark] of marks.entries()) expect(told[at]).toBeCloseTo(mark * each, 9);
});
