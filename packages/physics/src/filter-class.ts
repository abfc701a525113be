// What the letters on a particle filter promise. A class holds for the medium in a tight seat: see `filter-bypass.ts`.

import type { TypicalRange } from './typical-range.ts';

/** A class of a filter standard. */
export interface FilterClass {
  readonly standard: string;
  /** Least share of particle number kept, at the particle size that passes best unless `at` says otherwise. */
  readonly efficiency: number;
  /** Least efficiency of any one spot of the medium, where the class has a leak test. */
  readonly local?: number;
  readonly at?: string;
}

const en1822 = (efficiency: number, local?: number): FilterClass => ({
  standard: 'EN 1822-1:2009',
  efficiency,
  ...(local === undefined ? {} : { local }),
});
const iso29463 = (efficiency: number): FilterClass => ({ standard: 'ISO 29463-1:2011', efficiency });
const iso16890 = (at: string): FilterClass => ({ standard: 'ISO 16890-1:2016', efficiency: 0.5, at });

/**
 * Classes by name. The particles of filament printing (20 to 100 nm) pass a high-efficiency medium less well than the
 * size that passes best (100 to 200 nm), so the class value is a floor for them.
 *
 * Source: EN 1822-1, ISO 29463 (read on pages that quote them; classes 15E to 30E from memory), ISO 16890 (read likewise).
 */
export const filterClasses: Readonly<Record<string, FilterClass>> = {
  E10: en1822(0.85),
  E11: en1822(0.95),
  E12: en1822(0.995),
  H13: en1822(0.9995, 0.9975),
  H14: en1822(0.99995, 0.99975),
  U15: en1822(0.999995, 0.999975),
  U16: en1822(0.9999995, 0.9999975),
  U17: en1822(0.99999995, 0.999999),
  '15E': iso29463(0.95),
  '20E': iso29463(0.99),
  '25E': iso29463(0.995),
  '30E': iso29463(0.999),
  '35H': iso29463(0.9995),
  '40H': iso29463(0.9999),
  '45H': iso29463(0.99995),
  '50U': iso29463(0.99999),
  '75U': iso29463(0.99999995),
  ePM1: iso16890('0.3 to 1 µm, new and discharged'),
  'ePM2.5': iso16890('0.3 to 2.5 µm, new and discharged'),
  ePM10: iso16890('0.3 to 10 µm, new'),
};

/**
 * Share of ultrafine number that an uncharged fine filter keeps (old classes of EN 779). Charged media start better
 * and lose it, so plan with these.
 *
 * Source: Shi & Ekberg, Chalmers (2009, 2011), read: F7 keeps 40 % and F8 50 % at the size that passes best, F7 65 to
 * 83 % of the total number above 5 nm outdoors. The centre and high end of F8 are our estimate.
 */
export const ULTRAFINE_ON_FINE_FILTER: Readonly<Record<'F7' | 'F8', TypicalRange>> = {
  F7: { low: 0.4, central: 0.65, high: 0.83 },
  F8: { low: 0.5, central: 0.7, high: 0.87 },
};
