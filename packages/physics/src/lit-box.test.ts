import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Vector } from './configuration-factor.ts';
import { stripIlluminance } from './illuminance.ts';
import { interreflect } from './interreflection.ts';
import { boxPatches, boxTransfer, elementFactors, lampOnElement, lampShares, obstructed } from './lit-box.ts';

const side = fc.double({ min: 0.2, max: 2, noNaN: true });
const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const sum = (numbers: readonly number[]): number => numbers.reduce((all, value) => all + value, 0);

describe('light in a box', () => {
  it('exact: all light that a patch or a lamp sends out arrives', () => {
    fc.assert(
      fc.property(side, side, side, share, share, share, (w, d, h, x, y, z) => {
        const patches = boxPatches([w, d, h], 2);
        const transfer = boxTransfer(patches);
        for (const [from, { area }] of patches.entries()) {
          const arrives = sum(patches.map((to, i) => (to.area * transfer[i]![from]!) / area));
          expect(arrives).toBeCloseTo(1, 8);
        }
        const lamp = { pieces: [[x * w, y * d, z * h] as Vector], normal: [0, -1, 0] as Vector };
        expect(sum(lampShares(patches, lamp))).toBeCloseTo(1, 8);
        expect(sum(elementFactors(patches, [x * w, y * d, z * h], [0, 0, 1]))).toBeCloseTo(1, 8);
      }),
      { numRuns: 30 },
    );
  });

  it('exact: what faces and machine swallow is what the lamp gives', () => {
    const patches = boxPatches([0.7, 0.6, 0.8], 3);
    const { transfer, hit } = obstructed(boxTransfer(patches), patches, 0.5);
    const shares = lampShares(patches, { pieces: [[0.35, 0.05, 0.79]], normal: [0, 0, -1] });
    const direct = [...patches.map(({ area }, i) => (1000 * (1 - hit) * shares[i]!) / area), (1000 * hit) / 0.5];
    const rho = [...patches.map((_, i) => 0.2 + (i % 7) * 0.1), 0.15];
    const lit = interreflect(direct, rho, transfer);
    const areas = [...patches.map(({ area }) => area), 0.5];
    expect(sum(lit.map((E, i) => E * areas[i]! * (1 - rho[i]!)))).toBeCloseTo(1000, 6);
  });

  it('cross: a strip in pieces is the strip of the closed form', () => {
    const pieces = Array.from({ length: 9 }, (_, i): Vector => [(i + 0.5) / 9 - 0.5, 0, 0.6]);
    const inPieces = 1000 * lampOnElement({ pieces, normal: [0, 0, -1] }, [0, 0, 0], [0, 0, 1]);
    expect(inPieces / stripIlluminance(1000, 0.6, 0.5, 0.5)).toBeCloseTo(1, 2);
  });

  it('limit: a lamp lights nothing behind it, nor the back of anything', () => {
    const lamp = { pieces: [[0, 0, 1] as Vector], normal: [0, 0, -1] as Vector };
    expect(lampOnElement(lamp, [0, 0, 2], [0, 0, -1])).toBe(0);
    expect(lampOnElement(lamp, [0, 0, 0], [0, 0, -1])).toBe(0);
  });

  it('limit: an empty box is not obstructed, and a dark machine never makes it brighter', () => {
    const patches = boxPatches([0.6, 0.6, 0.6], 2);
    const transfer = boxTransfer(patches);
    expect(obstructed(transfer, patches, 0).transfer[0]!.slice(0, -1)).toEqual(transfer[0]);
    const lit = (surface: number): number => {
      const { transfer: rows, hit } = obstructed(transfer, patches, surface);
      const direct = [...patches.map(() => 100 * (1 - hit)), 100];
      return interreflect(direct, [...patches.map(() => 0.8), 0.1], rows)[0]!;
    };
    expect(lit(0.3)).toBeLessThan(lit(0.1));
  });

  it('refuses boxes without extent', () => {
    expect(() => boxPatches([1, 0, 1], 2)).toThrow('a length is 0');
    expect(() => obstructed([], [], -1)).toThrow('surface is -1');
  });
});
