// Rows of money with their bands: each a sum over one day or many, by the middle of everything and by every sample.

import { bandOf } from '../judge/bands.ts';

export interface CostRow {
  /** Stable: `filament`, `electricity`, `total`. */
  readonly id: string;
  readonly says: string;
  /** Absent when an input is missing. */
  readonly value?: number;
  readonly p10?: number;
  readonly p50?: number;
  readonly p90?: number;
  /** What is not known, and how to give it. */
  readonly missing?: string;
  readonly source?: string;
}

/** What a sum is made from: the middle, and one of each sample. */
export interface Drawn<Item> {
  readonly middle: Item;
  readonly samples: readonly Item[];
}

export interface Told<Item> {
  readonly id: string;
  readonly says: string;
  readonly of: (item: Item) => number | undefined;
  readonly missing?: string;
  readonly source?: string;
}

export function rowOf<Item>({ middle, samples }: Drawn<Item>, { id, says, of, missing, source }: Told<Item>): CostRow {
  const value = of(middle);
  const told = { id, says, ...(source === undefined ? {} : { source }) };
  if (value === undefined) return { ...told, ...(missing === undefined ? {} : { missing }) };
  return { ...told, value, ...bandOf(samples.flatMap((sample) => of(sample) ?? [])) };
}
