// Where a fan works while it runs: its mean flow and pressure, and what takes that pressure, part by part.

import type { AirPath, FanCurve } from '../../network/network.ts';
import { fanShares, pathOf, pressureBetween, volumeFlow, zoneDensity } from '../air-ways.ts';
import { type Course, integralOf } from '../course.ts';
import type { DayRun } from '../measure.ts';
import { anyTurns } from '../moments.ts';
import { zeros } from '../zeros.ts';

export interface PressureUse {
  /** Part's name, or `against the bays` for the pressure difference between the path's ends. */
  readonly what: string;
  /** Pa */
  readonly pressure: number;
}

export interface FanPoint {
  /** m³/s, mean while on. */
  readonly flow: number;
  /** What the path's fans deliver without any resistance at the speed they run at, m³/s. */
  readonly free: number;
  /** Share of full speed, mean while on. */
  readonly speed: number;
  /** Pa, mean while on. */
  readonly pressure: number;
  /** Largest first. */
  readonly uses: readonly PressureUse[];
  /** s */
  readonly timeOn: number;
}

export const ENDS = 'between the path’s ends';

/** Undefined when no fan of the path runs on this day. */
export function fanPoint(run: DayRun, id: string): FanPoint | undefined {
  const path = pathOf(run, run.assembly.paths[id]!.name);
  const shares = fanShares(run, id);
  if (path.type !== 'fan-path' || shares.length === 0) return undefined;
  const on = anyTurns(run.record, shares);
  const timeOn = integralOf(on);
  if (!(timeOn > 0)) return undefined;
  const meanOn = ({ times, values }: Course): number =>
    integralOf({ times, values: product(values, on.values) }) / timeOn;
  const delivers = path.fans.map(({ curve }) => freeDelivery(curve));
  const flow = meanOn(volumeFlow(run, path));
  const density = meanOn(zoneDensity(run, flow >= 0 ? path.from : path.to));
  const rise = -meanOn(pressureBetween(run, path.from, path.to, path.z));
  const uses = [...partPressures(path, flow, density), { what: ENDS, pressure: rise }];
  return {
    flow,
    timeOn,
    speed: meanOn(shares[0]!),
    free: meanOn({ times: on.times, values: weakestRunning(delivers, shares) }),
    pressure: uses.reduce((sum, { pressure }) => sum + pressure, 0),
    uses: uses.sort((a, b) => b.pressure - a.pressure),
  };
}

/** Fans in series let through what the weakest of those that run just then delivers; one that rests does not count. */
function weakestRunning(delivers: readonly number[], shares: readonly Course[]): Float64Array {
  const weakest = zeros(shares[0]!.values.length);
  for (const [at, deliver] of delivers.entries()) {
    const { values } = shares[at]!;
    for (let row = 0; row < weakest.length; row += 1) {
      const free = deliver * values[row]!;
      if (free > 0 && !(weakest[row]! > 0 && weakest[row]! <= free)) weakest[row] = free;
    }
  }
  return weakest;
}

function product(a: Float64Array, b: Float64Array): Float64Array {
  const values = zeros(a.length);
  for (let row = 0; row < values.length; row += 1) values[row] = a[row]! * b[row]!;
  return values;
}

/** Δp = aQ + bQ|Q| of named parts, Σ K ρ/2A² Q|Q| of fittings. */
function partPressures(path: Extract<AirPath, { type: 'fan-path' }>, flow: number, density: number): PressureUse[] {
  const square = flow * Math.abs(flow);
  return [
    ...path.resistances.map(({ name, linear, quadratic }) => ({
      what: name,
      pressure: linear * flow + quadratic * square,
    })),
    ...path.minor.map(({ name, loss, area }) => ({
      what: name ?? 'fittings',
      pressure: (loss * density * square) / (2 * area ** 2),
    })),
  ];
}

/** Flow at which a curve's pressure is used up, m³/s. */
function freeDelivery(curve: FanCurve): number {
  if (curve.kind === 'poly') {
    const { p0, a, b } = curve;
    return (2 * p0) / (a + Math.sqrt(a * a + 4 * b * p0));
  }
  const { points } = curve;
  const at = Math.max(
    1,
    points.findIndex(([, pressure]) => pressure <= 0),
  );
  const [[q0, p0], [q1, p1]] =
    at > 0 && points[at] !== undefined ? [points[at - 1]!, points[at]!] : [points.at(-2)!, points.at(-1)!];
  return p1 >= p0 ? q1 : q1 + ((q1 - q0) * p1) / (p0 - p1);
}
