// npm run bench: how fast, as ratios to a fixed calculation that runs in between, so that a slow or busy machine cancels out.
// Every module of bench/ exports `benches`: { what, run }.

import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { root } from './steps.mjs';

const ROUNDS = 15;
/** Each round of a bench lasts about so long, ms. */
const ROUND = 60;

const folder = join(root, 'bench');
const files = readdirSync(folder).filter((name) => name.endsWith('.mjs'));
const modules = await Promise.all(files.map((name) => import(pathToFileURL(join(folder, name)).href)));

console.log('       time   ratio to the reference (one solution of 60 dense equations)');
for (const { what, run } of modules.flatMap(({ benches }) => benches)) {
  const repeats = Math.max(1, Math.round(ROUND / once(run, 3)));
  const rounds = Array.from({ length: ROUNDS }, () => {
    const mine = once(run, repeats);
    return { mine, ratio: mine / once(reference, 200) };
  });
  const middle = (key) => rounds.map((round) => round[key]).sort((a, b) => a - b)[ROUNDS >> 1];
  console.log(`${middle('mine').toFixed(3).padStart(8)} ms ${middle('ratio').toFixed(2).padStart(7)}   ${what}`);
}

/** Mean time of one run, ms. */
function once(run, repeats) {
  const begun = performance.now();
  for (let at = 0; at < repeats; at++) run();
  return (performance.now() - begun) / repeats;
}

/** Gaussian elimination of a fixed diagonally dominant system; its answer is used, so that nothing is left out. */
function reference() {
  const size = 60;
  const a = Float64Array.from({ length: size * size }, (_, at) => (at % (size + 1) === 0 ? size : Math.sin(at)));
  const x = new Float64Array(size).fill(1);
  for (let pivot = 0; pivot < size; pivot++) {
    for (let row = pivot + 1; row < size; row++) {
      const factor = a[row * size + pivot] / a[pivot * size + pivot];
      for (let column = pivot; column < size; column++) a[row * size + column] -= factor * a[pivot * size + column];
      x[row] -= factor * x[pivot];
    }
  }
  for (let row = size - 1; row >= 0; row--) {
    for (let column = row + 1; column < size; column++) x[row] -= a[row * size + column] * x[column];
    x[row] /= a[row * size + row];
  }
  if (!Number.isFinite(x[0])) throw new Error('the reference calculation failed');
}
