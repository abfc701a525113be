// A board between two supports, as a beam: how far it sags, how much it is bent, what each support carries.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** A load on a beam: at one place, or evenly spread over a stretch; places count from the left support. */
export type BeamLoad =
  | { readonly force: number; readonly at: number }
  | { readonly force: number; readonly from: number; readonly to: number };

export interface BeamAnswer {
  /** Largest sag, m, and where. */
  readonly sag: number;
  readonly sagAt: number;
  /** Largest bending moment, N·m, and where. */
  readonly moment: number;
  readonly momentAt: number;
  /** Force on each support, N. */
  readonly left: number;
  readonly right: number;
}

/** How the ends of a beam are held. */
export type BeamEnds = 'simple' | 'fixed' | 'propped' | 'cantilever';

interface Stretch {
  readonly force: number;
  readonly from: number;
  readonly to: number;
}

const ramp = (x: number, power: number): number => (x > 0 ? x ** power : 0);

/**
 * A beam that lies loose on two supports, under any downward loads.
 *
 *     E I v'' = -M,  v = 0 at both ends
 *
 * The moments of all loads are added up and integrated twice in closed form; the largest sag is where the slope is 0, the
 * largest moment where the shear changes sign, both found by halving.
 *
 * @param span - L between the supports, m, above 0.
 * @param stiffness - E I, N·m², above 0.
 * @param loads - Forces in N, 0 or more; places between 0 and L.
 * @returns Sag, moment and what the supports carry.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: slender (L above ten times the height), small sag, no shear deformation. A shelf loose on pins or cleats is held so.
 * Source: Euler-Bernoulli; cases in Roark's Formulas for Stress and Strain, table 8.1. Checked: formula (memory); values (memory).
 *
 * @example 18 mm of plywood 500 mm deep over 800 mm, 24.896 kg with itself
 * ```ts
 * 1000 * simpleBeam(0.8, 7e9 * 0.5 * 0.018 ** 3 / 12, [{ force: 244.23, from: 0, to: 0.8 }]).sag; // => 0.957
 * ```
 */
export function simpleBeam(span: number, stiffness: number, loads: readonly BeamLoad[]): BeamAnswer {
  mustBePositive('simpleBeam', 'span', span);
  mustBePositive('simpleBeam', 'stiffness', stiffness);
  const stretches = loads.map((load): Stretch => stretchOf(load, span));
  const right = stretches.reduce((sum, { force, from, to }) => sum + (force * (from + to)) / (2 * span), 0);
  const total = stretches.reduce((sum, { force }) => sum + force, 0);
  const left = total - right;
  const sumOf = (x: number, power: number): number =>
    stretches.reduce((sum, stretch) => sum + integral(stretch, x, power), 0);
  const first = (left * span ** 3) / 6 - sumOf(span, 3);
  const sagOf = (x: number): number => ((first / span) * x - (left * x ** 3) / 6 + sumOf(x, 3)) / stiffness;
  const slopeOf = (x: number): number => first / span - (left * x ** 2) / 2 + sumOf(x, 2);
  const sagAt = halve(slopeOf, span);
  const momentAt = halve((x) => left - sumOf(x, 0), span);
  return {
    sag: sagOf(sagAt),
    sagAt,
    moment: left * momentAt - sumOf(momentAt, 1),
    momentAt,
    left,
    right,
  };
}

function stretchOf(load: BeamLoad, span: number): Stretch {
  mustNotBeNegative('simpleBeam', 'force', load.force);
  const [from, to] = 'at' in load ? [load.at, load.at] : [load.from, load.to];
  mustLieWithin('simpleBeam', 'from', from, 0, span * (1 + 1e-9));
  mustLieWithin('simpleBeam', 'to', to, from, span * (1 + 1e-9));
  return { force: load.force, from, to: Math.min(to, span) };
}

/** Load up to x (power 0), its moment (1), and the next two integrals of that. */
function integral({ force, from, to }: Stretch, x: number, power: number): number {
  const factorial = power < 2 ? 1 : power === 2 ? 2 : 6;
  if (to - from < 1e-9) return x >= from ? (force * (power === 0 ? 1 : ramp(x - from, power))) / factorial : 0;
  const even = ramp(x - from, power + 1) - ramp(x - to, power + 1);
  return (force / (to - from)) * (even / ((power + 1) * factorial));
}

/** Finds the place to 1e-9 of the span; sag and moment are level there, and change by the square of that. */
const HALVINGS = 30;

/** Where a falling function passes 0 between 0 and the end. */
function halve(falling: (x: number) => number, end: number): number {
  let [low, high] = [0, end];
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (falling(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const SPREAD_SAG: Readonly<Record<BeamEnds, number>> = {
  simple: 5 / 384,
  fixed: 1 / 384,
  propped: (39 + 55 * 33 ** 0.5) / 65_536,
  cantilever: 1 / 8,
};
const POINT_SAG: Readonly<Record<BeamEnds, number>> = {
  simple: 1 / 48,
  fixed: 1 / 192,
  propped: 1 / (48 * 5 ** 0.5),
  cantilever: 1 / 3,
};

/**
 * Largest sag under an evenly spread load.
 *
 *     v = c W L³ / (E I),  c = 5/384 simple, 1/384 fixed, 1/185 propped, 1/8 cantilever
 *
 * @param ends - How its ends are held; propped: one fixed, one simple.
 * @param force - W in all, N.
 * @param span - L, m, above 0.
 * @param stiffness - E I, N·m², above 0.
 * @returns Sag, m.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: as {@link simpleBeam}. Source: Roark's Formulas for Stress and Strain, table 8.1. Checked: formula (memory).
 *
 * @example The same shelf with ends held fast sags a fifth as much
 * ```ts
 * 1000 * spreadSag('fixed', 244.23, 0.8, 1701); // => 0.191
 * ```
 */
export function spreadSag(ends: BeamEnds, force: number, span: number, stiffness: number): number {
  return coefficientSag('spreadSag', SPREAD_SAG[ends], force, span, stiffness);
}

/**
 * Largest sag under one force in the middle, or at the free end of a cantilever.
 *
 *     v = c P L³ / (E I),  c = 1/48 simple, 1/192 fixed, 1/(48√5) propped, 1/3 cantilever
 *
 * @param ends - How its ends are held; propped: one fixed, one simple.
 * @param force - P, N.
 * @param span - L, m, above 0.
 * @param stiffness - E I, N·m², above 0.
 * @returns Sag, m.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: as {@link simpleBeam}. Source: Roark's Formulas for Stress and Strain, table 8.1. Checked: formula (memory).
 *
 * @example 25 kg in the middle of 18 mm MDF, 400 mm deep, over a metre
 * ```ts
 * 1000 * pointSag('simple', 25 * 9.80665, 1, 2.2e9 * 0.4 * 0.018 ** 3 / 12); // => 11.94
 * ```
 */
export function pointSag(ends: BeamEnds, force: number, span: number, stiffness: number): number {
  return coefficientSag('pointSag', POINT_SAG[ends], force, span, stiffness);
}

function coefficientSag(where: string, factor: number, force: number, span: number, stiffness: number): number {
  mustBeFinite(where, 'force', force);
  mustBePositive(where, 'span', span);
  mustBePositive(where, 'stiffness', stiffness);
  return (factor * force * span ** 3) / stiffness;
}
