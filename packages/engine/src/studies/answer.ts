// What a person wants to hear first of a comparison: which change meets every limit at the least cost, or what each breaks.

import { formatQuantity } from '../units/format.ts';
import { listed, percentText, rangeText } from '../units/words.ts';
import type { Comparison, Sheet } from './compare.ts';
import { type Want, wantRules } from './wants.ts';

type NameOf = (sheet: string) => string;

/** Costs that are weighed against each other: money, noise, and what people breathe. */
const COSTS: readonly (readonly [want: Want, most: string])[] = [
  ['cheap', 'cheapest'],
  ['quiet', 'quietest'],
  ['clean', 'cleanest'],
];

/** Lines in plain words; sheets are called as `nameOf` says. Where none meets all, `each` sheet's own breaches are told, if wanted. */
export function answerOf(comparison: Comparison, nameOf: NameOf, each = true): string[] {
  const run = comparison.sheets.filter(({ fault }) => fault === undefined);
  if (run.length === 0) return ['Nothing was run.'];
  const meeting = comparison.meetAll.map((id) => run.find((sheet) => sheet.id === id)!);
  return meeting.length > 0 ? whoMeets(meeting, comparison, nameOf) : whatBreaks(run, comparison, nameOf, each);
}

function whoMeets(meeting: readonly Sheet[], comparison: Comparison, nameOf: NameOf): string[] {
  const prints = comparison.summary.some(({ id }) => id === 'draught/air-speed') || hasAirSpeed(comparison);
  const each = meeting.map(({ id, chanceOfAll }) =>
    chanceOfAll === undefined ? nameOf(id) : `${nameOf(id)} (in ${percentText(chanceOfAll)} of the samples)`,
  );
  const meets = `${listed(each)} ${each.length === 1 ? 'meets' : 'meet'} every limit${prints ? ', air speed at each print included' : ''}.`;
  if (meeting.length === 1) return [meets, `${nameOf(meeting[0]!.id)}: ${costWords(meeting[0]!, comparison)}.`];
  const winners = COSTS.map(([want, most]) => ({ most, ids: leastIn(meeting, want) }));
  const all = meeting.filter(({ id }) => winners.every(({ ids }) => ids.includes(id)));
  const [best] = all;
  if (best !== undefined)
    return [
      meets,
      `At the least cost in money, noise and clean air: ${nameOf(best.id)}; ${costWords(best, comparison)}.`,
    ];
  const told = winners
    .filter(({ ids }) => ids.length < meeting.length)
    .map(({ most, ids }) => `${most} ${listed(ids.map(nameOf))}`);
  return [meets, `Of these none is least in money, noise and clean air at once: ${told.join('; ')}.`];
}

function whatBreaks(run: readonly Sheet[], comparison: Comparison, nameOf: NameOf, each: boolean): string[] {
  const titles = titlesById(comparison);
  const breaks = run.map(({ id, broken }) => ({
    id,
    titles: [...new Set(broken.map((finding) => titles.get(finding)!))],
  }));
  const common =
    run.length < 2 ? [] : breaks[0]!.titles.filter((title) => breaks.every((one) => one.titles.includes(title)));
  const fewest = Math.min(...run.map(({ broken }) => broken.length));
  const best = run.filter(({ broken }) => broken.length === fewest).map(({ id }) => nameOf(id));
  const still = run.filter(({ broken }) => !broken.some((id) => id.startsWith('draught/air-speed/')));
  return [
    `${run.length === 1 ? 'It does not meet every limit' : 'No option meets every limit'}; ${listed(best)} ${best.length === 1 ? 'breaks' : 'break'} the fewest, ${fewest}.`,
    ...(hasAirSpeed(comparison) && still.length > 0 && still.length < run.length
      ? [`Air speed at each print is kept by ${listed(still.map(({ id }) => nameOf(id)))}.`]
      : []),
    ...(common.length > 0 ? [`All break: ${common.join('; ')}.`] : []),
    ...(each ? breaks : []).flatMap(({ id, titles: own }) => {
      const rest = own.filter((title) => !common.includes(title));
      return rest.length === 0
        ? []
        : [`${nameOf(id)} breaks${common.length > 0 ? ' besides' : ''}: ${rest.join('; ')}.`];
    }),
  ];
}

function hasAirSpeed({ rows, rest }: Comparison): boolean {
  return [...rows, ...rest].some(({ id, limit }) => id.startsWith('draught/air-speed/') && limit !== undefined);
}

function titlesById({ rows, rest }: Comparison): Map<string, string> {
  return new Map([...rows, ...rest].map(({ id, title }) => [id, title] as const));
}

/** Sheets that nothing to speak of keeps apart from the least. */
function leastIn(sheets: readonly Sheet[], want: Want): string[] {
  const matters = wantRules.find((rule) => rule.want === want)!.matters;
  const known = sheets.flatMap(({ id, comesTo }) =>
    comesTo[want] === undefined ? [] : [{ id, value: comesTo[want] }],
  );
  const least = Math.min(...known.map(({ value }) => value));
  return known.length === 0
    ? sheets.map(({ id }) => id)
    : known.filter(({ value }) => value <= least + matters).map(({ id }) => id);
}

function costWords({ price, comesTo }: Sheet, { currency }: Comparison): string {
  const known = price.high === 0 ? [] : [`${rangeText(price.low, price.high)} ${currency} to buy`];
  const open = price.unknown.length === 0 ? [] : ['something to buy whose price is not known'];
  const buy = [...known, ...open].join(' and ') || 'nothing to buy';
  const { quiet } = comesTo;
  return [
    buy,
    ...(quiet === undefined ? [] : [`${formatQuantity('sound-level', quiet, 'metric')} where it is loudest`]),
  ].join(', ');
}
