// Hinges of a leaf: where they are, and what is cut into it for them: cups where it takes them, else the holes that the file gives.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Cut } from './board-part.ts';
import type { Span } from './place.ts';

/** Cup hinge: hole of 35 mm, 12 mm deep, its edge 4.5 mm from that of the leaf (3 to 6 mm), so that its middle is at 22 mm. */
export const CUP = { diameter: 0.035, depth: 0.012, middle: 0.022, left: 0.003 } as const;

/** Hinges evenly between the outermost, which lie evenly about the middle of the edge. */
export function hingePlaces(cabinet: Cabinet, id: string, [from, to]: Span): readonly number[] {
  const { count, spacing } = cabinet.structure.hinges[id] ?? { count: 2, spacing: 0.75 * (to - from) };
  const middle = (from + to) / 2;
  const apart = Math.min(spacing, to - from - 4 * CUP.middle);
  if (count < 2) return [middle];
  return Array.from({ length: count }, (_, at) => middle - apart / 2 + (at * apart) / (count - 1));
}

export function hingeWords(
  id: string,
  material: string,
  known: boolean,
): { readonly missing?: string; readonly note?: string } {
  if (material === '') return {};
  if (known)
    return {
      note: `hinges of ${id}: surface hinges or clamps through the leaf; their holes in the carcass are marked off the hinge once the leaf hangs true`,
    };
  return {
    missing: `hinges of ${id}: a leaf of ${material} takes no cup; say which holes its surface hinges or clamps want: give hinges: { holes: { from-edge, apart, diameter } } of this door`,
  };
}

/** A place on a leaf, so far along its hinged edge and so far from it. */
function besideHinge(hinge: string, place: number, from: number, u: Span, v: Span): readonly [u: number, v: number] {
  if (hinge === 'left') return [from, place - v[0]];
  if (hinge === 'right') return [u[1] - u[0] - from, place - v[0]];
  return [place - u[0], hinge === 'bottom' ? from : v[1] - v[0] - from];
}

export function cups(hinge: string, hinges: readonly number[], u: Span, v: Span): readonly Cut[] {
  return hinges.map(
    (place): Cut => ({
      purpose: 'cup',
      shape: { kind: 'round', at: besideHinge(hinge, place, CUP.middle, u, v), diameter: CUP.diameter },
      depth: CUP.depth,
      side: 'seen',
      what: 'hinge cup',
    }),
  );
}

/** Two through holes for each hinge that is screwed or clamped onto the leaf. */
export function surfaceHoles(
  { fromEdge, apart, diameter }: NonNullable<Cabinet['structure']['hinges'][string]['holes']>,
  hinge: string,
  hinges: readonly number[],
  u: Span,
  v: Span,
  id: string,
): readonly Cut[] {
  return hinges.flatMap((place) =>
    [-0.5, 0.5].map(
      (half): Cut => ({
        purpose: 'hole',
        shape: { kind: 'round', at: besideHinge(hinge, place + half * apart, fromEdge, u, v), diameter },
        depth: 'through',
        side: 'seen',
        what: `hinge of ${id}`,
      }),
    ),
  );
}
