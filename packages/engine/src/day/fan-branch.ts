// Fan curves that rise somewhere (a stall dip) may meet their path's resistance more than once. With
//     R(Q) = A Q + B Q|Q| - s W(Q)        (W: the straight pieces, B with the density of the side the air comes from)
// the operating points at the drive D are the roots of R(Q) = D: stable where R rises, unstable where it falls.
// A stretch of flows on which R rises is a branch. Rare enough that this code may allocate.

import type { FanCurveSum } from './fan-curve.ts';

/** Coefficients of R for one path at one moment. */
export interface PathResistance {
  readonly linear: number;
  /** Quadratic coefficient for flow forward and backward. */
  readonly forward: number;
  readonly backward: number;
  /** Density scale s of the fans. */
  readonly scale: number;
  readonly curve: FanCurveSum;
  /** A flap that is shut below a flow. It belongs to the law: whether it opens decides what a branch is. */
  readonly flap?: FlapResistance | undefined;
}

/** Shut, a flap leaks and resists as a quadratic; open, it takes the pressure at which it opens. Both meet at the flow `opensAt`. */
export interface FlapResistance {
  /** m³/s */
  readonly opensAt: number;
  /** Pa */
  readonly pressure: number;
  /** Quadratic coefficient of the leak for flow forward and backward. */
  readonly forward: number;
  readonly backward: number;
}

/** One stretch of the straight pieces on which R is one parabola: R = lift + slope Q + bend Q|Q|. */
interface Stretch {
  readonly from: number;
  readonly to: number;
  /** 1 where Q ≥ 0, -1 where Q ≤ 0. */
  readonly half: 1 | -1;
  readonly lift: number;
  readonly slope: number;
  readonly bend: number;
}

export interface OperatingPoint {
  /** m³/s */
  readonly flow: number;
  readonly stable: boolean;
}

export interface Branch {
  readonly from: number;
  readonly to: number;
}

function stretches({ linear, forward, backward, scale, curve, flap }: PathResistance): Stretch[] {
  const { count, knot, pressure, slope } = curve;
  const list: Stretch[] = [];
  for (let j = 0; j <= count; j += 1) {
    const at = j === 0 ? 0 : j - 1;
    const from = j === 0 ? Number.NEGATIVE_INFINITY : knot[j - 1]!;
    const to = j === count ? Number.POSITIVE_INFINITY : knot[j]!;
    const lift = -scale * (pressure[at]! - slope[j]! * knot[at]!);
    const half = to <= 0 ? -1 : 1;
    list.push({ from, to, half, lift, slope: linear - scale * slope[j]!, bend: half > 0 ? forward : backward });
  }
  return flap === undefined ? list : list.flatMap((stretch) => withFlap(stretch, flap));
}

/** The stretch with a flap in it; two where the flap opens on it. */
function withFlap(stretch: Stretch, flap: FlapResistance): Stretch[] {
  const { from, to, half, lift, bend } = stretch;
  if (half < 0) return [{ ...stretch, bend: bend + flap.backward }];
  const shut = { ...stretch, bend: bend + flap.forward };
  const open = { ...stretch, lift: lift + flap.pressure };
  if (to <= flap.opensAt) return [shut];
  return from >= flap.opensAt
    ? [open]
    : [
        { ...shut, to: flap.opensAt },
        { ...open, from: flap.opensAt },
      ];
}

function resistanceOn(stretch: Stretch, flow: number): number {
  return stretch.lift + stretch.slope * flow + stretch.bend * flow * Math.abs(flow);
}

/** R(Q), Pa. */
export function resistanceAt(path: PathResistance, flow: number): number {
  const stretch = stretches(path).find(({ from, to }) => from <= flow && flow <= to);
  return stretch === undefined ? Number.NaN : resistanceOn(stretch, flow);
}

/** Branches from the smallest flows to the largest. */
export function branches(path: PathResistance): Branch[] {
  const found: { from: number; to: number }[] = [];
  const add = (from: number, to: number): void => {
    const last = found.at(-1);
    if (last !== undefined && last.to === from) last.to = to;
    else found.push({ from, to });
  };
  for (const { from, to, half, slope, bend } of stretches(path)) {
    // On either half the slope of R is slope + 2 bend |Q|: it grows away from zero.
    const turn = bend > 0 ? -slope / (2 * bend) : slope > 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
    if (half < 0) {
      const end = Math.min(to, -turn);
      if (end > from) add(from, end);
    } else {
      const begin = Math.max(from, turn);
      if (begin < to) add(begin, to);
    }
  }
  return found.length > 0 ? found : [{ from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }];
}

/** The branch that holds the flow, or the nearest one. */
export function nearestBranch(list: readonly Branch[], flow: number): number {
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  list.forEach(({ from, to }, index) => {
    const away = flow > to ? flow - to : flow < from ? from - flow : 0;
    // Of two that touch, the one with the larger flow: it is where a fan that has just started ends up.
    if (away <= least) [best, least] = [index, away];
  });
  return best;
}

/** All flows with R(Q) = drive, in rising order. */
export function crossings(path: PathResistance, drive: number): OperatingPoint[] {
  const points: OperatingPoint[] = [];
  for (const stretch of stretches(path)) {
    for (const flow of rootsOn(stretch, drive)) {
      const last = points.at(-1);
      if (last !== undefined && Math.abs(last.flow - flow) <= 1e-12 * (1 + Math.abs(flow))) continue;
      points.push({ flow, stable: stretch.slope + 2 * stretch.bend * Math.abs(flow) > 0 });
    }
  }
  return points;
}

function rootsOn({ from, to, half, lift, slope, bend }: Stretch, drive: number): number[] {
  const rest = half * (drive - lift);
  // With x = |Q|: bend x² + slope x = rest.
  const sizes: number[] = [];
  if (bend === 0) {
    if (slope !== 0) sizes.push(rest / slope);
  } else {
    const square = slope * slope + 4 * bend * rest;
    if (square >= 0) {
      const q = -0.5 * (slope + (slope >= 0 ? Math.sqrt(square) : -Math.sqrt(square)));
      sizes.push(q / bend);
      if (q !== 0) sizes.push(-rest / q);
    }
  }
  return sizes
    .filter((size) => size >= 0)
    .map((size) => half * size)
    .filter((flow) => from <= flow && flow <= to)
    .sort((a, b) => a - b);
}

/** Flow at which R reaches `drive` on one branch; beyond the branch's ends R is continued by a straight line of slope `beyond`. */
export function flowOnBranch(
  path: PathResistance,
  branch: Branch,
  drive: number,
  beyond: number,
): { readonly flow: number; readonly slope: number; readonly side: -1 | 0 | 1 } {
  const top = branch.to === Number.POSITIVE_INFINITY ? Number.POSITIVE_INFINITY : resistanceAt(path, branch.to);
  const bottom = branch.from === Number.NEGATIVE_INFINITY ? Number.NEGATIVE_INFINITY : resistanceAt(path, branch.from);
  if (drive > top) return { flow: branch.to + (drive - top) / beyond, slope: 1 / beyond, side: 1 };
  if (drive < bottom) return { flow: branch.from + (drive - bottom) / beyond, slope: 1 / beyond, side: -1 };
  for (const stretch of stretches(path)) {
    const low = Math.max(stretch.from, branch.from);
    const high = Math.min(stretch.to, branch.to);
    if (!(low < high)) continue;
    if (high !== Number.POSITIVE_INFINITY && resistanceOn(stretch, high) < drive) continue;
    const slack = 1e-12 * (1 + Math.abs(low === Number.NEGATIVE_INFINITY ? high : low));
    const roots = rootsOn({ ...stretch, from: low - slack, to: high + slack }, drive).filter(
      (flow) => stretch.slope + 2 * stretch.bend * Math.abs(flow) >= 0,
    );
    const flow = roots.at(-1) ?? (Number.isFinite(high) ? high : low);
    const steepness = stretch.slope + 2 * stretch.bend * Math.abs(flow);
    return { flow, slope: 1 / Math.max(steepness, 1e-3 * beyond), side: 0 };
  }
  return { flow: branch.to, slope: 1 / beyond, side: 0 };
}
