// Symbols of a single-line diagram, drawn by us after IEC 60617 (from memory), each about a point on its line.

import { box, circle, line, type Mark, outline, type Point, text } from '../frame/mark.ts';
import type { SymbolName } from './tree.ts';

/** Half the size of a symbol, mm. */
export const HALF = 2.4;

/** Make contact of a circuit-breaker: a blade, and a cross at the fixed contact. */
export function breaker(x: number, y: number): readonly Mark[] {
  const d = 0.8;
  return [
    line('outline', [x - 5, y], [x - 2.5, y], [x + 2.2, y - 2.4]),
    line('outline', [x + 2.5, y], [x + 5, y]),
    line('outline', [x + 2.5 - d, y - d], [x + 2.5 + d, y + d]),
    line('outline', [x + 2.5 - d, y + d], [x + 2.5 + d, y - d]),
  ];
}

/** Residual current device: the breaker's contact, and a core round its conductors. */
export function residual(x: number, y: number): readonly Mark[] {
  const core: readonly Point[] = Array.from({ length: 17 }, (_, at) => {
    const angle = (2 * Math.PI * at) / 16;
    return [x + 6.5 + 0.9 * Math.cos(angle), y + 2 * Math.sin(angle)] as const;
  });
  return [
    ...breaker(x, y),
    line('outline', [x + 5, y], [x + 8, y]),
    line('outline', ...core),
    line('hidden', [x + 6.5, y - 2], [x + 6.5, y - 3.4], [x - 0.2, y - 3.4], [x - 0.2, y - 1.4]),
  ];
}

/** Make contact of a contactor: a blade, and half a circle at the fixed contact. */
export function contactor(x: number, y: number): readonly Mark[] {
  return [
    line('outline', [x - 5, y], [x - 2.5, y], [x + 2.2, y - 2.4]),
    line('outline', [x + 3.5, y], [x + 5, y]),
    { kind: 'arc', at: [x + 2.6, y], radius: 0.9, from: 180, to: 360, line: 'outline' },
    line('outline', [x + 3.5, y], [x + 3.5, y]),
  ];
}

export function earth(x: number, y: number): readonly Mark[] {
  return [
    line('outline', [x, y], [x, y + 2]),
    ...[2, 1.3, 0.6].map((half, at) => line('outline', [x - half, y + 2 + 0.8 * at], [x + half, y + 2 + 0.8 * at])),
  ];
}

/** A contact of the chain that opens when it trips: a bar that the blade lies on. */
export function breakContact(x: number, y: number): readonly Mark[] {
  return [
    line('outline', [x - 6, y], [x - 2.5, y], [x + 3, y + 1.6]),
    line('outline', [x + 2.5, y + 2.4], [x + 2.5, y], [x + 6, y]),
  ];
}

/** One that closes when it trips. */
export function makeContact(x: number, y: number): readonly Mark[] {
  return [line('outline', [x - 6, y], [x - 2.5, y], [x + 2.4, y - 2.2]), line('outline', [x + 2.5, y], [x + 6, y])];
}

export function coil(x: number, y: number): readonly Mark[] {
  return [box(x - 2.2, y - 3.2, 4.4, 6.4)];
}

/** The symbol at the end of its line, its middle at a point. */
export function symbolMarks(symbol: SymbolName, x: number, y: number): readonly Mark[] {
  switch (symbol) {
    case 'strip':
      // Socket-outlet: half a circle on the line, and its stroke.
      return [
        { kind: 'arc', at: [x + HALF, y], radius: HALF, from: 90, to: 270, line: 'outline' },
        line('outline', [x + HALF, y - HALF], [x + HALF, y + HALF]),
        line('outline', [x + HALF, y], [x + HALF + 1.6, y]),
      ];
    case 'machine':
      return [box(x, y - HALF, 2 * HALF, 2 * HALF), text([x + HALF, y + 1], 'M', 2.8, { align: 'middle' })];
    case 'supply':
      // Converter: alternating current in, direct current out.
      return [
        box(x, y - HALF, 2 * HALF, 2 * HALF),
        line('thin', [x, y + HALF], [x + 2 * HALF, y - HALF]),
        text([x + 1.3, y - 0.3], '~', 2.6, { align: 'middle' }),
        text([x + 3.5, y + 2], '=', 2.6, { align: 'middle' }),
      ];
    case 'fuse':
      return [box(x, y - 1.1, 2 * HALF, 2.2), line('outline', [x, y], [x + 2 * HALF, y])];
    case 'fan':
      return [
        circle([x + HALF, y], HALF),
        outline([
          [x + HALF - 1.2, y - 2],
          [x + HALF - 1.2, y + 2],
          [x + 2 * HALF, y],
        ]),
      ];
    case 'lamp': {
      const d = HALF * Math.SQRT1_2;
      return [
        circle([x + HALF, y], HALF),
        line('outline', [x + HALF - d, y - d], [x + HALF + d, y + d]),
        line('outline', [x + HALF - d, y + d], [x + HALF + d, y - d]),
      ];
    }
    case 'heater':
      return [
        box(x, y - 1.4, 2 * HALF, 2.8),
        ...[1, 2, 3].map((at) => line('outline', [x + (at * HALF) / 2, y - 1.4], [x + (at * HALF) / 2, y + 1.4])),
      ];
    case 'other':
      return [box(x, y - 1.4, 2 * HALF, 2.8)];
  }
}
