// From the cabinet's own axes (x to the right, y to the back, z up; m) to a view of it and to the paper (pixels, y down).

import type { Cabinet } from '@stillair/engine';
import type { View } from '../model/work.ts';

export type FlatView = Exclude<View, 'space'>;
export type Axis = 'x' | 'y' | 'z';
export type FaceName = keyof Cabinet['faces'];

/** A stretch along each axis, m. */
export interface Box {
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly z: readonly [number, number];
}

/** What lies to the right and up on the paper. From the front and from above x runs right; from the right side the front lies left. */
export const axesOf: Readonly<Record<FlatView, { readonly right: Axis; readonly up: Axis }>> = {
  front: { right: 'x', up: 'z' },
  side: { right: 'y', up: 'z' },
  plan: { right: 'x', up: 'y' },
};

/** A rectangle on the paper. */
export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export interface Paper {
  readonly view: FlatView;
  /** Pixels a metre. */
  readonly scale: number;
  readonly right: (value: number) => number;
  readonly up: (value: number) => number;
  readonly area: (box: Box) => Area;
  /** Metres of a movement on the paper. */
  readonly metres: (pixels: number) => number;
}

/** Room for what stands around the cabinet, pixels. */
export interface Margins {
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly left: number;
}

/** Lays a box on a paper of a size, in the middle of what the margins leave. */
export function layPaper(
  view: FlatView,
  box: Box,
  size: { readonly width: number; readonly height: number },
  margins: Margins,
): Paper {
  const { right, up } = axesOf[view];
  const [wide, high] = [box[right][1] - box[right][0], box[up][1] - box[up][0]];
  const room = {
    width: size.width - margins.left - margins.right,
    height: size.height - margins.top - margins.bottom,
  };
  const scale = Math.max(1, Math.min(room.width / wide, room.height / high));
  const left = margins.left + (room.width - wide * scale) / 2 - box[right][0] * scale;
  const bottom = margins.top + (room.height + high * scale) / 2 + box[up][0] * scale;
  const toRight = (value: number): number => left + value * scale;
  const toUp = (value: number): number => bottom - value * scale;
  return {
    view,
    scale,
    right: toRight,
    up: toUp,
    area: (of) => ({
      left: toRight(of[right][0]),
      top: toUp(of[up][1]),
      width: (of[right][1] - of[right][0]) * scale,
      height: (of[up][1] - of[up][0]) * scale,
    }),
    metres: (pixels) => pixels / scale,
  };
}

/** An area as the attributes of a rectangle. */
export function plain({ left, top, width, height }: Area) {
  return { x: left, y: top, width: Math.max(0, width), height: Math.max(0, height) };
}
