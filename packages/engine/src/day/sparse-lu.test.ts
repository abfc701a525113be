import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analysePattern, entryAt, factor, solve } from './sparse-lu.ts';

it('exact: solves random diagonally dominant systems on random symmetric patterns', () => {
  const system = fc.integer({ min: 1, max: 14 }).chain((size) =>
    fc.record({
      size: fc.constant(size),
      pairs: fc.array(fc.tuple(fc.nat(size - 1), fc.nat(size - 1)), { maxLength: 3 * size }),
      numbers: fc.infiniteStream(fc.double({ min: -1, max: 1, noNaN: true })),
    }),
  );
  fc.assert(
    fc.property(system, ({ size, pairs, numbers }) => {
      const pattern = analysePattern(size, pairs);
      const dense = Array.from({ length: size }, () => new Array<number>(size).fill(0));
      const draw = (): number => Number(numbers.next().value);
      for (const [a, b] of pairs) {
        if (a === b) continue;
        dense[a]![b] = draw();
        dense[b]![a] = draw();
      }
      for (let i = 0; i < size; i += 1) dense[i]![i] = 2 * size + draw();
      const wanted = Array.from({ length: size }, draw);
      const values = new Float64Array(pattern.length + 3);
      const right = new Float64Array(size);
      for (let i = 0; i < size; i += 1) {
        for (let j = 0; j < size; j += 1) {
          const value = dense[i]![j]!;
          if (value !== 0) values[3 + entryAt(pattern, pattern.rowOf[i]!, pattern.rowOf[j]!)] = value;
          right[pattern.rowOf[i]!]! += value * wanted[j]!;
        }
      }
      factor(pattern, values, 3);
      solve(pattern, values, 3, right, 0);
      wanted.forEach((value, i) => {
        expect(right[pattern.rowOf[i]!]).toBeCloseTo(value, 12);
      });
    }),
  );
});

it('property: a tree is eliminated without fill', () => {
  const pairs = Array.from({ length: 30 }, (_, i) => [i + 1, i >> 1] as const);
  expect(analysePattern(31, pairs).length).toBe(31 + 2 * 30);
});
