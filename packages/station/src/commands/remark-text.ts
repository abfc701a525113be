// A remark in words: its cause, the findings that say so with their numbers, whose limits they are held against, what mends it.

import type { BriefFinding, Remark, UnitSystem } from '@stillair/engine';
import { aboutText, numbersText } from '../finding-text.ts';
import type { Ink } from '../ink.ts';
import { hanging } from '../text.ts';
import { inked, verdictWords } from '../verdict-words.ts';

export interface Shown {
  readonly units: UnitSystem;
  /** Days of the file: with one there is no need to name it. */
  readonly days: number;
  readonly width: number;
  readonly ink: Ink;
}

/** Findings of one cause that are told in full; the others are counted. */
const TOLD = 2;

export function remarkText({ cause, verdict, findings, mend }: Remark, number: number, shown: Shown): string {
  const { width, ink } = shown;
  const told = findings.slice(0, TOLD);
  const more = findings.length - told.length;
  const sources = new Set(told.flatMap(({ limit }) => limit?.source ?? []));
  return [
    hanging(`${number}. ${inked(ink, verdict, verdictWords[verdict])}  `, cause, width),
    ...byTitle(told).map((group) => findingsText(group, cause, verdict, shown)),
    ...(more > 0 ? [`   and ${more} more of the same cause`] : []),
    ...[...sources].map((source) => ink.faint(hanging('   limit: ', source, width))),
    ...(mend === undefined ? [] : [mendText(mend, width)]),
  ].join('\n');
}

function byTitle(findings: readonly BriefFinding[]): BriefFinding[][] {
  const groups = new Map<string, BriefFinding[]>();
  for (const finding of findings) groups.set(finding.title, [...(groups.get(finding.title) ?? []), finding]);
  return [...groups.values()];
}

/** Findings of one title: one has its place beside the title, several have theirs beside their numbers. */
function findingsText(
  group: readonly BriefFinding[],
  cause: string,
  worst: BriefFinding['verdict'],
  { units, days, width }: Shown,
): string {
  const title = group[0]!.title === cause ? [] : [group[0]!.title];
  const numbers = (finding: BriefFinding): string => {
    const verdict = finding.verdict === worst ? '' : `${verdictWords[finding.verdict]}: `;
    return `${verdict}${numbersText(finding, units)}`;
  };
  if (group.length === 1) {
    const [finding] = group;
    const head = [...title, aboutText(finding!, days)].join(', ');
    return [hanging('   ', head, width), hanging('     ', numbers(finding!), width)].join('\n');
  }
  const head = title.map((text) => hanging('   ', text, width));
  return [
    ...head,
    ...group.map((finding) => hanging('     ', `${aboutText(finding, days)}: ${numbers(finding)}`, width)),
  ].join('\n');
}

/** What gets worse that is told by name; the others are counted. */
const WORSE_TOLD = 2;

function mendText({ says, verdict, worsens, of }: NonNullable<Remark['mend']>, width: number): string {
  const then = `${of === undefined ? '' : `${of} `}${verdictWords[verdict]}`;
  const more = worsens.length - WORSE_TOLD;
  const named = worsens.slice(0, WORSE_TOLD).join(', ');
  const worse = named === '' ? '' : `; but worse then: ${named}${more > 0 ? ` and ${more} more` : ''}`;
  return hanging(`   to mend${of === undefined ? '' : ' a part'}: `, `${says} (then ${then})${worse}`, width);
}
