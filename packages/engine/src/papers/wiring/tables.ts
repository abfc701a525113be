// The lists of the wiring sheet: which plug goes where, every wire of the low-voltage side, and the states of the cut-off chain.

import { statesThatStayOn } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { OUTSIDE, WALL } from '../../cabinet/power.ts';
import type { Finding } from '../../judge/finding.ts';
import { fansIn } from '../../trades/plant.ts';
import { socketsFor } from '../../trades/power/strips.ts';
import type { UnitSystem } from '../../units/format.ts';
import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import { amount, bandWords, valueWords, worstOf } from '../number-words.ts';
import { coloursOf } from './colours.ts';
import { sectionText } from './tree.ts';

const about = (findings: readonly Finding[], quantity: string, part: string): Finding | undefined =>
  worstOf(findings.filter((one) => one.trade === 'power' && one.quantity === quantity && one.part === part));

export function socketPlan({ cabinet, findings, units }: Told): Block[] {
  const { strips } = cabinet.power;
  const tables = Object.entries(strips).flatMap(([id, strip]): Block[] => {
    const plugs = [
      ...strip.feeds.map((user) => ({ user, takes: socketsFor(cabinet, user) })),
      ...Object.keys(strips)
        .filter((other) => strips[other]!.from === id)
        .map((other) => ({ user: `strip ${other}`, takes: 1 })),
    ];
    let next = 1;
    const rows = plugs.map(({ user, takes }) => {
      const from = next;
      next += takes;
      return [takes > 1 ? `${from} (covers ${from + 1})` : String(from), user, whereOf(cabinet, user), ''];
    });
    const free = strip.sockets - next + 1;
    const current = about(findings, 'strip-current', `strips.${id}`);
    return [
      heading(
        `Strip ${id}: ${strip.where}, ${strip.rating} A, into ${strip.from === WALL ? 'the wall' : `strip ${strip.from}`}`,
      ),
      {
        kind: 'table',
        columns: [
          { head: 'socket' },
          { head: 'plug of' },
          { head: 'stands in' },
          { head: 'plugged in, seen', share: 0.25 },
        ],
        rows,
        rowHeight: 6.5,
      },
      paragraph(
        [
          strip.sockets === 0
            ? `how many sockets it has is not said (power.strips.${id}.sockets)`
            : free >= 0
              ? `${free} of ${strip.sockets} sockets stay free`
              : `${-free} sockets too few`,
          ...(current?.value === undefined
            ? []
            : [`largest current ${valueWords(current, units)}${inBrackets(bandWords(current, units))}`]),
        ].join('; '),
      ),
    ];
  });
  return tables.length === 0 ? [heading('Sockets'), paragraph('The file names no strip: give power.strips.')] : tables;
}

export interface Told {
  readonly cabinet: Cabinet;
  readonly findings: readonly Finding[];
  readonly units: UnitSystem;
}

const inBrackets = (words: string): string => (words === '' ? '' : ` (${words})`);

function whereOf(cabinet: Cabinet, user: string): string {
  return cabinet.machines[user]?.bay ?? cabinet.power.supplies[user]?.where ?? cabinet.heats[user]?.bay ?? OUTSIDE;
}

/** Rated current of what a wire feeds, A: everything on at full speed. */
function ratedCurrent({ paths, heats }: Cabinet, feeds: readonly string[], voltage: number): number {
  const watts = feeds.reduce(
    (sum, load) =>
      sum +
      (paths[load] === undefined ? 0 : fansIn(paths[load]).reduce((all, fan) => all + fan.watts, 0)) +
      (heats[load]?.watts ?? 0),
    0,
  );
  return watts / voltage;
}

export function wireTable({ cabinet, findings, units }: Told): Block[] {
  const { wires, supplies, region } = cabinet.power;
  const colours = coloursOf[region];
  const rows = Object.entries(wires).map(([id, wire]) => {
    const voltage = supplies[wire.supply]?.voltage;
    const drop = about(findings, 'wire-drop', `wires.${id}`);
    const fuse = about(findings, 'fuse-current', `wires.${id}`);
    return [
      id,
      `${wire.supply} to ${wire.feeds.join(', ')}`,
      `${sectionText(wire)} ${wire.insulation}`,
      amount('length', wire.length, units),
      voltage === undefined
        ? ''
        : amount('electric-current', wire.current ?? ratedCurrent(cabinet, wire.feeds, voltage), units),
      drop === undefined ? '' : `${valueWords(drop, units)}${inBrackets(drop.verdict === 'holds' ? '' : drop.verdict)}`,
      wire.fuse === undefined
        ? 'not said'
        : `${wire.fuse} A, ${amount('length', wire.fuseAt, units)} from the supply${inBrackets(fuse === undefined || fuse.verdict === 'holds' ? '' : `${fuse.verdict}: ${fuse.limit === undefined ? '' : `at most ${amount('electric-current', fuse.limit.value, units)}`}`)}`,
      '',
    ];
  });
  const wired = new Set(Object.values(wires).map(({ supply }) => supply));
  const bare = Object.keys(supplies).filter((id) => !wired.has(id) && supplies[id]!.feeds.length > 0);
  return [
    heading('Low-voltage wires'),
    ...(rows.length === 0
      ? [paragraph('The file names no wire: give power.wires.')]
      : [
          {
            kind: 'table',
            columns: [
              { head: 'wire' },
              { head: 'from, to', share: 0.2 },
              { head: 'section' },
              { head: 'length', align: 'right' },
              { head: 'rated', align: 'right' },
              { head: 'drop', align: 'right' },
              { head: 'fuse', share: 0.2 },
              { head: 'done' },
            ],
            rows,
            rowHeight: 7,
          } as const satisfies Block,
        ]),
    ...bare.map((id) => {
      const section = about(findings, 'wire-section', `supplies.${id}`);
      return paragraph(
        `${id}: its wires are not said${section?.value === undefined ? '' : `; ${Math.round(section.value * 1e8) / 100} mm² would do over 3 m there and as much back`}`,
      );
    }),
    heading('Colours'),
    {
      kind: 'table',
      columns: [{ head: 'conductor' }, { head: `colour (${region})` }],
      rows: [
        ['phase, L', colours.phase],
        ['neutral, N', colours.neutral],
        ['protective earth, PE', colours.earth],
        ['direct current, +', colours.plus],
        ['direct current, −', colours.minus],
      ],
    },
    smallPrint(`${colours.source}. Supplies sold with leads of other colours are common: trust a meter, not a colour.`),
  ];
}

/** More members than these are not laid out row by row. */
const LAID_OUT = 4;

export function truthTable(chain: NonNullable<Cabinet['protection']['chain']>): Block[] {
  const members = Object.entries(chain);
  const unsaid = members.filter(([, { contact }]) => contact === undefined).map(([id]) => id);
  if (unsaid.length > 0)
    return [paragraph(`Not laid out: whether the contact opens when it trips is not said of ${unsaid.join(', ')}.`)];
  const opens = members.map(([, { contact }]) => contact === 'opens');
  const on = statesThatStayOn(members.map(([, { contact }]) => contact!));
  const states = 2 ** members.length;
  const row = (state: number): string[] => {
    const well = members.map((_, at) => (state >> at) % 2 === 0);
    const stays = well.every((is, at) => is || !opens[at]);
    return [...well.map((is) => (is ? 'well' : 'TRIPPED')), stays ? 'stays on' : 'off', ''];
  };
  const shown =
    members.length <= LAID_OUT
      ? Array.from({ length: states }, (_, state) => state)
      : [0, ...members.map((_, at) => 1 << at)];
  return [
    {
      kind: 'table',
      columns: [...members.map(([id]) => ({ head: id })), { head: 'load' }, { head: 'tried, seen' }],
      rows: shown.map(row),
      rowHeight: 6.5,
    },
    smallPrint(
      `"Tripped" stands for a broken wire and a dead supply as well. ${members.length > LAID_OUT ? `All well, and each member alone; of all ${states} states ` : `Of ${states} states `}${on === 1 ? 'one leaves the load on: all are well.' : `${on} leave the load on, where one should.`}`,
    ),
    ...(on === 1
      ? []
      : [
          list(
            members
              .filter(([, { contact }]) => contact === 'closes')
              .map(
                ([id]) => `${id} closes when it trips: a broken wire there goes unnoticed. Take a contact that opens.`,
              ),
          ),
        ]),
  ];
}
