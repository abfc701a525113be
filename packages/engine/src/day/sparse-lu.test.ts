import fc from 'fast-check';
import { expect, it } from 'vitest';
import { analysePattern, entryAt, factor, factorMany, solve, solveMany } from './sparse-lu.ts';

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
      const values = new Float64Array(pattern.length);
      const right = new Float64Array(size);
      for (let i = 0; i < size; i += 1) {
        for (let j = 0; j < size; j += 1) {
          const value = dense[i]![j]!;
          if (value !== 0) values[entryAt(pattern, pattern.rowOf[i]!, pattern.rowOf[j]!)] = value;
          right[pattern.rowOf[i]!]! += value * wanted[j]!;
        }
      }
      const twice = (list: Float64Array): Float64Array =>
        Float64Array.from({ length: 2 * list.length }, (_, i) => (1 + (i % 2)) * list[i >> 1]!);
      const [both, rights] = [twice(values), twice(right)];
      factor(pattern, values);
      solve(pattern, values, right, 0);
      factorMany(pattern, both, 2);
      solveMany(pattern, both, rights, 0, 2);
      wanted.forEach((value, i) => {
        const at = pattern.rowOf[i]!;
        expect(right[at]).toBeCloseTo(value, 12);
        expect(rights[2 * at]).toBe(right[at]);
        expect(rights[2 * at + 1]).toBeCloseTo(value, 12);
      });
    }),
  );
});

it('property: a tree is eliminated without fill', () => {
  const pairs = Array.from({ length: 30 }, (_, i) => [i + 1, i >> 1] as const);
  expect(analysePattern(31, pairs).length).toBe(31 + 2 * 30);
});
