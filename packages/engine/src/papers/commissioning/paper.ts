// The commissioning sheet: what to measure when the cabinet stands, where, with what, what is expected, and room to write.

import type { Finding } from '../../judge/finding.ts';
import { STANDING } from '../../trades/measure.ts';
import type { UnitSystem } from '../../units/format.ts';
import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import { bandWords, limitWords, valueWords } from '../number-words.ts';
import type { Paper } from '../paper.ts';
import { logTemplate } from './log-template.ts';
import { type Reading, readings } from './readings.ts';

export const commissioning: Paper = {
  id: 'commissioning',
  title: 'Commissioning',
  what: 'What to measure when the cabinet stands: where, with what, what is expected and how surely, and room to write what you read.',
  cautions: [
    'Stay with the cabinet during its first day. Nothing is left alone before the chain was tripped member by member.',
    'Measurements on the mains side are for a qualified person.',
    'A reading inside the band agrees with the file; it proves no more than that. Beside a limit, believe the worse of the two.',
  ],
  judged: true,
  make({ source: { cabinet }, judgement, units }) {
    const findings = judgement?.findings ?? [];
    const days = Object.keys(cabinet.days);
    const [first] = days;
    return {
      parts: [
        {
          kind: 'written',
          blocks: [
            heading('Before anything is switched on'),
            list(
              [
                'every board, plate and screw of the cut list and the printed parts is in its place',
                'the wiring sheet is signed by a qualified person',
                'the cabinet stands level and is strapped to the wall where the file says so',
                'smoke alarm in the room tested; extinguisher by the way out',
              ],
              'box',
            ),
            ...ofDay(findings, STANDING, 'As it stands', units),
            ...(first === undefined
              ? []
              : ofDay(
                  findings,
                  first,
                  `Day ${first}: ${cabinet.days[first]!.title}`,
                  units,
                  jobsOf(cabinet.days[first]!.jobs),
                )),
            paragraph(
              days.length > 1
                ? `Of ${days.length} days of the file the first is measured; choose another only if this one never comes.`
                : '',
            ),
            heading('Afterwards'),
            list(
              [
                'what lies outside its band: look at the inputs that move it most (stillair explain), measure the first of them, write it into the file',
                `log for a day into the empty table of this set (log-template.csv): a row each minute, a column a sensor`,
                'measured by, date: _______________________________________________',
              ],
              'box',
            ),
          ].filter((block) => block.kind !== 'text' || block.text !== ''),
        },
      ],
      rests: ['sensors'],
      files: [{ name: 'log-template.csv', content: logTemplate(cabinet) }],
    };
  },
};

function jobsOf(
  jobs: Readonly<Record<string, { readonly machine: string; readonly material: string; readonly start: number }>>,
): string {
  const words = Object.entries(jobs).map(([id, { machine, material }]) => `${id} (${material}) on ${machine}`);
  return words.length === 0 ? 'nothing is printed' : `printed: ${words.join(', ')}`;
}

function ofDay(
  findings: readonly Finding[],
  day: string,
  title: string,
  units: UnitSystem,
  condition?: string,
): Block[] {
  const rows = readings.flatMap((reading) =>
    findings
      .filter(
        (finding) =>
          finding.day === day && `${finding.trade}/${finding.quantity}` === reading.of && finding.value !== undefined,
      )
      .sort((a, b) => nearness(a) - nearness(b))
      .slice(0, MOST)
      .map((finding) => row(reading, finding, units)),
  );
  if (rows.length === 0) return [];
  return [
    heading(title),
    ...(condition === undefined ? [] : [paragraph(condition)]),
    {
      kind: 'table',
      columns: [
        { head: 'what', share: 0.25 },
        { head: 'where', share: 0.14 },
        { head: 'with, how', share: 0.27 },
        { head: 'expected (10 to 90 %)', share: 0.2 },
        { head: 'read', share: 0.14 },
      ],
      rows,
      rowHeight: 8,
    },
    smallPrint(
      'Expected: the middle of what was computed, and in brackets the band from 10 to 90 % of the samples; limits as the check holds them. Of one kind at most four are listed, those nearest their limits.',
    ),
  ];
}

/** Rows of one kind: where there are more, those nearest their limits. */
const MOST = 4;

/** How far a value is inside its limit, as a share of the limit; what has none comes in its own order. */
function nearness({ value, limit }: Finding): number {
  if (value === undefined || limit === undefined) return 0;
  const inside = limit.kind === 'at-most' ? limit.value - value : value - limit.value;
  return inside / Math.max(Math.abs(limit.value), 1e-9);
}

function row({ tool, how }: Reading, finding: Finding, units: UnitSystem): string[] {
  const band = bandWords(finding, units);
  const limit = limitWords(finding, units);
  return [
    finding.title,
    finding.part,
    `${tool}: ${how}`,
    `${valueWords(finding, units)}${band === '' ? '' : ` (${band})`}${limit === '' ? '' : `; ${limit}`}`,
    '',
  ];
}
