import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearest } from './nearest.ts';

const keys = ['area_m2', 'height_m', 'thickness', 'density', 'conductances', 'on_above_C'];

describe('nearest', () => {
  it.each([
    ['thikness', 'thickness'],
    ['thickenss', 'thickness'],
    ['area', 'area_m2'],
    ['Area-m2', 'area_m2'],
    ['areaM2', 'area_m2'],
    ['conductance', 'conductances'],
    ['on_above', 'on_above_C'],
    ['hieght_m', 'height_m'],
  ])('exact: %s is taken for %s', (word, expected) => {
    expect(nearest(word, keys)).toBe(expected);
  });

  it.each(['colour', 'x', '', 'zzzzzzzz'])('exact: "%s" is like none of them', (word) => {
    expect(nearest(word, keys)).toBeUndefined();
  });

  it('property: a word that is among the candidates is its own nearest', () => {
    fc.assert(
      fc.property(fc.constantFrom(...keys), (word) => {
        expect(nearest(word, keys)).toBe(word);
      }),
    );
  });

  it('property: one letter dropped from a word of six or more is still recognised', () => {
    fc.assert(
      fc.property(fc.constantFrom(...keys), fc.nat(), (word, at) => {
        const index = at % word.length;
        expect(nearest(word.slice(0, index) + word.slice(index + 1), [word])).toBe(word);
      }),
    );
  });
});
