import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bedReach, deltaFootprint, sweptDepth } from './motion-envelope.ts';

const length = fc.double({ min: 0, max: 1, noNaN: true });
const trap = { plate: 0.235, travel: 0.235, offset: 0, clip: 0.01, cable: 0.05 };

describe('bedReach', () => {
  it('exact: the frame of 400 mm fits a bay of 440, its travelling bed needs 570', () => {
    const swept = sweptDepth(0.4, bedReach(trap));
    expect(swept).toBeCloseTo(0.53, 12);
    expect(swept + 0.02 + 0.02).toBeCloseTo(0.57, 12);
    expect(0.4 + 0.02 + 0.02).toBeLessThan(0.57);
  });

  it('property: shifting the travel moves both ends alike', () => {
    fc.assert(
      fc.property(length, length, (travel, offset) => {
        const [before, after] = [bedReach({ ...trap, travel }), bedReach({ ...trap, travel, offset })];
        expect(after.front + after.rear).toBeCloseTo(before.front + before.rear, 9);
        expect(after.rear - before.rear).toBeCloseTo(offset, 9);
      }),
    );
  });

  it('cross: the union over many commanded positions', () => {
    fc.assert(
      fc.property(length, fc.double({ min: -0.3, max: 0.3, noNaN: true }), (travel, offset) => {
        let [front, rear] = [-Infinity, -Infinity];
        for (let step = 0; step <= 100; step += 1) {
          const middle = offset + travel * (step / 100 - 0.5);
          front = Math.max(front, trap.plate / 2 + trap.clip - middle);
          rear = Math.max(rear, trap.plate / 2 + trap.cable + middle);
        }
        const reach = bedReach({ ...trap, travel, offset });
        expect(reach.front).toBeCloseTo(front, 9);
        expect(reach.rear).toBeCloseTo(rear, 9);
      }),
    );
  });

  it('refuses a plate of no size', () => {
    expect(() => bedReach({ ...trap, plate: 0 })).toThrow('bedReach: plate is 0');
  });
});

describe('sweptDepth', () => {
  it('limit: a bed that stands still sweeps the frame', () => {
    expect(sweptDepth(0.4, bedReach({ plate: 0.2, travel: 0, offset: 0, clip: 0, cable: 0 }))).toBe(0.4);
  });
});

describe('deltaFootprint', () => {
  it('exact: the corners of its triangle lie on the circle', () => {
    const { width, depth } = deltaFootprint(1);
    // Height of the triangle is R + R/2; half its side is R sin 60°.
    expect(Math.hypot(width / 2, depth - 1)).toBeCloseTo(1, 12);
  });
});
