// Fine particles as one mode: number and mass, sticking together, settling on surfaces.

import { airViscosity } from './air.ts';
import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import type { TypicalRange } from './typical-range.ts';

/** Boltzmann constant, J/K. Source: SI (exact since 2019). */
export const BOLTZMANN = 1.380649e-23;

/**
 * Mean mass of a particle of a lognormal size distribution (Hatch and Choate).
 *
 *     m = pi/6 rho d^3 exp(4.5 ln^2 s)
 *
 * @param medianDiameter - d: count median diameter, m, above 0. Filament printing: about 50 nm.
 * @param geometricDeviation - s: geometric standard deviation, 1 (all alike) or more. 1.6 to 1.8 is usual.
 * @param density - rho of the particles, kg/m³, above 0.
 * @returns kg.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: one mode. Few large particles carry most mass, so s matters more than anything.
 * Source: T. Hatch, S. P. Choate, J. Franklin Inst. 207 (1929) 369-387. Checked: formula (memory).
 *
 * @example 50 nm, spread 1.6
 * ```ts
 * meanParticleMass(50e-9, 1.6, 1000); // => 1.769e-19
 * ```
 */
export function meanParticleMass(medianDiameter: number, geometricDeviation: number, density: number): number {
  mustBePositive('meanParticleMass', 'medianDiameter', medianDiameter);
  mustLieWithin('meanParticleMass', 'geometricDeviation', geometricDeviation, 1, 100);
  mustBePositive('meanParticleMass', 'density', density);
  return (Math.PI / 6) * density * medianDiameter ** 3 * Math.exp(4.5 * Math.log(geometricDeviation) ** 2);
}

/**
 * Mean free path of air molecules at one atmosphere.
 *
 *     l = 65.1 nm (T/293.15) (1 + 110.4/293.15)/(1 + 110.4/T)
 *
 * @param kelvin - T, K, above 0.
 * @returns m.
 * @throws RangeError when the temperature is not above 0.
 *
 * @remarks Valid: near one atmosphere. Textbooks give 65 to 68 nm at 20 °C. Source: Willeke (1976); the start value from memory. Checked: memory.
 *
 * @example At 20 °C
 * ```ts
 * meanFreePath(293.15); // => 6.51e-8
 * ```
 */
export function meanFreePath(kelvin: number): number {
  mustBePositive('meanFreePath', 'kelvin', kelvin);
  return (65.1e-9 * (kelvin / 293.15) * (1 + 110.4 / 293.15)) / (1 + 110.4 / kelvin);
}

/**
 * Coagulation coefficient of equal spheres in air (Fuchs): dN/dt = -K N^2.
 *
 *     D = k T C/(3 pi mu d),  c = sqrt(8 k T/(pi m)),  l = 8 D/(pi c),  C = 1 + Kn (1.257 + 0.4 exp(-1.1/Kn)),  Kn = 2 l_g/d
 *     g = ((d + l)^3 - (d^2 + l^2)^(3/2))/(3 d l) - d
 *     K = 4 pi D d / ( d/(d + sqrt(2) g) + 8 D/(sqrt(2) c d) )
 *
 * @param diameter - d, m, above 0.
 * @param kelvin - T, K, above 0.
 * @param density - Of the particles, kg/m³, above 0.
 * @returns K in m³/s: half of the coefficient K_12 for the collisions of two kinds.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: 1 nm to 10 µm, spheres that stick, no charge.
 * Source: N. A. Fuchs, The Mechanics of Aerosols (1964); J. H. Seinfeld, S. N. Pandis, Atmospheric Chemistry and Physics, ch. 13.
 * Checked: formula (memory); values (memory, independent script).
 *
 * @example 50 nm at 20 °C
 * ```ts
 * coagulationCoefficient(50e-9, 293.15, 1000); // => 1.00e-15
 * ```
 */
export function coagulationCoefficient(diameter: number, kelvin: number, density: number): number {
  mustBePositive('coagulationCoefficient', 'diameter', diameter);
  mustBePositive('coagulationCoefficient', 'density', density);
  const thermal = BOLTZMANN * kelvin;
  const knudsen = (2 * meanFreePath(kelvin)) / diameter;
  const slip = 1 + knudsen * (1.257 + 0.4 * Math.exp(-1.1 / knudsen));
  const diffusion = (thermal * slip) / (3 * Math.PI * airViscosity(kelvin) * diameter);
  const speed = Math.sqrt((8 * thermal) / (Math.PI * meanParticleMass(diameter, 1, density)));
  const path = (8 * diffusion) / (Math.PI * speed);
  const jump = ((diameter + path) ** 3 - (diameter ** 2 + path ** 2) ** 1.5) / (3 * diameter * path) - diameter;
  const continuum = diameter / (diameter + Math.SQRT2 * jump);
  return (4 * Math.PI * diffusion * diameter) / (continuum + (8 * diffusion) / (Math.SQRT2 * speed * diameter));
}

/** A mixed box in which particles also stick together. */
export interface CoagulatingBox {
  /** Particles a second and m³ that are put in, 1/(s·m³). */
  readonly source: number;
  /** First-order losses together (air change, filter, deposition), 1/s. */
  readonly loss: number;
  /** K of {@link coagulationCoefficient}, m³/s; 0 leaves it out. */
  readonly coagulation: number;
}

/**
 * Number concentration that a box settles at: root of S - l N - K N^2 = 0.
 *
 *     N = 2 S/(l + sqrt(l^2 + 4 K S))
 *
 * @param box - All values 0 or more, loss and coagulation not both 0.
 * @returns Particles per m³.
 * @throws RangeError when a value is negative or nothing removes particles.
 *
 * @remarks Valid: K held at one size though particles grow. Source: balance. Checked: exact.
 *
 * @example 1e11 a minute into 0.5 m³ with 4.5 losses an hour, per cm³
 * ```ts
 * settledNumber({ source: 1e11 / 60 / 0.5, loss: 4.5 / 3600, coagulation: 1e-15 }) / 1e6; // => 1.30e6
 * ```
 */
export function settledNumber(box: CoagulatingBox): number {
  mustNotBeNegative('settledNumber', 'source', box.source);
  mustNotBeNegative('settledNumber', 'loss', box.loss);
  mustNotBeNegative('settledNumber', 'coagulation', box.coagulation);
  if (box.source === 0) return 0;
  mustBePositive('settledNumber', 'loss + coagulation', box.loss + box.coagulation);
  return (2 * box.source) / (box.loss + approach(box));
}

/**
 * Number concentration in a box after a time, exactly.
 *
 *     N = N_s + A e/(1 + K A (1 - e)/r),   A = N_0 - N_s,  r = sqrt(l^2 + 4 K S),  e = exp(-r t)
 *
 * @param box - As in {@link settledNumber}.
 * @param initial - N_0, 1/m³, 0 or more.
 * @param time - t, s, 0 or more.
 * @returns Particles per m³.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: as {@link settledNumber}. Source: solution of the Riccati equation. Checked: exact.
 *
 * @example A million per cm³ of 50 nm halves in 16.6 minutes by sticking together alone
 * ```ts
 * numberAfter({ source: 0, loss: 0, coagulation: 1.004e-15 }, 1e12, 16.6 * 60) / 1e12; // => 0.50
 * ```
 */
export function numberAfter(box: CoagulatingBox, initial: number, time: number): number {
  mustNotBeNegative('numberAfter', 'initial', initial);
  mustNotBeNegative('numberAfter', 'time', time);
  const settled = settledNumber(box);
  const rate = approach(box);
  const lag = rate === 0 ? time : -Math.expm1(-rate * time) / rate;
  const excess = initial - settled;
  return settled + (excess * Math.exp(-rate * time)) / (1 + box.coagulation * excess * lag);
}

function approach({ source, loss, coagulation }: CoagulatingBox): number {
  return Math.sqrt(loss ** 2 + 4 * coagulation * source);
}

/**
 * First-order loss of ultrafine particles to surfaces, 1/s. Theory for smooth walls gives a tenth and less of it.
 *
 * Source: our estimate from homes: 0.68 to 5.03 an hour by size with mixing fans (Lee, Wolfson et al., Environ. Sci.
 * Technol. 2014), 0.3 an hour with fans off (Howard-Reed, Wallace, Emmerich, NIST 2003), both read as abstracts.
 */
export const DEPOSITION: { readonly room: TypicalRange; readonly cabinet: TypicalRange } = {
  room: { low: 0.3 / 3600, central: 1 / 3600, high: 3 / 3600 },
  cabinet: { low: 0.1 / 3600, central: 0.5 / 3600, high: 5 / 3600 },
};
