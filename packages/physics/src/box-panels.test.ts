import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type BoxSize, type ShellFace, type SkinFace, shellPanels, skinJoints, skinPanels } from './box-panels.ts';

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

describe('boards of a skin whose faces differ', () => {
  const face = (offset: number, thickness: number): SkinFace => ({ offset, thickness });
  const skin = (offset: number, thickness: number, front = 0): Readonly<Record<ShellFace, SkinFace>> => ({
    top: face(offset, thickness),
    bottom: face(offset, thickness),
    left: face(offset, thickness),
    right: face(offset, thickness),
    back: face(offset, thickness),
    front: face(0, front),
  });

  it('limit: alike all round they are those of a plain skin', () => {
    const sizes = shellPanels(inside, skin(0.042, 0.012)).map(({ face: name, from, to }) => {
      const [x, y, z] = [to[0] - from[0], to[1] - from[1], to[2] - from[2]];
      const [length, width] = name === 'back' ? [x, z] : name === 'left' || name === 'right' ? [y, z] : [x, y];
      return { face: name, length, width };
    });
    for (const [at, panel] of skinPanels(inside, 0.042, 0.012).entries()) {
      expect(sizes[at]!.face).toBe(panel.face);
      expect(sizes[at]!.length).toBeCloseTo(panel.length, 12);
      expect(sizes[at]!.width).toBeCloseTo(panel.width, 12);
    }
  });

  it('exact: they fill what lies between two boxes, front included', () => {
    const size = fc.integer({ min: 100, max: 3000 });
    const one = fc.record({ offset: fc.integer({ min: 0, max: 90 }), thickness: fc.integer({ min: 0, max: 60 }) });
    const faces = fc.record({ top: one, bottom: one, left: one, right: one, back: one, front: one });
    fc.assert(
      fc.property(size, size, size, faces, (width, depth, height, of) => {
        const box = (grown: (each: SkinFace) => number): number =>
          (width + grown(of.left) + grown(of.right)) *
          (depth + grown(of.front) + grown(of.back)) *
          (height + grown(of.top) + grown(of.bottom));
        const boards = shellPanels({ width, depth, height }, of).reduce(
          (sum, { from, to }) => sum + (to[0] - from[0]) * (to[1] - from[1]) * (to[2] - from[2]),
          0,
        );
        expect(boards).toBe(box(({ offset, thickness }) => offset + thickness) - box(({ offset }) => offset));
      }),
    );
  });

  it('exact: refuses what no skin is', () => {
    expect(() => shellPanels(inside, skin(-0.1, 0.01))).toThrow('offset of top');
    expect(() => shellPanels(inside, skin(0, -0.01))).toThrow('thickness of top');
  });
});
