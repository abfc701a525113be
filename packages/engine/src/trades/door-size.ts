// How large a door is: as wide and high as the bays that it opens.

import type { Cabinet, Door } from '../cabinet/cabinet.ts';

export function doorSize({ bays, inside }: Cabinet, door: Door): { width: number; height: number } {
  const opened = door.bays.flatMap((id) => bays[id] ?? []);
  const span = (ranges: readonly (readonly [number, number])[]): number =>
    Math.max(...ranges.map(([, to]) => to)) - Math.min(...ranges.map(([from]) => from));
  const across = span(opened.map(({ x }) => x));
  const up = span(opened.map(({ z }) => z));
  switch (door.face) {
    case 'left':
    case 'right':
      return { width: inside.depth, height: up };
    case 'top':
    case 'bottom':
      return { width: across, height: inside.depth };
    default:
      return { width: across, height: up };
  }
}
