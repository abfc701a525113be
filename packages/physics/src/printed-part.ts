// What a printed bracket bears: warmth by its glass transition, stiffness, and how warm it gets beside a hot bed.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { ICE_POINT } from './constants.ts';

export interface PrintedMaterial {
  /** Lower end of what is published as its glass transition, K. */
  readonly glassTransition: number;
  /** Stiffness in bending as printed, Pa; layers and infill make it a third less or more. */
  readonly modulus: number;
}

export type PrintedName = 'PLA' | 'PETG' | 'ABS' | 'ASA' | 'HIPS' | 'PA' | 'PC' | 'TPU';

/** Glass transitions: pages of polymer data (PLA 55 to 65 °C, PETG 70 to 80, ABS 90 to 105, ASA 100 to 105, PA 6 50 to 60, PC 145 to 150); the rest and all stiffness from memory. */
export const printedMaterials: Readonly<Record<PrintedName, PrintedMaterial>> = {
  PLA: { glassTransition: ICE_POINT + 55, modulus: 3.3e9 },
  PETG: { glassTransition: ICE_POINT + 70, modulus: 2e9 },
  ABS: { glassTransition: ICE_POINT + 90, modulus: 2.1e9 },
  ASA: { glassTransition: ICE_POINT + 100, modulus: 2e9 },
  HIPS: { glassTransition: ICE_POINT + 90, modulus: 1.9e9 },
  PA: { glassTransition: ICE_POINT + 50, modulus: 1.5e9 },
  PC: { glassTransition: ICE_POINT + 145, modulus: 2.2e9 },
  TPU: { glassTransition: ICE_POINT - 30, modulus: 3e7 },
};

/** Loaded parts creep from here below the glass transition, K. */
export const CREEP_MARGIN = 5;

/**
 * Warmest that a loaded printed part may get before it creeps: 5 K below the lower end of its glass transition.
 *
 * Semi-crystalline materials (PA) do not fall apart there: they lose half their stiffness and creep. TPU is soft anyway and
 * carries nothing.
 *
 * @param glassTransition - Lower end, K, above 0.
 * @returns K.
 * @throws RangeError when it is not above 0.
 *
 * @remarks
 * Valid: amorphous filaments under a lasting load. Source: common practice (PLA fails from 50, PETG from 65, ABS from 85 °C).
 * Checked: those three values.
 *
 * @example PLA
 * ```ts
 * creepLimit(328.15) - 273.15; // => 50
 * ```
 */
export function creepLimit(glassTransition: number): number {
  mustBePositive('creepLimit', 'glassTransition', glassTransition);
  return glassTransition - CREEP_MARGIN;
}

/**
 * How much warmer than the air a thin printed plate gets that faces a hot bed.
 *
 *     dT = F h_r (T_bed - T_air)/(2 h_c + 2 h_r)
 *
 * @param view - F from the plate to the bed, see `factorToDisk`, 0…1.
 * @param difference - Bed above air, K, 0 or more.
 * @param radiative - h_r, W/(m² K), above 0; 6.5 near 60 °C with both faces near black.
 * @param convective - h_c of one face, W/(m² K), above 0; 5 in still air.
 * @returns K.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: a plate that loses heat on both faces, its surroundings as warm as the air. The bed's plume is not in it.
 * Source: heat balance of both faces, linearised. Checked: limits.
 *
 * @example Half of its view is a bed 60 K above the air
 * ```ts
 * besideBed(0.5, 60); // => 8.48
 * ```
 */
export function besideBed(view: number, difference: number, radiative = 6.5, convective = 5): number {
  mustLieWithin('besideBed', 'view', view, 0, 1);
  mustNotBeNegative('besideBed', 'difference', difference);
  mustBePositive('besideBed', 'radiative', radiative);
  mustBePositive('besideBed', 'convective', convective);
  return (view * radiative * difference) / (2 * convective + 2 * radiative);
}
