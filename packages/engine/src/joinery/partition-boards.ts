// Boards between bays: shelves and upright boards, with the grooves, pins and cleats that hold their ends.

import type { Cabinet, Partition } from '../cabinet/cabinet.ts';
import type { BoardPart, Cut, Strip } from './board-part.ts';
import { grainOf, isWood, type Unmarked } from './carcass-boards.ts';
import { extent, HAIR, type Place, type Span, shared, span, type Triple } from './place.ts';
import { STILL_AIR, trueThickness } from './skins.ts';

/** A shelf that is put in from the front is this much shorter at each end, m; common practice. */
const PLAY = 0.001;
/** Pins are this far from the front and back edges, m; common practice. */
const PIN_INSET = 0.037;
/** Cleats, m; common practice. */
const CLEAT = 0.02;
/** A board that holds a shelf is no further from its end than this, m. */
const NEAR = 0.08;

/**
 * Boards of a partition, lying upon or beside each other, before their ends are held. `behind` says how far from the front and
 * from the back a board between two bays must stay, for leaves that lie in an opening over both.
 */
export function partitionBoards(
  cabinet: Cabinet,
  behind: (bays: readonly [string, string]) => readonly [front: number, back: number],
): readonly Unmarked[] {
  return cabinet.partitions.flatMap((partition, index) => boardsOf(cabinet, partition, index, behind(partition.bays)));
}

function boardsOf(
  cabinet: Cabinet,
  { id, bays, build }: Partition,
  index: number,
  [front, back]: readonly [number, number],
): readonly Unmarked[] {
  const [a, b] = [cabinet.bays[bays[0]]!, cabinet.bays[bays[1]]!];
  const level = shared(a.x, b.x) > HAIR;
  const layers = build.layers.map((layer) => ({ layer, thickness: trueThickness(cabinet, layer) }));
  const total = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const common: Span = level
    ? [Math.max(a.x[0], b.x[0]), Math.min(a.x[1], b.x[1])]
    : [Math.max(a.z[0], b.z[0]), Math.min(a.z[1], b.z[1])];
  // A shelf's top is the floor of the bay above it; an upright board stands in the middle of the gap between its bays.
  const gap: Span = level
    ? [Math.min(a.z[1], b.z[1]), Math.max(a.z[0], b.z[0])]
    : [Math.min(a.x[1], b.x[1]), Math.max(a.x[0], b.x[0])];
  let at = level ? gap[1] - total : (gap[0] + gap[1] - total) / 2;
  return layers.flatMap(({ layer, thickness }, order): Unmarked[] => {
    const from = at;
    at += thickness;
    if (layer.material === STILL_AIR) return [];
    const depth = cabinet.inside.depth - back;
    const place: Place = level
      ? { from: [common[0], front, from], to: [common[1], depth, at] }
      : { from: [from, front, common[0]], to: [at, depth, common[1]] };
    const axes: BoardPart['axes'] = level ? { u: 'x', v: 'y', t: 'z' } : { u: 'y', v: 'z', t: 'x' };
    const held = cabinet.structure.shelves[id];
    const way = level ? (held?.grain === 'across' ? 'v' : 'u') : 'v';
    const lipping = held?.lipping;
    return [
      {
        name: `${level ? 'shelf' : 'upright'} ${id}${layers.length > 1 ? `, layer ${order + 1}` : ''}`,
        of: `partitions.${index}`,
        board: layer.material,
        nominal: layer.thickness,
        thickness,
        place,
        axes,
        u: extent(axes.u, place),
        v: extent(axes.v, place),
        seen: level ? 'seen from above, front edge below' : 'seen from the right, front edge at the left',
        mirrored: false,
        grain: grainOf(cabinet, layer.material, way),
        cuts: [],
        edges: lipping === undefined ? '' : lipping.edges === 2 ? 'strip in front and at the back' : 'strip in front',
        kind: 'partition',
      },
    ];
  });
}

export interface Held {
  /** The shelf as long as its joint asks for. */
  readonly shelf: Unmarked;
  /** What is cut into the boards that hold it, by their place in the list. */
  readonly cuts: ReadonlyMap<number, readonly Cut[]>;
  readonly strips: readonly Strip[];
  readonly problem?: string;
}

/** How a level board is held by the boards at its ends. */
export function heldShelf(cabinet: Cabinet, shelf: Unmarked, boards: readonly Unmarked[]): Held {
  const index = Number(/^partitions\.(\d+)/.exec(shelf.of)?.[1]);
  const id = cabinet.partitions[index]!.id;
  const hold = cabinet.structure.shelves[id]!;
  const ends = (['left', 'right'] as const).map((side) => ({ side, at: holderOf(shelf, boards, side) }));
  const cuts = new Map<number, readonly Cut[]>();
  const depth = extent('y', shelf.place);
  const what = `shelf ${id}`;
  const lippings: readonly Strip[] =
    hold.lipping === undefined
      ? []
      : [
          {
            what: 'lipping',
            of: what,
            count: hold.lipping.edges,
            length: extent('x', shelf.place),
            height: hold.lipping.height,
            breadth: hold.lipping.breadth,
          },
        ];
  const shortened = (by: number): Unmarked => lengthened(shelf, -by, -by);
  if (hold.joint === 'glued') return { shelf, cuts, strips: lippings };
  if (hold.joint === 'brackets') return { shelf: shortened(PLAY), cuts, strips: lippings };
  if (hold.joint === 'cleats') {
    const cleat = { what: 'cleat', of: what, count: 2, length: depth, height: CLEAT, breadth: CLEAT };
    return { shelf: shortened(PLAY), cuts, strips: [...lippings, cleat] };
  }
  if (hold.joint === 'pins') {
    const { count, diameter, depth: deep } = hold.pins;
    const each = Math.max(2, Math.ceil(count / 2));
    for (const { side, at } of ends) {
      const holder = at === undefined ? undefined : boards[at]!;
      if (holder === undefined || !takes(cabinet, holder, deep)) continue;
      const height = shelf.place.from[2] - diameter / 2 - holder.place.from[2];
      const pins = Array.from({ length: each }, (_, turn): Cut => {
        const y =
          shelf.place.from[1] + PIN_INSET + (turn * (depth - 2 * PIN_INSET)) / (each - 1) - holder.place.from[1];
        return {
          purpose: 'pin',
          shape: { kind: 'round', at: [y, height], diameter },
          depth: deep,
          side: facing(holder, side),
          what: `pin of ${what}`,
        };
      });
      cuts.set(at!, pins);
    }
    return { shelf: shortened(PLAY), cuts, strips: lippings };
  }
  const grooves = ends.map(({ side, at }) => {
    const holder = at === undefined ? undefined : boards[at]!;
    if (holder === undefined) return 0;
    const deep = Math.min(cabinet.joinery.housing ?? holder.thickness / 3, holder.thickness / 2);
    if (!takes(cabinet, holder, deep)) return 0;
    const [y, z] = [shelf.place.from[1] - holder.place.from[1], shelf.place.from[2] - holder.place.from[2]];
    cuts.set(at!, [
      {
        purpose: 'housing',
        shape: { kind: 'rectangle', from: [y, z], to: [y + depth, z + shelf.thickness] },
        depth: deep,
        side: facing(holder, side),
        what,
      },
    ]);
    return deep;
  });
  const missed = ends.filter((_, at) => grooves[at] === 0).map(({ side }) => side);
  return {
    shelf: lengthened(shelf, grooves[0]!, grooves[1]!),
    cuts,
    strips: lippings,
    ...(missed.length === 0
      ? {}
      : {
          problem: `${what}: no board that takes a groove is at its ${missed.join(' and ')} end; say shelves.${id}.joint`,
        }),
  };
}

/** The board whose face is nearest to an end of the shelf. */
function holderOf(shelf: Unmarked, boards: readonly Unmarked[], side: 'left' | 'right'): number | undefined {
  const end = side === 'left' ? shelf.place.from[0] : shelf.place.to[0];
  let [best, nearest]: [number | undefined, number] = [undefined, NEAR];
  for (const [at, { axes, place, kind }] of boards.entries()) {
    if (axes.t !== 'x' || kind === 'leaf') continue;
    if (shared(span('z', place), span('z', shelf.place)) <= HAIR) continue;
    const gap = side === 'left' ? end - place.to[0] : place.from[0] - end;
    if (gap > -HAIR && gap < nearest - HAIR) [best, nearest] = [at, gap];
  }
  return best;
}

/** Which side of an upright board looks at a shelf whose left or right end it holds. */
function facing(holder: Unmarked, side: 'left' | 'right'): Cut['side'] {
  if (holder.kind === 'carcass') return 'seen';
  return side === 'left' ? 'seen' : 'far';
}

function takes(cabinet: Cabinet, { board, nominal, of, thickness }: Unmarked, depth: number): boolean {
  const layer = layerOf(cabinet, of, board, nominal);
  return layer !== undefined && isWood(cabinet, layer) && depth < thickness;
}

export function layerOf(
  cabinet: Cabinet,
  of: string,
  board: string,
  nominal: number,
): { readonly material: string; readonly density: number; readonly thickness: number } | undefined {
  const [section, id] = [of.slice(0, of.indexOf('.')), of.slice(of.indexOf('.') + 1)];
  const build =
    section === 'faces'
      ? cabinet.faces[id as keyof Cabinet['faces']].build
      : section === 'doors'
        ? cabinet.doors[id]!.build
        : cabinet.partitions[Number(id)]!.build;
  return build.layers.find(({ material, thickness }) => material === board && thickness === nominal);
}

function lengthened(part: Unmarked, left: number, right: number): Unmarked {
  const { from, to } = part.place;
  const place: Place = {
    from: [from[0] - left, from[1], from[2]] satisfies Triple,
    to: [to[0] + right, to[1], to[2]] satisfies Triple,
  };
  return { ...part, place, u: extent('x', place) };
}
