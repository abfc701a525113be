import { describe, expect, it } from 'vitest';
import { ofColumns } from './dense.ts';
import { normalQuantile } from './normal.ts';
import { randomStream } from './random.ts';
import { golden, noiseOf, whitened, worthOf } from './serial-noise.ts';

/** Seeded noise with a carry-over, deviation `spread`. */
function remembered(count: number, carry: number, spread: number, seed: number): Float64Array {
  const random = randomStream(seed);
  let last = normalQuantile(random());
  return Float64Array.from({ length: count }, (_, at) => {
    if (at > 0) last = carry * last + Math.sqrt(1 - carry * carry) * normalQuantile(random());
    return spread * last;
  });
}

const channel = (count: number) => ({ from: 0, to: count, slots: Array.from({ length: count }, (_, at) => at) });

describe('noise that remembers', () => {
  it('exact: whitening by hand, a gap of two slots carries the square', () => {
    const white = whitened([2, 2, 2], [{ from: 0, to: 3, slots: [0, 1, 3] }], [{ spread: 2, carry: 0.5 }]);
    expect(white[0]).toBeCloseTo(1, 12);
    expect(white[1]).toBeCloseTo(1 / (2 * Math.sqrt(0.75)), 12);
    expect(white[2]).toBeCloseTo(1.5 / (2 * Math.sqrt(1 - 0.0625)), 12);
  });

  it('cross: restricted likelihood finds the carry-over and deviation that made the noise', () => {
    const ones = ofColumns([new Float64Array(2000).fill(1)]);
    const [noise] = noiseOf(remembered(2000, 0.6, 0.4, 11), ones, [channel(2000)], [{ spread: 1, carry: 0 }]);
    expect(Math.abs(noise!.carry - 0.6)).toBeLessThan(0.06);
    expect(Math.abs(noise!.spread - 0.4)).toBeLessThan(0.05);
  });

  it('exact: without a carry-over the deviation is that of n − 1', () => {
    const values = [1, 2, 3, 4, 5];
    const centred = values.map((each) => each - 3);
    const ones = ofColumns([[1, 1, 1, 1, 1]]);
    const [noise] = noiseOf(centred, ones, [channel(5)], [{ spread: 1, carry: 0 }]);
    expect(noise!.spread).toBeCloseTo(Math.sqrt(2.5), 2);
  });

  it('exact: golden section finds the top of a parabola; rows with a carry-over are worth fewer', () => {
    expect(golden((x) => -((x - 0.3) ** 2), -1, 2, 60)).toBeCloseTo(0.3, 6);
    expect(worthOf(channel(90), { carry: 0.8, spread: 1 })).toBeCloseTo(10, 12);
  });
});
