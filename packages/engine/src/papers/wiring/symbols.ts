// Symbols of a single-line diagram, drawn by us after IEC 60617 (from memory), each about a point on its line.

import { box, circle, line, type Mark, outline, type Point, text } from '../frame/mark.ts';
import type { SymbolName } from './tree.ts';

/** Half the size of a symbol, mm. */
export const HALF = 2.4;

/** Blade and fixed contact of a switch that closes. */
function blade(x: number, y: number): readonly Mark[] {
  return [line('outline', [x - 5, y], [x - 2.5, y], [x + 2.2, y - 2.4]), line('outline', [x + 2.5, y], [x + 5, y])];
}

/** Contact of a circuit-breaker: a cross at the fixed contact. */
export function breaker(x: number, y: number): readonly Mark[] {
  const d = 0.8;
  return [
    ...blade(x, y),
    line('outline', [x + 2.5 - d, y - d], [x + 2.5 + d, y + d]),
    line('outline', [x + 2.5 - d, y + d], [x + 2.5 + d, y - d]),
  ];
}

/** Residual current device: a contact, a core round its conductors, and what links the two. */
export function residual(x: number, y: number): readonly Mark[] {
  const core: readonly Point[] = Array.from({ length: 17 }, (_, at) => {
    const angle = (2 * Math.PI * at) / 16;
    return [x + 6.5 + 0.9 * Math.cos(angle), y + 2 * Math.sin(angle)] as const;
  });
  return [
    ...blade(x, y),
    line('outline', [x + 5, y], [x + 8, y]),
    line('outline', ...core),
    line('link', [x + 6.5, y - 2], [x + 6.5, y - 3.6], [x - 0.2, y - 3.6], [x - 0.2, y - 1.3]),
  ];
}

/** Make contact of a contactor: a blade, and half a circle at the fixed contact. */
export function contactor(x: number, y: number): readonly Mark[] {
  return [
    line('outline', [x - 5, y], [x - 2.5, y], [x + 2.2, y - 2.4]),
    line('outline', [x + 3.5, y], [x + 5, y]),
    { kind: 'arc', at: [x + 2.6, y], radius: 0.9, from: 180, to: 360, line: 'outline' },
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

/** Head of an actuator above a contact, and the link to its blade. */
export function actuated(by: 'push' | 'mushroom' | 'heat', x: number, y: number, blade: number): readonly Mark[] {
  const head = y - 5.4;
  const link = line('link', [x, blade], [x, head]);
  if (by === 'push')
    return [link, line('outline', [x - 1.5, head + 1], [x - 1.5, head], [x + 1.5, head], [x + 1.5, head + 1])];
  if (by === 'mushroom')
    return [
      link,
      { kind: 'arc', at: [x, head], radius: 1.6, from: 180, to: 360, line: 'outline' },
      line('outline', [x - 1.6, head], [x + 1.6, head]),
    ];
  return [link, text([x, head - 0.4], 't°', 2.5, { align: 'middle' })];
}

export function coil(x: number, y: number): readonly Mark[] {
  return [box(x - 2.2, y - 3.2, 4.4, 6.4)];
}

/** The symbol at the end of its line, its middle at a point. */
export function symbolMarks(symbol: SymbolName, x: number, y: number): readonly Mark[] {
  switch (symbol) {
    case 'strip':
      // Socket-outlet with protective contact: an open half circle, and a bar where the line meets it.
      return [
        { kind: 'arc', at: [x + HALF, y], radius: HALF, from: 90, to: 270, line: 'outline' },
        line('outline', [x, y - HALF], [x, y + HALF]),
        line('outline', [x + HALF - 1, y], [x + HALF + 1.6, y]),
      ];
    case 'machine':
      // Equipment of any kind: what it is stands beside it.
      return [box(x, y - HALF, 2 * HALF, 2 * HALF)];
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
    case 'fan': {
      // A propeller of two blades in a circle.
      const drop = (side: 1 | -1): readonly Point[] =>
        Array.from({ length: 13 }, (_, at) => {
          const angle = (Math.PI * at) / 12;
          return [x + HALF + side * 1.9 * Math.sin(angle), y - 0.75 * Math.sin(2 * angle)] as const;
        });
      return [circle([x + HALF, y], HALF), outline(drop(1)), outline(drop(-1))];
    }
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
