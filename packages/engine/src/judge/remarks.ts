// What a person is told first: one sentence, then the few remarks that matter, findings of one cause together.

import { listed } from '../units/words.ts';
import type { BriefFinding, Verdict } from './finding.ts';
import { rankOf } from './verdict.ts';

export interface Remark {
  /** What lies behind it; findings without a cause stand alone under their own title. */
  readonly cause: string;
  readonly verdict: Verdict;
  /** Worst first. */
  readonly findings: readonly BriefFinding[];
  /** The best remedy of those that were tried, if one helps; `of` names the finding that it mends when that is not the first. */
  readonly mend?: {
    readonly says: string;
    readonly verdict: Verdict;
    readonly worsens: readonly string[];
    readonly of?: string;
  };
}

export interface Remarks {
  readonly opening: string;
  /** The most important ones. */
  readonly first: readonly Remark[];
  readonly rest: readonly Remark[];
}

export const FIRST_REMARKS = 5;

export function remarksOn(findings: readonly BriefFinding[], most: number = FIRST_REMARKS): Remarks {
  const groups = new Map<string, BriefFinding[]>();
  for (const finding of findings) {
    if (finding.verdict === 'holds' || finding.verdict === 'told') continue;
    const key = finding.cause ?? finding.title;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [finding]);
    else group.push(finding);
  }
  const remarks = mostUrgentFirst([...groups].map(([cause, group]) => remarkOn(cause, group)));
  return { opening: opening(findings), first: remarks.slice(0, most), rest: remarks.slice(most) };
}

/** With each remark of its trade that was told before, the next one matters this much less: a person hears of every trade early. */
const AGAIN = 0.7;

function mostUrgentFirst(remarks: readonly Remark[]): Remark[] {
  const left = new Set(remarks);
  const told = new Map<string, number>();
  const sorted: Remark[] = [];
  const tradeOf = ({ findings }: Remark): string => findings[0]!.trade;
  const urgencyNow = (remark: Remark): number => urgency(remark, AGAIN ** (told.get(tradeOf(remark)) ?? 0));
  while (left.size > 0) {
    const next = [...left].reduce((best, remark) => (urgencyNow(remark) > urgencyNow(best) ? remark : best));
    left.delete(next);
    sorted.push(next);
    told.set(tradeOf(next), (told.get(tradeOf(next)) ?? 0) + 1);
  }
  return sorted;
}

function remarkOn(cause: string, group: readonly BriefFinding[]): Remark {
  const sorted = firstOfEach([...group].sort((a, b) => rankOf(b.verdict) - rankOf(a.verdict) || b.weight - a.weight));
  const mend = bestMend(sorted);
  return { cause, verdict: sorted[0]!.verdict, findings: sorted, ...(mend === undefined ? {} : { mend }) };
}

/** The same of one part on several days is told once before it is told again. */
function firstOfEach(sorted: readonly BriefFinding[]): BriefFinding[] {
  const seen = new Set<string>();
  const again = new Set<BriefFinding>();
  for (const finding of sorted) {
    const key = `${finding.trade}/${finding.quantity}/${finding.part}`;
    if (seen.has(key)) again.add(finding);
    seen.add(key);
  }
  return [...sorted.filter((finding) => !again.has(finding)), ...again];
}

/** A failing finding of weight w counts 1 + w, a tight one w/2, an unknown one a little less: what fails is told before the rest. */
function urgency({ findings }: Remark, share: number): number {
  return Math.max(
    ...findings.map(({ verdict, weight }) => {
      const counts = weight * share;
      return verdict === 'fails' ? 1 + counts : verdict === 'tight' ? counts / 2 : counts / 3;
    }),
  );
}

function bestMend(group: readonly BriefFinding[]): Remark['mend'] {
  // A remedy is told for the finding that stands first; only where nothing helps that one, for the next that something helps.
  for (const [at, { tried, verdict, title, part }] of group.entries()) {
    const [best] = tried
      .filter((trial) => rankOf(trial.verdict) < rankOf(verdict))
      .sort(
        (a, b) =>
          a.worsens.length - b.worsens.length ||
          rankOf(a.verdict) - rankOf(b.verdict) ||
          b.mends.length - a.mends.length,
      );
    if (best === undefined) continue;
    const { says, verdict: then, worsens } = best;
    return { says, verdict: then, worsens, ...(at === 0 ? {} : { of: `${title} (${part})` }) };
  }
  return undefined;
}

/** One sentence on the whole. It says which checks hold and nothing beyond. */
export function opening(findings: readonly BriefFinding[]): string {
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
  return `Of ${checks} check${checks === 1 ? '' : 's'} ${holds} hold${holds === 1 ? 's' : ''}, ${listed(parts)}.`;
}
