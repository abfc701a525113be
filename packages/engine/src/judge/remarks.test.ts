import { describe, expect, it } from 'vitest';
import type { Finding, Tried, Verdict } from './finding.ts';
import { opening, remarksOn } from './remarks.ts';

function finding(verdict: Verdict, cause: string | undefined, weight: number, tried: readonly Tried[] = []): Finding {
  return {
    id: `made-up/${cause ?? 'none'}/${verdict}/${weight}`,
    day: 'usual',
    trade: 'made-up',
    quantity: 'q',
    part: 'p',
    title: `title ${weight}`,
    unit: 'number',
    steps: [],
    remedies: [],
    weight,
    drivers: [],
    verdict,
    tried,
    ...(cause === undefined ? {} : { cause }),
  };
}

const tried = (says: string, verdict: Verdict, worsens: string[] = []): Tried => ({
  says,
  edits: [],
  verdict,
  worsens,
  mends: [],
});

describe('the opening sentence', () => {
  it.each([
    [[], 'Nothing in this file has a limit to be held against.'],
    [['told'], 'Nothing in this file has a limit to be held against.'],
    [['holds'], 'The one check holds.'],
    [['holds', 'holds', 'told'], 'All 2 checks hold.'],
    [
      ['holds', 'fails', 'tight', 'tight', 'unknown'],
      'Of 5 checks 1 holds, 1 fails, 2 are tight and 1 cannot be told.',
    ],
    [['fails'], 'Of 1 check 0 hold, 1 fails.'],
  ] as const)('exact: %j', (verdicts, sentence) => {
    expect(opening(verdicts.map((verdict, at) => finding(verdict, undefined, at)))).toBe(sentence);
  });

  it('property: a check that cannot be told never lets it say that all hold', () => {
    expect(opening([finding('holds', 'a', 1), finding('unknown', 'b', 1)])).not.toContain('All');
  });
});

describe('remarks', () => {
  it('exact: findings of one cause are one remark, the worst first; what holds is none', () => {
    const { first } = remarksOn([
      finding('tight', 'heat', 0.5),
      finding('holds', 'heat', 1),
      finding('fails', 'heat', 0.2),
    ]);
    expect(first).toHaveLength(1);
    expect(first[0]).toMatchObject({ cause: 'heat', verdict: 'fails' });
    expect(first[0]!.findings.map(({ verdict }) => verdict)).toEqual(['fails', 'tight']);
  });

  it('exact: what fails comes before what is tight, health before comfort; five are first', () => {
    const { first, rest } = remarksOn([
      finding('tight', 'draught', 0.6),
      finding('fails', 'comfort', 0.2),
      finding('fails', 'health', 1),
      finding('tight', 'noise', 0.3),
      finding('unknown', 'gap', 1),
      finding('tight', 'warm', 0.4),
      finding('tight', 'slow', 0.1),
    ]);
    expect(first.map(({ cause }) => cause)).toEqual(['health', 'comfort', 'gap', 'draught', 'warm']);
    expect(rest.map(({ cause }) => cause)).toEqual(['noise', 'slow']);
  });

  it('exact: a second remark of one trade stands behind the first of another, but never behind what is only tight', () => {
    const of = (trade: string, made: Finding): Finding => ({ ...made, trade });
    const { first } = remarksOn([
      of('fire', finding('fails', 'chain', 1)),
      of('fire', finding('fails', 'smoke', 0.8)),
      of('fire', finding('fails', 'fuel', 0.8)),
      of('draught', finding('fails', 'inlet', 0.6)),
      of('sound', finding('tight', 'noise', 1)),
    ]);
    expect(first.map(({ cause }) => cause)).toEqual(['chain', 'inlet', 'smoke', 'fuel', 'noise']);
  });

  it('exact: a second danger of the weightiest kind still comes before what only disturbs', () => {
    const lamp = { ...finding('fails', 'lamp', 0.6), trade: 'light' };
    const { first } = remarksOn([lamp, finding('fails', 'alarm', 1), finding('fails', 'spray', 1)]);
    expect(first.map(({ cause }) => cause)).toEqual(['alarm', 'spray', 'lamp']);
  });

  it('exact: the mend told is one that helps and worsens least', () => {
    const { first } = remarksOn([
      finding('fails', 'heat', 1, [
        tried('useless', 'fails'),
        tried('loud', 'holds', ['noise (desk)']),
        tried('half', 'tight'),
        tried('good', 'holds'),
      ]),
    ]);
    expect(first[0]!.mend).toEqual({ says: 'good', verdict: 'holds', worsens: [] });
  });

  it('exact: a mend of the first finding comes before a better one of another; else it is said what it mends', () => {
    const other = finding('tight', 'leaks', 1, [tried('carbon', 'holds')]);
    const helped = remarksOn([finding('fails', 'leaks', 0.6, [tried('less inlet', 'tight')]), other]).first[0]!;
    expect(helped.mend).toEqual({ says: 'less inlet', verdict: 'tight', worsens: [] });
    const stuck = remarksOn([finding('fails', 'leaks', 0.6, [tried('useless', 'fails')]), other]).first[0]!;
    expect(stuck.mend).toEqual({ says: 'carbon', verdict: 'holds', worsens: [], of: 'title 1 (p)' });
  });

  it('order: what is the same on another day is told behind what is not', () => {
    const one = finding('fails', 'leaks', 0.6);
    const again = { ...one, id: 'again', day: 'sunday' };
    const other = { ...finding('tight', 'leaks', 0.2), quantity: 'other' };
    expect(remarksOn([one, again, other]).first[0]!.findings).toEqual([one, other, again]);
  });

  it('limit: nothing that was tried helps: no mend is told', () => {
    expect(remarksOn([finding('fails', 'heat', 1, [tried('useless', 'fails')])]).first[0]!.mend).toBeUndefined();
  });
});
