import { expect, it } from 'vitest';
import { howToMeasure, readingError, wayToMeasure } from './how-to-measure.ts';

it('names a way that suits the thing, not another of the same name', () => {
  expect(howToMeasure('machines.left.mass')).toBe('bathroom scales');
  expect(howToMeasure('days.usual.jobs.bracket.mass')).toMatch(/sliced print/);
  expect(howToMeasure('power.supplies.fans.efficiency')).toMatch(/energy meter/);
  expect(howToMeasure('paths.exhaust.parts.0.efficiency.particles')).toMatch(/particle counter/);
  expect(howToMeasure('room.airChangesPerHour')).toMatch(/carbon dioxide/);
  expect(wayToMeasure('protection.figures.growth')).not.toHaveProperty('exactly');
});

it('exact: an error against what is assumed, in deviations: normal by difference, log-normal by ratio', () => {
  const normal = { p10: 0.75, p50: 1, p90: 1.25, shape: 'normal' } as const;
  expect(readingError(normal, { kind: 'share', value: 0.05 })).toBeCloseTo((0.05 / 0.25) * 1.2815516, 6);
  expect(readingError(normal, { kind: 'plus', value: 0.25, says: '' })).toBeCloseTo(1.2815516, 6);
  const wide = { p10: 0.5, p50: 1, p90: 2, shape: 'log-normal' } as const;
  expect(readingError(wide, { kind: 'share', value: 1 })).toBeCloseTo(1.2815516, 6);
});
