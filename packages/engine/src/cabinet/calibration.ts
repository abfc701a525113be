// `calibration:` of the cabinet file: which log its measured values come from, and how that log scattered about the cabinet. `drift`
// holds newer logs against it.

import { listOf, mapOf, quantity, type Schema, text, thing } from './shape.ts';
import type { Given } from './spec.ts';

type Maybe<T> = T | undefined;

export interface CalibrationSpec {
  readonly log: string;
  readonly day?: Maybe<string>;
  readonly from?: Maybe<string>;
  readonly values?: Maybe<readonly string[]>;
  readonly residuals?: Maybe<
    Readonly<Record<string, { readonly spread: NonNullable<Given>; readonly carry: NonNullable<Given> }>>
  >;
}

export interface Calibration {
  /** Name of the log. */
  readonly log: string;
  readonly day?: string;
  /** First day of the log, such as 2026-11-20. */
  readonly from?: string;
  /** Paths in the cabinet file whose values the log gave. */
  readonly values: readonly string[];
  /** By column of the log: standard deviation of its residuals (K, share, W, or of logarithms), and their correlation over an hour. */
  readonly residuals: Readonly<Record<string, { readonly spread: number; readonly carry: number }>>;
}

export function calibrationSchema(): Schema<CalibrationSpec> {
  return thing(
    {
      log: text('name of the log'),
      day: text('day of the file that the log was held against').optional(),
      from: text('first day of the log, such as 2026-11-20').optional(),
      values: listOf(text('path of a value in this file'), 'values that the log gave').optional(),
      residuals: mapOf(
        thing(
          {
            spread: quantity('number', 'standard deviation, in K, shares of 1, W, or of logarithms', {
              from: 0,
              to: 1e6,
            }),
            carry: quantity('number', 'correlation over an hour', { from: -1, to: 1 }),
          },
          'how a column scattered about the cabinet',
        ),
        'how each column of the log scattered about the cabinet',
        'column',
      ).optional(),
    },
    'what a log has put right in this file; written by stillair calibrate',
  );
}

export function fillCalibration(spec: CalibrationSpec | undefined): Calibration | undefined {
  if (spec === undefined) return undefined;
  const { log, day, from, values = [], residuals = {} } = spec;
  return {
    log,
    ...(day === undefined ? {} : { day }),
    ...(from === undefined ? {} : { from }),
    values,
    residuals: Object.fromEntries(
      Object.entries(residuals).map(([column, { spread, carry }]) => [
        column,
        { spread: spread.value, carry: carry.value },
      ]),
    ),
  };
}
