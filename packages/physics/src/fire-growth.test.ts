import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fireGrowth, growingFire, timeToHeat, timeToPower } from './fire-growth.ts';

describe('growing fires', () => {
  it('exact: there and back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 0.1, max: 1e4, noNaN: true }),
        (a, t) => {
          expect(timeToPower(a, growingFire(a, t))).toBeCloseTo(t, 6);
          expect(timeToHeat(a, (a * t ** 3) / 3) / t).toBeCloseTo(1, 9);
        },
      ),
    );
  });

  it('cross: a sealed 0.735 m³ has used its 0.759 MJ after 58 s, at 39 kW; 10 kW have given 97 kJ (separate calculation)', () => {
    const end = timeToHeat(fireGrowth.medium, 0.759e6);
    expect(end).toBeCloseTo(58, 0);
    expect(growingFire(fireGrowth.medium, end) / 1000).toBeCloseTo(39, 0);
    expect((fireGrowth.medium * timeToPower(fireGrowth.medium, 10_000) ** 3) / 3 / 1000).toBeCloseTo(97, 0);
  });

  it('limit: nothing at the start; nonsense is refused', () => {
    expect(growingFire(1, 0)).toBe(0);
    expect(() => growingFire(0, 1)).toThrow('growth is 0');
    expect(() => timeToPower(1, -1)).toThrow('power is -1');
  });
});
