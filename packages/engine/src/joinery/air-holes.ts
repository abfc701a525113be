// Holes that air paths need in boards: in a face of the carcass or the leaf before it, and in the boards between bays.

import type { Cabinet, CabinetPath, FaceName, Section } from '../cabinet/cabinet.ts';
import type { BoardPart, Cut } from './board-part.ts';
import type { Unmarked } from './carcass-boards.ts';
import { along, type Triple } from './place.ts';

/** Between several holes of one path there is at least this much board, m, and at least half a hole. */
const BRIDGE = 0.03;
/** Board that must be left round a hole, m. */
const RIM = 0.005;

export interface AirHoles {
  /** By the place of the board in the list. */
  readonly cuts: ReadonlyMap<number, readonly Cut[]>;
  readonly problems: readonly string[];
  readonly assumes: readonly string[];
}

export function airHoles(cabinet: Cabinet, boards: readonly Unmarked[]): AirHoles {
  const cuts = new Map<number, Cut[]>();
  const problems: string[] = [];
  const assumes: string[] = [];
  for (const [id, path] of Object.entries(cabinet.paths)) {
    const through = piercedBy(cabinet, path);
    if (through === undefined) continue;
    const what = `air.${id}`;
    const opening = sectionOf(path);
    if (opening === undefined) {
      problems.push(`${what}: how large its hole is does not follow from its parts; give it a hole`);
      continue;
    }
    const at = centreOf(cabinet, path, through);
    const found = boards.flatMap((board, index) => (isHit(cabinet, board, through, at) ? [index] : []));
    if (found.length === 0) {
      problems.push(`${what}: no board is where its hole should be (${through}); say where with at:`);
      continue;
    }
    const faced = through === 'top' || through === 'bottom' || through.startsWith('partitions.');
    if (faced && boards[found[0]!]!.axes.t === 'z')
      assumes.push(`${what}: its hole lies half way from front to back, as the file gives no depth`);
    if (opening.count > 1)
      assumes.push(`${what}: its ${opening.count} holes lie in a row about the place that the file gives`);
    let lost = false;
    for (const index of found) {
      const made = holesIn(boards[index]!, at, opening, what);
      if (made === undefined) lost = true;
      else cuts.set(index, [...(cuts.get(index) ?? []), ...made]);
    }
    if (lost) problems.push(`${what}: its hole reaches over the edge of a board; say where with at:`);
  }
  return { cuts, problems, assumes };
}

/** The face, or the partition, that a path goes through; undefined when it stays in one bay. */
function piercedBy({ bays, machines, partitions }: Cabinet, { from, to, place }: CabinetPath): string | undefined {
  const bayOf = (end: string): string => machines[end.replace(/\.chamber$/, '')]?.bay ?? end;
  const [one, other] = [bayOf(from), bayOf(to)];
  if (one === other) return undefined;
  if (bays[one] === undefined || bays[other] === undefined) return place.face;
  const index = partitions.findIndex(({ bays: pair }) => pair.includes(one) && pair.includes(other));
  return index < 0 ? undefined : `partitions.${index}`;
}

interface Opening {
  readonly section: Section;
  readonly count: number;
}

/** What passes the board: the hole that is said, else the duct, else the fan, else the filter. */
function sectionOf({ parts }: CabinetPath): Opening | undefined {
  for (const part of parts) if (part.part === 'hole') return { section: part.section, count: part.count };
  const round = (diameter: number): Opening => ({ section: { shape: 'round', diameter }, count: 1 });
  for (const part of parts) if (part.part === 'duct') return round(part.diameter);
  for (const part of parts) if (part.part === 'fan' && part.diameter > 0) return round(part.diameter);
  for (const part of parts)
    if ((part.part === 'filter' || part.part === 'carbon') && part.section !== undefined)
      return { section: part.section, count: 1 };
  return undefined;
}

function centreOf({ inside, partitions, bays }: Cabinet, { place }: CabinetPath, through: string): Triple {
  const { along: across, z } = place;
  if (through.startsWith('partitions.')) {
    const [a, b] = partitions[Number(through.slice('partitions.'.length))]!.bays.map((bay) => bays[bay]!);
    const level = Math.min(a!.x[1], b!.x[1]) > Math.max(a!.x[0], b!.x[0]);
    if (level) return [across, inside.depth / 2, Math.min(a!.z[1], b!.z[1])];
    return [Math.min(a!.x[1], b!.x[1]), place.face === 'left' || place.face === 'right' ? across : inside.depth / 2, z];
  }
  switch (through as FaceName) {
    case 'left':
      return [0, across, z];
    case 'right':
      return [inside.width, across, z];
    case 'top':
      return [across, inside.depth / 2, inside.height];
    case 'bottom':
      return [across, inside.depth / 2, 0];
    case 'front':
      return [across, 0, z];
    case 'back':
      return [across, inside.depth, z];
  }
}

function isHit(cabinet: Cabinet, { of, axes, place }: Unmarked, through: string, at: Triple): boolean {
  const inRange = (axis: BoardPart['axes']['u']): boolean =>
    along(axis, at) > along(axis, place.from) && along(axis, at) < along(axis, place.to);
  if (!inRange(axes.u) || !inRange(axes.v)) return false;
  if (of === through || of === `faces.${through}`) return true;
  const door = of.startsWith('doors.') ? cabinet.doors[of.slice('doors.'.length)] : undefined;
  return door?.face === through;
}

function holesIn(board: Unmarked, at: Triple, { section, count }: Opening, what: string): readonly Cut[] | undefined {
  const { axes, place } = board;
  const [u, v] = [along(axes.u, at) - along(axes.u, place.from), along(axes.v, at) - along(axes.v, place.from)];
  const [width, height] =
    section.shape === 'round' ? [section.diameter, section.diameter] : [section.width, section.height];
  const pitch = width + Math.max(BRIDGE, width / 2);
  const centres = Array.from({ length: count }, (_, turn) => u + (turn - (count - 1) / 2) * pitch);
  const fits =
    v - height / 2 >= RIM &&
    v + height / 2 <= board.v - RIM &&
    Math.min(...centres) - width / 2 >= RIM &&
    Math.max(...centres) + width / 2 <= board.u - RIM;
  if (!fits) return undefined;
  return centres.map((centre) => ({
    purpose: section.shape === 'round' ? 'hole' : 'opening',
    shape:
      section.shape === 'round'
        ? { kind: 'round', at: [centre, v], diameter: width }
        : { kind: 'rectangle', from: [centre - width / 2, v - height / 2], to: [centre + width / 2, v + height / 2] },
    depth: 'through',
    side: 'seen',
    what,
  }));
}
