// The report: every finding with its verdict, band, limit and source, for whoever runs the cabinet and whoever must approve it.

import type { Finding } from '../../judge/finding.ts';
import { opening } from '../../judge/remarks.ts';
import { STANDING } from '../../trades/measure.ts';
import type { UnitSystem } from '../../units/format.ts';
import { type Block, heading, paragraph, smallPrint } from '../frame/block.ts';
import { bandWords, limitWords, valueWords } from '../number-words.ts';
import type { Paper } from '../paper.ts';
import { byTrade } from './findings-by-trade.ts';
import { reportHtml } from './html.ts';

const CAUTIONS = [
  'Computed from one file; nothing was inspected or measured. It says which checks hold, and never that a cabinet can hurt nobody.',
  'It is no substitute for local codes, an electrician, a fire officer or a doctor. Numbers about health and fire have a band and a source: read both.',
  'What no trade judges (a loose terminal, a print that lets go, a careless hand) is not in it.',
] as const;

export const report: Paper = {
  id: 'report',
  title: 'Report',
  what: 'Every finding with verdict, band, limit and source, for whoever runs the cabinet and whoever must approve it: landlord, school, insurer.',
  cautions: CAUTIONS,
  judged: true,
  make(input) {
    const findings = input.judgement?.findings ?? [];
    const sources = numbered();
    const tables = byTrade(findings).flatMap(({ title, findings: own }): Block[] => [
      heading(title),
      {
        kind: 'table',
        columns: [
          { head: 'verdict', share: 0.1 },
          { head: 'finding', share: 0.4 },
          { head: 'value', share: 0.13 },
          { head: '10 to 90 %', share: 0.17 },
          { head: 'limit, source', share: 0.2 },
        ],
        rows: own.map((finding) => row(finding, input.units, sources.mark)),
      },
    ]);
    const blocks: Block[] = [
      paragraph(opening(findings)),
      paragraph(
        `${findings.length} findings; bands from ${input.judgement?.samples.ran ?? 0} samples of the inputs that nobody measured. The reason for each, with formulas and where every input came from, is in report.html of this set.`,
      ),
      ...tables,
      heading('Sources of limits'),
      ...sources.all().map((words, at) => smallPrint(`[${at + 1}] ${words}`)),
    ];
    return {
      parts: [{ kind: 'written', blocks }],
      files: [{ name: 'report.html', content: reportHtml(input, CAUTIONS) }],
    };
  },
};

function row(finding: Finding, units: UnitSystem, mark: (source: string) => string): string[] {
  const { title, part, day, limit, verdict } = finding;
  return [
    verdict,
    `${title}: ${part}${day === STANDING ? '' : `, ${day}`}`,
    valueWords(finding, units),
    bandWords(finding, units),
    limit === undefined ? '' : `${limitWords(finding, units)} ${mark(limit.source)}`,
  ];
}

function numbered(): { readonly mark: (source: string) => string; readonly all: () => readonly string[] } {
  const known: string[] = [];
  return {
    mark: (source) => {
      if (!known.includes(source)) known.push(source);
      return `[${known.indexOf(source) + 1}]`;
    },
    all: () => known,
  };
}
