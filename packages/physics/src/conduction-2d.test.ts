import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layerResistance } from './conduction.ts';
import { gradedLines, solveSection } from './conduction-2d.ts';

describe('section', () => {
  it('exact: layers between two films pass what their resistances in series say', () => {
    const resistance = 0.13 + layerResistance(0.018, 0.13) + layerResistance(0.025, 0.036) + 0.13;
    const { heat, temperatures } = solveSection({
      across: gradedLines([0, 0.018, 0.043], 0.004, 1.2),
      down: [0, 0.4, 1],
      conductivity: (x) => (x < 0.018 ? 0.13 : 0.036),
      surface: (x, y) => (y === 0 || y === 1 ? undefined : { film: 1 / 0.13, temperature: x === 0 ? 35 : 22 }),
    });
    expect(heat).toBeCloseTo(13 / resistance, 9);
    expect(temperatures[1]![0]).toBeCloseTo(35 - (13 * 0.13) / resistance, 9);
  });

  it('order: the error of a smooth field falls fourfold when cells are halved, on grids where it falls evenly', () => {
    const errors = [8, 16, 32, 64].map((cells) => {
      const lines = Array.from({ length: cells + 1 }, (_, at) => at / cells);
      const meanOfTwo = Math.cos(Math.PI / cells / 2); // a held crossing takes the mean of the edges beside it
      const { temperatures } = solveSection({
        across: lines,
        down: lines,
        conductivity: () => 1,
        surface: (x, y) => ({ film: Infinity, temperature: y === 1 ? Math.sin(Math.PI * x) / meanOfTwo : 0 }),
      });
      return Math.abs(temperatures[cells / 2]![cells / 2]! - Math.sinh(Math.PI / 2) / Math.sinh(Math.PI));
    });
    for (const [at, error] of errors.slice(0, -1).entries()) {
      expect(Math.log2(error / errors[at + 1]!)).toBeGreaterThan(1.9);
      expect(Math.log2(error / errors[at + 1]!)).toBeLessThan(2.1);
    }
  });

  it('property: every temperature lies between those of the surfaces, whatever the materials', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.02, max: 200, noNaN: true }), { minLength: 9, maxLength: 9 }), (k) => {
        const { temperatures } = solveSection({
          across: [0, 1, 2, 3],
          down: [0, 1, 2, 3],
          conductivity: (x, y) => k[3 * Math.floor(y) + Math.floor(x)]!,
          surface: (x, y) => ({ film: 5, temperature: x === 0 || y === 0 ? 1 : 0 }),
        });
        for (const temperature of temperatures.flat()) {
          expect(temperature).toBeGreaterThan(-1e-9);
          expect(temperature).toBeLessThan(1 + 1e-9);
        }
      }),
      { numRuns: 50 },
    );
  });

  it('limit: where no material touches a crossing there is no temperature', () => {
    const { temperatures } = solveSection({
      across: [0, 1, 2, 3],
      down: [0, 1, 2, 3],
      conductivity: (x, y) => (x < 1 && y < 1 ? 1 : 0),
      surface: () => ({ film: 1, temperature: 7 }),
    });
    expect(temperatures[0]![0]).toBeCloseTo(7, 12);
    expect(temperatures[3]![3]).toBeNaN();
  });

  it('property: graded lines rise, hold their breaks and mirror within each span', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.5, noNaN: true }),
        fc.double({ min: 1, max: 2, noNaN: true }),
        (finest, growth) => {
          const lines = gradedLines([0, 1, 3], finest, growth);
          expect(lines.every((line, at) => at === 0 || line > lines[at - 1]!)).toBe(true);
          expect(lines).toContain(1);
          expect(lines.at(-1)).toBe(3);
          expect(lines[1]! - lines[0]!).toBeLessThanOrEqual(finest * 1.000001);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuses a grid that does not rise and a section that touches nothing', () => {
    const section = { conductivity: () => 1, surface: () => undefined };
    expect(() => solveSection({ ...section, across: [0, 0], down: [0, 1] })).toThrow('across is 0, 0');
    expect(() => solveSection({ ...section, across: [0, 1], down: [0] })).toThrow('down is 0');
    expect(() => gradedLines([0, 1], 0, 1.2)).toThrow('finest is 0');
    expect(() => gradedLines([0, 1], 0.1, 0.5)).toThrow('growth is 0.5');
  });
});
