import { expect, it } from 'vitest';
import type { Origin } from '../cabinet/origin.ts';
import type { Finding } from './finding.ts';
import { spreadFrom } from './spread-from.ts';

const spread = { p10: 1, p50: 2, p90: 3, shape: 'normal' } as const;
const origins = new Map<string, Origin>([
  ['factors.leakage', { kind: 'assumed', why: 'nobody measured it', spread }],
  ['factors.bedLoss', { kind: 'assumed', why: 'nobody measured it', spread }],
  ['doors.door.sealGap', { kind: 'catalogue', part: 'foam', source: 'typical', spread }],
  ['room.size.width', { kind: 'derived', how: 'from the file' }],
]);

function finding(verdict: Finding['verdict'], shares: Record<string, number>, band = { p10: 1, p90: 2 }): Finding {
  const drivers = Object.entries(shares).map(([path, share]) => ({ path, label: path, share }));
  return { verdict, drivers, ...band } as unknown as Finding;
}

it('exact: shares are means over what fails or is tight, the assumed apart from what scatters', () => {
  const found = [
    finding('fails', { 'factors.leakage': 0.6, 'doors.door.sealGap': 0.2 }),
    finding('tight', { 'doors.door.sealGap': 0.8 }),
    finding('holds', { 'factors.bedLoss': 1 }),
  ];
  const answer = spreadFrom(found, origins);
  expect(answer).toMatchObject({ assumed: 2, scattering: 1, findings: 2 });
  expect(answer.known).toBeCloseTo(0.8, 12);
  expect(answer.fromAssumed).toBeCloseTo(0.3, 12);
  expect(answer.most.map(({ label }) => label)).toEqual(['doors.door.sealGap', 'factors.leakage']);
  expect(answer.most[0]!.share).toBeCloseTo(0.5, 12);
});

it('limit: nothing that fails has a band: numbers are counted, and no share is claimed', () => {
  const level = finding('fails', { 'factors.leakage': 1 }, { p10: 3, p90: 3 });
  const nothing = { findings: 0, known: 0, fromAssumed: 0, most: [] };
  expect(spreadFrom([level], origins)).toEqual({ assumed: 2, scattering: 1, ...nothing });
});
