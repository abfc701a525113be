import { describe, expect, it } from 'vitest';
import type { CabinetPath, Section } from '../cabinet/cabinet.ts';
import { holePieces } from './hole-pieces.ts';

const pathOf = (section: Section, z: number, face: CabinetPath['place']['face'] = 'back') => ({
  parts: [{ part: 'hole' as const, section, count: 1, dischargeCoefficient: 0.61 }],
  place: { face, along: 0.4, z },
});
const slot = { shape: 'rectangular', width: 0.3, height: 0.2 } as const;
const bay = { split: 0.43 };

describe('holePieces', () => {
  it('exact: a hole of 200 mm whose lower quarter lies below the border', () => {
    const [low, high] = holePieces(pathOf(slot, 0.48), [bay]);
    expect(low!.z).toBeCloseTo(0.405, 12);
    expect(low!.share).toBeCloseTo(0.25, 12);
    expect(high!.z).toBeCloseTo(0.505, 12);
    expect(high!.share).toBeCloseTo(0.75, 12);
  });

  it('property: pieces make up the hole, whatever borders it meets', () => {
    const pieces = holePieces(pathOf(slot, 0.48), [bay, { split: 0.5 }]);
    expect(pieces).toHaveLength(3);
    expect(pieces.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(pieces.reduce((sum, { share, z }) => sum + share * z, 0)).toBeCloseTo(0.48, 12);
  });

  it.each([
    ['beside the border', pathOf(slot, 0.6), [bay]],
    ['a bay with one air', pathOf(slot, 0.48), []],
    ['through a floor', pathOf(slot, 0.43, 'bottom'), [bay]],
    ['less than 20 mm high', pathOf({ ...slot, height: 0.019 }, 0.43), [bay]],
    ['two borders at one height, beside it', pathOf(slot, 0.7), [bay, bay]],
  ] as const)('limit: %s leaves it whole', (_, path, places) => {
    expect(holePieces(path, places)).toEqual([{ z: path.place.z, share: 1 }]);
  });

  it('limit: more than a hole in the way leaves it whole', () => {
    const { parts, place } = pathOf(slot, 0.48);
    const flap = { part: 'flap' as const, opensAt: 3, leakArea: 0 };
    expect(holePieces({ parts: [...parts, flap], place }, [bay])).toHaveLength(1);
  });
});
