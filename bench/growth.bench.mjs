// How the cost of a day grows with bays and machines. The number of steps grows with the number of separate events, since every
// one restarts the step for the whole network; so time a step is told beside time a day.

import { simulateDay } from '../packages/engine/dist/index.js';
import { manyBays } from './many-bays.mjs';
import { growthExponent, line, measure } from './measure.mjs';

/** An exponent up to this counts as linear. */
const LINEAR = 1.1;
const SIZES = [2, 5, 10, 20, 50];

export function run() {
  return [
    ...grow('bays with a machine each, all started at once, no beds', (n) => manyBays(n, n, { beds: false })),
    ...grow('machines in two bays, all started at once, no beds', (n) => manyBays(2, n, { beds: false })),
    ...grow('bays with a machine each, beds, started 7 min apart', (n) => manyBays(n, n, { beds: true })),
  ];
}

function grow(title, networkOf) {
  const points = SIZES.map((n) => {
    const network = networkOf(n);
    const simulate = () => simulateDay(network);
    const { work } = simulate();
    // Warm-up by time: a small network needs many runs until all of it runs compiled.
    const start = performance.now();
    while (performance.now() - start < 700) simulate();
    const { median, ratio } = measure(simulate, { warm: 0, samples: 11 });
    return { n, median, ratio, steps: work.steps };
  });
  // From five upwards: below, fixed costs rule.
  const tail = points.filter(({ n }) => n >= 5);
  const sizes = tail.map(({ n }) => n);
  const perDay = growthExponent(
    sizes,
    tail.map(({ median }) => median),
  );
  const perStep = growthExponent(
    sizes,
    tail.map(({ median, steps }) => median / steps),
  );
  return [
    ...points.map(({ n, median, ratio, steps }) =>
      line(`${n} ${title}`, median, 'ms', {
        ratio,
        note: `${steps} steps, ${((1e3 * median) / steps).toFixed(1)} µs a step`,
      }),
    ),
    line(`growth exponent from 5 to 50, a day (${title})`, perDay, '', { limit: LINEAR }),
    line(`growth exponent from 5 to 50, a step (${title})`, perStep, '', { limit: LINEAR }),
  ];
}
