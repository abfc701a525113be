// How a comparison opens: what the options are and cost, which meet every limit, which is best for which want, what settles a tie.

import {
  AS_IT_STANDS,
  answerOf,
  type BestFor,
  type Comparison,
  listed,
  percentText,
  rangeText,
  type Settling,
  type Sheet,
} from '@stillair/engine';
import type { Ink } from '../ink.ts';
import { hanging, pad, textWidth } from '../text.ts';

export type NameOf = (sheet: string) => string;

export function openingText(comparison: Comparison, nameOf: NameOf, width: number, ink: Ink): string {
  const answer = answerOf(comparison, nameOf, false).map((line) => hanging('', line, width));
  return [
    comparison.sheets.map((sheet) => optionText(sheet, nameOf, comparison, width)).join('\n'),
    answer.join('\n'),
    wantsText(comparison, nameOf, width, ink),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function optionText(sheet: Sheet, nameOf: NameOf, comparison: Comparison, width: number): string {
  const name = sheet.id === AS_IT_STANDS ? '' : `${sheet.id}: `;
  const fault = sheet.fault === undefined ? '' : ` (cannot be run: ${sheet.fault})`;
  return hanging(`  ${nameOf(sheet.id)}  `, `${name}${sheet.title}${priceText(sheet, comparison)}${fault}`, width);
}

function priceText({ price: { low, high, unknown } }: Sheet, { currency }: Comparison): string {
  const known = high > 0 ? `, to buy: ${rangeText(low, high)} ${currency}` : '';
  if (unknown.length === 0) return known;
  return known === '' ? ', price not known' : `${known} and something whose price is not known`;
}

function wantsText({ wants, sheets }: Comparison, nameOf: NameOf, width: number, ink: Ink): string {
  if (wants.length === 0) return '';
  const named = wants.map((want) => ({ ...want, who: whoText(want, sheets, nameOf) }));
  const widest = Math.max(...named.map(({ who }) => textWidth(who)));
  const lines = named.map((want) =>
    hanging(
      `  ${want.want.padEnd(5)}  ${pad(want.who, widest)}  `,
      `${want.measuredBy}${settlingText(want, nameOf)}`,
      width,
    ),
  );
  return [ink.strong('Best for each want, and in how many of the samples'), ...lines].join('\n');
}

function whoText({ best, tied, alike, chances }: BestFor, sheets: readonly Sheet[], nameOf: NameOf): string {
  if (best === undefined) return 'nobody';
  const run = sheets.filter(({ fault }) => fault === undefined).map(({ id }) => nameOf(id));
  // In the order of the file, so that what is alike does not seem ranked.
  const all = run.filter((name) => [best, ...tied].some((id) => nameOf(id) === name));
  if (alike) return all.length === run.length ? 'all alike' : `${listed(all, 'and')} alike`;
  return tied.length === 0 ? `${nameOf(best)} ${percentText(chances[best]!)}` : listed(all, 'or');
}

function settlingText({ best, tied, alike, settle }: BestFor, nameOf: NameOf): string {
  if (best === undefined || tied.length === 0 || alike) return '';
  return `; ${settle === undefined ? 'no one measurement would settle it' : toSettle(settle, nameOf)}`;
}

function toSettle({ label, how, turnsAt, within, below, above, settles }: Settling, nameOf: NameOf): string {
  const { kind, value } = turnsAt;
  const turn =
    kind === 'times'
      ? `${value.toPrecision(2)} times what is assumed`
      : `${Math.abs(value).toFixed(1)} K ${value < 0 ? 'below' : 'above'} what is assumed`;
  const accuracy = kind === 'times' ? `${within.toPrecision(1)} times what is assumed` : `${within.toFixed(1)} K`;
  return [
    `to settle it between ${nameOf(below)} and ${nameOf(above)}, measure: ${label} (${how})`,
    `below ${turn} ${nameOf(below)} is better, above it ${nameOf(above)}`,
    `known to within ${accuracy} it tells the better one in ${percentText(settles)} of the samples`,
  ].join('; ');
}
