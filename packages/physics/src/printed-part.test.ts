import { describe, expect, it } from 'vitest';
import { besideBed, creepLimit, printedMaterials } from './printed-part.ts';

describe('creepLimit', () => {
  it('property: every limit lies below its glass transition', () => {
    for (const { glassTransition } of Object.values(printedMaterials))
      expect(creepLimit(glassTransition)).toBeLessThan(glassTransition);
  });

  it('refuses a glass transition of 0 K', () => {
    expect(() => creepLimit(0)).toThrow('creepLimit: glassTransition is 0');
  });
});

describe('besideBed', () => {
  it('limit: a plate that sees only the bed and does not convect comes half way', () => {
    expect(besideBed(1, 60, 6.5, 1e-9)).toBeCloseTo(30, 6);
  });

  it('property: never beyond half of the difference', () => {
    for (const view of [0, 0.3, 1]) expect(besideBed(view, 60)).toBeLessThanOrEqual(30);
  });
});
