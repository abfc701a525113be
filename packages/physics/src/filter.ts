// Pressure loss and loading of particle filters.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import type { Resistance } from './resistance.ts';
import type { TypicalRange } from './typical-range.ts';

/** Viscosity of air at 20 °C, at which media resistances are stated, Pa·s. Source: US Standard Atmosphere 1976. */
const STATED_VISCOSITY = 1.813e-5;

/** A pleated panel. */
export interface FilterPanel {
  /** R_m: pressure over velocity through the medium itself at 20 °C, Pa·s/m. See {@link MEDIA_RESISTANCE}. */
  readonly mediaResistance: number;
  /** phi: area of medium over area of the face, 1 (flat) to 25. */
  readonly pleating: number;
  /** K of pleats and frame on the face velocity, 2 to 10. */
  readonly frameLoss: number;
  /** Open face, m². */
  readonly faceArea: number;
}

/**
 * R_m of common media, Pa·s/m. Source: middle values common practice, from memory; the ends are our estimate, but the
 * highest for H13 is what 249 Pa at 0.03 m/s allows (cleanroom guide of the Lawrence Berkeley laboratory, read).
 */
export const MEDIA_RESISTANCE: Readonly<Record<'H13' | 'E11' | 'F9' | 'F7', TypicalRange>> = {
  H13: { low: 4500, central: 6000, high: 8300 },
  E11: { low: 2200, central: 3000, high: 4200 },
  F9: { low: 1000, central: 1400, high: 2000 },
  F7: { low: 650, central: 900, high: 1300 },
};

/**
 * Resistance of a pleated panel on volume flow.
 *
 *     dp = (R_m/phi)(mu/mu_20) v + K rho v^2/2,   v = V/A
 *
 * | symbol | meaning                       | unit   |
 * | ------ | ----------------------------- | ------ |
 * | R_m    | resistance of the medium      | Pa·s/m |
 * | phi    | pleating                      | -      |
 * | K      | loss of pleats and frame      | -      |
 * | v      | velocity on the face          | m/s    |
 *
 * @param panel - All values above 0, frame loss 0 or more.
 * @param rho - Density, kg/m³, above 0.
 * @param mu - Viscosity, Pa·s, above 0; that at 20 °C unless given. Warm air is stickier: 5 % at 40 °C.
 * @returns linear in Pa·s/m³ and quadratic in Pa·s²/m⁶.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: media velocity below 0.1 m/s. Source: Darcy's law for the medium, loss coefficient for the frame.
 * Checked: formula (memory); values (independent script).
 *
 * @example H13 panel of 0.2 x 0.2 m at 60 m³/h
 * ```ts
 * const panel = { mediaResistance: 6000, pleating: 15, frameLoss: 5, faceArea: 0.04 };
 * panelResistance(panel, 1.2).linear / 60; // => 166.7
 * ```
 */
export function panelResistance(panel: FilterPanel, rho: number, mu: number = STATED_VISCOSITY): Resistance {
  mustBePositive('panelResistance', 'mediaResistance', panel.mediaResistance);
  mustBePositive('panelResistance', 'pleating', panel.pleating);
  mustNotBeNegative('panelResistance', 'frameLoss', panel.frameLoss);
  mustBePositive('panelResistance', 'faceArea', panel.faceArea);
  mustBePositive('panelResistance', 'rho', rho);
  mustBePositive('panelResistance', 'mu', mu);
  return {
    linear: (panel.mediaResistance * mu) / (STATED_VISCOSITY * panel.pleating * panel.faceArea),
    quadratic: (0.5 * rho * panel.frameLoss) / panel.faceArea ** 2,
  };
}

/**
 * Pressure over a two-term resistance: dp = linear V + quadratic V|V|.
 *
 * @param resistance - From {@link panelResistance}, `gapResistance` or a data sheet.
 * @param flow - V, m³/s, any sign.
 * @returns Pa with the sign of the flow.
 * @throws RangeError when the flow is not finite.
 *
 * @remarks Valid, Source, Checked: as the maker of the resistance.
 *
 * @example The panel above, its frame included
 * ```ts
 * resistancePressure({ linear: 10000, quadratic: 1875 }, 60 / 3600); // => 167.2
 * ```
 */
export function resistancePressure({ linear, quadratic }: Resistance, flow: number): number {
  mustBeFinite('resistancePressure', 'flow', flow);
  return flow * (linear + quadratic * Math.abs(flow));
}

/**
 * Trend of a medium's penetration with its velocity, where particles are caught by diffusion (below about 100 nm).
 *
 *     ln P ~ v^(-2/3)   =>   P_2 = P_1^((v_1/v_2)^(2/3))
 *
 * A trend only. Do not credit the gain of a slow flow where people's health hangs on it: the seat decides first.
 *
 * @param penetration - P_1: share that passes, above 0, below 1.
 * @param speedRatio - v_2/v_1, above 0.
 * @returns P_2.
 * @throws RangeError when an argument is outside.
 *
 * @remarks Valid: 20 to 100 nm, fibrous media. Source: single-fibre theory (e.g. Hinds, Aerosol Technology). Checked: formula (memory).
 *
 * @example H13 medium at half its rated velocity
 * ```ts
 * penetrationAtSpeed(5e-4, 0.5); // => 5.75e-6
 * ```
 */
export function penetrationAtSpeed(penetration: number, speedRatio: number): number {
  mustLieWithin('penetrationAtSpeed', 'penetration', penetration, Number.MIN_VALUE, 1);
  mustBePositive('penetrationAtSpeed', 'speedRatio', speedRatio);
  return penetration ** (speedRatio ** (-2 / 3));
}

/**
 * Factor on a filter's clean pressure loss as it loads: b^M.
 *
 * @param finalOverClean - b: pressure at the end of life over that of the clean filter, 1 or more. 2 is common.
 * @param loaded - M: mass caught over rated capacity, 0 or more.
 * @returns Factor, 1 for a clean filter.
 * @throws RangeError when an argument is outside.
 *
 * @remarks
 * Valid: dry dust. Liquid, tarry aerosol also raises penetration. Source: Li et al. (2022) as used in a public library of
 * building models by IBPSA project 1. Checked: formula (read).
 *
 * @example Half loaded
 * ```ts
 * loadingFactor(2, 0.5); // => 1.414
 * ```
 */
export function loadingFactor(finalOverClean: number, loaded: number): number {
  mustLieWithin('loadingFactor', 'finalOverClean', finalOverClean, 1, Number.MAX_VALUE);
  mustNotBeNegative('loadingFactor', 'loaded', loaded);
  return finalOverClean ** loaded;
}
