// Film laws as tables: a law of natural convection costs several roots, and a day asks for a hundred of them ten thousand times.
// Between nodes even in the root of the difference a cubic is within a millionth of the law, a thousandth at its one bend.

import { filmLaw, type Orientation } from '@stillair/physics';

/** Nodes in √|ΔT|, K^0.5: to 400 K. */
const SPACING = 0.125;
const NODES = 161;
const LARGEST = SPACING * (NODES - 1);
/** Width of the differences that give the slopes. */
const NUDGE = 1e-4;

/** Value and slope (per node) at each node, for colder faces from 0 on and then for warmer ones. */
export type FilmTable = Float64Array;

/** Tables already made; laws differ by their face and its length only. A memo, bounded; it changes no result. */
const made = new Map<string, FilmTable>();
const MOST_MADE = 256;

export function filmTable(orientation: Orientation, length: number, filmKelvin: number): FilmTable {
  const key = `${orientation} ${length} ${filmKelvin}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const law = filmLaw(orientation, length, filmKelvin);
  const table = new Float64Array(4 * NODES);
  for (let side = 0; side < 2; side += 1) {
    const sign = side === 0 ? -1 : 1;
    const at = (root: number): number => law(sign * root * root);
    for (let node = 0; node < NODES; node += 1) {
      const root = node * SPACING;
      const low = Math.max(root - NUDGE, 0);
      table[2 * (side * NODES + node)] = at(root);
      table[2 * (side * NODES + node) + 1] = (SPACING * (at(root + NUDGE) - at(low))) / (root + NUDGE - low);
    }
  }
  if (made.size >= MOST_MADE) made.clear();
  made.set(key, table);
  return table;
}

/** Film, W/(m²·K), for the face's temperature less the air's, K. Hot: no checks. */
export function filmAt(table: FilmTable, difference: number): number {
  const size = Math.sqrt(difference < 0 ? -difference : difference);
  const root = (size < LARGEST ? size : LARGEST - 1e-9) * (1 / SPACING);
  const node = Math.floor(root);
  const share = root - node;
  const rest = 1 - share;
  const at = 2 * (difference < 0 ? node : NODES + node);
  const y0 = table[at]!;
  const y1 = table[at + 2]!;
  return (
    y0 + (y1 - y0) * share * share * (3 - 2 * share) + share * rest * (table[at + 1]! * rest - table[at + 3]! * share)
  );
}
