import { expect, it } from 'vitest';
import type { Remedy } from '../trades/measure.ts';
import type { Finding } from './finding.ts';
import { remediesToTry } from './remedies-tried.ts';

function finding(id: string, weight: number, remedies: number): Finding {
  return {
    id,
    trade: 'heat',
    quantity: id,
    part: 'one',
    day: 'usual',
    title: id,
    unit: 'share',
    verdict: 'fails',
    weight,
    better: 'lower',
    logarithmic: false,
    compared: true,
    steps: [],
    drivers: [],
    tried: [],
    remedies: Array.from(
      { length: remedies },
      (_, at): Remedy => ({ says: `${id} ${at}`, edits: [{ set: { [id]: at } }] }),
    ),
  };
}

it('exact: of the weightiest findings up to four are tried, and of every other one its first', () => {
  const findings = Array.from({ length: 20 }, (_, at) => finding(`f${at}`, 20 - at, 6));
  const says = remediesToTry(findings).map((remedy) => remedy.says);
  expect(says).toHaveLength(32);
  for (const { id } of findings) expect(says).toContain(`${id} 0`);
  for (const id of ['f0', 'f1', 'f2', 'f3']) expect(says).toContain(`${id} 3`);
  expect(says).not.toContain('f0 4');
  expect(says).not.toContain('f4 1');
});

it('exact: one edit that two findings propose is tried once, what holds asks for none', () => {
  const [a, b] = [finding('a', 1, 1), finding('b', 2, 1)];
  const same = { ...b, remedies: a.remedies };
  expect(remediesToTry([a, same, { ...finding('c', 3, 1), verdict: 'holds' }])).toHaveLength(1);
});
