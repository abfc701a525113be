// What of a cabinet is in view: how far around it the paper reaches, and which storey is seen from above.

import type { Cabinet } from '@stillair/engine';
import type { Box, FlatView } from './projection.ts';
import { boxOf, outsideBox, partitionBox } from './solids.ts';

/** Of the room around it that far is drawn, m; who sits further away stands at the edge, with the distance. */
const SURROUND = 0.7;

/** From above, the people around it belong into the picture. */
export function sceneBox(cabinet: Cabinet, view: FlatView): Box {
  const outside = outsideBox(cabinet);
  if (view !== 'plan') return outside;
  const people = Object.values(cabinet.people).map(({ at }) => at);
  const reach = (axis: 'x' | 'y', at: 0 | 1): [number, number] => [
    Math.min(outside[axis][0], ...people.map((place) => Math.max(place[at], outside[axis][0] - SURROUND))),
    Math.max(outside[axis][1], ...people.map((place) => Math.min(place[at], outside[axis][1] + SURROUND))),
  ];
  return { ...outside, x: reach('x', 0), y: reach('y', 1) };
}

/** From above one storey is seen: that of the picked part, else the lowest. */
export function baysOfStorey(cabinet: Cabinet, picked: string | undefined): readonly string[] {
  const ids = Object.keys(cabinet.bays);
  const box = picked === undefined || picked.startsWith('people.') ? undefined : boxOf(cabinet, picked);
  const height = box === undefined ? Math.min(...ids.map((id) => cabinet.bays[id]!.z[1])) : (box.z[0] + box.z[1]) / 2;
  const here = ids.filter((id) => cabinet.bays[id]!.z[0] <= height && height <= cabinet.bays[id]!.z[1]);
  return here.length > 0 ? here : ids;
}

/** A board that lies, not one that stands between bays side by side. */
export function isLying(cabinet: Cabinet, at: number): boolean {
  const { x, z } = partitionBox(cabinet, at);
  return x[1] - x[0] > z[1] - z[0];
}

/** One of these bays is an end of the way for air. */
export function leadsTo({ paths }: Cabinet, id: string, bays: readonly string[]): boolean {
  const { from, to } = paths[id]!;
  return bays.includes(from) || bays.includes(to);
}
