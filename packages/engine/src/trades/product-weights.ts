// The time integral of a flow times a level, for one flow and many levels: the flow's part is worked out once, as weights.

/** Weights w and v of a flow f with which ∫ f g dt = Σ w g + v g′ over the rows, for any level g with slopes g′. */
export interface ProductWeights {
  readonly ofValues: Float64Array;
  readonly ofSlopes: Float64Array;
}

/**
 * Simpson's rule between rows: f straight, g the cubic of its values and slopes, whose middle lies at
 * (g₀ + g₁)/2 + (g₀′ − g₁′) Δt/8. Undefined when the flow is nothing at all.
 */
export function productWeights(times: Float64Array, flow: Float64Array): ProductWeights | undefined {
  const ofValues = new Float64Array(times.length);
  const ofSlopes = new Float64Array(times.length);
  let flows = false;
  for (let row = 1; row < times.length; row += 1) {
    const [before, after] = [flow[row - 1]!, flow[row]!];
    const span = times[row]! - times[row - 1]!;
    if (!(span > 0) || (before === 0 && after === 0)) continue;
    flows = true;
    const middle = (before + after) / 2;
    ofValues[row - 1] = ofValues[row - 1]! + (span / 6) * (before + 2 * middle);
    ofValues[row] = ofValues[row]! + (span / 6) * (after + 2 * middle);
    const bend = (span * span * middle) / 12;
    ofSlopes[row - 1] = ofSlopes[row - 1]! + bend;
    ofSlopes[row] = ofSlopes[row]! - bend;
  }
  return flows ? { ofValues, ofSlopes } : undefined;
}

export function weighted({ ofValues, ofSlopes }: ProductWeights, values: Float64Array, slopes: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < values.length; row += 1) sum += ofValues[row]! * values[row]! + ofSlopes[row]! * slopes[row]!;
  return sum;
}
