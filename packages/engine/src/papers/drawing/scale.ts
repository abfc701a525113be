// Scales of drawings: ISO 5455.

/** Enlarged never, full size, then reduced. */
const reductions = [1, 2, 5, 10, 20, 50, 100] as const;

export interface DrawingScale {
  /** mm on paper for each metre. */
  readonly factor: number;
  /** `1:10` */
  readonly name: string;
}

/**
 * The largest scale of the standard at which a size in metres goes into a space in millimetres.
 *
 * @example A side of 600 by 1750 mm in a space of 150 by 140 mm
 * ```ts
 * drawingScale([0.6, 1.75], [150, 140]).name; // => 1:20
 * drawingScale([0.1, 0.1], [150, 140]).name; // => 1:1
 * ```
 */
export function drawingScale(
  size: readonly [width: number, height: number],
  space: readonly [width: number, height: number],
): DrawingScale {
  const fits = (by: number): boolean => size.every((each, at) => (each * 1000) / by <= space[at]! + 1e-9);
  const by = reductions.find(fits) ?? 200;
  return { factor: 1000 / by, name: `1:${by}` };
}
