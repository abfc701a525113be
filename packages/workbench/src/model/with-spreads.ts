// Findings with the bands of a study of their spread: it has run more samples, and evener ones, than those that come by themselves.

import type { BriefFinding, SpreadStudy } from '@stillair/engine';

export function withSpreads(
  findings: readonly BriefFinding[],
  study: Pick<SpreadStudy, 'findings'>,
): readonly BriefFinding[] {
  const spreads = new Map(study.findings.map((spread) => [spread.id, spread]));
  return findings.map((finding) => {
    const spread = spreads.get(finding.id);
    if (spread?.p10 === undefined || spread.p50 === undefined || spread.p90 === undefined) return finding;
    const { p10, p50, p90, verdict, chance, shares } = spread;
    return {
      ...finding,
      p10,
      p50,
      p90,
      verdict,
      drivers: shares,
      ...(chance === undefined ? {} : { chance: chance.value }),
    };
  });
}
