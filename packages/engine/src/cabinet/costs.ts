// What the cabinet and its prints cost: prices, hours, and how often each day comes. Money is in the currency of the file.

import type { Size } from './cabinet.ts';

export interface PriceRange {
  readonly low: number;
  readonly high: number;
}

export interface Costs {
  /** Where all prices lie between their low and their high ends, 0…1: dear shops are dear in everything. */
  readonly pricePosition: number;
  /** A carcass that is bought ready: its price stands for its boards, doors and hours. */
  readonly carcass?: PriceRange;
  /** A joiner's hour; absent when somebody builds it in their own time. */
  readonly hour?: PriceRange;
  /** Hours of building, when somebody knows better than the rule. */
  readonly hours?: number;
  /** Factor on the hours that the rule gives. */
  readonly hoursFactor: number;
  /** One cut, when a shop saws the sheets. */
  readonly cut?: PriceRange;
  /** Width of the saw's cut, m. */
  readonly kerf: number;
  /** Cut off each edge of a new sheet, m. */
  readonly trim: number;
  /** Parts may be turned by a quarter: no grain is seen. */
  readonly turned: boolean;
  /** Sheet in which each board of the cabinet is sold, m; boards that are cut to size have none. */
  readonly sheets: Readonly<Record<string, readonly [length: number, width: number]>>;
  /** Price of a square metre of each board of the cabinet. */
  readonly boards: Readonly<Record<string, PriceRange>>;
  /** Price of each detector, device of the chain and extinguisher, by its path below `protection`. */
  readonly devices: Readonly<Record<string, PriceRange>>;
  /** Set aside for what was forgotten, share of the material's price and of the hours. */
  readonly contingencyMaterial: number;
  readonly contingencyHours: number;
  /** Nozzles, belts, sheets and oil, money for each second of printing. */
  readonly wear: number;
  /** Seconds of printing that a machine lives. */
  readonly machineLife: number;
  /** Share of prints that fail. */
  readonly failures: number;
  /** Share of filament for purging, skirts, supports and tails beyond the part's own. */
  readonly waste: number;
  /** Seconds of printing after which a particle filter or a carbon stage is changed. */
  readonly filterLife: number;
  readonly carbonLife: number;
  /** A person's hands on one job, s: preparing, taking off, cleaning. */
  readonly hand: number;
  /** An hour of them; absent when somebody prints in their own time. */
  readonly handHour?: PriceRange;
  /** Seconds over which the cabinet itself is written off. */
  readonly cabinetLife: number;
  /** Price of a kilogram of each filament that is printed. */
  readonly filament: Readonly<Record<string, PriceRange>>;
  /** How often each day comes in a year; absent where the file does not say. */
  readonly times: Readonly<Record<string, number>>;
}

/** A carcass that is thought of in place of the one in the file. */
export interface Carcass {
  readonly title: string;
  readonly inside: Size;
  /** Clear opening of its front, m. */
  readonly opening: readonly [width: number, height: number];
  /** Bought ready, or built. */
  readonly from: 'bought' | 'built';
  /** What it costs as it comes; of a built one, absent: then its sheets and hours are reckoned. */
  readonly price?: PriceRange;
  /** Board of which a built one is made, with its thickness. */
  readonly board: string;
  readonly thickness: number;
  /** What must be done to it, each with its price. */
  readonly changes: Readonly<Record<string, PriceRange>>;
}
