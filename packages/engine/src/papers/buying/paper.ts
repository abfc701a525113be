// The buying list: what, how many, what it costs between what and what, and what else of the catalogue would do.

import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import type { Paper } from '../paper.ts';
import { type Alternative, alternatives } from './alternatives.ts';
import { fastenings } from './fastenings.ts';
import { type Thing, thingsToBuy } from './things.ts';

const groups = [
  ['boards', 'Boards'],
  ['air', 'Air'],
  ['other', 'Seals, lamps, electricity'],
  ['protection', 'Protection'],
  ['fastenings', 'Screws, hinges, bushings'],
] as const;

export const buyingList: Paper = {
  id: 'buying-list',
  title: 'Buying list',
  what: 'What is bought, how many, what it may cost, and what else of the catalogue would do as well.',
  cautions: [
    'Prices of the catalogue are invented, typical: they give a size, no offer.',
    'Parts are generic: before you buy, hold the sheet of the real part (curve, size, temperature, approval) against this list.',
  ],
  judged: true,
  async make({ source, judgement, units }) {
    const { cabinet } = source;
    const small = fastenings(cabinet);
    const things = [...thingsToBuy(cabinet, units), ...small.things];
    const others =
      judgement === undefined
        ? new Map<string, readonly Alternative[]>()
        : await alternatives(source, judgement.findings);
    const known = things.flatMap(({ price }) => price ?? []);
    const sum = (pick: (price: { low: number; high: number }) => number): number =>
      Math.round(known.reduce((all, price) => all + pick(price), 0));
    const unpriced = things.filter(({ price }) => price === undefined).length;
    return {
      parts: [
        {
          kind: 'written',
          blocks: [
            paragraph(
              `${things.length} things, about ${sum(({ low }) => low)} to ${sum(({ high }) => high)} ${cabinet.currency} together${unpriced > 0 ? `, without ${unpriced} of which nobody said a price` : ''}. Machines and their cords are not among them, nor glue, paint and the screws of joints and filters.`,
            ),
            ...groups.flatMap(([group, title]) =>
              table(
                title,
                things.filter((thing) => thing.group === group),
                cabinet.currency,
              ),
            ),
            ...(small.open.length === 0 ? [] : [heading('Not counted'), list(small.open)]),
            ...also(things, others, cabinet.currency),
          ],
        },
      ],
      rests: ['costs.sheets'],
      assumes:
        small.things.length === 0 ? [] : ['sizes of screws, hinges, pins and bushings: common practice, from memory'],
    };
  },
};

function table(title: string, things: readonly Thing[], currency: string): Block[] {
  if (things.length === 0) return [];
  return [
    heading(title),
    {
      kind: 'table',
      columns: [
        { head: 'what', share: 0.46 },
        { head: 'number', align: 'right' },
        { head: 'for', share: 0.24 },
        { head: currency, align: 'right' },
        { head: 'bought' },
      ],
      rows: things.map(({ what, count, where, price }) => [
        what,
        String(count),
        where.join(', '),
        price === undefined ? '' : range(price),
        '☐',
      ]),
    },
  ];
}

const range = ({ low, high }: { readonly low: number; readonly high: number }): string => {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? String(from) : `${from} to ${to}`;
};

function also(
  things: readonly Thing[],
  others: ReadonlyMap<string, readonly Alternative[]>,
  currency: string,
): Block[] {
  const items = things.flatMap(({ what, parts }) =>
    (others.get(parts[0] ?? '') ?? []).map(({ kind, price, breaks }) => {
      const cost = price === undefined ? '' : `, ${range(price)} ${currency}`;
      return breaks.length === 0
        ? `in place of ${what}: ${kind}${cost}: what holds goes on holding`
        : `not in place of ${what}: ${kind}${cost}: then it breaks: ${breaks.slice(0, 2).join('; ')}${breaks.length > 2 ? ` and ${breaks.length - 2} more` : ''}`;
    }),
  );
  return items.length === 0
    ? []
    : [
        heading('Instead'),
        list(items),
        smallPrint(
          'Each was put in its place alone and every day computed again, by middle values: a limit that is kept narrowly may still be broken. At most two others a part and eight in all are tried.',
        ),
      ];
}
