import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { openLooker } from './look.ts';
import type { Look, LookPart } from './protocol.ts';
import { wholeLook } from './whole-look.ts';

const text = readFileSync(new URL('../../../../examples/school-locker.yaml', import.meta.url), 'utf8');

function shared(workers: number): { readonly look: Look; readonly parts: readonly LookPart[] } {
  const parts = Array.from({ length: workers }, (_, at) => {
    const part = openLooker().look(text, { at, of: workers });
    if ('complaints' in part) throw new Error(part.complaints[0]?.what);
    return part;
  });
  return { look: wholeLook(parts)!, parts };
}

describe('a look', () => {
  const alone = shared(1);

  it('cross: two workers that share it come to what one comes to', () => {
    const { look, parts } = shared(2);
    expect(look).toEqual(alone.look);
    expect(parts.map(({ standing }) => standing === undefined)).toEqual([false, true]);
    expect(wholeLook(parts.slice(1))).toBeUndefined();
  });

  it('exact: what it says is plain data, without reasons', () => {
    expect(structuredClone(alone.look)).toEqual(alone.look);
    expect(alone.look.findings.length).toBeGreaterThan(20);
    expect(alone.look.findings.filter((finding) => 'steps' in finding || 'remedies' in finding)).toEqual([]);
  });

  it('exact: reasons and lines are told of the text that was looked at last, with where each input comes from', () => {
    const looker = openLooker();
    looker.look(text, { at: 0, of: 1 });
    const finding = alone.look.findings.find(({ trade }) => trade === 'heat')!;
    const { steps } = looker.reason(text, finding.id)!;
    expect(steps.length).toBeGreaterThan(0);
    expect(steps.flatMap(({ inputs }) => inputs).every(({ from }) => from !== '')).toBe(true);
    expect(looker.lines(text, finding.day, 'metric')!.panels.length).toBeGreaterThan(0);
    expect(looker.reason(`${text}\n`, finding.id)).toBeUndefined();
    expect(looker.lines(`${text}\n`, finding.day, 'metric')).toBeUndefined();
    expect(looker.reason(text, 'no/such/finding/here')).toBeUndefined();
  });
});
