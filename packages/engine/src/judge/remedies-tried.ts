// Remedies that trades propose, each distinct one run once, and what it does to its own finding and to all others.

import type { Remedy } from '../trades/measure.ts';
import { type Band, shiftedBand } from './bands.ts';
import type { Finding, Tried, Verdict } from './finding.ts';
import type { Outcome } from './variants.ts';
import { rankOf, verdictOf } from './verdict.ts';

/** More remedies than this are not tried for one cabinet: the weightiest findings come first. */
const MOST_TRIALS = 32;

export function remediesToTry(findings: readonly Finding[]): Remedy[] {
  const worth = findings
    .filter(({ verdict }) => verdict === 'fails' || verdict === 'tight')
    .sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict) || b.weight - a.weight);
  const distinct = new Map<string, Remedy>();
  for (const { remedies } of worth)
    for (const remedy of remedies) {
      const key = JSON.stringify(remedy.edits);
      if (!distinct.has(key)) distinct.set(key, remedy);
    }
  return [...distinct.values()].slice(0, MOST_TRIALS);
}

export function triedRemedies(
  finding: Finding,
  all: readonly Finding[],
  trials: readonly Remedy[],
  outcomes: readonly (Outcome | undefined)[],
): Tried[] {
  if (finding.verdict !== 'fails' && finding.verdict !== 'tight') return [];
  return finding.remedies.flatMap((remedy) => {
    const key = JSON.stringify(remedy.edits);
    const at = trials.findIndex(({ edits }) => JSON.stringify(edits) === key);
    const outcome = outcomes[at];
    if (outcome === undefined || outcome.fault !== undefined) return [];
    const value = outcome.values[finding.id];
    const others = all.filter(({ id }) => id !== finding.id);
    return [
      {
        says: remedy.says,
        edits: remedy.edits,
        ...(value === undefined ? {} : { value }),
        verdict: verdictWith(finding, outcome),
        worsens: changed(others, outcome, (before, after) => rankOf(after) > rankOf(before)),
        mends: changed(others, outcome, (before, after) => rankOf(after) < rankOf(before)),
      },
    ];
  });
}

/**
 * The verdict that a finding would have: its band moves with its nominal value. (Options that a person keeps are sampled
 * themselves; for a first look at a remedy the difference is far surer than the level.)
 */
export function verdictWith(finding: Finding, outcome: Outcome): Verdict {
  const value = outcome.values[finding.id];
  const { limit, logarithmic, p10, p50, p90 } = finding;
  if (value === undefined || finding.value === undefined) return 'unknown';
  const band: Band | undefined = p10 === undefined ? undefined : { p10, p50: p50!, p90: p90! };
  const moved = band === undefined ? undefined : shiftedBand(band, finding.value, value, logarithmic);
  const limitNow = outcome.limits[finding.id];
  if (limit === undefined) return 'told';
  // With the change the limit may be another one (another material), or not apply any more (another kind of fan): then it is kept.
  if (limitNow === undefined) return 'holds';
  return verdictOf(value, moved, { ...limit, value: limitNow });
}

function changed(
  others: readonly Finding[],
  outcome: Outcome,
  is: (before: Verdict, after: Verdict) => boolean,
): string[] {
  const titles = others
    .filter((other) => other.limit !== undefined && outcome.values[other.id] !== undefined)
    .filter((other) => is(other.verdict, verdictWith(other, outcome)))
    .map(({ title, part }) => `${title} (${part})`);
  return [...new Set(titles)];
}
