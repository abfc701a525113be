// `costs:` and `carcasses:` of the cabinet file.

import type { Money } from '../units/money.ts';
import { mapOf, money, quantity, type Schema, sizes, text, thing, word, yesNo } from './shape.ts';
import type { BuildSpec, Given, Lengths } from './spec.ts';
import { build } from './text-forms.ts';

type Maybe<T> = T | undefined;

export interface CostsSpec {
  readonly carcass?: Maybe<Money>;
  readonly hour?: Maybe<Money>;
  readonly hours?: Given;
  readonly cut?: Maybe<Money>;
  readonly kerf?: Given;
  readonly trim?: Given;
  readonly turned?: Maybe<boolean>;
  readonly sheets?: Maybe<Readonly<Record<string, Lengths>>>;
  readonly contingency?: Maybe<{ readonly material?: Given; readonly hours?: Given }>;
  readonly wear?: Maybe<Money>;
  readonly 'machine-life'?: Given;
  readonly failures?: Given;
  readonly waste?: Given;
  readonly 'filter-life'?: Given;
  readonly 'carbon-life'?: Given;
  readonly hand?: Given;
  readonly 'hand-hour'?: Maybe<Money>;
  readonly 'cabinet-life'?: Given;
  readonly times?: Maybe<Readonly<Record<string, NonNullable<Given>>>>;
}

export interface CarcassSpec {
  readonly title?: Maybe<string>;
  readonly inside: Lengths;
  readonly opening?: Maybe<Lengths>;
  readonly from: 'bought' | 'built';
  readonly 'made-of'?: Maybe<BuildSpec>;
  readonly price?: Maybe<Money>;
  readonly changes?: Maybe<Readonly<Record<string, Money>>>;
}

const LONGEST_LIFE = 3.6e9;

export function costsSchema(): Schema<CostsSpec> {
  const share = { from: 0, to: 0.9 };
  const life = { above: 0, to: LONGEST_LIFE };
  return thing(
    {
      carcass: money('price of a carcass that is bought ready, in place of boards, doors and hours').optional(),
      hour: money("a joiner's hour, such as 45 EUR/h; left out when you build in your own time").optional(),
      hours: quantity('duration', 'hours of building, in place of the rule', { from: 0, to: LONGEST_LIFE }).optional(),
      cut: money('one cut of a shop that saws the sheets').optional(),
      kerf: quantity('length', "width of the saw's cut", { from: 0, to: 0.02 }).optional(),
      trim: quantity('length', 'cut off each edge of a new sheet', { from: 0, to: 0.1 }).optional(),
      turned: yesNo('parts may be turned by a quarter, as no grain is seen').optional(),
      sheets: mapOf(sizes(2, 'length x width of its sheet'), 'sheet in which a board is sold', 'board').optional(),
      contingency: thing(
        {
          material: quantity('share', "of the material's price", share).optional(),
          hours: quantity('share', 'of the hours', share).optional(),
        },
        'set aside for what was forgotten',
      ).optional(),
      wear: money('nozzles, belts, sheets and oil for an hour of printing, such as 0.05 EUR/h').optional(),
      'machine-life': quantity('duration', 'hours of printing that a machine lives', life).optional(),
      failures: quantity('share', 'prints that fail', share).optional(),
      waste: quantity('share', 'filament beyond the part itself', share).optional(),
      'filter-life': quantity('duration', 'hours of printing that a particle filter lasts', life).optional(),
      'carbon-life': quantity('duration', 'hours of printing that a carbon stage lasts', life).optional(),
      hand: quantity('duration', "a person's hands on one job: preparing, taking off, cleaning", {
        from: 0,
        to: 86_400,
      }).optional(),
      'hand-hour': money('an hour of those hands, such as 20 EUR/h; left out for your own time').optional(),
      'cabinet-life': quantity('duration', 'over which the cabinet is written off, such as 6 years', life).optional(),
      times: mapOf(
        quantity('number', 'how often the day comes in a year', { from: 0, to: 366 }),
        'how often each day comes in a year',
        'day',
      ).optional(),
    },
    'what things cost',
  ) as unknown as Schema<CostsSpec>;
}

export function carcassOptionSchema(): Schema<CarcassSpec> {
  return thing(
    {
      title: text('what it is called').optional(),
      inside: sizes(3, 'inside width x depth x height'),
      opening: sizes(2, 'clear width x height of its front').optional(),
      from: word(['bought', 'built'], 'whether it is bought ready or built'),
      'made-of': build('carcass').optional(),
      price: money('what it costs as it comes').optional(),
      changes: mapOf(money('what that costs'), 'what must be done to it, each with its price', 'change').optional(),
    },
    'a carcass that you think of',
  ) as unknown as Schema<CarcassSpec>;
}
