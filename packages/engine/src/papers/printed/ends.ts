// What an air path's part offers to its neighbour: a fan's frame, a round pipe, a flat frame; and what is drawn to meet it.

import type { PathPart, Section } from '../../cabinet/cabinet.ts';
import { corners, type FanEnd, fanEnd, openingOf } from './fan-plate.ts';
import { CLEARANCE, PLATE, SLIDE, SPIGOT, WALL } from './practice.ts';
import { bore, cut, disc, type Flat, outlineArea, plate, prism, type Shape } from './shape.ts';

export type End =
  | FanEnd
  /** A pipe that a spigot goes into, by its inner diameter, mm. */
  | { readonly shape: 'pipe'; readonly diameter: number }
  /** The face of a filter or of a bed of carbon: it lies flat on a lip. */
  | { readonly shape: 'face'; readonly face: Section };

/** A face rests on a lip this wide all round, mm. */
export const LIP = 8;
/** A frame is wider than the face that it holds by this on each side, mm. */
export const RIM = 12;
/** Screws that clamp a face stand this far outside of it, mm. */
const SCREW_OUT = 6;
/** Screws of an upper fan go this deep into the body at most, mm. */
const BITE = 8;

export const mm = (metres: number): number => Math.round(metres * 1e5) / 100;

/** What is known of the end of a part, or the input that is missing. */
export function endOf(part: PathPart): End | { readonly missing: string } | undefined {
  switch (part.part) {
    case 'fan': {
      if (part.kind.startsWith('duct blower')) return { shape: 'pipe', diameter: mm(part.diameter) };
      const end = part.kind.startsWith('axial') ? fanEnd(mm(part.diameter)) : undefined;
      return (
        end ?? {
          missing: `the holes of a ${part.kind} are of no trade size: measure its flange, or take its maker's drawing`,
        }
      );
    }
    case 'duct':
      return { shape: 'pipe', diameter: mm(part.diameter) };
    case 'filter':
    case 'carbon':
      return part.section === undefined
        ? { missing: `the face of ${part.kind} is known by its area alone: give its size` }
        : { shape: 'face', face: part.section };
    case 'loss':
      return part.what.startsWith('bend:') && part.section?.shape === 'round'
        ? { shape: 'pipe', diameter: mm(part.section.diameter) }
        : undefined;
    default:
      return undefined;
  }
}

export function sameEnd(one: End, other: End): boolean {
  if (one.shape !== other.shape) return false;
  const [a, b] = [facing(one), facing(other)];
  return Math.abs(outlineArea(a.opening) - outlineArea(b.opening)) < 1e-6 * outlineArea(a.opening);
}

/** Clear sides of a section, mm; a round one as its diameter twice. */
export function sides(section: Section): readonly [number, number] {
  return section.shape === 'round'
    ? [mm(section.diameter), mm(section.diameter)]
    : [mm(section.width), mm(section.height)];
}

/** A section grown by `by` mm on every side, as an outline. */
export function grown(section: Section, by: number): Flat[] {
  const [a, b] = sides(section);
  return section.shape === 'round' ? disc(a / 2 + by) : plate(a + 2 * by, b + 2 * by);
}

/** Middles of the four screws that clamp a face. */
export function faceScrews(face: Section): Flat[] {
  const [a, b] = sides(face);
  return face.shape === 'round'
    ? corners((a + 2 * SCREW_OUT) * Math.SQRT1_2)
    : corners(a + 2 * SCREW_OUT, b + 2 * SCREW_OUT);
}

/** What a printed piece shows to an end: its opening, the walls round it, and how it is held. */
export interface Facing {
  /** Clear way of the air, and the same with walls. */
  readonly opening: readonly Flat[];
  readonly walled: readonly Flat[];
  /** Screws that bite into the wall below it when it is the upper end: their holes, and how deep. */
  readonly pilots: readonly (readonly Flat[])[];
  readonly bite: number;
  /** Drawn up from z = 0, as high as `length`. */
  readonly piece: Shape;
  readonly length: number;
  readonly volume: number;
  /** Outer size across, mm. */
  readonly width: number;
  readonly depth: number;
  readonly words: string;
}

/** `above`: it is the upper end as the piece is printed. */
export function facing(end: End, above = false): Facing {
  switch (end.shape) {
    case 'pipe': {
      const outer = end.diameter / 2 - SLIDE;
      const [opening, walled] = [disc(outer - WALL), disc(outer)];
      return {
        opening,
        walled,
        pilots: [],
        bite: 0,
        piece: cut(prism(walled, 0, SPIGOT), prism(opening, 0, SPIGOT)),
        length: SPIGOT,
        volume: SPIGOT * (outlineArea(walled) - outlineArea(opening)),
        width: 2 * outer,
        depth: 2 * outer,
        words: `a spigot for a pipe of ${end.diameter} mm inside`,
      };
    }
    case 'fan': {
      const opening = disc(openingOf(end) / 2);
      const holes = corners(end.spacing).map((at) => bore(CLEARANCE[end.screw] / 2, at, 24));
      const words = `the frame of a fan of ${end.frame} mm`;
      const square = plate(end.frame, end.frame);
      const below = flange(square, opening, disc(end.frame / 2), holes, [end.frame, end.frame, words]);
      // Above, walls lead to the whole frame, so that its corners do not hang in the air.
      // The wall below leans outwards by 45 degrees at most: a hole must end before it comes out into the air.
      const deep = end.spacing * Math.SQRT1_2 - CLEARANCE[end.screw] / 2 - openingOf(end) / 2 - 1;
      return above ? { ...below, walled: square, pilots: holes, bite: Math.min(Math.max(deep, 0.5), BITE) } : below;
    }
    case 'face': {
      const [a, b] = sides(end.face);
      const holes = faceScrews(end.face).map((at) => bore(CLEARANCE.M4 / 2, at, 24));
      return flange(grown(end.face, RIM), grown(end.face, -LIP), grown(end.face, WALL - LIP), holes, [
        a + 2 * RIM,
        b + 2 * RIM,
        `a face of ${sectionWords(end.face)}`,
      ]);
    }
  }
}

function flange(
  outline: readonly Flat[],
  opening: readonly Flat[],
  walled: readonly Flat[],
  holes: readonly (readonly Flat[])[],
  [width, depth, words]: readonly [number, number, string],
): Facing {
  const through = [opening, ...holes];
  return {
    opening,
    walled,
    pilots: [],
    bite: 0,
    piece: cut(prism(outline, 0, PLATE), ...through.map((hole) => prism(hole, 0, PLATE))),
    length: PLATE,
    volume: PLATE * (outlineArea(outline) - through.reduce((sum, hole) => sum + outlineArea(hole), 0)),
    width,
    depth,
    words,
  };
}

export function sectionWords(section: Section): string {
  const [a, b] = sides(section);
  return section.shape === 'round' ? `${a} mm round` : `${a} mm x ${b} mm`;
}
