import { describe, expect, it } from 'vitest';
import type { Bay } from './cabinet.ts';
import { bayVolume, piecesOf } from './geometry.ts';

const inside = { width: 1.2, depth: 0.5, height: 1.6 };
const bay = (x: [number, number], z: [number, number]): Bay => ({ x, z, airZones: 2 });

describe('pieces of a bay', () => {
  it('exact: one bay alone sees its six faces and nothing else', () => {
    const pieces = piecesOf({ inside, bays: { only: bay([0, 1.2], [0, 1.6]) } });
    expect(pieces.map(({ face }) => face)).toEqual(['front', 'back', 'left', 'right', 'bottom', 'top']);
    expect(pieces.every(({ behind }) => behind.kind === 'outside')).toBe(true);
  });

  it('property: the areas of a bay add up to its box, however its neighbours cut it', () => {
    const bays = {
      left: bay([0, 0.38], [0, 1.0]),
      right: bay([0.4, 1.2], [0, 1.0]),
      loft: bay([0, 1.2], [1.02, 1.6]),
    };
    const pieces = piecesOf({ inside, bays });
    for (const [id, { x, z }] of Object.entries(bays)) {
      const [w, d, h] = [x[1] - x[0], inside.depth, z[1] - z[0]];
      const sum = pieces.filter((piece) => piece.bay === id).reduce((total, { area }) => total + area, 0);
      expect(sum).toBeCloseTo(2 * (w * d + w * h + d * h), 12);
    }
  });

  it('exact: two bays share the same area seen from either side', () => {
    const bays = {
      low: bay([0, 1.2], [0, 0.8]),
      left: bay([0, 0.5], [0.82, 1.6]),
      right: bay([0.52, 1.2], [0.82, 1.6]),
    };
    const pieces = piecesOf({ inside, bays });
    const shared = (a: string, b: string) =>
      pieces
        .filter(({ bay: id, behind }) => id === a && behind.kind === 'bay' && behind.bay === b)
        .reduce((total, { area }) => total + area, 0);
    for (const [a, b] of [
      ['low', 'left'],
      ['low', 'right'],
      ['left', 'right'],
    ] as const) {
      expect(shared(a, b)).toBeGreaterThan(0);
      expect(shared(a, b)).toBeCloseTo(shared(b, a), 12);
    }
    // The board's end between the two upper bays (20 mm) belongs to the lower bay's outside.
    expect(shared('low', 'left') + shared('low', 'right')).toBeCloseTo((0.5 + 0.68) * 0.5, 12);
  });

  it('exact: volume', () => {
    expect(bayVolume(bay([0, 1], [0, 0.5]), 0.4)).toBeCloseTo(0.2, 12);
  });
});
