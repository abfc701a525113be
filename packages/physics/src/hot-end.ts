// Hot end and the other small heats of a machine: melting, the hot end's block, motors, the power supply. All of it ends in the bay's air.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/**
 * Heat that leaves with the molten filament, W.
 *
 *     q = V rho c dT
 *
 * @param volumeFlow - V, m³/s, 0 or more; 5 mm³/s is 5e-9.
 * @param density - rho, kg/m³, above 0; styrene plastics about 1040.
 * @param heatCapacity - c, J/(kg·K), above 0, the mean over the rise; about 2000.
 * @param rise - dT from spool to nozzle, K.
 * @returns Heat; the melting heat of part-crystalline plastics (up to 100 kJ/kg) is not in it.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: plastics without a melting point.
 * Source: heat balance.
 * Checked: against an independent script.
 *
 * @example Styrene plastic at 5 mm³/s
 * ```ts
 * meltPower(5e-9, 1040, 2000, 215); // => 2.2
 * ```
 */
export function meltPower(volumeFlow: number, density: number, heatCapacity: number, rise: number): number {
  mustNotBeNegative('meltPower', 'volumeFlow', volumeFlow);
  mustBePositive('meltPower', 'density', density);
  mustBePositive('meltPower', 'heatCapacity', heatCapacity);
  mustBeFinite('meltPower', 'rise', rise);
  return volumeFlow * density * heatCapacity * rise;
}

/**
 * Heat that a hot end's block gives to the air around it, W.
 *
 *     q = h A dT
 *
 * @param film - h, convection and radiation together, W/(m²·K), 0 or more; 12 to 20 for a bare block (memory).
 * @param area - A, m², 0 or more; 12 to 25 cm² (memory).
 * @param rise - dT over the air, K.
 * @returns Heat. A part's fan that blows on it adds 2 to 5 W, the heat break another 2 to 5 W (memory).
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: an order of magnitude; a whole hot end takes 12 to 30 W at 210 °C to 260 °C.
 * Source: Newton's law; ranges are common practice, no source.
 * Checked: memory.
 *
 * @example A bare block of 15 cm² at 240 °C in 40 °C
 * ```ts
 * blockLoss(16, 15e-4, 200); // => 4.8
 * ```
 */
export function blockLoss(film: number, area: number, rise: number): number {
  mustNotBeNegative('blockLoss', 'film', film);
  mustNotBeNegative('blockLoss', 'area', area);
  mustBeFinite('blockLoss', 'rise', rise);
  return film * area * rise;
}

/**
 * Heat that a power supply keeps for itself, W.
 *
 *     q = P_out (1/eta - 1) + P_idle
 *
 * @param output - P_out, W, 0 or more.
 * @param efficiency - eta at that output, above 0, to 1; 0.85 to 0.91 is common (memory).
 * @param idle - P_idle, W, 0 or more; 3 W unless given (memory).
 * @returns Heat where the supply stands.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: above a fifth of the rated output; below, efficiency falls.
 * Source: definition of efficiency.
 * Checked: against values by hand.
 *
 * @example 150 W at 0.88
 * ```ts
 * supplyLoss(150, 0.88); // => 23.5
 * ```
 */
export function supplyLoss(output: number, efficiency: number, idle = 3): number {
  mustNotBeNegative('supplyLoss', 'output', output);
  mustBePositive('supplyLoss', 'efficiency', efficiency);
  mustLieWithin('supplyLoss', 'efficiency', efficiency, 0, 1);
  mustNotBeNegative('supplyLoss', 'idle', idle);
  return output * (1 / efficiency - 1) + idle;
}

/**
 * Heat of the copper of a two-phase stepper motor, W.
 *
 *     q = 2 I² R
 *
 * @param current - I, effective current of one phase, A, 0 or more.
 * @param resistance - R of one phase, ohm, 0 or more.
 * @returns Heat; about the same when the motor holds still as when it turns. Its driver adds about 1 W (memory).
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: iron losses left out; they count above a few turns a second.
 * Source: Joule's law.
 * Checked: against values by hand.
 *
 * @example 1 A in 2 ohm
 * ```ts
 * motorLoss(1, 2); // => 4
 * ```
 */
export function motorLoss(current: number, resistance: number): number {
  mustNotBeNegative('motorLoss', 'current', current);
  mustNotBeNegative('motorLoss', 'resistance', resistance);
  return 2 * current * current * resistance;
}
