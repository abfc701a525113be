// A comparison made short: one row for each question of a trade, holding for every sheet the finding that is worst in it.

import type { Verdict } from '../judge/finding.ts';
import { rankOf } from '../judge/verdict.ts';
import type { Limit } from '../trades/measure.ts';
import type { Cell, Row } from './compare.ts';

/** The worst finding of one question in one sheet. */
export interface SummaryCell extends Cell {
  /** Finding id. */
  readonly finding: string;
  readonly part: string;
  readonly day: string;
  readonly limit?: Limit;
}

export interface SummaryRow {
  /** `trade/quantity`. */
  readonly id: string;
  readonly title: string;
  readonly unit: string;
  readonly logarithmic: boolean;
  readonly weight: number;
  /** By sheet id; a sheet in which nothing of the kind exists has none. */
  readonly cells: Readonly<Record<string, SummaryCell>>;
  /** Sheets whose worst is best, where one is better than another. */
  readonly best: readonly string[];
  readonly differs: boolean;
}

/** Rows that fail somewhere come first, then those that differ. Rows that are equal everywhere and hold are left out. */
export function summaryOf(rows: readonly Row[], sheets: readonly string[]): SummaryRow[] {
  const groups = new Map<string, Row[]>();
  for (const row of rows) {
    const asked = Object.values(row.cells).some(({ value }) => value !== undefined);
    if (!asked || row.better === undefined || (row.limit === undefined && !row.compared)) continue;
    const id = row.id.split('/').slice(0, 2).join('/');
    groups.set(id, [...(groups.get(id) ?? []), row]);
  }
  return [...groups]
    .map(([id, group]) => summaryRow(id, group, sheets))
    .filter(isTold)
    .sort((a, b) => urgency(b) - urgency(a));
}

function summaryRow(id: string, group: readonly Row[], sheets: readonly string[]): SummaryRow {
  const [first] = group;
  const limited = group.filter(({ limit }) => limit !== undefined);
  const asked = limited.length > 0 ? limited : group;
  const better = first!.better!;
  const cells: Record<string, SummaryCell> = {};
  const margins: Record<string, number> = {};
  for (const sheet of sheets) {
    const found = asked.flatMap((row) => {
      const cell = row.cells[sheet];
      return cell === undefined ? [] : [{ row, cell, margin: marginOf(cell, row.limit, row.unit, better) }];
    });
    if (found.length === 0) continue;
    const { row, cell, margin } = found.reduce((a, b) => (isWorse(b, a) ? b : a));
    cells[sheet] = {
      ...cell,
      finding: row.id,
      part: row.part,
      day: row.day,
      ...(row.limit === undefined ? {} : { limit: row.limit }),
    };
    if (cell.value !== undefined) margins[sheet] = margin;
  }
  const ids = Object.keys(margins);
  const top = Math.max(...ids.map((sheet) => margins[sheet]!));
  const low = Math.min(...ids.map((sheet) => margins[sheet]!));
  const allHold = limited.length > 0 && Object.values(cells).every(({ verdict }) => verdict === 'holds');
  const hair = smallestStep(
    first!.unit,
    allHold,
    ids.map((sheet) => margins[sheet]!),
  );
  const differs = ids.length > 0 && (top - low > hair || Object.keys(cells).length < sheets.length);
  return {
    id,
    title: first!.title,
    unit: first!.unit,
    logarithmic: first!.logarithmic,
    weight: Math.max(...group.map(({ weight }) => weight)),
    cells,
    best: differs && top - low > hair ? ids.filter((sheet) => margins[sheet]! >= top - hair) : [],
    differs,
  };
}

/**
 * How much room a value leaves: as share of its limit; in its own unit where there is no limit, the limit is 0, or a share of it
 * means nothing (temperatures). The more the better.
 */
export function marginOf(
  { value }: Pick<Cell, 'value'>,
  limit: Limit | undefined,
  unit: string,
  better: 'lower' | 'higher',
): number {
  if (value === undefined) return 0;
  if (limit === undefined) return better === 'lower' ? -value : value;
  const room = limit.kind === 'at-most' ? limit.value - value : value - limit.value;
  return limit.value === 0 || unit.startsWith('temperature') ? room : room / Math.abs(limit.value);
}

interface Candidate {
  readonly cell: { readonly verdict: Verdict };
  readonly margin: number;
}

function isWorse(a: Candidate, b: Candidate): boolean {
  const step = rankOf(a.cell.verdict) - rankOf(b.cell.verdict);
  return step > 0 || (step === 0 && a.margin < b.margin);
}

/** Nobody notices 0.05 K, or 1 % of anything else; where every sheet keeps its limit, not 0.5 K or 5 % of it either. */
function smallestStep(unit: string, allHold: boolean, margins: readonly number[]): number {
  if (unit.startsWith('temperature')) return allHold ? 0.5 : 0.05;
  return allHold ? 0.05 : 0.01 * Math.max(...margins.map(Math.abs), 1e-12);
}

function verdictsIn({ cells }: SummaryRow): Verdict[] {
  return Object.values(cells).map(({ verdict }) => verdict);
}

function isTold(row: SummaryRow): boolean {
  const verdicts = verdictsIn(row);
  return row.differs || verdicts.some((verdict) => rankOf(verdict) > rankOf('holds'));
}

function urgency(row: SummaryRow): number {
  const verdicts = verdictsIn(row);
  const [fails, tight] = [verdicts.includes('fails'), verdicts.includes('tight')];
  return row.weight + (fails ? 4 : tight ? 2 : 0) + (row.differs ? 1 : 0);
}
