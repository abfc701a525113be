// The first sheet: what to do this weekend, in order, and what each thing buys.

import type { Finding } from '../../judge/finding.ts';
import { opening } from '../../judge/remarks.ts';
import { howToMeasure } from '../../studies/how-to-measure.ts';
import { STANDING } from '../../trades/measure.ts';
import type { UnitSystem } from '../../units/format.ts';
import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import { limitWords, valueWords } from '../number-words.ts';
import type { Paper } from '../paper.ts';
import { type NextStep, nextSteps } from './next-steps.ts';

export const weekend: Paper = {
  id: 'this-weekend',
  title: 'This weekend',
  what: 'The few things to do next, in order, and what each of them buys.',
  cautions: [
    'Each change was computed by itself, from a file that nobody has checked: do one, look, then do the next.',
    'What concerns fire and the mains stands first; there the local code and a qualified person decide.',
  ],
  judged: true,
  make({ source, judgement, units }) {
    const findings = judgement?.findings ?? [];
    const steps = nextSteps(source, findings);
    const open = findings.filter(({ verdict }) => verdict === 'fails' || verdict === 'tight');
    const mended = new Set(steps.flatMap(({ mends }) => mends.map(({ finding }) => finding)));
    const untold = [
      ...new Set(
        findings.flatMap(({ verdict, missing }) => (verdict === 'unknown' && missing !== undefined ? [missing] : [])),
      ),
    ];
    const blocks: Block[] = [
      paragraph(opening(findings)),
      heading('Do'),
      ...(steps.length === 0 ? [paragraph('No change that was tried mends anything.')] : []),
      ...steps.flatMap((step, at) => stepBlocks(step, at + 1, source.cabinet.currency, units)),
      ...measureBlocks(open),
      ...(untold.length === 0
        ? []
        : [
            heading('Write into the file'),
            list(untold.slice(0, 6), 'box'),
            ...(untold.length > 6 ? [smallPrint(`and ${untold.length - 6} more: stillair check --all`)] : []),
          ]),
      ...rest(
        open.filter((finding) => !mended.has(finding)),
        units,
      ),
    ];
    return { parts: [{ kind: 'written', blocks }] };
  },
};

function stepBlocks(
  { says, mends, worsens, price }: NextStep,
  number: number,
  currency: string,
  units: UnitSystem,
): Block[] {
  const cost =
    price === undefined
      ? ''
      : price.high > 0
        ? ` (about ${Math.round(price.low)} to ${Math.round(price.high)} ${currency}${price.open ? ' and more' : ''}, invented, typical)`
        : price.open
          ? ' (its price is not known)'
          : '';
  return [
    { kind: 'text', text: `${number}. ${says}${cost}`, bold: true },
    list([
      ...mends.slice(0, 3).map(({ finding, then }) => `${aboutWords(finding, units)}; then ${then}`),
      ...(mends.length > 3 ? [`and ${mends.length - 3} more`] : []),
      ...(worsens.length === 0 ? [] : [`makes worse: ${[...new Set(worsens)].join('; ')}`]),
    ]),
  ];
}

const aboutWords = (finding: Finding, units: UnitSystem): string =>
  `${finding.title}, ${finding.part}${finding.day === STANDING ? '' : `, ${finding.day}`}: ${valueWords(finding, units)}, ${limitWords(finding, units)} (${finding.verdict})`;

/** The one measurement that would tell most of what is unsure. */
function measureBlocks(open: readonly Finding[]): Block[] {
  const shares = new Map<string, { label: string; share: number }>();
  for (const { path, label, share } of open.flatMap(({ drivers }) => drivers)) {
    const known = shares.get(path)?.share ?? 0;
    shares.set(path, { label, share: known + share });
  }
  const most = [...shares].sort(([, a], [, b]) => b.share - a.share).slice(0, 2);
  return most.length === 0
    ? []
    : [
        heading('Measure'),
        list(
          most.map(([path, { label }]) => `${label}: ${howToMeasure(path)}`),
          'box',
        ),
      ];
}

function rest(left: readonly Finding[], units: UnitSystem): Block[] {
  if (left.length === 0) return [];
  const fails = left.filter(({ verdict }) => verdict === 'fails').sort((a, b) => b.weight - a.weight);
  return [
    heading('Left for later'),
    paragraph(`${left.length} more ${left.length === 1 ? 'does' : 'do'} not hold:`),
    list(fails.slice(0, 2).map((finding) => aboutWords(finding, units))),
  ];
}
