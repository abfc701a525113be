import { describe, expect, it } from 'vitest';
import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

describe('refusals', () => {
  it('exact: each names the function, the argument, the value and the rule', () => {
    expect(() => mustBeFinite('law', 'heat', Infinity)).toThrow('law: heat is Infinity; it must be a finite number');
    expect(() => mustBePositive('law', 'length', 0)).toThrow(new RangeError('law: length is 0; it must be above 0'));
    expect(() => mustNotBeNegative('law', 'speed', -1)).toThrow('law: speed is -1; it must be 0 or more');
    expect(() => mustLieWithin('law', 'share', 2, 0, 1)).toThrow('law: share is 2; it must lie between 0 and 1');
  });

  it.each([Number.NaN, Infinity])('exact: none lets %d through', (value) => {
    for (const rule of [mustBeFinite, mustBePositive, mustNotBeNegative])
      expect(() => rule('f', 'x', value)).toThrow(RangeError);
    expect(() => mustLieWithin('f', 'x', value, 0, 1)).toThrow(RangeError);
  });

  it('limit: zero is no negative number, and the ends of a range belong to it', () => {
    expect(() => mustNotBeNegative('f', 'x', 0)).not.toThrow();
    expect(() => mustLieWithin('f', 'x', 1, 0, 1)).not.toThrow();
    expect(() => mustLieWithin('f', 'x', 0, 0, 1)).not.toThrow();
  });
});
