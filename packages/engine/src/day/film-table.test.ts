import { filmLaw } from '@stillair/physics';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { filmAt, filmTable } from './film-table.ts';

const face = fc.record({
  orientation: fc.constantFrom('vertical' as const, 'faces-up' as const, 'faces-down' as const),
  length: fc.double({ min: 0.005, max: 2, noNaN: true }),
  difference: fc.double({ min: -350, max: 350, noNaN: true }),
});

it('cross: a table is within a thousandth of its law, and gives off the same heat to a tenth of a milliwatt where it fades', () => {
  fc.assert(
    fc.property(face, ({ orientation, length, difference }) => {
      const law = filmLaw(orientation, length, 308.15)(difference);
      const table = filmAt(filmTable(orientation, length, 308.15), difference);
      expect(Math.abs(table - law) * Math.abs(difference)).toBeLessThan(1e-3 * law * Math.abs(difference) + 5e-3);
      if (Math.abs(difference) > 0.3) expect(Math.abs(table / law - 1)).toBeLessThan(1.5e-3);
    }),
    { numRuns: 3000 },
  );
});

it('cross: upright faces have no bend, and a table within two millionths above 1 K', () => {
  const [law, table] = [filmLaw('vertical', 0.8, 308.15), filmTable('vertical', 0.8, 308.15)];
  for (let difference = 1; difference < 300; difference *= 1.013) {
    expect(Math.abs(filmAt(table, difference) / law(difference) - 1)).toBeLessThan(2e-6);
  }
});

it('property: continuous through zero and beyond its end', () => {
  const table = filmTable('faces-up', 0.2, 308.15);
  expect(Math.abs(filmAt(table, 1e-12) - filmAt(table, -1e-12))).toBeLessThan(1e-6);
  expect(filmAt(table, 5000)).toBeCloseTo(filmAt(table, 399.999), 3);
});
