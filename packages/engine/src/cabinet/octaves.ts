// Octave bands from a few points of a curve over frequency.

import { octaveBands } from '@stillair/physics';
import type { Profile } from '../units/profile.ts';
import type { Octaves } from './sound.ts';

/**
 * Values at the eight octave bands: straight in the logarithm of frequency, held beyond the last point; below the first one it
 * falls by `slope` an octave.
 */
export function octavesFrom(points: Profile, slope: number = 0): Octaves {
  return octaveBands.map((band) => {
    const above = points.findIndex(([frequency]) => frequency >= band);
    if (above < 0) return points.at(-1)![1];
    const [high, value] = points[above]!;
    if (above === 0) return value - slope * Math.log2(high / band);
    const [low, before] = points[above - 1]!;
    return before + ((value - before) * Math.log2(band / low)) / Math.log2(high / low);
  });
}
