// Findings in the order of a report: by trade, what fails first.

import type { Finding } from '../../judge/finding.ts';
import { rankOf } from '../../judge/verdict.ts';
import { trades } from '../../trades/trades.ts';

export interface TradeFindings {
  readonly title: string;
  readonly findings: readonly Finding[];
}

export function byTrade(findings: readonly Finding[]): readonly TradeFindings[] {
  const known = trades.map(({ id }) => id);
  const strange = [...new Set(findings.map(({ trade }) => trade))].filter((trade) => !known.includes(trade));
  return [...known, ...strange].flatMap((trade): TradeFindings[] => {
    const own = findings
      .filter((finding) => finding.trade === trade)
      .sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict));
    return own.length === 0 ? [] : [{ title: trades.find(({ id }) => id === trade)?.title ?? trade, findings: own }];
  });
}
