// What a spread says, in words and tables: differences first, then the verdicts that are open, then what to measure.

import {
  type Estimate,
  type FindingSpread,
  type Measurement,
  type OptionDifference,
  type OptionSpread,
  openFindings,
  percentText,
  type SpreadStudy,
  type UnitSystem,
} from '@stillair/engine';
import { aboutText, quantity, shortLimit, unitOf, withoutUnit } from '../finding-text.ts';
import type { Ink } from '../ink.ts';
import { sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging, whole } from '../text.ts';

export interface Shown {
  readonly units: UnitSystem;
  readonly width: number;
  readonly ink: Ink;
}

/** Differences of one option, open verdicts, and measurements that are told. */
const MOST_DIFFERENCES = 2;
const MOST_FINDINGS = 10;
const MOST_MEASUREMENTS = 8;
/** Inputs that explain less of a finding are not named beside it. */
const WORTH_A_NAME = 0.05;
const SURE = 0.9995;

export function spreadText(title: string, study: SpreadStudy, shown: Shown): string {
  const { width, ink } = shown;
  const notes = sourceNotes();
  const open = openFindings(study.findings);
  return [
    `${ink.strong(title)}\n${hanging('', openingOf(study), width)}`,
    ...(study.options.length > 1
      ? [
          `${headed('What the options change, on the same samples', shown)}\n${optionTable(study.options, shown)}`,
          ordersOf(study, width),
          differencesText(study, shown),
        ]
      : []),
    open.length === 0
      ? ''
      : `${headed(openHead(open.length), shown)}\n${findingTable(open.slice(0, MOST_FINDINGS), study, shown, notes.mark)}`,
    notes.list(width),
    sharesText(study, shown),
    measuringText(study, shown),
    ink.faint(
      hanging(
        '',
        'Of every finding, with errors: --json; a picture: --svg. A chance speaks of inputs that nobody measured, not of what the model leaves out.',
        width,
      ),
    ),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function headed(text: string, { width, ink }: Shown): string {
  return ink.strong(hanging('', text, width));
}

function openingOf({ samples, inputs, findings, wrong, days, bandError }: SpreadStudy): string {
  const limited = findings.filter(({ limit }) => limit !== undefined);
  const day = days.length === 1 ? ` Day: ${days[0]}.` : '';
  if (samples.ran === 0) return `Nothing was varied: ${inputs} inputs are uncertain.${day}`;
  const ends =
    bandError === undefined
      ? ''
      : ` For want of samples the ends of a band may be off by ${percentText(bandError)} of its width, in the middle of these.`;
  const kept = limited.filter(({ chance }) => chance?.value === 1).length;
  const broken = limited.filter(({ chance }) => chance?.value === 0).length;
  const open = limited.filter(({ chance }) => chance !== undefined && chance.value > 0 && chance.value < 1).length;
  return `${samples.ran} samples of ${inputs} uncertain inputs.${day} Of ${limited.length} limits ${kept} are kept and ${broken} broken in all of them, ${open} are open; by the better guess ${wrong.toFixed(1)} of these must be expected to be called wrongly.${ends}`;
}

function optionTable(options: readonly OptionSpread[], { width }: Shown): string {
  const columns = [
    { head: 'option', least: 14 },
    { head: 'limits broken', align: 'right' as const },
    { head: 'against the cabinet', align: 'right' as const },
    { head: 'fewer in', align: 'right' as const },
    { head: 'more in', align: 'right' as const },
    { head: 'all kept in', align: 'right' as const },
  ];
  const rows = options.map(({ id, fault, broken, brokenMore, fewer, more, meetsAll }) =>
    fault === undefined
      ? [
          id,
          broken === undefined ? '' : `${broken.value.toFixed(1)} ± ${(broken.error ?? 0).toFixed(1)}`,
          brokenMore === undefined ? '' : countBand(brokenMore.p10, brokenMore.p90),
          percentOf(fewer),
          percentOf(more),
          percentOf(meetsAll),
        ]
      : [id, `cannot be run: ${fault}`, '', '', '', ''],
  );
  return table(columns, rows, width);
}

function countBand(low: number, high: number): string {
  const [from, to] = [signed(Math.round(low)), signed(Math.round(high))];
  return from === to ? from : `${from} to ${to}`;
}

function signed(value: number): string {
  return value > 0 ? `+${value}` : value < 0 ? `−${-value}` : '0';
}

function ordersOf({ orders: { open, certain, narrower } }: SpreadStudy, width: number): string {
  const known =
    narrower === undefined || narrower < 1.5
      ? ''
      : ` In the middle of all differences, the difference is known ${narrower < 10 ? narrower.toFixed(1) : Math.round(narrower)} times as exactly as the level.`;
  const sure =
    open === 0
      ? ''
      : `Of ${open} differences where it is open with and without the option whether the limit is kept, ${certain} ${certain === 1 ? 'is' : 'are'} certain in direction: the order is certain though the level is not.`;
  return sure + known === '' ? '' : hanging('', (sure + known).trim(), width);
}

function differencesText({ options, differences, days }: SpreadStudy, shown: Shown): string {
  return options
    .slice(1)
    .flatMap(({ id, title }) => {
      const own = differences.filter(({ option }) => option === id).slice(0, MOST_DIFFERENCES);
      if (own.length === 0) return [];
      const lines = own.map((each) => hanging('  ', differenceText(each, days.length, shown.units), shown.width));
      return [[hanging('', `${id}: ${title}`, shown.width), ...lines].join('\n')];
    })
    .join('\n');
}

function differenceText(difference: OptionDifference, days: number, units: UnitSystem): string {
  const { title, better, worse, kept, keptBefore } = difference;
  const [side, chance] = better.value >= worse.value ? ['better', better.value] : ['worse', worse.value];
  const sure = chance >= SURE ? `${side} in all samples` : `${side} in ${percentText(chance)}`;
  const [before, after] = [percentText(keptBefore.value), percentText(kept.value)];
  const limit =
    before === after && (before === '0 %' || before === '100 %')
      ? `limit ${before === '0 %' ? 'broken' : 'kept'} either way`
      : `limit kept in ${after} (${before} without it)`;
  return `${title}, ${aboutText(difference, days)}: ${amountText(difference, units)}, ${sure}; ${limit}`;
}

/** `+7.6 K (+6.9 to +8.4)`, `0.43 times (0.2 to 0.9)`. */
function amountText({ as, band: { p10, p50, p90 }, unit }: OptionDifference, units: UnitSystem): string {
  if (as === 'ratio') {
    const times = (value: number): string => `${Number(value.toPrecision(2))}`;
    return `${times(p50)} times${p10 === p90 ? '' : ` (${times(p10)} to ${times(p90)})`}`;
  }
  const kind = unit === 'temperature' ? 'temperature-difference' : unit;
  const middle = quantity(kind, Math.abs(p50), units);
  const inUnit = unitOf(middle);
  const one = (value: number): string => {
    const text = withoutUnit(quantity(kind, Math.abs(value), units), inUnit);
    return /^0(?:$| )/.test(text) ? text : `${value > 0 ? '+' : '−'}${text}`;
  };
  const points = unit === 'share' ? middle.replace(/%$/, 'points') : middle;
  const sign = /^0(?:$| )/.test(middle) ? '' : p50 > 0 ? '+' : '−';
  return `${sign}${points}${p10 === p90 ? '' : ` (${one(p10)} to ${one(p90)})`}`;
}

function findingTable(
  findings: readonly FindingSpread[],
  { days }: SpreadStudy,
  { units, width }: Shown,
  mark: (source: string) => string,
): string {
  const columns = [
    { head: 'finding', least: 20 },
    { head: '10, 50, 90 %', least: 16 },
    { head: 'limit', least: 8 },
    { head: 'kept in', align: 'right' as const, least: 8 },
    { head: 'varies by', least: 18 },
  ];
  const rows = findings.map((finding) => {
    const { unit, p10, p50, p90, limit, chance, shares } = finding;
    const middle = quantity(unit, p50!, units);
    const one = (value: number): string => withoutUnit(quantity(unit, value, units), unitOf(middle));
    return [
      `${finding.title}, ${aboutText(finding, days.length)}`,
      `${one(p10!)}, ${one(p50!)}, ${whole(`${one(p90!)} ${unitOf(middle)}`.trim())}`,
      `${shortLimit(limit!, unit, units, middle)} ${mark(limit!.source)}`,
      percentOf(chance),
      driversText(shares),
    ];
  });
  return table(columns, rows, width);
}

function driversText(shares: FindingSpread['shares']): string {
  const named = shares.filter(({ share }) => share >= WORTH_A_NAME).slice(0, 2);
  return named.length === 0
    ? 'nothing told apart'
    : named.map(({ label, share }) => `${label} ${whole(percentText(share))}`).join(', ');
}

function openHead(count: number): string {
  return count > MOST_FINDINGS
    ? `The ${MOST_FINDINGS} verdicts that are most open, of ${count}`
    : 'Verdicts that are open';
}

function sharesText({ shares }: SpreadStudy, shown: Shown): string {
  if (shares === undefined) return '';
  const rows = shares.overall
    .slice(0, 12)
    .map(({ label, first, total }) => [label, percentText(first), percentText(total)]);
  const columns = [
    { head: 'input', least: 30 },
    { head: 'alone', align: 'right' as const },
    { head: 'with others', align: 'right' as const },
  ];
  return `${headed(`Shares of the variance of open verdicts (first and total order, ${shares.rows} rows)`, shown)}\n${table(columns, rows, shown.width)}`;
}

function measuringText({ measurements, wrong, days }: SpreadStudy, shown: Shown): string {
  const told = measurements.filter(({ verdicts, orders }) => verdicts.value + orders.value >= 0.005);
  if (told.length === 0) return '';
  const lines = told
    .slice(0, MOST_MEASUREMENTS)
    .map((measurement, at) =>
      hanging(`${`${at + 1}.`.padStart(3)} `, measurementText(measurement, days.length), shown.width),
    );
  const head = `What to measure: wrong calls fewer, of ${wrong.toFixed(1)} verdicts and of the orders of options`;
  return [headed(head, shown), ...lines].join('\n');
}

function measurementText({ label, how, exactly, verdicts, orders, helps }: Measurement, days: number): string {
  const fewer = [
    ...(verdicts.value >= 0.005 ? [`${countOf(verdicts)} verdicts`] : []),
    ...(orders.value >= 0.005 ? [`${countOf(orders)} orders`] : []),
  ].join(' and ');
  const [most] = helps;
  const about =
    most === undefined
      ? ''
      : `; most of ${most.title}, ${aboutText(most, days)}${most.option === undefined ? '' : ` (${most.option} against the cabinet)`}: wrong in ${percentText(most.before)}, then ${percentText(most.after)}`;
  return `${label}, exact ${exactly}: ${how}. ${fewer} fewer${about}`;
}

function countOf({ value, error }: Estimate): string {
  return error === undefined || Number.isNaN(error) ? value.toFixed(2) : `${value.toFixed(2)} ± ${error.toFixed(2)}`;
}

/** `34 ± 3 %`. */
function percentOf(estimate: Estimate | undefined): string {
  if (estimate === undefined) return '';
  const { value, error } = estimate;
  const rounded = Math.round(100 * value);
  return error === undefined || Number.isNaN(error)
    ? whole(`${rounded} %`)
    : whole(`${rounded} ± ${Math.max(1, Math.round(100 * error))} %`);
}
