import { describe, expect, it } from 'vitest';
import { cableBend, channelFill } from './cable-room.ts';

describe('cableBend', () => {
  it('property: a moved cable always wants the larger bend', () => {
    expect(cableBend(0.008, true) / cableBend(0.008, false)).toBeCloseTo(7.5 / 4, 12);
  });

  it('refuses a cable of no thickness', () => {
    expect(() => cableBend(0, true)).toThrow('cableBend: diameter is 0');
  });
});

describe('channelFill', () => {
  it('exact: one cable in the square around it takes a quarter of pi', () => {
    expect(channelFill([0.02], 0.02 ** 2)).toBeCloseTo(Math.PI / 4, 12);
  });

  it('limit: an empty channel', () => {
    expect(channelFill([], 0.001)).toBe(0);
  });
});
