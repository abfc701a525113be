// What a person may want most of a cabinet, each as one number per run: the lower the better.

import type { Outcome } from '../judge/variants.ts';
import { formatQuantity, type UnitSystem } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';

export type Want = 'cool' | 'still' | 'clean' | 'quiet' | 'cheap';

export interface WantRule {
  readonly want: Want;
  /** How it is measured, in words. */
  readonly measuredBy: string;
  /** Unit kind of the number. */
  readonly unit: string;
  /** Differences below this do not matter, in the number's own unit. */
  readonly matters: number;
  /** What it is a measure of, for the question which inputs can move it. */
  readonly about: { readonly trade: string; readonly quantity: string };
  /** `price` is absent where something has none: such a sheet is no candidate for the cheapest. */
  readonly of: (outcome: Outcome, price: number | undefined, differing: ReadonlySet<string>) => number | undefined;
}

export const wantRules: readonly WantRule[] = [
  {
    want: 'cool',
    measuredBy: 'hottest air in any bay on any day',
    unit: 'temperature',
    matters: 0.1,
    about: { trade: 'heat', quantity: 'peak-air' },
    of: ({ values }) =>
      most(Object.entries(values).flatMap(([id, value]) => (id.startsWith('heat/peak-air/') ? [value] : []))),
  },
  {
    want: 'still',
    measuredBy: 'fastest air at any print, as share of its material’s limit',
    unit: 'number',
    matters: 0.03,
    about: { trade: 'draught', quantity: 'air-speed' },
    of: (outcome) => most(ratios(outcome, (id) => id.startsWith('draught/air-speed/'))),
  },
  {
    want: 'clean',
    measuredBy: 'worst level in the room as share of its living-room guideline, among those that the options change',
    unit: 'number',
    matters: 0.02,
    about: { trade: 'air-quality', quantity: 'room' },
    of: (outcome, _price, differing) =>
      most(ratios(outcome, (id) => id.startsWith('air-quality/room-') && differing.has(id))),
  },
  {
    want: 'quiet',
    measuredBy: 'loudest that anybody hears at their place, on any day',
    unit: 'sound-level',
    matters: 0.5,
    about: { trade: 'sound', quantity: 'loudest' },
    of: ({ values }) =>
      most(Object.entries(values).flatMap(([id, value]) => (id.startsWith('sound/loudest/') ? [value] : []))),
  },
  {
    want: 'cheap',
    measuredBy: 'what must be bought, middle of its price',
    unit: 'money',
    matters: 0.5,
    about: { trade: 'cost', quantity: 'price' },
    of: (_outcome, price) => price,
  },
];

function most(values: readonly number[]): number | undefined {
  return values.length === 0 ? undefined : Math.max(...values);
}

function ratios({ values, limits }: Outcome, is: (id: string) => boolean): number[] {
  return Object.entries(values).flatMap(([id, value]) => {
    const limit = limits[id];
    return is(id) && limit !== undefined && limit > 0 ? [value / limit] : [];
  });
}

/** What a variant comes to by a want, in words. */
export function comesToText(want: Want, value: number | undefined, currency: string, units: UnitSystem): string {
  if (value === undefined) return 'unknown';
  const { unit } = wantRules.find((rule) => rule.want === want)!;
  return unit === 'money' ? `${Math.round(value)} ${currency}` : formatQuantity(unit as KindName, value, units);
}
