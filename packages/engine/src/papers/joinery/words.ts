// How the joiner's papers write lengths and name things.

import type { BoardPart, Cut } from '../../joinery/board-part.ts';

/** A length in millimetres, to a tenth. */
export function mm(length: number): string {
  const text = (Math.round(length * 10_000) / 10).toFixed(1);
  return text.replace(/\.0$/, '');
}

export function boardName({ board, nominal }: Pick<BoardPart, 'board' | 'nominal'>): string {
  return `${board} ${mm(nominal)} mm`;
}

/** `Ø35, 12 deep`, `60 x 30, through`, `600 x 18, 6 deep`. */
export function cutSize({ shape, depth }: Cut): string {
  const size =
    shape.kind === 'round'
      ? `Ø${mm(shape.diameter)}`
      : `${mm(shape.to[0] - shape.from[0])} x ${mm(shape.to[1] - shape.from[1])}`;
  return `${size}, ${depth === 'through' ? 'through' : `${mm(depth)} deep`}`;
}

export const JOINERS_CAUTIONS: readonly [string, ...string[]] = [
  'Saws, cutters and dust maim: guard, goggles, ears and lungs; follow the makers’ rules.',
  'Boards differ from what is written on them: measure the thickness of each sheet, and the inside once it stands, before anything is cut that depends on it.',
  'Panes of doors and low panels: toughened or laminated glass (EN 12150, EN 14449, from memory), drilled and ground by a glazier; a broken pane cuts to the bone.',
  'A cabinet that can tip kills: fix it to the wall where the findings on structure ask for it.',
];
