// The flow that a path's fans drive through its own parts with both ends at one pressure.

import { REFERENCE_DENSITY } from '@stillair/physics';
import type { FanPath } from './network.ts';

/**
 * @returns m³/s at full speed, 0 when the path has no fan. Found by halving: the fans' pressure falls with flow, the losses rise.
 */
export function seriesFlow({ fans, resistances, minor }: Pick<FanPath, 'fans' | 'resistances' | 'minor'>): number {
  if (fans.length === 0) return 0;
  const linear = resistances.reduce((sum, part) => sum + part.linear, 0);
  const quadratic =
    resistances.reduce((sum, part) => sum + part.quadratic, 0) +
    minor.reduce((sum, { loss, area }) => sum + (loss * REFERENCE_DENSITY) / (2 * area ** 2), 0);
  const spare = (q: number) => fans.reduce((sum, fan) => sum + fanPressure(fan, q), 0) - linear * q - quadratic * q * q;
  let low = 0;
  let high = Math.max(...fans.map(freeDelivery));
  if (spare(low) <= 0) return 0;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

function freeDelivery({ curve }: FanPath['fans'][number]): number {
  if (curve.kind === 'points') return curve.points.at(-1)![0];
  const { p0, a, b } = curve;
  return (2 * p0) / (a + Math.sqrt(a * a + 4 * b * p0));
}

function fanPressure({ curve }: FanPath['fans'][number], q: number): number {
  if (curve.kind === 'poly') return curve.p0 - curve.a * q - curve.b * q * Math.abs(q);
  const { points } = curve;
  let index = points.findIndex(([flow]) => flow >= q);
  if (index < 1) index = index === 0 ? 1 : points.length - 1;
  const [q0, p0] = points[index - 1]!;
  const [q1, p1] = points[index]!;
  return p0 + ((p1 - p0) * (q - q0)) / (q1 - q0);
}
