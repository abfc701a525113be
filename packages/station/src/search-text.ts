// What a search found, in words and tables.

import {
  comesToText,
  type NamedLimit,
  type NextStep,
  type SearchStudy,
  type SearchVariant,
  type Undone,
  type UnitSystem,
  type Want,
  wantRules,
} from '@stillair/engine';
import { aboutText, quantity } from './finding-text.ts';
import { inkFor } from './ink.ts';
import type { Io } from './io.ts';
import { table } from './table.ts';
import { hanging } from './text.ts';

const CAUTION =
  'Found among what was allowed to change, and judged by the same limits as check; it is no substitute for local codes and licensed practice.';

/** A difference; temperatures as differences. */
function by(want: Want, value: number, currency: string, units: UnitSystem): string {
  const { unit } = wantRules.find((rule) => rule.want === want)!;
  if (unit === 'money') return `${Math.abs(value) < 10 ? value.toFixed(1) : Math.round(value)} ${currency}`;
  if (unit === 'sound-level') return `${value.toFixed(1)} dB`;
  return quantity(unit === 'temperature' ? 'temperature-difference' : unit, value, units);
}

export function searchText(title: string, study: SearchStudy, days: number, units: UnitSystem, io: Io): string {
  const ink = inkFor(io);
  const { columns: width } = io;
  const { currency, wants, winner, base, front } = study;
  const about = (limit: NamedLimit): string => `${limit.title} (${aboutText(limit, days)})`;
  const paragraph = (text: string): string => hanging('', text, width);
  const section = (head: string, text: string): string =>
    text === '' ? '' : `${ink.strong(hanging('', head, width))}\n${text}`;
  if (winner === undefined)
    return [ink.strong(title), paragraph(ranText(study)), ...study.faults.map(paragraph)].join('\n');
  return [
    `${ink.strong(title)}\n${paragraph(openingText(study, units))}\n${paragraph(ranText(study))}\n${paragraph(CAUTION)}`,
    section('What may change', freeText(study, width)),
    section(
      wants.length > 1 ? 'The winner, nearest of the front to the best of every want' : 'The winner',
      winner.changes.length === 0 ? 'the cabinet as it stands' : winnerTable(study, about, units, width),
    ),
    section(
      'What it comes to',
      table(
        [{ head: 'want', least: 6 }, { head: 'as it stands' }, { head: 'winner' }, { head: 'measured by', least: 24 }],
        wantRules.map(({ want, measuredBy }) => [
          wants.includes(want) ? `${want} *` : want,
          comesToText(want, base.comesTo[want], currency, units),
          comesToText(want, winner.comesTo[want], currency, units),
          want === 'cheap'
            ? 'what must be bought, and running it for a year where the file says how often its days come'
            : measuredBy,
        ]),
        width,
      ),
    ),
    section(
      'How surely',
      [base, winner]
        .map((variant, at) => hanging('', surely(variant, at === 0 ? 'As it stands' : 'The winner', about), width))
        .join('\n'),
    ),
    section('Limits that bind', bindingText(study, about, units, width)),
    section('The front', front.length < 2 ? '' : frontTable(study, units, width)),
    section(
      'What more would cost',
      study.next.map((step) => hanging('  ', nextText(step, currency, units), width)).join('\n'),
    ),
    section(
      'Not kept by any variant that was run, so not searched for',
      study.givenUp.length === 0 ? '' : paragraph(study.givenUp.map(about).join('; ')),
    ),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function openingText(study: SearchStudy, units: UnitSystem): string {
  const { winner, wants, currency, base, keepsAll, givenUp } = study;
  const numbers = wants
    .map((want) => {
      const [was, is] = [base, winner!].map(({ comesTo }) => comesToText(want, comesTo[want], currency, units));
      return `${want}: ${is}${was === is ? '' : `, was ${was}`}`;
    })
    .join('; ');
  const changes = winner!.changes.length;
  const many =
    changes === 0
      ? 'Nothing that may change is better than the cabinet as it stands'
      : `${changes} change${changes === 1 ? '' : 's'} make${changes === 1 ? 's' : ''} the winner`;
  const limits = keepsAll
    ? givenUp.length === 0
      ? 'It keeps every limit.'
      : `It keeps every limit that any variant keeps; ${givenUp.length} are kept by none.`
    : `No variant that was run keeps every limit that some variant keeps; this one breaks least: ${winner!.breaks.length}.`;
  return `${many} (${numbers}). ${limits}`;
}

function ranText({ ran, variants, complete, closed, abandoned, failed, faults, seed }: SearchStudy): string {
  const all = variants > 1e6 ? `${variants.toExponential(1)}` : `${variants}`;
  const sure = complete
    ? 'All variants were run, so nothing better is among them.'
    : closed
      ? 'No single change of the winner is better: all of them were run. A better one further off may have been missed.'
      : 'Not every single change of the winner was run: more variants (--most) may find a better one.';
  const left = abandoned > 0 ? ` ${abandoned} were left off at the first limit that they broke.` : '';
  const lost = failed > 0 ? ` ${failed} could not be built or run (${faults[0] ?? ''}).` : '';
  return `${ran} of ${all} variants were run (seed ${seed}). ${sure}${left}${lost}`;
}

function freeText({ choices }: SearchStudy, width: number): string {
  const assumed = choices.some((choice) => choice.assumed);
  const lines = choices.map(({ id, values }) => {
    const shown =
      values.length > 6 ? `${values.slice(0, 5).join(', ')} and ${values.length - 5} more` : values.join(', ');
    return hanging('  ', `${id}: ${shown}`, width);
  });
  const note = assumed
    ? hanging(
        '',
        'The file does not say what may change (search:), so this was assumed, every option of the file among it:',
        width,
      )
    : '';
  return [note, ...lines].filter((line) => line !== '').join('\n');
}

type About = (limit: NamedLimit) => string;

function winnerTable(study: SearchStudy, about: About, units: UnitSystem, width: number): string {
  const { winner, undone, currency } = study;
  return table(
    [
      { head: 'change', least: 18 },
      { head: 'from', least: 10 },
      { head: 'to', least: 10 },
      { head: 'without this change', least: 24 },
    ],
    winner!.changes.map(({ id, from, to }) => {
      const without = undone.find((each) => each.id === id);
      return [id, from, to, without === undefined ? 'not run' : undoneText(without, about, currency, units)];
    }),
    width,
  );
}

function undoneText({ worse, breaks, idle, fault }: Undone, about: About, currency: string, units: UnitSystem): string {
  if (fault !== undefined) return `cannot be run: ${fault}`;
  const broken =
    breaks.length === 0
      ? []
      : [`breaks ${about(breaks[0]!)}${breaks.length > 1 ? ` and ${breaks.length - 1} more` : ''}`];
  const told = worseTexts(worse, currency, units);
  if (idle && told.length === 0) return 'nothing changes: it can be left out';
  return [...broken, ...told].join('; ') + (idle ? ': it can be left out' : '');
}

function worseTexts(worse: Undone['worse'], currency: string, units: UnitSystem): string[] {
  return (Object.entries(worse) as [Want, number][]).map(([want, value]) => {
    const more: Readonly<Record<Want, readonly [string, string]>> = {
      quiet: ['louder', 'quieter'],
      cheap: ['dearer', 'cheaper'],
      cool: ['warmer', 'cooler'],
      clean: ['of a guideline more in the room', 'of a guideline less in the room'],
      still: ['of its limit more air at a print', 'of its limit less air at a print'],
    };
    return `${by(want, Math.abs(value), currency, units)} ${more[want][value > 0 ? 0 : 1]}`;
  });
}

function surely({ chance, unsure = [] }: SearchVariant, name: string, about: About): string {
  if (chance === undefined) return `${name}: not varied.`;
  const share = `${Math.round(100 * chance)} %`;
  const all = `${name} keeps all limits that can be kept in ${share} of the samples`;
  if (unsure.length === 0) return `${all}.`;
  const listed = unsure.slice(0, 3).map((limit) => `${about(limit)} in ${Math.round(100 * limit.chance)} %`);
  return `${all}; least sure: ${listed.join('; ')}${unsure.length > 3 ? `; and ${unsure.length - 3} more` : ''}.`;
}

function bindingText({ close, inTheWay, wants }: SearchStudy, about: About, units: UnitSystem, width: number): string {
  const near = close.map(({ value, limit, unit, ...named }) =>
    hanging(
      '  ',
      `kept with little to spare: ${about(named)}, ${quantity(unit, value, units)}, limit ${quantity(unit, limit, units)} (${named.source})`,
      width,
    ),
  );
  const way = inTheWay.map(({ times, ...limit }) =>
    hanging('  ', `in the way of more ${wants[0]}: ${about(limit)}, broken by ${times} of the better variants`, width),
  );
  return [...near, ...way].join('\n');
}

function frontTable({ front, wants, currency, winner }: SearchStudy, units: UnitSystem, width: number): string {
  const rows = front.map((variant) => [
    JSON.stringify(variant.edits) === JSON.stringify(winner?.edits) ? 'winner' : '',
    ...wants.map((want) => comesToText(want, variant.comesTo[want], currency, units)),
    variant.chance === undefined ? '' : `${Math.round(100 * variant.chance)} %`,
    variant.changes.length === 0 ? 'as it stands' : variant.changes.map(({ id, to }) => `${id}: ${to}`).join('; '),
  ]);
  const heads = ['', ...wants, 'keeps all', 'changes'];
  return table(
    heads.map((head, at) => ({ head, least: at === heads.length - 1 ? 24 : 6 })),
    rows,
    width,
  );
}

function nextText({ want, better, worse, changes }: NextStep, currency: string, units: UnitSystem): string {
  const gain = worseTexts({ [want]: -better }, currency, units)[0]!;
  const rest = { ...worse, [want]: undefined };
  const cost = worseTexts(
    Object.fromEntries(Object.entries(rest).filter(([, value]) => value !== undefined)) as Undone['worse'],
    currency,
    units,
  );
  const how = changes.map(({ id, to }) => `${id}: ${to}`).join('; ') || 'the cabinet as it stands';
  return `${want}: ${gain}${cost.length === 0 ? '' : `, then ${cost.join(', ')}`}: ${how}`;
}
