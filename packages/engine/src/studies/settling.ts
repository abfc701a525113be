// The one measurement that would settle which of two sheets is better, if there is one.

import type { AssumedInput } from '../cabinet/assumed-inputs.ts';
import { centredRanks, driversOf } from '../judge/drivers.ts';
import { valueAt } from '../judge/samples.ts';
import { howToMeasure } from './how-to-measure.ts';

/** An input against what is assumed for it: so many times, or, for temperatures, so many kelvins above it. */
export interface AgainstAssumed {
  readonly kind: 'times' | 'kelvin';
  readonly value: number;
}

export interface Settling {
  /** Input to be measured, by path and in words. */
  readonly path: string;
  readonly label: string;
  readonly how: string;
  /** Rank correlation with the difference, −1 to 1. */
  readonly correlation: number;
  /** Where the choice turns, and which sheet is better on each side of it. */
  readonly turnsAt: AgainstAssumed;
  readonly below: string;
  readonly above: string;
  /** How exactly it must be known to tell the sides apart: half way from where it turns to the nearer end of what is assumed. */
  readonly within: number;
  /** Share of the samples that the measurement would settle rightly. */
  readonly settles: number;
}

/** A measurement settles a choice when it tells the better sheet in this share of the samples. */
const SETTLED = 0.8;

/**
 * @param difference - First sheet's number less the second's, one a sample; the lower is better.
 * @param inputs - By path: where each sample lies in the input's range, 0 to 1.
 */
export function settlingOf(
  [first, second]: readonly [string, string],
  difference: readonly number[],
  inputs: ReadonlyMap<string, readonly number[]>,
  inputOf: (path: string) => AssumedInput,
): Settling | undefined {
  const [driver] = driversOf(inputs, difference, 1);
  if (driver === undefined) return undefined;
  const shares = inputs.get(driver.path)!;
  const { turn, right, firstBelow } = turningPoint(shares, difference);
  if (right < SETTLED) return undefined;
  const { label, spread } = inputOf(driver.path);
  const against = (share: number): number => {
    const value = valueAt(spread, share);
    return isTemperature(driver.path) ? value - spread.p50 : value / spread.p50;
  };
  if (!isTemperature(driver.path) && !(spread.p50 > 0)) return undefined;
  const at = against(turn);
  const nearer = Math.min(Math.abs(at - against(0.1)), Math.abs(at - against(0.9)));
  return {
    path: driver.path,
    label,
    how: howToMeasure(driver.path),
    correlation: correlationOf(difference, shares),
    turnsAt: { kind: isTemperature(driver.path) ? 'kelvin' : 'times', value: at },
    below: firstBelow ? first : second,
    above: firstBelow ? second : first,
    within: Math.max(nearer, Math.abs(against(0.9) - against(0.1)) / 10) / 2,
    settles: right,
  };
}

/** The split of an input's range that tells best which sheet is better, and the share of samples that it tells rightly. */
function turningPoint(
  shares: readonly number[],
  difference: readonly number[],
): { turn: number; right: number; firstBelow: boolean } {
  const order = shares.map((_, at) => at).sort((a, b) => shares[a]! - shares[b]!);
  const count = order.length;
  const firstBetter = order.map((at) => (difference[at]! < 0 ? 1 : 0));
  const all = firstBetter.reduce<number>((sum, one) => sum + one, 0);
  let best = { turn: 0.5, right: 0, firstBelow: true };
  let below = 0;
  for (let split = 1; split < count; split += 1) {
    below += firstBetter[split - 1]!;
    const turn = (shares[order[split - 1]!]! + shares[order[split]!]!) / 2;
    const firstIsBelow = below + (count - split - (all - below));
    if (firstIsBelow / count > best.right) best = { turn, right: firstIsBelow / count, firstBelow: true };
    if ((count - firstIsBelow) / count > best.right)
      best = { turn, right: (count - firstIsBelow) / count, firstBelow: false };
  }
  return best;
}

function isTemperature(path: string): boolean {
  return /temperature|\.offset$/.test(path);
}

function correlationOf(x: readonly number[], y: readonly number[]): number {
  const [a, b] = [centredRanks(x), centredRanks(y)];
  const dot = (p: readonly number[], q: readonly number[]): number =>
    p.reduce((sum, value, at) => sum + value * q[at]!, 0);
  const size = Math.sqrt(dot(a, a) * dot(b, b));
  return size > 0 ? dot(a, b) / size : 0;
}
