// Verdicts as words and as exit status.

import type { Verdict } from '@stillair/engine';
import type { Ink } from './ink.ts';
import type { ExitCode } from './io.ts';

/** What stands in a column; the worst in capitals, so that colour is never needed to see it. */
export const verdictWords: Readonly<Record<Verdict, string>> = {
  fails: 'FAILS',
  tight: 'tight',
  unknown: 'unknown',
  holds: 'holds',
  told: '',
};

/** Worst first. */
export const verdictOrder: readonly Verdict[] = ['fails', 'tight', 'unknown', 'holds', 'told'];

export function inked(ink: Ink, verdict: Verdict, text: string): string {
  if (verdict === 'fails') return ink.alarm(text);
  return verdict === 'tight' || verdict === 'unknown' ? ink.caution(text) : text;
}

export function exitCodeOf(findings: readonly { readonly verdict: Verdict }[]): ExitCode {
  const verdicts = new Set(findings.map(({ verdict }) => verdict));
  if (verdicts.has('fails')) return 1;
  return verdicts.has('tight') || verdicts.has('unknown') ? 3 : 0;
}
