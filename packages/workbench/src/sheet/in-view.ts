// What of a cabinet is in view: how far around it the paper reaches, and which storey is seen from above.

import type { Cabinet } from '@stillair/engine';
import type { Box, FlatView } from './projection.ts';
import { bayBox, boxOf, outsideBox, partitionBox } from './solids.ts';

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

/** Bays whose inside is drawn: from the front all, from above one storey, from the right one of those that stand behind each other. */
export function baysInView(cabinet: Cabinet, view: FlatView, picked: string | undefined): readonly string[] {
  if (view === 'front') return Object.keys(cabinet.bays);
  return view === 'plan' ? baysOfStorey(cabinet, picked) : baysFromRight(cabinet, picked);
}

/** At each height the nearest, or the one that has the picked part. */
function baysFromRight(cabinet: Cabinet, picked: string | undefined): readonly string[] {
  const ids = Object.keys(cabinet.bays);
  const box = picked === undefined || picked.startsWith('people.') ? undefined : boxOf(cabinet, picked);
  const middle = (axis: Box['x']): number => (axis[0] + axis[1]) / 2;
  const holds = (id: string): boolean => {
    if (box === undefined) return false;
    const { x, z } = bayBox(cabinet, id);
    const [px, pz] = [middle(box.x), middle(box.z)];
    return x[0] <= px && px <= x[1] && z[0] <= pz && pz <= z[1];
  };
  const nearness = (id: string): number => (holds(id) ? Number.POSITIVE_INFINITY : bayBox(cabinet, id).x[1]);
  const level = (a: string, b: string): boolean => {
    const [of, other] = [bayBox(cabinet, a).z, bayBox(cabinet, b).z];
    return Math.min(of[1], other[1]) - Math.max(of[0], other[0]) > 1e-9;
  };
  const sorted = [...ids].sort((a, b) => nearness(b) - nearness(a));
  const seen: string[] = [];
  for (const id of sorted) if (!seen.some((nearer) => level(nearer, id))) seen.push(id);
  return ids.filter((id) => seen.includes(id));
}

/** That of the picked part, else the lowest. */
function baysOfStorey(cabinet: Cabinet, picked: string | undefined): readonly string[] {
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

/** A way for air that is seen with these bays: one of them is its end, and from the right no bay behind them is. */
export function leadsTo({ paths, bays: all }: Cabinet, id: string, bays: readonly string[], view: FlatView): boolean {
  const ends = [paths[id]!.from, paths[id]!.to];
  if (view === 'side' && ends.some((end) => end in all && !bays.includes(end))) return false;
  return ends.some((end) => bays.includes(end));
}
