// A cabinet in a room: two mixed zones, solved exactly. The day's solver works step by step; this is its second opinion.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** Cabinet with a source, filters and leaks, in a room with fresh air. Amounts may be kilograms or particles. */
export interface CabinetAndRoom {
  /** m³ each. */
  readonly cabinetVolume: number;
  readonly roomVolume: number;
  /** Amount a second, put into the cabinet. */
  readonly source: number;
  /** Blown out of the cabinet through a filter into the room, m³/s; the same flows in from the room. */
  readonly exhaust: number;
  /** Share that the exhaust's filter keeps; 1 when the exhaust leads outdoors. */
  readonly exhaustEfficiency: number;
  /** Exchange through leaks, m³/s each way. */
  readonly leakage: number;
  /** Through a filter inside the cabinet and back, m³/s. */
  readonly recirculation: number;
  readonly recirculationEfficiency: number;
  /** First-order losses to surfaces, 1/s. */
  readonly cabinetDeposition: number;
  readonly roomDeposition: number;
  /** Outdoor air through the room, m³/s, and its concentration. */
  readonly outdoorAir: number;
  readonly outdoorConcentration: number;
  /** Clean air from a cleaner in the room, m³/s. */
  readonly roomCleaning: number;
}

/** Concentrations, amount per m³. */
export interface TwoConcentrations {
  readonly cabinet: number;
  readonly room: number;
}

/**
 * Concentrations that cabinet and room settle at.
 *
 *     0 = E + (Q + q) C_r - a C_c                    a = Q + q + eta_r Q_r + beta_c V_c
 *     0 = ((1 - eta_e) Q + q) C_c + Q_o C_o - d C_r  d = Q + q + Q_o + CADR + beta_r V_r
 *
 * Without filter and deposition the room settles at E/Q_o whatever the cabinet: an unfiltered cabinet only delays.
 *
 * @param both - Volumes above 0, efficiencies 0 to 1, the rest 0 or more; both zones must lose something.
 * @returns Amount per m³ in both.
 * @throws RangeError when a value is nonsense, or amounts pile up for ever.
 *
 * @remarks Valid: each zone mixed. Source: mass balances. Checked: values (independent script).
 *
 * @example Styrene, 60 µg/min in a leaky cabinet without filter: the room gets what an open machine gives it
 * ```ts
 * const none = { exhaust: 0, exhaustEfficiency: 0, recirculation: 0, recirculationEfficiency: 0, roomCleaning: 0 };
 * const still = { cabinetDeposition: 0, roomDeposition: 0, outdoorConcentration: 0 };
 * const room = { cabinetVolume: 0.5, roomVolume: 40, source: 1, leakage: 2 / 3600, outdoorAir: 20 / 3600 };
 * settledTogether({ ...none, ...still, ...room }).room; // => 180
 * ```
 */
export function settledTogether(both: CabinetAndRoom): TwoConcentrations {
  mustBePlausible('settledTogether', both);
  const { cabinetLoss, roomLoss, toRoom, toCabinet, fresh } = coefficients(both);
  const determinant = cabinetLoss * roomLoss - toRoom * toCabinet;
  mustBePositive('settledTogether', 'loss of both zones together', determinant);
  return {
    cabinet: (both.source * roomLoss + toCabinet * fresh) / determinant,
    room: (cabinetLoss * fresh + toRoom * both.source) / determinant,
  };
}

/**
 * Concentrations after a time, by the exact exponential of the two-by-two system.
 *
 *     x(t) = x_s + e^(s t) (cosh(w t) I + sinh(w t)/w (M - s I)) (x_0 - x_s),   s = tr M/2,  w^2 = s^2 - det M
 *
 * @param both - As in {@link settledTogether}.
 * @param initial - x_0, amount per m³.
 * @param time - t, s, 0 or more.
 * @returns Amount per m³ in both.
 * @throws RangeError when a value is nonsense.
 *
 * @remarks Valid: constant flows and source. Source: linear algebra. Checked: values (independent script).
 *
 * @example Styrene as above, half an hour after the start, in the cabinet
 * ```ts
 * const none = { exhaust: 0, exhaustEfficiency: 0, recirculation: 0, recirculationEfficiency: 0, roomCleaning: 0 };
 * const still = { cabinetDeposition: 0, roomDeposition: 0, outdoorConcentration: 0 };
 * const room = { cabinetVolume: 0.5, roomVolume: 40, source: 1, leakage: 2 / 3600, outdoorAir: 20 / 3600 };
 * togetherAfter({ ...none, ...still, ...room }, { cabinet: 0, room: 0 }, 1800).cabinet; // => 1567.7
 * ```
 */
export function togetherAfter(both: CabinetAndRoom, initial: TwoConcentrations, time: number): TwoConcentrations {
  mustNotBeNegative('togetherAfter', 'time', time);
  mustNotBeNegative('togetherAfter', 'initial cabinet', initial.cabinet);
  mustNotBeNegative('togetherAfter', 'initial room', initial.room);
  const settled = settledTogether(both);
  const { cabinetLoss, roomLoss, toRoom, toCabinet } = coefficients(both);
  const [a, b] = [-cabinetLoss / both.cabinetVolume, toCabinet / both.cabinetVolume];
  const [c, d] = [toRoom / both.roomVolume, -roomLoss / both.roomVolume];
  const mean = 0.5 * (a + d);
  // Half the gap between the eigenvalues; real, because b and c are not negative.
  const half = Math.sqrt((0.5 * (a - d)) ** 2 + b * c);
  // Both factors carry e^(s t), so that neither overflows for long times.
  const [slow, fast] = [Math.exp((mean + half) * time), Math.exp((mean - half) * time)];
  const even = 0.5 * (slow + fast);
  const odd = half === 0 ? time * slow : (slow - fast) / (2 * half);
  const [u, v] = [initial.cabinet - settled.cabinet, initial.room - settled.room];
  return {
    cabinet: settled.cabinet + even * u + odd * ((a - mean) * u + b * v),
    room: settled.room + even * v + odd * (c * u + (d - mean) * v),
  };
}

function coefficients(both: CabinetAndRoom) {
  const exchanged = both.exhaust + both.leakage;
  return {
    cabinetLoss:
      exchanged + both.recirculationEfficiency * both.recirculation + both.cabinetDeposition * both.cabinetVolume,
    roomLoss: exchanged + both.outdoorAir + both.roomCleaning + both.roomDeposition * both.roomVolume,
    toRoom: (1 - both.exhaustEfficiency) * both.exhaust + both.leakage,
    toCabinet: exchanged,
    fresh: both.outdoorAir * both.outdoorConcentration,
  };
}

function mustBePlausible(where: string, both: CabinetAndRoom): void {
  for (const [name, value] of Object.entries(both) as [string, number][]) {
    if (name.endsWith('Volume')) mustBePositive(where, name, value);
    else if (name.endsWith('Efficiency')) mustLieWithin(where, name, value, 0, 1);
    else mustNotBeNegative(where, name, value);
  }
}
