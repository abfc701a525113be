// Boxes seen from one side: nearer ones hide what is behind them.

import type { Place } from '../../joinery/place.ts';
import { type Axis, along } from '../../joinery/place.ts';
import { box, type Fill, type LineKind, type Mark } from '../frame/mark.ts';

/** Which way of the cabinet goes to the right and up on paper, and along which one looks; −1 for the other way round. */
export interface View {
  readonly right: readonly [Axis, 1 | -1];
  readonly up: readonly [Axis, 1 | -1];
  /** Away from whoever looks. */
  readonly away: readonly [Axis, 1 | -1];
}

export const views: Readonly<Record<'front' | 'left' | 'above', View>> = {
  front: { right: ['x', 1], up: ['z', 1], away: ['y', 1] },
  left: { right: ['y', -1], up: ['z', 1], away: ['x', 1] },
  above: { right: ['x', 1], up: ['y', 1], away: ['z', -1] },
};

export interface Seen {
  readonly place: Place;
  readonly line: LineKind;
  readonly fill?: Fill;
  /** Drawn on its face once it stands, and hidden with it. */
  readonly on?: (frame: Frame) => readonly Mark[];
}

/** Where the cabinet's origin lies on paper, and mm for each metre. */
export interface Frame {
  readonly view: View;
  readonly x: number;
  readonly y: number;
  readonly factor: number;
}

export function across({ view, x, factor }: Frame, at: Place['from']): number {
  return x + view.right[1] * along(view.right[0], at) * factor;
}

export function down({ view, y, factor }: Frame, at: Place['from']): number {
  return y - view.up[1] * along(view.up[0], at) * factor;
}

/** The rectangle that a box covers on paper. */
export function rectangle(frame: Frame, { from, to }: Place): { x: number; y: number; width: number; height: number } {
  const [a, b] = [across(frame, from), across(frame, to)];
  const [c, d] = [down(frame, from), down(frame, to)];
  return { x: Math.min(a, b), y: Math.min(c, d), width: Math.abs(b - a), height: Math.abs(d - c) };
}

/** Draws what is far first, so that what is near covers it. */
export function seen(frame: Frame, boxes: readonly Seen[]): readonly Mark[] {
  const [axis, sign] = frame.view.away;
  const near = ({ place }: Seen): number => Math.min(sign * along(axis, place.from), sign * along(axis, place.to));
  return [...boxes]
    .sort((a, b) => near(b) - near(a))
    .flatMap((each) => {
      const { x, y, width, height } = rectangle(frame, each.place);
      return [box(x, y, width, height, each.line, each.fill ?? 'paper'), ...(each.on?.(frame) ?? [])];
    });
}

/** The outline of a box alone, whatever stands before it. */
export function ghost(frame: Frame, place: Place, line: LineKind): Mark {
  const { x, y, width, height } = rectangle(frame, place);
  return box(x, y, width, height, line);
}
