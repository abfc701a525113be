// What a person is told first: one sentence, then the few remarks that matter, findings of one cause together.

import type { Finding, Verdict } from './finding.ts';
import { rankOf } from './verdict.ts';

export interface Remark {
  /** What lies behind it; findings without a cause stand alone under their own title. */
  readonly cause: string;
  readonly verdict: Verdict;
  /** Worst first. */
  readonly findings: readonly Finding[];
  /** The remedy that mends most of them, if one was tried that does. */
  readonly mend?: { readonly says: string; readonly verdict: Verdict; readonly worsens: readonly string[] };
}

export interface Remarks {
  readonly opening: string;
  /** The most important ones. */
  readonly first: readonly Remark[];
  readonly rest: readonly Remark[];
}

export const FIRST_REMARKS = 5;

export function remarksOn(findings: readonly Finding[], most: number = FIRST_REMARKS): Remarks {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    if (finding.verdict === 'holds' || finding.verdict === 'told') continue;
    const key = finding.cause ?? finding.title;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  const remarks = [...groups].map(([cause, group]) => remarkOn(cause, group)).sort((a, b) => urgency(b) - urgency(a));
  return { opening: opening(findings), first: remarks.slice(0, most), rest: remarks.slice(most) };
}

function remarkOn(cause: string, group: readonly Finding[]): Remark {
  const sorted = [...group].sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict) || b.weight - a.weight);
  const mend = bestMend(sorted);
  return { cause, verdict: sorted[0]!.verdict, findings: sorted, ...(mend === undefined ? {} : { mend }) };
}

/** A failing finding of weight w counts 1 + w, a tight one w/2, an unknown one a little less. */
function urgency({ findings }: Remark): number {
  return Math.max(
    ...findings.map(({ verdict, weight }) =>
      verdict === 'fails' ? 1 + weight : verdict === 'tight' ? weight / 2 : weight / 3,
    ),
  );
}

function bestMend(group: readonly Finding[]): Remark['mend'] {
  const trials = group.flatMap(({ tried, verdict }) =>
    tried.filter((trial) => rankOf(trial.verdict) < rankOf(verdict)).map((trial) => ({ trial, verdict })),
  );
  const best = trials.sort(
    (a, b) =>
      a.trial.worsens.length - b.trial.worsens.length ||
      rankOf(a.trial.verdict) - rankOf(b.trial.verdict) ||
      b.trial.mends.length - a.trial.mends.length,
  )[0]?.trial;
  return best === undefined ? undefined : { says: best.says, verdict: best.verdict, worsens: best.worsens };
}

/** One sentence on the whole. It says which checks hold and nothing beyond. */
export function opening(findings: readonly Finding[]): string {
  const count = (verdict: Verdict): number => findings.filter((finding) => finding.verdict === verdict).length;
  const [holds, tight, fails, unknown] = [count('holds'), count('tight'), count('fails'), count('unknown')];
  const checks = holds + tight + fails + unknown;
  if (checks === 0) return 'Nothing in this file has a limit to be held against.';
  if (holds === checks) return checks === 1 ? 'The one check holds.' : `All ${checks} checks hold.`;
  const parts = [
    ...(fails > 0 ? [`${fails} fail${fails === 1 ? 's' : ''}`] : []),
    ...(tight > 0 ? [`${tight} ${tight === 1 ? 'is' : 'are'} tight`] : []),
    ...(unknown > 0 ? [`${unknown} cannot be told`] : []),
  ];
  return `Of ${checks} check${checks === 1 ? '' : 's'} ${holds} hold${holds === 1 ? 's' : ''}, ${list(parts)}.`;
}

function list(parts: readonly string[]): string {
  return parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}
