// Where a fan works while it runs: its mean flow and pressure, and what takes that pressure, part by part.

import type { AirPath, FanCurve } from '../../network/network.ts';
import { fanShares, pathOf, pressureBetween, volumeFlow, zoneDensity } from '../air-ways.ts';
import { type Course, courseFrom, integralOf } from '../course.ts';
import type { DayRun } from '../measure.ts';

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
  const on = courseFrom(run.record, (row) => (shares.some(({ values }) => values[row]! > 0) ? 1 : 0));
  const timeOn = integralOf(on);
  if (!(timeOn > 0)) return undefined;
  const meanOn = (course: Course): number =>
    integralOf(courseFrom(run.record, (row) => course.values[row]! * on.values[row]!)) / timeOn;
  const delivers = path.fans.map(({ curve }) => freeDelivery(curve));
  // Fans in series let through what the weakest of those that run just then delivers; one that rests does not count.
  const freeAt = (row: number): number => {
    const running = delivers.map((free, at) => free * shares[at]!.values[row]!).filter((free) => free > 0);
    return running.length === 0 ? 0 : Math.min(...running);
  };
  const flow = meanOn(volumeFlow(run, path));
  const density = meanOn(zoneDensity(run, flow >= 0 ? path.from : path.to));
  const rise = -meanOn(pressureBetween(run, path.from, path.to, path.z));
  const uses = [...partPressures(path, flow, density), { what: ENDS, pressure: rise }];
  return {
    flow,
    timeOn,
    speed: meanOn(shares[0]!),
    free: meanOn(courseFrom(run.record, freeAt)),
    pressure: uses.reduce((sum, { pressure }) => sum + pressure, 0),
    uses: uses.sort((a, b) => b.pressure - a.pressure),
  };
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
