// A board of the construction: where it is in the cabinet, how large, and what is cut into it. Metres.

import type { Axis, Place } from './place.ts';

/** What a cut is for: each has a layer of its own in a drawing for a cutter. */
export type Purpose = 'hole' | 'opening' | 'cup' | 'pin' | 'pilot' | 'housing' | 'rebate';

export type CutShape =
  | { readonly kind: 'round'; readonly at: readonly [u: number, v: number]; readonly diameter: number }
  | {
      readonly kind: 'rectangle';
      readonly from: readonly [u: number, v: number];
      readonly to: readonly [u: number, v: number];
    };

export interface Cut {
  readonly purpose: Purpose;
  readonly shape: CutShape;
  readonly depth: number | 'through';
  /** On the side that is seen in its drawing, or on the far one. */
  readonly side: 'seen' | 'far';
  /** What it is for, with the path of its part: `air.exhaust`. */
  readonly what: string;
}

export interface BoardPart {
  /** `1`, `2` …: written on the board. */
  readonly mark: string;
  readonly name: string;
  /** `faces.back`, `doors.front`, `partitions.0`. */
  readonly of: string;
  readonly board: string;
  /** As it is written, and as it is: alike where nobody measured. */
  readonly nominal: number;
  readonly thickness: number;
  readonly place: Place;
  /** Which way of the cabinet its drawing goes to the right and up. Its datum is the corner with the least of both. */
  readonly axes: { readonly u: Axis; readonly v: Axis; readonly t: Axis };
  /** Sizes along these. */
  readonly u: number;
  readonly v: number;
  /** Which side is drawn, in words; `mirrored` when the datum then lies at the lower right. */
  readonly seen: string;
  readonly mirrored: boolean;
  /** Way of the grain of its faces; boards without one have none. */
  readonly grain: 'u' | 'v' | 'none';
  readonly cuts: readonly Cut[];
  /** Strips along its edges, in words. */
  readonly edges: string;
  /** A door's leaf, a board of the carcass, or one between bays. */
  readonly kind: 'carcass' | 'leaf' | 'partition';
}

/** Strips that are cut to length beside the boards: lippings, cleats, battens. */
export interface Strip {
  readonly what: string;
  readonly of: string;
  readonly count: number;
  readonly length: number;
  readonly height: number;
  readonly breadth: number;
}

/** m³ before anything is cut into it. */
export function volumeOf({ u, v, thickness }: Pick<BoardPart, 'u' | 'v' | 'thickness'>): number {
  return u * v * thickness;
}

/** m³ that cuts take out. Cuts of one board do not overlap. */
export function cutVolume({ cuts, thickness }: Pick<BoardPart, 'cuts' | 'thickness'>): number {
  return cuts.reduce((sum, { shape, depth }) => sum + areaOf(shape) * (depth === 'through' ? thickness : depth), 0);
}

export function areaOf(shape: CutShape): number {
  if (shape.kind === 'round') return (Math.PI * shape.diameter ** 2) / 4;
  return (shape.to[0] - shape.from[0]) * (shape.to[1] - shape.from[1]);
}
