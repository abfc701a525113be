// Flow of every open path at the present pressures, and its slope. Hot loop: no checks, no allocation (but for stalling fans).
// Each law is odd and linear at zero; the density is that of the air which passes, so a law bends where its flow turns.

import { type AirNetwork, type AirState, CRACK, FAN_BEND, GAP, ORIFICE, TALL } from './air-network.ts';
import { branches, type FlapResistance, flowOnBranch, nearestBranch, type PathResistance } from './fan-branch.ts';
import type { FanCurveSum } from './fan-curve.ts';

/** A path that resists nothing at all, not even by the slope of its fan's curve, gets this, Pa·s/m³: less than any grille of a cabinet. */
const BARE = 1;

/** Sets densities and hydrostatic heads for the zones' temperatures: `temperature[slot[z]]`, K. */
export function setDensities(air: AirNetwork, state: AirState, temperature: Float64Array, slot: Int32Array): void {
  const { density, rootDensity, head } = state;
  const { from, to, leverFrom, leverTo, gravity, gasDensity } = air;
  for (let z = 0; z < air.zoneCount; z += 1) {
    const rho = gasDensity === 0 ? air.constantDensity : gasDensity / temperature[slot[z]!]!;
    density[z] = rho;
    rootDensity[z] = Math.sqrt(rho);
  }
  for (let i = 0; i < state.openCount; i += 1) {
    const p = state.openList[i]!;
    head[p] = gravity * (density[to[p]!]! * leverTo[p]! - density[from[p]!]! * leverFrom[p]!);
  }
}

/** Flows and slopes of the pressure-driven open paths. */
export function evaluatePaths(air: AirNetwork, state: AirState): void {
  const { kind, from, to, coefficient, bend, extra } = air;
  const { linear, quadratic } = air;
  const { openList, pressure, head, flow, slope, density, rootDensity, volume } = state;
  for (let i = 0; i < state.openCount; i += 1) {
    const p = openList[i]!;
    const a = from[p]!;
    const b = to[p]!;
    const dp = pressure[a]! - pressure[b]! + head[p]!;
    const source = dp >= 0 ? a : b;
    if (kind[p] === GAP) {
      const part = linear[p]!;
      const root = Math.sqrt(part * part + 4 * quadratic[p]! * (dp >= 0 ? dp : -dp));
      const rho = density[source]!;
      volume[p] = (2 * dp) / (part + root);
      flow[p] = rho * volume[p]!;
      slope[p] = rho / root;
    } else if (kind[p] === ORIFICE) {
      const square = dp * dp + bend[p]!;
      const c = (coefficient[p]! * rootDensity[source]!) / Math.sqrt(Math.sqrt(square));
      flow[p] = c * dp;
      slope[p] = c * (1 - (0.5 * dp * dp) / square);
    } else if (kind[p] === CRACK) {
      const square = dp * dp + bend[p]!;
      const c = coefficient[p]! * density[source]! * Math.exp(extra[p]! * Math.log(square));
      flow[p] = c * dp;
      slope[p] = c * (1 + (2 * extra[p]! * dp * dp) / square);
    } else if (kind[p] === TALL) {
      tallFlow(air, state, p, dp);
    } else {
      fanFlow(air, state, p, dp);
    }
  }
}

/**
 * Two-way flow of a tall opening: the orifice law summed over its height. The integral of dp (dp² + bend)^(-1/4) over dp is
 * (2/3) (dp² + bend)^(3/4); each side of the neutral level has the density of its own air.
 */
function tallFlow(air: AirNetwork, state: AirState, p: number, sill: number): void {
  const a = air.from[p]!;
  const b = air.to[p]!;
  const bend = air.bend[p]!;
  const height = air.extra[p]!;
  const gradient = air.gravity * (state.density[b]! - state.density[a]!);
  const lintel = sill + gradient * height;
  const forward = air.coefficient[p]! * state.rootDensity[a]!;
  const backward = air.coefficient[p]! * state.rootDensity[b]!;
  const change = lintel - sill;
  let plus = 0;
  let minus = 0;
  let slope = 0;
  if (Math.abs(change) > 1e-4 * (Math.abs(sill) + Math.abs(lintel)) + 1e-3 * Math.sqrt(bend)) {
    // Integrals in z become integrals in dp: dz = ddp/gradient.
    const atSill = threeQuarters(sill, bend);
    const atLintel = threeQuarters(lintel, bend);
    const atZero = threeQuarters(0, bend);
    const scale = 2 / 3 / gradient;
    const low = change > 0 ? sill : lintel;
    const high = change > 0 ? lintel : sill;
    const lowF = change > 0 ? atSill : atLintel;
    const highF = change > 0 ? atLintel : atSill;
    const size = Math.abs(scale);
    if (high > 0) plus = forward * size * (highF - (low > 0 ? lowF : atZero));
    if (low < 0) minus = backward * size * (lowF - (high < 0 ? highF : atZero));
    // d/d dp of the integral is the law's difference between the two ends.
    const lawSill = sill * (sill * sill + bend) ** -0.25 * (sill >= 0 ? forward : backward);
    const lawLintel = lintel * (lintel * lintel + bend) ** -0.25 * (lintel >= 0 ? forward : backward);
    slope = (lawLintel - lawSill) / gradient;
  } else {
    // Nearly one pressure over the whole height: Simpson's rule is exact enough and does not cancel.
    for (let k = 0; k < 3; k += 1) {
      const dp = sill + 0.5 * k * change;
      const weight = height * (k === 1 ? 2 / 3 : 1 / 6);
      const square = dp * dp + bend;
      const c = (weight * (dp >= 0 ? forward : backward)) / Math.sqrt(Math.sqrt(square));
      if (dp >= 0) plus += c * dp;
      else minus -= c * dp;
      slope += c * (1 - (0.5 * dp * dp) / square);
    }
  }
  state.flow[p] = plus - minus;
  state.counter[p] = Math.min(plus, minus);
  state.slope[p] = slope;
}

function threeQuarters(dp: number, bend: number): number {
  const root = Math.sqrt(dp * dp + bend);
  return root * Math.sqrt(root);
}

/** Fan, filters and resistances in series: Q with A Q + B Q|Q| = D, then m = rho Q. */
function fanFlow(air: AirNetwork, state: AirState, p: number, dp: number): void {
  const curve = state.curves[p]!;
  if (curve.rising) {
    followBranch(air, state, p, dp);
    return;
  }
  const a = air.from[p]!;
  const scale = air.fanDensityScaling ? state.density[a]! / air.referenceDensity : 1;
  const drive = dp + scale * curve.p0;
  let linear = air.linear[p]! + curve.linear + scale * curve.a;
  const quadratic = air.quadratic[p]! + curve.quadratic + scale * curve.b;
  const loss = air.loss[p]! + curve.loss;
  if (linear === 0 && quadratic === 0 && loss === 0 && isLevel(curve)) linear = BARE;
  const flap = air.flapAt[p]!;
  if (flap < 0) {
    followCurve(air, state, p, drive, linear, quadratic, loss, scale);
    return;
  }
  const leak = air.flapLoss[p]!;
  followCurve(air, state, p, drive, linear, quadratic, loss + leak, scale);
  const flow = state.volume[p]!;
  if (leak * state.density[a]! * flow * Math.abs(flow) > flap) {
    followCurve(air, state, p, drive - flap, linear, quadratic, loss, scale);
  }
}

/** The law of a fan path with its flap, for what looks at all its branches. */
export function branchResistance(air: AirNetwork, state: AirState, p: number): PathResistance {
  const curve = state.curves[p]!;
  const a = air.from[p]!;
  const scale = air.fanDensityScaling ? state.density[a]! / air.referenceDensity : 1;
  const quadratic = air.quadratic[p]! + curve.quadratic + scale * curve.b;
  const loss = air.loss[p]! + curve.loss;
  const linear = air.linear[p]! + curve.linear + scale * curve.a;
  const rhoFrom = state.density[a]!;
  const rhoTo = state.density[air.to[p]!]!;
  return {
    linear: linear === 0 && quadratic === 0 && loss === 0 && isLevel(curve) ? BARE : linear,
    forward: quadratic + loss * rhoFrom,
    backward: quadratic + loss * rhoTo,
    scale,
    curve,
    flap: flapResistance(air.flapAt[p]!, air.flapLoss[p]!, rhoFrom, rhoTo),
  };
}

/** No straight piece, or one along which the pressure does not change: there a path without resistance has no flow of its own. */
function isLevel({ count, slope }: FanCurveSum): boolean {
  for (let j = 0; j <= count; j += 1) if (slope[j] === 0) return true;
  return count === 0;
}

function flapResistance(pressure: number, leak: number, rhoFrom: number, rhoTo: number): FlapResistance | undefined {
  if (pressure < 0) return undefined;
  const forward = leak * rhoFrom;
  return { opensAt: Math.sqrt(pressure / forward), pressure, forward, backward: leak * rhoTo };
}

function followCurve(
  air: AirNetwork,
  state: AirState,
  p: number,
  drive: number,
  linear: number,
  quadratic: number,
  loss: number,
  scale: number,
): void {
  const curve = state.curves[p]!;
  const rhoFrom = state.density[air.from[p]!]!;
  const rhoTo = state.density[air.to[p]!]!;
  let A = linear;
  let D = drive;
  let half = 1;
  if (curve.count > 0) {
    const piece = pieceOf(curve, drive, linear, quadratic + loss * rhoFrom, quadratic + loss * rhoTo, scale);
    const at = piece === 0 ? 0 : piece - 1;
    A -= scale * curve.slope[piece]!;
    D += scale * (curve.pressure[at]! - curve.slope[piece]! * curve.knot[at]!);
    half = piece < curve.count && curve.knot[piece]! <= 0 ? -1 : 1;
  } else if (drive < 0) half = -1;
  const rho = half > 0 ? rhoFrom : rhoTo;
  const B = quadratic + loss * rho;
  const size = D < 0 ? -D : D;
  let flow: number;
  let slope: number;
  if (A * A >= 4e2 * B * FAN_BEND) {
    const root = Math.sqrt(A * A + 4 * B * size);
    flow = (2 * D) / (A + root);
    slope = 1 / root;
  } else {
    const bent = Math.sqrt(D * D + FAN_BEND * FAN_BEND);
    const root = Math.sqrt(A * A + 4 * B * bent);
    const double = 2 / (A + root);
    flow = double * D;
    slope = double * (1 - (B * double * D * D) / (bent * root));
  }
  state.volume[p] = flow;
  state.flow[p] = rho * flow;
  state.slope[p] = rho * slope;
}

/** Straight piece of a falling curve on which R(Q) = drive lies. */
function pieceOf(
  curve: FanCurveSum,
  drive: number,
  linear: number,
  forward: number,
  backward: number,
  scale: number,
): number {
  const { knot, pressure, count } = curve;
  let piece = 0;
  while (piece < count) {
    const flow = knot[piece]!;
    const bend = flow > 0 ? forward * flow * flow : -backward * flow * flow;
    if (linear * flow + bend - scale * pressure[piece]! >= drive) return piece;
    piece += 1;
  }
  return piece;
}

/** A curve with a dip: stays on the branch it was on, which is continued straight beyond its end while pressures are sought. */
function followBranch(air: AirNetwork, state: AirState, p: number, dp: number): void {
  const resistance = branchResistance(air, state, p);
  const drive = dp + resistance.scale * resistance.curve.p0;
  const list = branches(resistance);
  const branch = list[nearestBranch(list, state.trialFlow[p]!)]!;
  const size = Number.isFinite(branch.from) ? branch.from : Number.isFinite(branch.to) ? branch.to : 0.01;
  const typical = resistance.linear + 2 * resistance.forward * Math.abs(size) + 1;
  const { flow, slope, side } = flowOnBranch(resistance, branch, drive, typical);
  const rho = state.density[flow >= 0 ? air.from[p]! : air.to[p]!]!;
  state.beyond[p] = side;
  state.volume[p] = flow;
  state.flow[p] = rho * flow;
  state.slope[p] = rho * slope;
}
