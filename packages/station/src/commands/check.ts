// stillair check FILE: one sentence, the remarks that matter most, and on request every finding.

import { type Finding, nearest, type Remark, remarksOn, type UnitSystem } from '@stillair/engine';
import { aboutText, bandText, numbersText, shortLimit, unitOf, valueText, withoutUnit } from '../finding-text.ts';
import { type Ink, inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { judged, tellRun } from '../judged.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { exitCodeOf, inked, verdictOrder, verdictWords } from '../verdict-words.ts';

export interface CheckOptions {
  readonly all?: boolean;
  readonly trade?: string;
  readonly day?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

/** Findings of one cause that are told in full; the others are counted. */
const TOLD = 2;

export async function check(file: string, options: CheckOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'check', io);
  if (source === undefined) return 2;
  const { cabinet } = source;
  const days = Object.keys(cabinet.days);
  if (options.day !== undefined && !days.includes(options.day)) return refuse('day', options.day, days, io);

  const judgement = await judged(source, options, io);
  const trades = [...new Set(judgement.findings.map(({ trade }) => trade))];
  if (options.trade !== undefined && !trades.includes(options.trade)) return refuse('trade', options.trade, trades, io);
  const findings = judgement.findings
    .filter(({ trade }) => options.trade === undefined || trade === options.trade)
    .filter(({ day }) => options.day === undefined || day === options.day);
  const remarks = remarksOn(findings);

  if (options.json) {
    const { samples, stopped } = judgement;
    const answer = { version: 1, file, cabinet: cabinet.title, opening: remarks.opening, samples, stopped, findings };
    io.out(JSON.stringify(answer, null, 2));
  } else {
    const ink = inkFor(io);
    const shown = { units: options.units, days: days.length, width: io.columns, ink };
    io.out(`${ink.strong(cabinet.title)}\n${remarks.opening}`);
    for (const [at, remark] of remarks.first.entries()) io.out(`\n${remarkText(remark, at + 1, shown)}`);
    if (options.all) io.out(`\n${everything(findings, shown)}`);
    else io.out(`\n${whereMore(file, findings, remarks.rest.length, shown)}`);
  }
  tellRun(judgement, io);
  return io.stop.aborted ? 130 : exitCodeOf(findings);
}

interface Shown {
  readonly units: UnitSystem;
  readonly days: number;
  readonly width: number;
  readonly ink: Ink;
}

function refuse(what: string, word: string, known: readonly string[], io: Io): 2 {
  const near = nearest(word, known);
  const advice = near === undefined ? `there are: ${known.join(', ')}` : `did you mean ${near}?`;
  io.err(`stillair check: there is no ${what} "${word}"; ${advice}`);
  return 2;
}

function remarkText({ cause, verdict, findings, mend }: Remark, number: number, shown: Shown): string {
  const { width, ink } = shown;
  const head = hanging(`${number}. ${inked(ink, verdict, verdictWords[verdict])}  `, cause, width);
  const told = findings.slice(0, TOLD).map((finding) => findingText(finding, cause, verdict, shown));
  const more = findings.length - TOLD;
  const others = more > 0 ? [`   and ${more} more of the same cause`] : [];
  const worse = mend === undefined || mend.worsens.length === 0 ? '' : `; but worse then: ${mend.worsens.join(', ')}`;
  const then = mend === undefined ? '' : `${mend.of === undefined ? '' : `${mend.of} `}${verdictWords[mend.verdict]}`;
  const cure = mend === undefined ? '' : `${mend.says} (then ${then})${worse}`;
  return [
    head,
    ...told,
    ...others,
    ...(cure === ''
      ? []
      : [hanging(mend?.of === undefined ? '   to mend: ' : '   to mend a part of it: ', cure, width)]),
  ].join('\n');
}

/** What it is, its numbers, and whose limit it is held against. */
function findingText(
  finding: Finding,
  cause: string,
  worst: Finding['verdict'],
  { units, days, width, ink }: Shown,
): string {
  const title = finding.title === cause ? '' : `${finding.title}, `;
  const verdict = finding.verdict === worst ? '' : `${verdictWords[finding.verdict]}: `;
  const lines = [
    hanging('   ', `${title}${aboutText(finding, days)}`, width),
    hanging('     ', `${verdict}${numbersText(finding, units)}`, width),
  ];
  if (finding.limit !== undefined) lines.push(ink.faint(hanging('     limit: ', finding.limit.source, width)));
  return lines.join('\n');
}

/** Every finding by trade and day, worst first; the sources of their limits beneath, by number. */
function everything(findings: readonly Finding[], { units, days, width, ink }: Shown): string {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = days > 1 ? `${finding.trade}, day ${finding.day}` : finding.trade;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  const columns = [
    { head: '', least: 7 },
    { head: 'finding', least: 24 },
    { head: 'value', align: 'right', least: 11 },
    { head: '10 to 90 %', least: 10 },
    { head: 'limit', least: 9 },
  ] as const;
  const notes = sourceNotes();
  const tables = [...groups].map(([key, group]) => {
    const sorted = [...group].sort((a, b) => verdictOrder.indexOf(a.verdict) - verdictOrder.indexOf(b.verdict));
    const rows = sorted.map((finding) => {
      const value = valueText(finding, units);
      return [
        verdictWords[finding.verdict],
        `${finding.title}\n${finding.quantity}/${finding.part}`,
        value,
        withoutUnit(bandText(finding, units), unitOf(value)),
        finding.limit === undefined
          ? ''
          : `${shortLimit(finding.limit, finding.unit, units, value)} ${notes.mark(finding.limit.source)}`,
      ];
    });
    const colour = (text: string, row: number, column: number) =>
      column === 0 ? inked(ink, sorted[row]!.verdict, text) : text;
    return `${ink.strong(key)}\n${table(columns, rows, width, colour)}`;
  });
  return [...tables, notes.list(width)].filter((text) => text !== '').join('\n\n');
}

/** Commands stand on lines of their own, unbroken, so that they can be copied. */
function whereMore(file: string, findings: readonly Finding[], rest: number, { ink }: Shown): string {
  const first = findings.find(({ verdict }) => verdict === 'fails') ?? findings[0];
  const more = `${rest > 0 ? `${rest} more remark${rest === 1 ? '' : 's'}, and every number` : 'Every number'}:\n  stillair check ${file} --all`;
  const reason = first === undefined ? [] : [`The reason for one:\n  stillair explain ${file} ${first.id}`];
  return [more, ...reason].map((text) => ink.faint(text)).join('\n');
}
