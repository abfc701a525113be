// A heated bed: what it loses at a temperature. Its power is never a constant; it falls as the bay around it warms.

import { airConductivity, airPrandtl } from './air.ts';
import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { naturalFilm } from './film-law.ts';
import { nusseltVerticalPlateLaminar, rayleighInAir } from './natural-convection.ts';
import { radiationToRoom } from './radiation.ts';

/** What a bed is, as far as its heat goes. */
export interface Bed {
  /** m, above 0. */
  readonly width: number;
  /** m, above 0. */
  readonly depth: number;
  /** Height of the bare rim, m, above 0; about 0.006. */
  readonly rim: number;
  /** 0 to 1; coated sheets about 0.9 (memory). */
  readonly topEmissivity: number;
  /** 0 to 1; bare metal about 0.3 when it is used (memory). */
  readonly rimEmissivity: number;
  /** Of the outermost face below, 0 to 1: foam about 0.9, bare aluminium about 0.2 (memory). */
  readonly undersideEmissivity: number;
  /** Resistance of the insulation below, m²·K/W, 0 or more; 0 where the underside is bare. */
  readonly undersideResistance: number;
  /**
   * What moving, a part's fan and cables add to all losses, 1 or more. Beds in use lose 1.1 to 1.4 times what a still one
   * does (common practice, no source).
   */
  readonly stirring: number;
}

/** Where a bed's heat goes, W. */
export interface BedLoss {
  readonly topConvection: number;
  readonly topRadiation: number;
  readonly rim: number;
  readonly underside: number;
  readonly total: number;
}

/**
 * Heat that a bed loses at a temperature, W; it is what holds it there.
 *
 *     loss = stirring · ( top: h A (Tb - Ta) + eps sigma A (Tb⁴ - Tr⁴);  rim: the same upright;
 *            underside: the same facing down, behind its insulation )
 *
 * @param bed - The bed.
 * @param bedKelvin - Tb, K, above 0.
 * @param airKelvin - Ta, air around it, K, above 0.
 * @param radiantKelvin - Tr, mean of what it sees, K, above 0; inside a bay the star's node.
 * @returns Losses by face; negative where the surroundings are warmer.
 * @throws RangeError when a size, an emissivity or a temperature is out of bounds.
 *
 * @remarks
 * Valid: as `filmLaw` over area / perimeter. The published fits for a hot face up spread by -38 % to +30 %: carry ±25 % and
 *   settle it with a log.
 * Source: McAdams 1954, Churchill and Chu 1975, grey radiation; sharing out over the faces is this program's own.
 * Checked: against an independent script; single correlations second-hand.
 *
 * @example A bed of 235 mm at 60 °C over 10 mm of foam, in a bay of 25 °C and of 35 °C
 * ```ts
 * const bed = { width: 0.235, depth: 0.235, rim: 0.006, topEmissivity: 0.9, rimEmissivity: 0.3, undersideEmissivity: 0.9, undersideResistance: 0.25, stirring: 1 };
 * bedLoss(bed, 333.15, 298.15, 298.15).total; // => 34
 * bedLoss(bed, 333.15, 308.15, 308.15).total; // => 24
 * ```
 */
export function bedLoss(bed: Bed, bedKelvin: number, airKelvin: number, radiantKelvin: number): BedLoss {
  mustBeBed(bed);
  const { width, depth, rim, stirring } = bed;
  const area = width * depth;
  const perimeter = 2 * (width + depth);
  const topFilm = naturalFilm('faces-up', area / perimeter, bedKelvin, airKelvin);
  const topConvection = stirring * topFilm * area * (bedKelvin - airKelvin);
  const topRadiation = stirring * radiationToRoom(bed.topEmissivity, area, bedKelvin, radiantKelvin);
  const rimConvection = rimFilm(rim, bedKelvin, airKelvin) * rim * perimeter * (bedKelvin - airKelvin);
  const rimRadiation = radiationToRoom(bed.rimEmissivity, rim * perimeter, bedKelvin, radiantKelvin);
  const rimLoss = stirring * (rimConvection + rimRadiation);
  const underside = stirring * area * undersideFlux(bed, bedKelvin, airKelvin, radiantKelvin);
  const total = topConvection + topRadiation + rimLoss + underside;
  return { topConvection, topRadiation, rim: rimLoss, underside, total };
}

/** The rim is so low that its layer is laminar and thick: the laminar fit, not the one that joins turbulence. */
function rimFilm(height: number, bedKelvin: number, airKelvin: number): number {
  const film = (bedKelvin + airKelvin) / 2;
  const rayleigh = rayleighInAir(height, bedKelvin - airKelvin, film);
  return (nusseltVerticalPlateLaminar(rayleigh, airPrandtl(film)) * airConductivity(film)) / height;
}

/** W/m² through the underside; with insulation its outer face lies where as much arrives as leaves. */
function undersideFlux(bed: Bed, bedKelvin: number, airKelvin: number, radiantKelvin: number): number {
  const size = (bed.width * bed.depth) / (2 * (bed.width + bed.depth));
  const leaving = (face: number) =>
    naturalFilm('faces-down', size, face, airKelvin) * (face - airKelvin) +
    radiationToRoom(bed.undersideEmissivity, 1, face, radiantKelvin);
  if (bed.undersideResistance === 0) return leaving(bedKelvin);
  let low = Math.min(bedKelvin, airKelvin, radiantKelvin);
  let high = Math.max(bedKelvin, airKelvin, radiantKelvin);
  for (let step = 0; step < 50; step++) {
    const face = (low + high) / 2;
    if (leaving(face) < (bedKelvin - face) / bed.undersideResistance) low = face;
    else high = face;
  }
  return leaving((low + high) / 2);
}

function mustBeBed(bed: Bed): void {
  mustBePositive('bedLoss', 'width', bed.width);
  mustBePositive('bedLoss', 'depth', bed.depth);
  mustBePositive('bedLoss', 'rim', bed.rim);
  mustLieWithin('bedLoss', 'rimEmissivity', bed.rimEmissivity, 0, 1);
  mustLieWithin('bedLoss', 'topEmissivity', bed.topEmissivity, 0, 1);
  mustLieWithin('bedLoss', 'undersideEmissivity', bed.undersideEmissivity, 0, 1);
  mustNotBeNegative('bedLoss', 'undersideResistance', bed.undersideResistance);
  mustLieWithin('bedLoss', 'stirring', bed.stirring, 1, 10);
}

/** One sheet of a bed or of a board. */
export interface Sheet {
  /** m, 0 or more. */
  readonly thickness: number;
  /** kg/m³, above 0. */
  readonly density: number;
  /** J/(kg·K), above 0. */
  readonly heatCapacity: number;
}

/**
 * Heat capacity of sheets that lie on one another, J/K.
 *
 *     C = A · sum of d rho c
 *
 * @param area - A, m², 0 or more.
 * @param sheets - The sheets.
 * @returns Heat capacity.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: all sheets share one temperature.
 * Source: definition.
 * Checked: exact.
 *
 * @example 3 mm of aluminium and 0.5 mm of steel, 235 mm square
 * ```ts
 * const aluminium = { thickness: 0.003, density: 2700, heatCapacity: 900 };
 * const steel = { thickness: 0.0005, density: 7850, heatCapacity: 460 };
 * sheetsCapacity(0.235 ** 2, [aluminium, steel]); // => 502
 * ```
 */
export function sheetsCapacity(area: number, sheets: readonly Sheet[]): number {
  mustNotBeNegative('sheetsCapacity', 'area', area);
  return sheets.reduce((sum, { thickness, density, heatCapacity }) => {
    mustNotBeNegative('sheetsCapacity', 'a thickness', thickness);
    mustBePositive('sheetsCapacity', 'a density', density);
    mustBePositive('sheetsCapacity', 'a heat capacity', heatCapacity);
    return sum + area * thickness * density * heatCapacity;
  }, 0);
}

/** Simpson intervals of a warm-up or cool-down: the loss is smooth, and 64 leave an error below a millisecond in an hour. */
const INTERVALS = 64;

/**
 * Time that a bed takes from one temperature to another at a constant power in unchanging surroundings, s.
 *
 *     t = integral of C dT / (P - loss(T))
 *
 * @param bed - The bed.
 * @param capacity - C, J/K, above 0.
 * @param power - P, W, 0 or more; 0 to cool down.
 * @param fromKelvin - K, above 0.
 * @param toKelvin - K, above 0.
 * @param surroundingKelvin - Air and radiant temperature, K, above 0.
 * @returns Time, s; Infinity when the power does not suffice or the bed goes the other way.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: the bed has one temperature; the bay around it does not warm meanwhile.
 * Source: heat balance, Simpson's rule.
 * Checked: against an independent script.
 *
 * @example From 100 °C to 60 °C in 25 °C over foam: about six minutes
 * ```ts
 * const bed = { width: 0.235, depth: 0.235, rim: 0.006, topEmissivity: 0.9, rimEmissivity: 0.3, undersideEmissivity: 0.9, undersideResistance: 0.25, stirring: 1 };
 * bedChangeTime(bed, 502, 0, 373.15, 333.15, 298.15) / 60; // => 6
 * ```
 */
export function bedChangeTime(
  bed: Bed,
  capacity: number,
  power: number,
  fromKelvin: number,
  toKelvin: number,
  surroundingKelvin: number,
): number {
  mustBePositive('bedChangeTime', 'capacity', capacity);
  mustNotBeNegative('bedChangeTime', 'power', power);
  const step = (toKelvin - fromKelvin) / INTERVALS;
  if (step === 0) return 0;
  let sum = 0;
  for (let at = 0; at <= INTERVALS; at++) {
    const kelvin = fromKelvin + at * step;
    const net = power - bedLoss(bed, kelvin, surroundingKelvin, surroundingKelvin).total;
    if (!(net * step > 0)) return Infinity;
    const weight = at === 0 || at === INTERVALS ? 1 : 2 + 2 * (at % 2);
    sum += weight / net;
  }
  return (capacity * step * sum) / 3;
}
