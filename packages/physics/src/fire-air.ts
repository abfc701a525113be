// Air that a fully burning box draws through its openings, and with it the largest fire that they can feed.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Constant c of Kawagoe's law m = c A √H, kg/(s m^2.5). Source: Kawagoe 1958; checked: second-hand. */
export const OPENING_AIR = 0.5;

/** Density of cold against hot gas in a burning box: 800 °C in a room of 20 °C. The flow hardly depends on it between 2 and 5. */
const DENSITY_RATIO = 1073.15 / 293.15;

/**
 * Air that one upright opening brings to a fully developed fire behind it: m = 0.5 A √H.
 *
 * @param area - A, m², 0 or more.
 * @param height - H of the opening, m, 0 or more.
 * @param constant - c, kg/(s m^2.5), above 0; authors give 0.4 to 0.6.
 * @returns kg/s; times 3.03 MJ/kg the heat that it can feed, about 1.5 A √H in MW.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: one opening, hot gas of one temperature from floor to ceiling. Cracks obey it roughly: friction makes it less.
 * Source: Kawagoe 1958, as in lecture texts and in Fire Technology 2022, doi:10.1007/s10694-022-01218-1. Checked: second-hand.
 *
 * @example A vent of 200 mm by 100 mm, and an open door of 0.6 m by 1.2 m, g/s
 * ```ts
 * 1000 * openingAir(0.02, 0.1); // => 3.16
 * 1000 * openingAir(0.72, 1.2); // => 394
 * ```
 */
export function openingAir(area: number, height: number, constant: number = OPENING_AIR): number {
  mustNotBeNegative('openingAir', 'area', area);
  mustNotBeNegative('openingAir', 'height', height);
  mustBePositive('openingAir', 'constant', constant);
  return constant * area * Math.sqrt(height);
}

/** An opening between its lower and upper edge; of a level hole both are the same. */
export interface FireOpening {
  readonly area: number;
  readonly from: number;
  readonly to: number;
}

/**
 * Air that several openings at different heights bring to a fire that fills a box: hot gas leaves above a level at which inside
 * and outside press alike, air comes in below it. One opening alone gives Kawagoe's law; a low and a high one together draw far
 * more than each by itself, as a chimney does.
 *
 *     air in  = K Σ ∫ w √(z_n − z) dz below z_n   =   out = K Σ ∫ w √((z − z_n)/r) dz above it
 *
 * | symbol | meaning                                             | unit |
 * | ------ | --------------------------------------------------- | ---- |
 * | z_n    | level at which inside and outside press alike       | m    |
 * | r      | density of cold against hot gas, 3.66               | -    |
 * | K      | so that one opening gives c A √H: 1.5 c (1 + ∛r)^1.5 | kg/(s m^2.5) |
 *
 * @param openings - Areas (m², 0 or more) and edges (m, `from` not above `to`).
 * @param constant - c, as for `openingAir`.
 * @param densityRatio - r, above 1.
 * @returns kg/s of air; 0 when all openings lie at one level.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: the whole box full of gas of one temperature; mass of the fuel left out. An upper bound for what burns inside.
 * Source: Rockett, Combust. Sci. Technol. 12 (1976) 165, for one opening; the same balance for several. Checked: exact.
 *
 * @example Two holes of 50 cm², 1.2 m above one another: eleven times what one upright square of 50 cm² draws
 * ```ts
 * 1000 * hotBoxAir([{ area: 0.005, from: 0.1, to: 0.1 }, { area: 0.005, from: 1.3, to: 1.3 }]); // => 7.71
 * ```
 */
export function hotBoxAir(
  openings: readonly FireOpening[],
  constant: number = OPENING_AIR,
  densityRatio: number = DENSITY_RATIO,
): number {
  mustBePositive('hotBoxAir', 'constant', constant);
  mustBePositive('hotBoxAir', 'densityRatio - 1', densityRatio - 1);
  for (const { area, from, to } of openings) {
    mustNotBeNegative('hotBoxAir', 'area', area);
    mustNotBeNegative('hotBoxAir', 'to - from', to - from);
  }
  const open = openings.filter(({ area }) => area > 0);
  let low = Math.min(...open.map(({ from }) => from));
  let high = Math.max(...open.map(({ to }) => to));
  if (open.length === 0 || !(high > low)) return 0;
  const factor = 1.5 * constant * (1 + Math.cbrt(densityRatio)) ** 1.5;
  const inward = (level: number): number => open.reduce((sum, opening) => sum + below(opening, level), 0);
  const outward = (level: number): number =>
    open.reduce((sum, { area, from, to }) => sum + below({ area, from: -to, to: -from }, -level), 0) /
    Math.sqrt(densityRatio);
  for (let halving = 0; halving < 48; halving += 1) {
    const level = (low + high) / 2;
    if (inward(level) < outward(level)) low = level;
    else high = level;
  }
  return factor * inward(high);
}

/** ∫ w √(level − z) dz over the part of an opening that lies below a level. */
function below({ area, from, to }: FireOpening, level: number): number {
  if (level <= from) return 0;
  if (to === from) return area * Math.sqrt(level - from);
  const rest = Math.max(level - to, 0);
  return ((2 / 3) * area * ((level - from) ** 1.5 - rest ** 1.5)) / (to - from);
}
