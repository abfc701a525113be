// Leaves of doors: how large each is, where it lies, and the cups of its hinges with the pilot holes of their plates.

import type { Cabinet, Door, FaceName } from '../cabinet/cabinet.ts';
import type { LeafPlace } from '../cabinet/joinery.ts';
import type { Cut } from './board-part.ts';
import { grainOf, isWood, type Unmarked } from './carcass-boards.ts';
import { CUP, cups, hingePlaces, hingeWords, surfaceHoles } from './leaf-hinges.ts';
import { type Axis, along, extent, HAIR, type Place, type Span, shared, type Triple } from './place.ts';
import { isCovered, trueThickness, wallThickness } from './skins.ts';

/** What a leaf before the edges leaves free of the outermost edge, m; common practice. */
const REVEAL = 0.0015;
/** How far a leaf lies over a board that has an opening for it, m; common practice. */
const OVERLAP = 0.015;
/** Edges that are thinner than this carry no leaf before them, m. */
const THINNEST_EDGE = 0.008;
/** Plate of the hinge on the side: two screws 32 mm apart, 37 mm behind the front edge or the leaf in it; common practice. */
const PLATE = { apart: 0.032, from: 0.037, pilot: 0.005, depth: 0.011, left: 0.003 } as const;

/** Two ways along a face, and the one out of it with its sign. */
const faceAxes: Readonly<
  Record<FaceName, { readonly u: Axis; readonly v: Axis; readonly t: Axis; readonly out: 1 | -1 }>
> = {
  front: { u: 'x', v: 'z', t: 'y', out: -1 },
  back: { u: 'x', v: 'z', t: 'y', out: 1 },
  left: { u: 'y', v: 'z', t: 'x', out: -1 },
  right: { u: 'y', v: 'z', t: 'x', out: 1 },
  top: { u: 'x', v: 'y', t: 'z', out: 1 },
  bottom: { u: 'x', v: 'y', t: 'z', out: -1 },
};

const low: Readonly<Record<Axis, FaceName>> = { x: 'left', y: 'front', z: 'bottom' };
const high: Readonly<Record<Axis, FaceName>> = { x: 'right', y: 'back', z: 'top' };

export interface LeafBoards {
  readonly boards: readonly Unmarked[];
  readonly lies: LeafPlace;
  /** Nobody said how it lies. */
  readonly assumed: boolean;
  /** Hinge heights or places along the hinged edge, in the cabinet. */
  readonly hinges: readonly number[];
  /** An input without which its hinges cannot be drilled for, and what is taken of those that can. */
  readonly missing?: string;
  readonly note?: string;
}

/** The opening of a door: what its bays leave free in its face. */
export function openingOf(cabinet: Cabinet, door: Door): { readonly u: Span; readonly v: Span } {
  const { u, v } = faceAxes[door.face];
  const over = (axis: Axis): Span => {
    const spans = door.bays.map((bay) => baySpan(cabinet, bay, axis));
    return [Math.min(...spans.map(([from]) => from)), Math.max(...spans.map(([, to]) => to))];
  };
  return { u: over(u), v: over(v) };
}

function baySpan({ bays, inside }: Cabinet, id: string, axis: Axis): Span {
  if (axis === 'y') return [0, inside.depth];
  return bays[id]![axis];
}

/** How far the edge beside an opening reaches until another door or the outside begins. */
function edges(cabinet: Cabinet, door: Door): readonly [left: number, right: number, below: number, above: number] {
  const { u, v } = faceAxes[door.face];
  const opening = openingOf(cabinet, door);
  const size = (axis: Axis): number =>
    axis === 'x' ? cabinet.inside.width : axis === 'y' ? cabinet.inside.depth : cabinet.inside.height;
  const beside = (axis: Axis, own: Span, other: Axis, across: Span, forward: boolean): number => {
    const outer = forward
      ? size(axis) - own[1] + wallThickness(cabinet, high[axis])
      : own[0] + wallThickness(cabinet, low[axis]);
    const gaps = Object.keys(cabinet.bays).flatMap((bay) => {
      if (door.bays.includes(bay) || shared(baySpan(cabinet, bay, other), across) <= HAIR) return [];
      const [from, to] = baySpan(cabinet, bay, axis);
      const gap = forward ? from - own[1] : own[0] - to;
      return gap > -HAIR ? [gap / 2] : [];
    });
    const edge = gaps.length === 0 ? outer - REVEAL : Math.min(...gaps);
    return isCovered(cabinet, door.face) ? edge : Math.min(edge, OVERLAP);
  };
  return [
    beside(u, opening.u, v, opening.v, false),
    beside(u, opening.u, v, opening.v, true),
    beside(v, opening.v, u, opening.u, false),
    beside(v, opening.v, u, opening.u, true),
  ];
}

export function leafBoards(cabinet: Cabinet, id: string): LeafBoards {
  const door = cabinet.doors[id]!;
  const { lies: said, gap } = cabinet.joinery.leaves[id]!;
  const around = edges(cabinet, door);
  const lies = said ?? (Math.min(...around) >= THINNEST_EDGE ? 'before' : 'in');
  const opening = openingOf(cabinet, door);
  // Between two leaves before one edge lies the gap; before an outer edge the reveal is taken off already.
  const reach = around.map((edge, at) =>
    lies === 'in' ? -gap : isShared(cabinet, door, at) ? Math.max(0, edge - gap / 2) : edge,
  );
  const { u, v, t, out } = faceAxes[door.face];
  const [u0, u1] = [opening.u[0] - reach[0]!, opening.u[1] + reach[1]!];
  const [v0, v1] = [opening.v[0] - reach[2]!, opening.v[1] + reach[3]!];
  // Where the face has a board of its own, with an opening in it, the leaf lies on its outside.
  const fixed = isCovered(cabinet, door.face) ? 0 : wallThickness(cabinet, door.face);
  const depthOf = door.build.layers.reduce((sum, layer) => sum + trueThickness(cabinet, layer), 0);
  const face =
    (out < 0 ? 0 : t === 'x' ? cabinet.inside.width : t === 'y' ? cabinet.inside.depth : cabinet.inside.height) +
    out * fixed;
  let at = lies === 'in' ? face - out * depthOf : face;
  const hinge = cabinet.fit.doors[id]?.hinge ?? 'left';
  const along = hinge === 'left' || hinge === 'right' ? ([v0, v1] as const) : ([u0, u1] as const);
  const hinges = hinge === 'slides' || hinge === 'lifts off' ? [] : hingePlaces(cabinet, id, along);
  const hingeHoles = cabinet.structure.hinges[id]?.holes;
  let cupless = '';
  const boards = door.build.layers.map((layer, order): Unmarked => {
    const thickness = trueThickness(cabinet, layer);
    const [near, far] = [at, at + out * thickness];
    at = far;
    const place = boxOf(u, v, [u0, u1], [v0, v1], [Math.min(near, far), Math.max(near, far)]);
    const cupped = order === 0 && isWood(cabinet, { ...layer, thickness }) && thickness >= CUP.depth + CUP.left;
    if (order === 0 && hinges.length > 0 && !cupped) cupless = layer.material;
    const isPierced = cupless !== '' && hingeHoles !== undefined;
    return {
      name: `leaf of ${id}${door.build.layers.length > 1 ? `, layer ${order + 1}` : ''}`,
      of: `doors.${id}`,
      board: layer.material,
      nominal: layer.thickness,
      thickness,
      place,
      axes: { u, v, t },
      u: u1 - u0,
      v: v1 - v0,
      seen: 'seen from inside the cabinet',
      mirrored: door.face === 'front' || door.face === 'right' || door.face === 'top',
      grain: grainOf(cabinet, layer.material, 'v'),
      cuts: cupped
        ? cups(hinge, hinges, [u0, u1], [v0, v1])
        : isPierced
          ? surfaceHoles(hingeHoles, hinge, hinges, [u0, u1], [v0, v1], id)
          : [],
      edges: '',
      kind: 'leaf',
    };
  });
  return {
    boards,
    lies,
    assumed: said === undefined,
    hinges,
    ...hingeWords(id, cupless, hingeHoles !== undefined),
  };
}

function isShared(cabinet: Cabinet, door: Door, side: number): boolean {
  const { u, v } = faceAxes[door.face];
  const opening = openingOf(cabinet, door);
  const axis = side < 2 ? u : v;
  const own = side < 2 ? opening.u : opening.v;
  const [other, across] = side < 2 ? [v, opening.v] : [u, opening.u];
  const forward = side === 1 || side === 3;
  return Object.keys(cabinet.bays).some((bay) => {
    if (door.bays.includes(bay) || shared(baySpan(cabinet, bay, other), across) <= HAIR) return false;
    const [from, to] = baySpan(cabinet, bay, axis);
    return (forward ? from - own[1] : own[0] - to) > -HAIR;
  });
}

function boxOf(u: Axis, v: Axis, us: Span, vs: Span, ts: Span): Place {
  const of = (axis: Axis, end: 0 | 1): number => (axis === u ? us : axis === v ? vs : ts)[end];
  const corner = (end: 0 | 1): Triple => [of('x', end), of('y', end), of('z', end)];
  return { from: corner(0), to: corner(1) };
}

/** Pilot holes for the hinge plates of a front door in the board at its hinged side, by the place of that board in the list. */
export function platePilots(
  cabinet: Cabinet,
  id: string,
  { boards: [leaf], hinges, lies }: LeafBoards,
  boards: readonly Unmarked[],
): { readonly at: number; readonly cuts: readonly Cut[] } | undefined {
  const door = cabinet.doors[id]!;
  const hinge = cabinet.fit.doors[id]?.hinge;
  if (leaf === undefined || !leaf.cuts.some(({ purpose }) => purpose === 'cup') || door.face !== 'front')
    return undefined;
  if (hinge !== 'left' && hinge !== 'right') return undefined;
  const opening = openingOf(cabinet, door);
  const edge = hinge === 'left' ? opening.u[0] : opening.u[1];
  const at = boards.findIndex(
    ({ axes, kind, place, board, nominal, of, thickness }) =>
      axes.t === 'x' &&
      kind !== 'leaf' &&
      Math.abs((hinge === 'left' ? place.to[0] : place.from[0]) - edge) < 1e-4 &&
      hinges.every((z) => z > place.from[2] && z < place.to[2]) &&
      isWood(cabinet, { material: board, density: densityOf(cabinet, of, board), thickness: nominal }) &&
      thickness > 2 * PLATE.left,
  );
  const holder = boards[at];
  if (holder === undefined) return undefined;
  const y = PLATE.from + (lies === 'in' ? extent('y', leaf.place) : 0) - along('y', holder.place.from);
  const side: Cut['side'] = holder.kind === 'carcass' || hinge === 'left' ? 'seen' : 'far';
  const cuts = hinges.flatMap((z) =>
    [-0.5, 0.5].map(
      (half): Cut => ({
        purpose: 'pilot',
        shape: {
          kind: 'round',
          at: [y, z + half * PLATE.apart - holder.place.from[2]],
          diameter: PLATE.pilot,
        },
        depth: Math.min(PLATE.depth, holder.thickness - PLATE.left),
        side,
        what: `hinge plate of ${id}`,
      }),
    ),
  );
  return { at, cuts };
}

function densityOf(cabinet: Cabinet, of: string, board: string): number {
  const index = of.startsWith('partitions.') ? Number(of.slice('partitions.'.length)) : -1;
  const build =
    index >= 0 ? cabinet.partitions[index]!.build : cabinet.faces[of.slice('faces.'.length) as FaceName].build;
  return build.layers.find(({ material }) => material === board)?.density ?? 0;
}
