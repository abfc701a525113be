// Remedies that trades propose, each distinct one run once, and what it does to its own finding and to all others.

import type { Remedy } from '../trades/measure.ts';
import { type Band, shiftedBand } from './bands.ts';
import type { Finding, Tried, Verdict } from './finding.ts';
import type { Outcome } from './variants.ts';
import { rankOf, verdictOf } from './verdict.ts';

/** More remedies than this are not tried for one cabinet: the weightiest findings come first. */
const MOST_TRIALS = 32;
/** Nobody weighs more ways than these to mend one thing: a trade names the likeliest first. */
const MOST_OF_ONE = 4;

/** The likeliest remedy of every finding comes before the further ones of any, so that none is left without. */
export function remediesToTry(findings: readonly Finding[]): Remedy[] {
  const worth = findings
    .filter(({ verdict }) => verdict === 'fails' || verdict === 'tight')
    .sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict) || b.weight - a.weight);
  const distinct = new Map<string, Remedy>();
  const wanted = [
    ...worth.flatMap(({ remedies }) => remedies.slice(0, 1)),
    ...worth.flatMap(({ remedies }) => remedies.slice(1, MOST_OF_ONE)),
  ];
  for (const remedy of wanted) {
    const key = JSON.stringify(remedy.edits);
    if (!distinct.has(key)) distinct.set(key, remedy);
  }
  return [...distinct.values()].slice(0, MOST_TRIALS);
}

/** What the trials do to a finding; those that were not run, or that the file cannot take, are left out. */
export function triedRemedies(
  all: readonly Finding[],
  trials: readonly Remedy[],
  outcomes: readonly (Outcome | undefined)[],
): (finding: Finding) => Tried[] {
  const ran = new Map(
    trials.flatMap(({ edits }, at) => {
      const outcome = outcomes[at];
      return outcome === undefined || outcome.fault !== undefined ? [] : [[JSON.stringify(edits), outcome] as const];
    }),
  );
  const changes = new Map([...ran].map(([key, outcome]) => [key, changesBy(outcome, all)] as const));
  return (finding) => {
    if (finding.verdict !== 'fails' && finding.verdict !== 'tight') return [];
    return finding.remedies.flatMap(({ says, edits }) => {
      const key = JSON.stringify(edits);
      const outcome = ran.get(key);
      if (outcome === undefined) return [];
      const value = outcome.values[finding.id];
      const others = changes.get(key)!.filter(({ id }) => id !== finding.id);
      const titles = (worse: boolean): string[] => [
        ...new Set(others.filter((change) => change.worse === worse).map(({ words }) => words)),
      ];
      return [
        {
          says,
          edits,
          ...(value === undefined ? {} : { value }),
          verdict: verdictWith(finding, outcome),
          worsens: titles(true),
          mends: titles(false),
        },
      ];
    });
  };
}

/**
 * The verdict that a finding would have: its band moves with its nominal value. (Options that a person keeps are sampled
 * themselves; for a first look at a remedy the difference is far surer than the level.) What is not asked any more is
 * kept: a spool that hangs elsewhere is in nobody's way.
 */
export function verdictWith(finding: Finding, outcome: Outcome): Verdict {
  const value = outcome.values[finding.id];
  const { limit, logarithmic, p10, p50, p90 } = finding;
  if (value === undefined)
    return finding.value === undefined || outcome.unknown.includes(finding.id) ? 'unknown' : 'holds';
  if (finding.value === undefined) return 'unknown';
  const band: Band | undefined = p10 === undefined ? undefined : { p10, p50: p50!, p90: p90! };
  const moved = band === undefined ? undefined : shiftedBand(band, finding.value, value, logarithmic);
  const limitNow = outcome.limits[finding.id];
  if (limit === undefined) return 'told';
  // With the change the limit may be another one (another material), or not apply any more (another kind of fan): then it is kept.
  if (limitNow === undefined) return 'holds';
  return verdictOf(value, moved, { ...limit, value: limitNow });
}

/** Findings whose verdict gets worse or better. */
function changesBy(outcome: Outcome, all: readonly Finding[]): { id: string; words: string; worse: boolean }[] {
  return all.flatMap((finding) => {
    if (finding.limit === undefined || outcome.values[finding.id] === undefined) return [];
    const step = rankOf(verdictWith(finding, outcome)) - rankOf(finding.verdict);
    const { id, title, part } = finding;
    return step === 0 ? [] : [{ id, words: `${title} (${part})`, worse: step > 0 }];
  });
}
