// Which known word a mistyped one was probably meant to be.

/**
 * The candidate that is closest to `word`, or undefined when none is close.
 *
 * Close means: equal but for case and separators; or the one begins with the other (`area` for `area_m2`); or at most a
 * third of the letters inserted, dropped, changed or swapped with their neighbour. The first of equals wins.
 *
 * @example A slip of the finger, a unit left out, and a word that is like none
 * ```ts
 * nearest('thikness', ['thickness', 'density']); // => thickness
 * nearest('area', ['height_m', 'area_m2']); // => area_m2
 * nearest('colour', ['thickness', 'density']); // => undefined
 * ```
 */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const plain = fold(word);
  let best: string | undefined;
  let bestCost = Math.max(1, Math.floor(plain.length / 3)) + 0.5;
  for (const candidate of candidates) {
    const cost = distance(plain, fold(candidate), bestCost);
    if (cost < bestCost) {
      best = candidate;
      bestCost = cost;
    }
  }
  return best;
}

function fold(word: string): string {
  return word.toLowerCase().replaceAll(/[\s_-]/g, '');
}

/** Optimal string alignment distance; a common beginning of three letters or more counts as one slip. */
function distance(a: string, b: string, limit: number): number {
  const shorter = Math.min(a.length, b.length);
  if (shorter >= 3 && (a.startsWith(b) || b.startsWith(a))) return a.length === b.length ? 0 : 1;
  if (Math.abs(a.length - b.length) >= limit) return Infinity;
  let twoUp: number[] = [];
  let up = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = up[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      row.push(Math.min(change, up[j]! + 1, row[j - 1]! + 1, swapped ? twoUp[j - 2]! + 1 : Infinity));
    }
    twoUp = up;
    up = row;
  }
  return up[b.length]!;
}
