// What to do next, in order: changes that were tried and mend most of what does not hold, each with what it buys and what it costs.

import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { Finding, Tried, Verdict } from '../../judge/finding.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { rankOf } from '../../judge/verdict.ts';
import { priceDifference } from '../../studies/price-difference.ts';

export interface Mended {
  readonly finding: Finding;
  /** Its verdict with the change. */
  readonly then: Verdict;
}

export interface NextStep {
  readonly says: string;
  /** Findings that get better by a verdict. */
  readonly mends: readonly Mended[];
  /** Titles of findings that get worse. */
  readonly worsens: readonly string[];
  readonly price?: { readonly low: number; readonly high: number; readonly open: boolean };
}

const MOST = 6;
const GRAVE = ['fire', 'power', 'structure', 'air-quality'];
/** What does not hold counts by its weight, what fails twice what is tight. */
const worth = ({ verdict, weight }: Finding): number => (verdict === 'fails' ? 1 : 0.5) * (0.2 + weight);

interface Trial {
  readonly tried: Tried;
  readonly mends: readonly Mended[];
}

/**
 * Greedy: each next step is the change that mends most of what the steps before it leave, less what it makes worse; what concerns fire and the mains is told first. Changes were
 * tried one by one, not together: what two of them do together nobody has computed.
 */
export function nextSteps(source: ReadSource, findings: readonly Finding[]): readonly NextStep[] {
  const open = findings.filter(({ verdict }) => verdict === 'fails' || verdict === 'tight');
  const trials = trialsOf(open);
  const left = new Set(open);
  const steps: NextStep[] = [];
  const gain = ({ mends, tried }: Trial): number =>
    mends.reduce((sum, { finding }) => sum + (left.has(finding) ? worth(finding) : 0), 0) - 0.4 * tried.worsens.length;
  while (steps.length < MOST) {
    const best = trials.reduce<Trial | undefined>(
      (found, trial) => (found === undefined || gain(trial) > gain(found) + 1e-12 ? trial : found),
      undefined,
    );
    if (best === undefined || gain(best) <= 0) break;
    const mends = best.mends.filter(({ finding }) => left.has(finding));
    for (const { finding } of mends) left.delete(finding);
    const price = priceOf(source, best.tried);
    steps.push({
      says: best.tried.says,
      mends,
      worsens: best.tried.worsens,
      ...(price === undefined ? {} : { price }),
    });
  }
  return steps.sort((a, b) => graveness(a) - graveness(b));
}

/** Fire, then mains, then what people breathe; the rest by what it mends. */
function graveness({ mends }: NextStep): number {
  const at = mends.map(({ finding }) => GRAVE.indexOf(finding.trade)).filter((place) => place >= 0);
  return at.length === 0 ? GRAVE.length : Math.min(...at);
}

/** Every change once, with all that it mends: the finding it was tried for, and others by their titles. */
function trialsOf(open: readonly Finding[]): Trial[] {
  const known = new Map<string, { tried: Tried; mends: Map<Finding, Verdict> }>();
  for (const finding of open) {
    for (const tried of finding.tried) {
      const key = JSON.stringify(tried.edits);
      const trial = known.get(key) ?? { tried, mends: new Map<Finding, Verdict>() };
      if (rankOf(tried.verdict) < rankOf(finding.verdict)) trial.mends.set(finding, tried.verdict);
      known.set(key, trial);
    }
  }
  return [...known.values()]
    .map(({ tried, mends }) => ({ tried, mends: [...mends].map(([finding, then]) => ({ finding, then })) }))
    .filter(({ mends }) => mends.length > 0);
}

function priceOf({ file, text, cabinet }: ReadSource, { edits }: Tried): NextStep['price'] {
  const changed = readCabinet(file, text, edits);
  if (!changed.ok) return undefined;
  const { low, high, unknown } = priceDifference(cabinet, changed.cabinet);
  return { low, high, open: unknown.length > 0 };
}
