import { expect, it } from 'vitest';
import { exitCodeOf } from './verdict-words.ts';

it.each([
  [[], 0],
  [['holds', 'told'], 0],
  [['holds', 'tight'], 3],
  [['holds', 'unknown'], 3],
  [['unknown', 'tight', 'fails'], 1],
] as const)('exact: verdicts %j leave with status %d', (verdicts, code) => {
  expect(exitCodeOf(verdicts.map((verdict) => ({ verdict })))).toBe(code);
});
