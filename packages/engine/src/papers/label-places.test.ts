import fc from 'fast-check';
import { expect, it } from 'vitest';
import { labelPlaces } from './label-places.ts';

it('exact: labels that do not collide stay where they wish', () => {
  expect(labelPlaces([60, 10, 30], 14, 0, 100)).toEqual([60, 10, 30]);
});

it('exact: three on one place spread around it, in the order given', () => {
  expect(labelPlaces([50, 50, 50], 10, 0, 100)).toEqual([40, 50, 60]);
});

it('exact: at the edge they are pushed inwards', () => {
  expect(labelPlaces([98, 99], 10, 0, 100)).toEqual([90, 100]);
});

it('property: they keep their distance, and keep the order of their wishes', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 150, noNaN: true }), { maxLength: 9 }), (wished) => {
      const order = wished.map((_, at) => at).sort((a, b) => wished[a]! - wished[b]!);
      const places = labelPlaces(wished, 14, 0, 150);
      const sorted = order.map((at) => places[at]!);
      for (let at = 1; at < sorted.length; at++)
        expect(sorted[at]! - sorted[at - 1]!).toBeGreaterThanOrEqual(14 - 1e-9);
    }),
  );
});

it('cross: no set of small moves is better than the one chosen', () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 40, max: 60, noNaN: true }), { minLength: 2, maxLength: 5 }), (wished) => {
      const cost = (places: readonly number[]) =>
        places.reduce((sum, place, at) => sum + (place - wished[at]!) ** 2, 0);
      const places = labelPlaces(wished, 10, -1000, 1000);
      const order = wished.map((_, at) => at).sort((a, b) => places[a]! - places[b]!);
      for (let cut = 0; cut < order.length; cut++) {
        for (const shift of [-0.01, 0.01]) {
          const moved = [...places];
          for (const at of shift > 0 ? order.slice(cut) : order.slice(0, cut + 1)) moved[at]! += shift;
          expect(cost(moved)).toBeGreaterThanOrEqual(cost(places) - 1e-9);
        }
      }
    }),
  );
});
