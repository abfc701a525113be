// What difference between two cabinets nobody would notice.

/** 0.05 K, or 1 % of the larger of anything else. */
export function smallestDifference(unit: string, values: readonly number[]): number {
  return unit.startsWith('temperature') ? 0.05 : 0.01 * Math.max(...values.map(Math.abs), 1e-12);
}
