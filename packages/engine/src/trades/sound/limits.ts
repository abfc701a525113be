// Every limit that the sound trade holds against a day.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor, ownLimit } from '../person-limit.ts';

const HOUR = 3600;

/** Night, s after midnight. WHO 1999 speaks of eight hours; these are the usual ones. */
export const NIGHT: readonly [number, number] = [22 * HOUR, 30 * HOUR];
export const BY_DAY: readonly [number, number] = [6 * HOUR, 22 * HOUR];

/** Mean level at a person's place over the hours in which they are there. */
export function meanNoiseLimit(cabinet: Cabinet, when: 'day' | 'night'): Limit {
  return limitFor(
    cabinet,
    when === 'day'
      ? {
          id: 'noise',
          kind: 'at-most',
          value: 35,
          source: 'WHO, Guidelines for Community Noise (1999), dwellings, indoors by day: 35 dB LAeq over 16 h (read)',
          standing: 'living room',
        }
      : {
          id: 'noise-night',
          kind: 'at-most',
          value: 30,
          source: 'WHO, Guidelines for Community Noise (1999), bedrooms at night: 30 dB LAeq over 8 h (read)',
          standing: 'living room',
        },
  );
}

/** What a person wants in some hours, at any moment. */
export function quietLimit(person: string, limitDbA: number): Limit {
  return {
    id: 'quiet',
    kind: 'at-most',
    value: limitDbA,
    source: `people.${person}.quiet of the cabinet file`,
    standing: 'own',
  };
}

/** Free-field level of all fans together at 1 m; only the person can say how loud is too loud. */
export function fanNoiseLimit(cabinet: Cabinet, when: 'day' | 'night'): Limit | undefined {
  return ownLimit(cabinet, when === 'day' ? 'fan-noise' : 'fan-noise-night', 'at-most');
}
