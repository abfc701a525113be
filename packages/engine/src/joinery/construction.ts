// What a cabinet is built of: every board with its place, size and cuts, the strips beside them, and what nobody has said.

import type { Cabinet, FaceName } from '../cabinet/cabinet.ts';
import { measuredName } from '../cabinet/joinery.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import { airHoles } from './air-holes.ts';
import type { BoardPart, Cut, Strip } from './board-part.ts';
import { carcassBoards, isWood, type Unmarked } from './carcass-boards.ts';
import { type LeafBoards, leafBoards, openingOf, platePilots } from './leaf-boards.ts';
import { heldShelf, layerOf, partitionBoards } from './partition-boards.ts';
import { along } from './place.ts';
import { STILL_AIR, skinsOf, wallThickness } from './skins.ts';

export interface Construction {
  readonly boards: readonly BoardPart[];
  readonly strips: readonly Strip[];
  /** What the file does not say and must be known before it is built. */
  readonly problems: readonly string[];
  /** What was taken as usual, in words. */
  readonly assumes: readonly string[];
}

/** Battens across a hollow are no further apart than this, m; common practice. */
const BATTENS = 0.4;

/** Several papers ask for the same. */
export const constructionOf: (cabinet: Cabinet) => Construction = restingOnParts((cabinet) => {
  const { boards, cuts, strips, problems, assumes } = unpierced(cabinet);
  const air = airHoles(cabinet, boards);
  return {
    boards: boards.map((board, at) => ({
      ...board,
      mark: String(at + 1),
      cuts: [...board.cuts, ...(cuts.get(at) ?? []), ...(air.cuts.get(at) ?? [])],
    })),
    strips,
    problems: [...problems, ...air.problems],
    assumes: [...assumes, ...air.assumes],
  };
});

/** Boards in their sizes, without most of their cuts. */
export function unpiercedBoards(cabinet: Cabinet): readonly Unmarked[] {
  return unpierced(cabinet).boards;
}

/** Everything but the holes of air paths. */
const unpierced = restingOnParts((cabinet: Cabinet) => {
  const leaves = Object.keys(cabinet.doors).map((id) => [id, leafBoards(cabinet, id)] as const);
  const standing = [
    ...carcassBoards(cabinet),
    ...partitionBoards(cabinet, (bays) => behindLeaves(cabinet, leaves, bays)),
  ];
  const cuts = new Map<number, readonly Cut[]>();
  const add = (at: number, more: readonly Cut[]): void => void cuts.set(at, [...(cuts.get(at) ?? []), ...more]);
  const strips: Strip[] = [];
  const problems: string[] = [];

  const held = standing.map((board) => {
    if (board.kind !== 'partition' || board.axes.t !== 'z') return board;
    const hold = heldShelf(cabinet, board, standing);
    for (const [at, more] of hold.cuts) add(at, more);
    strips.push(...hold.strips);
    if (hold.problem !== undefined) problems.push(hold.problem);
    return hold.shelf;
  });
  for (const [id, leaf] of leaves) {
    const pilots = platePilots(cabinet, id, leaf, held);
    if (pilots !== undefined) add(pilots.at, pilots.cuts);
    if (leaf.missing !== undefined) problems.push(leaf.missing);
  }
  for (const [at, board] of held.entries()) add(at, doorOpenings(cabinet, board));
  const boards: readonly Unmarked[] = [...held, ...leaves.flatMap(([, leaf]) => leaf.boards)];
  return { boards, cuts, strips: [...strips, ...frontRing(cabinet)], problems, assumes: assumesOf(cabinet, leaves) };
});

/** How far leaves that lie in an opening over both bays reach into them, from the front and from the back. */
function behindLeaves(
  cabinet: Cabinet,
  leaves: readonly (readonly [string, LeafBoards])[],
  bays: readonly [string, string],
): readonly [front: number, back: number] {
  const over = (face: FaceName): readonly Unmarked[] =>
    leaves.flatMap(([id, leaf]) => {
      const door = cabinet.doors[id]!;
      return door.face === face && bays.every((bay) => door.bays.includes(bay)) ? leaf.boards : [];
    });
  return [
    Math.max(0, ...over('front').map(({ place }) => place.to[1])),
    Math.max(0, ...over('back').map(({ place }) => cabinet.inside.depth - place.from[1])),
  ];
}

/** What doors leave out of a fixed board of their face. */
function doorOpenings(cabinet: Cabinet, board: Unmarked): readonly Cut[] {
  if (board.kind !== 'carcass') return [];
  const face = board.of.slice('faces.'.length) as FaceName;
  return Object.entries(cabinet.doors).flatMap(([id, door]): Cut[] => {
    if (door.face !== face) return [];
    const { u, v } = openingOf(cabinet, door);
    const [du, dv] = [along(board.axes.u, board.place.from), along(board.axes.v, board.place.from)];
    return [
      {
        purpose: 'opening',
        shape: { kind: 'rectangle', from: [u[0] - du, v[0] - dv], to: [u[1] - du, v[1] - dv] },
        depth: 'through',
        side: 'seen',
        what: `opening of ${id}`,
      },
    ];
  });
}

/** Hollow walls are closed in front by a ring, and held apart by battens. */
function frontRing(cabinet: Cabinet): readonly Strip[] {
  const hollow = skinsOf(cabinet).flatMap((skin) =>
    (['top', 'bottom', 'left', 'right', 'back'] as const).flatMap((face) => {
      const { layer, thickness } = skin[face];
      return layer?.material === STILL_AIR ? [{ face, thickness }] : [];
    }),
  );
  if (hollow.length === 0) return [];
  const { width, height, depth } = cabinet.inside;
  const wide = wallThickness(cabinet, 'left');
  const high = wallThickness(cabinet, 'top');
  const facing = 0.009;
  return [
    { what: 'front ring, level', of: 'carcass', count: 2, length: width + 2 * wide, height: high, breadth: facing },
    { what: 'front ring, upright', of: 'carcass', count: 2, length: height, height: wide, breadth: facing },
    ...hollow.map(({ face, thickness }): Strip => {
      const [run, over] =
        face === 'back' ? [height, width] : face === 'left' || face === 'right' ? [height, depth] : [width, depth];
      return {
        what: 'batten in the hollow',
        of: face,
        count: Math.ceil(over / BATTENS) + 1,
        length: run,
        height: thickness,
        breadth: 0.03,
      };
    }),
  ];
}

function assumesOf(cabinet: Cabinet, leaves: readonly (readonly [string, LeafBoards])[]): readonly string[] {
  const { joinery, faces, doors, partitions } = cabinet;
  const layers = [...Object.values(faces), ...Object.values(doors), ...partitions].flatMap(({ build }) => build.layers);
  const nominal = [
    ...new Set(
      layers.flatMap(({ material, thickness, density }) =>
        isWood(cabinet, { material, thickness, density }) &&
        joinery.measured[measuredName(material, thickness)] === undefined
          ? [`${material} ${Math.round(thickness * 1e4) / 10} mm`]
          : [],
      ),
    ),
  ];
  const joints = new Set(
    partitions.flatMap(({ id, bays: [a, b] }) => {
      const [one, other] = [cabinet.bays[a]!, cabinet.bays[b]!];
      return Math.min(one.x[1], other.x[1]) > Math.max(one.x[0], other.x[0])
        ? [cabinet.structure.shelves[id]!.joint]
        : [];
    }),
  );
  return [
    `tops and bottoms run over the sides, backs overlay all, ${joinery.corners === 'rebate' ? 'sides stand in rebates of half the board (joinery.corners)' : 'boards meet blunt (joinery.corners: rebate adds to the sides)'}`,
    ...nominal.map((name) => `${name} is as thick as it is written: measure it and give joinery.measured`),
    ...leaves.flatMap(([id, { assumed, lies }]) =>
      assumed
        ? [
            `the leaf of ${id} lies ${lies === 'before' ? 'before the edges' : 'in its opening'}, as the edges beside it are ${lies === 'before' ? '8 mm or more' : 'thinner than 8 mm'} (joinery.doors.${id}.lies)`,
          ]
        : [],
    ),
    ...leaves.flatMap(([, { note }]) => note ?? []),
    ...(joints.has('pins') || joints.has('cleats') || joints.has('brackets')
      ? ['shelves that are put in are 1 mm shorter at each end; pins stand 37 mm from front and back']
      : []),
    ...(leaves.some(([, { boards }]) => boards[0]?.cuts.some(({ purpose }) => purpose === 'cup'))
      ? [
          'cups of 35 mm, 12 mm deep, 22 mm from the edge; plates 37 mm from the front with two screws 32 mm apart: hold your hinge to it',
        ]
      : []),
  ];
}

/** Density of the board of a part, kg/m³. */
export function densityOf(cabinet: Cabinet, { of, board, nominal }: BoardPart): number {
  return layerOf(cabinet, of, board, nominal)?.density ?? 0;
}
