import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcSpeed, cornerSpeed, moveTime, reachedSpeed } from './moves.ts';

describe('moveTime', () => {
  it.each([
    [100, 150, 1500, 0, 0, 0.76667],
    [15, 150, 1500, 0, 0, 0.2],
    [2, 150, 1500, 0, 0, 0.07303],
    [10, 100, 1000, 20, 10, 0.1725],
    [0.5, 150, 1500, 8, 8, 0.02737],
  ])('cross: %d mm at %d mm/s and %d mm/s², from %d to %d mm/s: %d s', (way, v, a, v0, v1, seconds) => {
    const [distance, speed, acceleration, entry, exit] = [way, v, a, v0, v1].map((each) => each / 1000);
    expect(moveTime(distance!, speed!, acceleration!, entry!, exit!)).toBeCloseTo(seconds, 5);
  });

  it('cross: a thousand moves of 1 mm at 100 mm/s and 1 m/s² that stop each time last 63.25 s, not 10 s', () => {
    expect(1000 * moveTime(0.001, 0.1, 1, 0, 0)).toBeCloseTo(63.25, 2);
  });

  it('limit: at full speed from end to end it is way over speed', () => {
    expect(moveTime(0.3, 0.1, 1, 0.1, 0.1)).toBeCloseTo(3, 12);
  });

  it('cross: agrees with the way summed over small steps of time', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 0.3, noNaN: true }),
        fc.double({ min: 0.2, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 1.01, max: 20, noNaN: true }),
        (speed, acceleration, first, second, longer) => {
          const [entry, exit] = [first * speed, second * speed];
          const distance = (longer * Math.max(1e-5, Math.abs(entry ** 2 - exit ** 2))) / (2 * acceleration);
          const time = moveTime(distance, speed, acceleration, entry, exit);
          const steps = 4000;
          let way = 0;
          for (let step = 0; step < steps; step++) {
            const at = ((step + 0.5) / steps) * time;
            way += (Math.min(speed, entry + acceleration * at, exit + acceleration * (time - at)) * time) / steps;
          }
          expect(way / distance).toBeCloseTo(1, 4);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('property: two halves through the speed between them last as long as the whole', () => {
    const between = reachedSpeed(0, 1.5, 0.001);
    const halves = moveTime(0.001, 0.15, 1.5, 0, between) + moveTime(0.001, 0.15, 1.5, between, 0);
    expect(halves).toBeCloseTo(moveTime(0.002, 0.15, 1.5, 0, 0), 12);
  });
});

describe('cornerSpeed', () => {
  it('exact: the arc touches both lines and passes the point at the deviation', () => {
    for (const degrees of [10, 45, 90, 120, 170]) {
      const turn = (degrees * Math.PI) / 180;
      const radius = cornerSpeed(1, 0.0001, Math.cos(turn)) ** 2; // a = 1: v² is the radius
      // The middle of the arc lies on the line that halves the corner, r/cos(turn/2) from its point.
      expect(radius / Math.cos(turn / 2) - radius).toBeCloseTo(0.0001, 12);
    }
  });

  it('limit: stops to turn back, does not slow down to go straight on', () => {
    expect(cornerSpeed(1, 0.0001, -1)).toBe(0);
    expect(cornerSpeed(1, 0.0001, 1)).toBe(Infinity);
    expect(cornerSpeed(1, 0, 0)).toBe(0);
  });

  it('property: the sharper, the slower', () => {
    const speeds = [-0.9, -0.5, 0, 0.5, 0.9, 0.999].map((together) => cornerSpeed(1.5, 0.00002, together));
    expect(speeds).toEqual([...speeds].sort((a, b) => a - b));
  });
});

describe('reachedSpeed and arcSpeed', () => {
  it('exact: back and forth', () => {
    expect(moveTime(0.01, 1, 2, 0.05, reachedSpeed(0.05, 2, 0.01))).toBeCloseTo(
      (reachedSpeed(0.05, 2, 0.01) - 0.05) / 2,
      9,
    );
    expect(arcSpeed(2, 0.5)).toBe(1);
  });
});

it.each([
  [() => moveTime(0, 1, 1, 0, 0), 'moveTime: distance is 0'],
  [() => moveTime(1, 0, 1, 0, 0), 'moveTime: speed is 0'],
  [() => moveTime(1, 1, 0, 0, 0), 'moveTime: acceleration is 0'],
  [() => moveTime(1, 1, 1, 2, 0), 'moveTime: entry is 2'],
  [() => moveTime(1, 1, 1, 0, -1), 'moveTime: exit is -1'],
  [() => moveTime(0.1, 1, 1, 1, 0), 'moveTime: change of speed squared is 1'],
  [() => reachedSpeed(-1, 1, 1), 'reachedSpeed: speed is -1'],
  [() => cornerSpeed(1, -1, 0), 'cornerSpeed: deviation is -1'],
  [() => cornerSpeed(1, 1, 2), 'cornerSpeed: together is 2'],
  [() => arcSpeed(1, 0), 'arcSpeed: radius is 0'],
])('exact: refuses nonsense (%#)', (call, message) => {
  expect(call).toThrow(message);
});
