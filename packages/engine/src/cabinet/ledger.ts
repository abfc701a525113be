// Every number that goes into the cabinet, and where it came from. Filling asks for a number with the places it may come
// from, in order; the first that has one gives it, and the ledger writes down which.

import type { Quantity } from '../units/quantity.ts';
import type { Assumption } from './assumption.ts';
import type { Calibration } from './calibration.ts';
import type { Origin, Spread } from './origin.ts';
import type { FilePath, SourceTree } from './source-tree.ts';
import type { Given } from './spec.ts';

/** A place that may have a number: the file, or an entry of the catalogue. */
export type Candidate =
  | { readonly quantity: Given; readonly file: FilePath }
  | { readonly quantity: Given; readonly part: string; readonly source: string };

/** What is taken when no place has one. */
export type Fallback = Assumption | { readonly value: number; readonly how: string; readonly spread?: Spread };

export interface Ledger {
  readonly origins: Map<string, Origin>;
  /** A number, with its origin written down under its path in the cabinet. `doubt`: half width of a given number's spread when it has none. */
  number(at: string, candidates: readonly Candidate[], fallback: Fallback, doubt?: number): number;
  /** Origin of something that is not one number: a size, a curve, a profile. */
  note(at: string, origin: Origin): void;
  given(file: FilePath): Origin;
}

/** `measured`: what the file says of the log that gave some of its values. */
export function createLedger(tree: SourceTree, measured?: Pick<Calibration, 'log' | 'values'>): Ledger {
  const origins = new Map<string, Origin>();
  const logged = new Set(measured?.values);
  const given = (file: FilePath): Origin => ({
    kind: 'given',
    where: tree.valueSpan(file),
    ...(measured !== undefined && logged.has(file.join('.')) ? { measured: measured.log } : {}),
  });
  return {
    origins,
    given,
    note: (at, origin) => void origins.set(at, origin),
    number(at, candidates, fallback, doubt) {
      for (const candidate of candidates) {
        const { quantity } = candidate;
        if (quantity === undefined) continue;
        const spread = spreadOf(quantity) ?? doubtOf(quantity.value, doubt);
        const origin: Origin =
          'file' in candidate
            ? given(candidate.file)
            : { kind: 'catalogue', part: candidate.part, source: candidate.source };
        origins.set(at, spread === undefined ? origin : { ...origin, spread });
        return quantity.value;
      }
      origins.set(at, fallbackOrigin(fallback));
      return fallback.value;
    },
  };
}

/** The spread that a text gave; in logarithms when it spans more than a factor of three. */
export function spreadOf({ value, low, high }: Quantity): Spread | undefined {
  if (low === undefined || high === undefined || low === high) return undefined;
  const shape = low > 0 && high / low > 3 ? 'log-normal' : 'normal';
  return { p10: low, p50: value, p90: high, shape };
}

function doubtOf(value: number, doubt: number | undefined): Spread | undefined {
  return doubt === undefined ? undefined : { p10: value - doubt, p50: value, p90: value + doubt, shape: 'normal' };
}

function fallbackOrigin(fallback: Fallback): Origin {
  if ('how' in fallback) {
    const { how, spread } = fallback;
    return spread === undefined ? { kind: 'derived', how } : { kind: 'derived', how, spread };
  }
  const { value, low, high, shape, why } = fallback;
  return { kind: 'assumed', why, spread: { p10: low, p50: value, p90: high, shape } };
}

/** The origin of a path, or of the nearest thing above it that has one. */
export function originAt(origins: ReadonlyMap<string, Origin>, path: string): Origin | undefined {
  for (let at = path; at !== ''; at = at.slice(0, Math.max(0, at.lastIndexOf('.')))) {
    const origin = origins.get(at);
    if (origin !== undefined) return origin;
  }
  return undefined;
}
