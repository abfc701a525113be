import { describe, expect, it } from 'vitest';
import { betweenVolume, bore, disc, outlineArea, outlineRadius, plate, turnedVolume } from './shape.ts';

describe('solids of printed parts', () => {
  it('exact: a regular polygon has its area, and a bore is nowhere narrower than its circle', () => {
    expect(outlineArea(disc(10))).toBeCloseTo(48 * 100 * Math.sin((2 * Math.PI) / 96), 9);
    const sides = bore(10).map(([x, y], at, all) => {
      const [nx, ny] = all[(at + 1) % all.length]!;
      return Math.hypot((x + nx) / 2, (y + ny) / 2);
    });
    expect(Math.min(...sides)).toBeCloseTo(10, 9);
  });

  it('exact: between a square and one of half its sides lies the frustum of a pyramid', () => {
    expect(betweenVolume(plate(20, 20), plate(10, 10), 12)).toBeCloseTo((12 / 3) * (400 + 100 + 200), 9);
  });

  it('limit: between a circle and a square lies h/3 (pi r² + a² + 2 a r)', () => {
    const [r, a, h] = [10, 30, 15];
    const exact = (h / 3) * (Math.PI * r ** 2 + a ** 2 + 2 * a * r);
    expect(betweenVolume(disc(r, [0, 0], 2000), plate(a, a), h) / exact).toBeCloseTo(1, 5);
  });

  it('limit: in many steps, what is turned has the volume of Pappus', () => {
    const ring = disc(5, [40, 0], 400);
    expect(outlineRadius(ring)).toBeCloseTo(40, 9);
    expect(turnedVolume(ring, 90, 4000) / (Math.PI * 25 * 40 * (Math.PI / 2))).toBeCloseTo(1, 4);
  });
});
