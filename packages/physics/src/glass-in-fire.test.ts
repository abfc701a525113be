import { expect, it } from 'vitest';
import { glassFallsOut } from './glass-in-fire.ts';

it('property: thicker and double panes stay longer', () => {
  expect(glassFallsOut(0.003, 1)).toBeLessThan(glassFallsOut(0.004, 1));
  expect(glassFallsOut(0.006, 1)).toBeLessThan(glassFallsOut(0.006, 2));
  expect(() => glassFallsOut(0, 1)).toThrow('thickness is 0');
});
