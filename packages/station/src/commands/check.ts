// stillair check FILE: one sentence, the remarks that matter most, and on request every finding.

import { type Finding, remarksOn, STANDING, spreadFrom, type UnitSystem } from '@stillair/engine';
import { bandText, shortLimit, unitOf, valueText, withoutUnit } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { judged, notesText, spreadText, tellRun } from '../judged.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { tradeNames } from '../trade-names.ts';
import { unknownName } from '../unknown-name.ts';
import { exitCodeOf, inked, verdictOrder, verdictWords } from '../verdict-words.ts';
import { remarkText, type Shown } from './remark-text.ts';

export interface CheckOptions {
  readonly all?: boolean;
  readonly trade?: string;
  readonly day?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function check(file: string, options: CheckOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'check', io);
  if (source === undefined) return 2;
  const { cabinet } = source;
  const days = Object.keys(cabinet.days);
  if (options.trade !== undefined && !tradeNames.includes(options.trade))
    return refuse('trade', options.trade, tradeNames, io);
  const known = [...days, STANDING];
  if (options.day !== undefined && !known.includes(options.day)) return refuse('day', options.day, known, io);

  const judgement = await judged(source, options, io);
  const findings = judgement.findings
    .filter(({ trade }) => options.trade === undefined || trade === options.trade)
    .filter(({ day }) => options.day === undefined || day === options.day);
  const remarks = remarksOn(findings);
  const spread = spreadFrom(findings, source.origins);

  if (options.json) {
    const { samples, stopped, warnings } = judgement;
    const { title } = cabinet;
    const run = { samples, stopped, warnings, spread };
    io.out(JSON.stringify({ version: 1, file, cabinet: title, opening: remarks.opening, ...run, findings }, null, 2));
  } else {
    const ink = inkFor(io);
    const shown = { units: options.units, days: days.length, width: io.columns, ink };
    io.out(`${ink.strong(cabinet.title)}\n${hanging('', remarks.opening, io.columns)}`);
    for (const [at, remark] of remarks.first.entries()) io.out(`\n${remarkText(remark, at + 1, shown)}`);
    io.out(`\n${hanging('', spreadText(spread, judgement.samples.ran), io.columns)}`);
    const notes = notesText(judgement, days.length, io.columns, options.day);
    if (notes !== '') io.out(`\n${notes}`);
    if (options.all) io.out(`\n${everything(findings, shown)}`);
    else io.out(`\n${whereMore(file, remarks.first[0]?.findings[0] ?? findings[0], remarks.rest.length, shown)}`);
  }
  tellRun(judgement, io);
  return io.stop.aborted ? 130 : exitCodeOf(findings);
}

function refuse(what: string, word: string, known: readonly string[], io: Io): 2 {
  io.err(`stillair check: ${unknownName(what, word, known)}`);
  return 2;
}

/** Every finding by trade and day, worst first; the sources of their limits beneath, by number. */
function everything(findings: readonly Finding[], { units, days, width, ink }: Shown): string {
  const groups = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = days > 1 && finding.day !== STANDING ? `${finding.trade}, day ${finding.day}` : finding.trade;
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
function whereMore(file: string, first: Pick<Finding, 'id'> | undefined, rest: number, { ink }: Shown): string {
  const more = `${rest > 0 ? `${rest} more remark${rest === 1 ? '' : 's'}, and every number` : 'Every number'}:\n  stillair check ${file} --all`;
  const reason = first === undefined ? [] : [`The reason for one:\n  stillair explain ${file} ${first.id}`];
  return [more, ...reason].map((text) => ink.faint(text)).join('\n');
}
