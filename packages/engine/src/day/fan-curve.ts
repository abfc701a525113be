// The curve of the running fans of one path, scaled to their speeds and added up, and what the stopped ones resist.
// P(Q) = p0 - aQ - bQ|Q| + straight pieces; a fan at the share s of its speed gives s² P0(Q/s).

import type { Fan } from '../network/network.ts';

export interface FanCurveSum {
  /** Sums of the polynomial curves. */
  p0: number;
  a: number;
  b: number;
  /** Of the stopped fans: dp = linear Q + quadratic Q|Q| + loss rho Q|Q|, loss = ΣK/(2A²). */
  linear: number;
  quadratic: number;
  loss: number;
  /** Straight pieces: knots [Q, P], one of them at Q = 0; slope[j] holds left of knot j, slope[count] right of the last. */
  count: number;
  readonly knot: Float64Array;
  readonly pressure: Float64Array;
  readonly slope: Float64Array;
  /** Some part of the curve rises with the flow, so that there may be several operating points. */
  rising: boolean;
}

export function newFanCurveSum(fans: readonly Fan[]): FanCurveSum {
  let room = 1;
  for (const fan of fans) if (fan.curve.kind === 'points') room += fan.curve.points.length;
  return {
    p0: 0,
    a: 0,
    b: 0,
    linear: 0,
    quadratic: 0,
    loss: 0,
    count: 0,
    knot: new Float64Array(room),
    pressure: new Float64Array(room),
    slope: new Float64Array(room + 1),
    rising: false,
  };
}

/** ΣK/(2A²) of minor losses: times rho Q|Q| it is their pressure. */
export function lossFactor(minor: readonly { readonly loss: number; readonly area: number }[]): number {
  return minor.reduce((sum, { loss, area }) => sum + loss / (2 * area * area), 0);
}

/** Adds up the fans at their speeds; `speeds[first + i]` belongs to fan i, 0 is off. */
export function addFans(sum: FanCurveSum, fans: readonly Fan[], speeds: Float64Array, first: number): void {
  sum.p0 = sum.a = sum.b = sum.linear = sum.quadratic = sum.loss = 0;
  sum.count = 0;
  let pieces = false;
  for (let i = 0; i < fans.length; i += 1) {
    const { curve, stopped } = fans[i]!;
    const speed = speeds[first + i]!;
    if (speed === 0) {
      sum.linear += stopped.linear;
      sum.quadratic += stopped.quadratic;
      sum.loss += lossFactor(stopped.minor);
    } else if (curve.kind === 'poly') {
      sum.p0 += speed * speed * curve.p0;
      sum.a += speed * curve.a;
      sum.b += curve.b;
    } else {
      pieces = true;
      for (const point of curve.points) addKnot(sum, speed * point[0]);
    }
  }
  sum.rising = sum.a < 0 || sum.b < 0;
  if (pieces) joinPieces(sum, fans, speeds, first);
  else if (sum.rising) {
    // A polynomial that rises at first is one straight piece without slope; its branches are found like those of any other.
    addKnot(sum, 0);
    sum.pressure[0] = sum.slope[0] = sum.slope[1] = 0;
  }
}

function addKnot(sum: FanCurveSum, flow: number): void {
  const { knot } = sum;
  let at = sum.count;
  while (at > 0 && knot[at - 1]! > flow) at -= 1;
  if (at > 0 && knot[at - 1] === flow) return;
  knot.copyWithin(at + 1, at, sum.count);
  knot[at] = flow;
  sum.count += 1;
}

function joinPieces(sum: FanCurveSum, fans: readonly Fan[], speeds: Float64Array, first: number): void {
  addKnot(sum, 0);
  const { knot, pressure, slope, count } = sum;
  pressure.fill(0);
  slope.fill(0);
  for (let i = 0; i < fans.length; i += 1) {
    const { curve } = fans[i]!;
    const speed = speeds[first + i]!;
    if (speed === 0 || curve.kind === 'poly') continue;
    const { points } = curve;
    let piece = 0;
    for (let k = 0; k < count; k += 1) {
      while (piece < points.length - 2 && speed * points[piece + 1]![0] < knot[k]!) piece += 1;
      pressure[k] = pressure[k]! + speed * speed * onPiece(points, piece, knot[k]! / speed);
      slope[k] = slope[k]! + speed * pieceSlope(points, piece);
    }
    slope[count] = slope[count]! + speed * pieceSlope(points, points.length - 2);
  }
  for (let k = 0; k <= count; k += 1) if (slope[k]! > 0) sum.rising = true;
}

type Points = readonly (readonly [number, number])[];

function pieceSlope(points: Points, piece: number): number {
  if (points.length < 2) return 0;
  const [q0, p0] = points[piece]!;
  const [q1, p1] = points[piece + 1]!;
  return (p1 - p0) / (q1 - q0);
}

function onPiece(points: Points, piece: number, flow: number): number {
  const [q0, p0] = points[Math.max(piece, 0)]!;
  return p0 + pieceSlope(points, piece) * (flow - q0);
}

/** Pressure of the sum at a flow (without the stopped fans' resistance), Pa. */
export function fanPressure(sum: FanCurveSum, flow: number): number {
  let straight = 0;
  if (sum.count > 0) {
    let k = 0;
    while (k < sum.count - 1 && sum.knot[k]! < flow) k += 1;
    const slope = flow <= sum.knot[k]! ? sum.slope[k]! : sum.slope[k + 1]!;
    straight = sum.pressure[k]! + slope * (flow - sum.knot[k]!);
  }
  return sum.p0 - sum.a * flow - sum.b * flow * Math.abs(flow) + straight;
}
