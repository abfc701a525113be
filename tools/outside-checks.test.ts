// Every comparison with the outside world (`*.checks.ts`) must agree within its stated tolerance.

import type { OutsideCheck } from '@stillair/physics';
import { describe, expect, it } from 'vitest';

const files = import.meta.glob<{ checks: readonly OutsideCheck[] }>('../packages/*/src/**/*.checks.ts', {
  eager: true,
});
const all = Object.values(files).flatMap(({ checks }) => checks);

describe.each(Object.entries(files))('outside checks of %s', (_, { checks }) => {
  it.each(
    checks.map(
      (check) => [`${check.formula}: ${check.what} (${check.source})`.replaceAll('%', ' percent'), check] as const,
    ),
  )('%s', (_title, { got, expected, tolerance }) => {
    expect(tolerance).toBeGreaterThanOrEqual(0);
    expect(Math.abs(got() - expected)).toBeLessThanOrEqual(tolerance);
  });
});

it('no check is listed twice', () => {
  const keys = all.map(({ formula, what, source, unit }) => [formula, what, source, unit].join(' | '));
  expect(keys.filter((key, at) => keys.indexOf(key) !== at)).toEqual([]);
});
