import type { Finding } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { withSpreads } from './with-spreads.ts';

const finding = {
  id: 'heat/peak-air/top/usual',
  value: 40,
  p10: 39,
  p90: 41,
  verdict: 'holds',
  chance: 1,
  tried: ['x'],
};
const other = { id: 'fit/touches/top', verdict: 'fails' };

describe('findings with the bands of a study of their spread', () => {
  const spread = { ...finding, p10: 36, p50: 40, p90: 46, verdict: 'tight', chance: { value: 0.6 }, shares: [] };
  const [first, second] = withSpreads([finding, other] as never[] as Finding[], { findings: [spread] } as never);

  it('exact: bands, verdict and chance are the study’s; what was tried stays', () => {
    expect(first).toMatchObject({ p10: 36, p50: 40, p90: 46, verdict: 'tight', chance: 0.6, tried: ['x'] });
  });

  it('exact: what the study says nothing of stays as it was', () => {
    expect(second).toBe(other);
  });
});
