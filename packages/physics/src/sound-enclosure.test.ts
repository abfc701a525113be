import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { boxInsertionLoss, buildUp, soundInBoxes } from './sound-enclosure.ts';
import { aLevel } from './sound-level.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('boxInsertionLoss', () => {
  it('limit: a box that swallows nothing lets everything out in the end', () => {
    expect(boxInsertionLoss(0, 0.01)).toBe(0);
  });

  it('cross: close to the other way of reckoning where the box swallows some of it', () => {
    for (const [absorption, loss] of [
      [0.05, 25],
      [0.1, 25],
      [0.3, 20],
      [0.1, 30],
    ] as const) {
      const other = loss - buildUp(1, 1, absorption);
      expect(Math.abs(boxInsertionLoss(absorption, 10 ** (-loss / 10)) - other)).toBeLessThan(1.1);
    }
  });

  it('cross: a bare box of plywood, and the same half lined, as worked by an independent script', () => {
    const source = [40, 43, 45, 46, 44, 40, 34, 27];
    const loss = [12, 17, 22, 27, 28, 25, 27, 30];
    const bare = [0.1, 0.1, 0.08, 0.06, 0.06, 0.06, 0.06, 0.06];
    const foam = [0.05, 0.1, 0.2, 0.45, 0.7, 0.8, 0.8, 0.8];
    const out = (absorption: readonly number[], open: number): number =>
      aLevel(
        source.map(
          (level, band) =>
            level - boxInsertionLoss(2.64 * absorption[band]!, (2.64 - open) * 10 ** (-loss[band]! / 10) + open),
        ),
      );
    const lined = bare.map((one, band) => one + 0.5 * foam[band]!);
    expect(Math.abs(out(bare, 0) - 33.87)).toBeLessThan(0.05);
    expect(Math.abs(out(lined, 0) - 27.38)).toBeLessThan(0.05);
    expect(Math.abs(out(lined, 0.013) - 31.64)).toBeLessThan(0.06);
    expect(Math.abs(out(lined, 0.0226) - 33.25)).toBeLessThan(0.06);
  });

  it('property: more absorption never makes it louder, more openings never quieter', () => {
    fc.assert(
      fc.property(between(0, 3), between(0, 3), between(0.001, 1), between(0.001, 1), (a, b, s, t) => {
        expect(boxInsertionLoss(Math.max(a, b), s)).toBeGreaterThanOrEqual(boxInsertionLoss(Math.min(a, b), s));
        expect(boxInsertionLoss(a, Math.max(s, t))).toBeLessThanOrEqual(boxInsertionLoss(a, Math.min(s, t)));
      }),
    );
  });
});

describe('soundInBoxes', () => {
  it('exact: one box is the balance of its power', () => {
    const [absorbed, out] = [0.2, 0.01];
    const inside = soundInBoxes([absorbed + out], [])[0]![0]!;
    expect(-10 * Math.log10(inside * out)).toBeCloseTo(boxInsertionLoss(absorbed, out), 12);
  });

  it('exact: two boxes by hand', () => {
    // 0.3 I1 - 0.1 I2 = 1, -0.1 I1 + 0.5 I2 = 0
    const [first, second] = soundInBoxes([0.2, 0.4], [{ a: 0, b: 1, letThrough: 0.1 }]);
    expect(first![0]).toBeCloseTo(0.5 / 0.14, 12);
    expect(second![0]).toBeCloseTo(0.1 / 0.14, 12);
  });

  it('property: what is made is swallowed or gets out, and both ways between two boxes are alike', () => {
    fc.assert(
      fc.property(
        fc.array(between(0.01, 2), { minLength: 3, maxLength: 3 }),
        between(0, 1),
        between(0, 1),
        (losses, p, q) => {
          const links = [
            { a: 0, b: 1, letThrough: p },
            { a: 1, b: 2, letThrough: q },
          ];
          const inside = soundInBoxes(losses, links);
          for (const j of [0, 1, 2]) {
            expect(losses.reduce((sum, loss, i) => sum + loss * inside[i]![j]!, 0)).toBeCloseTo(1, 9);
            for (const i of [0, 1, 2]) expect(inside[i]![j]).toBeCloseTo(inside[j]![i]!, 9);
          }
        },
      ),
    );
  });

  it('exact: a box from which nothing can go is refused', () => {
    expect(() => soundInBoxes([0], [])).toThrow('soundInBoxes: loss is 0');
    expect(() => boxInsertionLoss(1, 0)).toThrow('boxInsertionLoss: letThrough is 0');
    expect(() => buildUp(1, 1, 1.2)).toThrow('buildUp: absorption is 1.2');
  });
});
