// A fixed calculation in plain JavaScript, so that a time can be told as a multiple of it and set beside another machine's:
// a dense 43 × 43 system factored without pivoting and solved, a thousand times.

import { cpuMilliseconds } from './clock.mjs';

const SIZE = 43;
const TIMES = 1000;

/** Processor time of the reference calculation now, ms: the quickest of a few, since it can only be disturbed upwards. */
export function calibrate(rounds = 5) {
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < rounds; round += 1) {
    const start = cpuMilliseconds();
    const check = calculate();
    best = Math.min(best, cpuMilliseconds() - start);
    if (!(Math.abs(check - 1) < 1e-9)) throw new Error(`the reference calculation gives ${check}, not 1`);
  }
  return best;
}

function calculate() {
  const original = Float64Array.from({ length: SIZE * SIZE }, (_, at) => {
    const [row, column] = [Math.floor(at / SIZE), at % SIZE];
    return row === column ? SIZE : 1 / (1 + row + column);
  });
  const right = new Float64Array(SIZE);
  for (let i = 0; i < SIZE; i += 1) for (let j = 0; j < SIZE; j += 1) right[i] += original[i * SIZE + j];
  const [a, x] = [new Float64Array(SIZE * SIZE), new Float64Array(SIZE)];
  for (let time = 0; time < TIMES; time += 1) {
    a.set(original);
    x.set(right);
    for (let k = 0; k < SIZE; k += 1) {
      for (let i = k + 1; i < SIZE; i += 1) {
        const share = a[i * SIZE + k] / a[k * SIZE + k];
        for (let j = k + 1; j < SIZE; j += 1) a[i * SIZE + j] -= share * a[k * SIZE + j];
        x[i] -= share * x[k];
      }
    }
    for (let k = SIZE - 1; k >= 0; k -= 1) {
      for (let j = k + 1; j < SIZE; j += 1) x[k] -= a[k * SIZE + j] * x[j];
      x[k] /= a[k * SIZE + k];
    }
  }
  return x[7];
}

calibrate(); // once unmeasured, so that it runs compiled from the start
