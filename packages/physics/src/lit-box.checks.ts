import type { Vector } from './configuration-factor.ts';
import { interreflect } from './interreflection.ts';
import { boxPatches, boxTransfer, elementFactors, lampOnElement, lampShares } from './lit-box.ts';
import type { OutsideCheck } from './outside-check.ts';

/** A bay of 0.6 x 0.6 x 0.7 m, a strip of 0.5 m and 500 lm under its ceiling, 30 mm behind the front. */
const size: Vector = [0.6, 0.6, 0.7];
const patches = boxPatches(size, 2);
const strip = {
  pieces: Array.from({ length: 5 }, (_, i): Vector => [0.05 + 0.1 * (i + 0.5), 0.03, 0.695]),
  normal: [0, 0, -1] as Vector,
};

/** Name; reflectance of floor, front and the rest; bed by radiosity and by rays; mean of the back wall; share that meets the floor. */
const interiors: readonly (readonly [string, number, number, number, number, number, number, number])[] = [
  ['matt black', 0.05, 0.05, 0.05, 235.5, 234.5, 110.5, 0.154],
  ['dark wood', 0.2, 0.2, 0.2, 267.2, 265.4, 148.4, 0.174],
  ['birch', 0.45, 0.45, 0.45, 369.5, 370.4, 257.9, 0.242],
  ['white', 0.8, 0.8, 0.8, 1007.4, 1001.8, 898.8, 0.688],
  ['white, black floor', 0.05, 0.8, 0.8, 704.5, 706.8, 534.6, 0.457],
  ['white, glass front', 0.8, 0.08, 0.8, 479.6, 478.9, 349.7, 0.325],
];

const kept = new Map<string, { bed: number; back: number; used: number }>();

function lit(name: string, floor: number, front: number, rest: number): { bed: number; back: number; used: number } {
  const known = kept.get(name);
  if (known !== undefined) return known;
  const rho = patches.map(({ face }) => (face === 'floor' ? floor : face === 'front' ? front : rest));
  const shares = lampShares(patches, strip);
  const direct = patches.map(({ area }, i) => (500 * shares[i]!) / area);
  const E = interreflect(direct, rho, boxTransfer(patches));
  const mean = (of: string): number => {
    const own = patches.flatMap(({ face }, i) => (face === of ? [E[i]!] : []));
    return own.reduce((sum, value) => sum + value, 0) / own.length;
  };
  const spots = [-1, 0, 1].flatMap((i) => [-1, 0, 1].map((j): Vector => [0.3 + i * 0.067, 0.3 + j * 0.067, 0]));
  const bed =
    spots.reduce((sum, at) => {
      const seen = elementFactors(patches, at, [0, 0, 1]);
      const thrown = seen.reduce((all, F, i) => all + F * rho[i]! * E[i]!, 0);
      return sum + 500 * lampOnElement(strip, at, [0, 0, 1]) + thrown;
    }, 0) / spots.length;
  const answer = { bed, back: mean('back'), used: (mean('floor') * 0.36) / 500 };
  kept.set(name, answer);
  return answer;
}

const RADIOSITY = 'radiosity of 600 patches (NumPy), by an independent script';
const RAYS = '400 000 random rays (NumPy), by an independent script';

export const checks: readonly OutsideCheck[] = interiors.flatMap(
  ([name, floor, front, rest, bed, rays, back, used]) => {
    const check = (
      what: string,
      source: string,
      expected: number,
      unit: string,
      share: number,
      of: 'bed' | 'back' | 'used',
    ): OutsideCheck => ({
      what: `bay, ${name}: ${what}`,
      formula: 'boxTransfer with interreflect',
      source,
      known: 'independent',
      expected,
      unit,
      tolerance: share * expected,
      got: () => lit(name, floor, front, rest)[of],
    });
    return [
      check('20 cm square in the middle of the floor', RADIOSITY, bed, 'lx', 0.04, 'bed'),
      check('20 cm square in the middle of the floor', RAYS, rays, 'lx', 0.04, 'bed'),
      check('mean of the back wall', RADIOSITY, back, 'lx', 0.04, 'back'),
      check('share of the light that the floor gets', RADIOSITY, used, '-', 0.04, 'used'),
    ];
  },
);
