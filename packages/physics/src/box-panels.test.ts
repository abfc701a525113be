import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxSize, skinJoints, skinPanels } from './box-panels.ts';

const inside = { width: 0.6, depth: 0.6, height: 0.7 };
const areaOf = (offset: number, thickness: number): number =>
  skinPanels(inside, offset, thickness).reduce((sum, { length, width }) => sum + length * width, 0);
const millimetres = (offset: number, thickness: number): string[] =>
  skinPanels(inside, offset, thickness).map(
    ({ face, length, width }) => `${face} ${Math.round(length * 1000)} x ${Math.round(width * 1000)}`,
  );
const volume = ({ width, depth, height }: BoxSize): number => width * depth * height;

describe('panels of a box', () => {
  it('exact: a double skin of 12 mm with a cavity of 30 mm round 600 × 700 × 600 mm', () => {
    expect(millimetres(0, 0.012)).toEqual([
      'top 624 x 600',
      'bottom 624 x 600',
      'left 600 x 700',
      'right 600 x 700',
      'back 624 x 724',
    ]);
    expect(millimetres(0.042, 0.012)).toEqual([
      'top 708 x 642',
      'bottom 708 x 642',
      'left 642 x 784',
      'right 642 x 784',
      'back 708 x 808',
    ]);
    expect(areaOf(0, 0.012) + areaOf(0.042, 0.012)).toBeCloseTo(4.5284, 4);
    expect(0.012 * (areaOf(0, 0.012) + areaOf(0.042, 0.012)) * 1e9).toBeCloseTo(54_340_416, 0);
  });

  it('exact: boards and hollow together are the whole box: no corner is counted twice or not at all', () => {
    const size = fc.double({ min: 0.2, max: 2, noNaN: true });
    const thin = fc.double({ min: 0.003, max: 0.05, noNaN: true });
    fc.assert(
      fc.property(size, size, size, thin, thin, (width, depth, height, offset, thickness) => {
        const clear = { width: width + 2 * offset, depth: depth + offset, height: height + 2 * offset };
        const outer = {
          width: clear.width + 2 * thickness,
          depth: clear.depth + thickness,
          height: clear.height + 2 * thickness,
        };
        const panels = skinPanels({ width, depth, height }, offset, thickness);
        const boards = panels.reduce((sum, panel) => sum + panel.length * panel.width * thickness, 0);
        expect(boards / (volume(outer) - volume(clear))).toBeCloseTo(1, 9);
      }),
    );
  });

  it('exact: its joints are the rim of the back and the four edges', () => {
    expect(skinJoints(skinPanels(inside, 0, 0.012))).toBeCloseTo(2 * (0.624 + 0.724) + 4 * 0.6, 12);
    expect(() => skinJoints([])).toThrow('panels');
    expect(() => skinPanels(inside, 0, 0)).toThrow('thickness is 0');
  });
});
