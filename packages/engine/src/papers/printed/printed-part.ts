// A printed part made to measure: its solid as it is printed, what it was sized from, and what it costs the air.

import type { Edit } from '../../cabinet/cabinet.ts';
import type { Flat, Shape, Spot } from './shape.ts';

export interface AirLoss {
  /** K on the velocity in `area`. */
  readonly factor: number;
  /** m² */
  readonly area: number;
  readonly formula: string;
  readonly source: string;
  /** Each puts it into the cabinet file, so that everything can be computed again with the part in its place. */
  readonly edits?: readonly Edit[];
}

export interface PrintedPart {
  /** Stable, and the name of its files. */
  readonly id: string;
  readonly title: string;
  readonly count: number;
  readonly shape: Shape;
  /** Size of the box that it fills, mm. */
  readonly size: Spot;
  /** Closed form of its volume, mm³, where there is one. */
  readonly volume?: number;
  /** Thinnest wall that it is meant to have, mm. */
  readonly thinnest: number;
  /** What it is for. */
  readonly why: string;
  /** From which inputs it got its sizes: in words, with the number. */
  readonly sizedFrom: readonly string[];
  /** How it lies on the bed, and where it needs support. */
  readonly lies: string;
  /** What to measure or to have at hand before it is printed or screwed on. */
  readonly check: readonly string[];
  /** Bay whose air it meets. */
  readonly bay?: string;
  readonly loss?: AirLoss;
  /** Middles of walls that cross the plane x = 0 (as y, z) and the plane y = 0 (as x, z): pins go there when it is cut in pieces. */
  readonly pins?: { readonly acrossX: readonly Flat[]; readonly acrossY: readonly Flat[] };
}

/** A part that the design calls for and that cannot be drawn, and the input that is missing. */
export interface NotDrawn {
  readonly what: string;
  readonly missing: string;
}
