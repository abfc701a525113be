// A plain hole that lies across the border of low and high air lets each of them through by its own piece.

import type { CabinetPath, Section } from '../cabinet/cabinet.ts';

export interface HolePiece {
  /** Middle of the piece, m. */
  readonly z: number;
  /** Of the hole's height, and so of its area: a round hole counts as wide as its area asks, all the way up. */
  readonly share: number;
}

/** A piece lower than this is no way of its own, m. */
const LEAST = 0.01;

/**
 * @param places - Bays at the hole's ends, with the heights at which their air changes.
 * @returns From the lowest up; one piece for a hole that meets no border, or pierces a floor, shelf or ceiling.
 */
export function holePieces(
  { parts, place }: Pick<CabinetPath, 'parts' | 'place'>,
  places: readonly { readonly split: number }[],
): readonly HolePiece[] {
  const whole = [{ z: place.z, share: 1 }];
  const [only, ...rest] = parts;
  const level = place.face === 'top' || place.face === 'bottom';
  if (only?.part !== 'hole' || rest.length > 0 || level) return whole;
  const height = heightOf(only.section);
  const [bottom, top] = [place.z - height / 2, place.z + height / 2];
  const borders = places.map(({ split }) => split).sort((a, b) => a - b);
  const cuts = [bottom];
  for (const border of borders) if (border - cuts.at(-1)! >= LEAST && top - border >= LEAST) cuts.push(border);
  if (cuts.length === 1) return whole;
  cuts.push(top);
  return cuts.slice(1).map((upper, index) => {
    const lower = cuts[index]!;
    return { z: (lower + upper) / 2, share: (upper - lower) / height };
  });
}

function heightOf(section: Section): number {
  return section.shape === 'round' ? section.diameter : section.height;
}
