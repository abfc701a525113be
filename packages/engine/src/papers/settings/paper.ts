// The settings sheet: every thermostat, timer and control, what it is set to and why, and what to see when it works.

import type { Cabinet, Control } from '../../cabinet/cabinet.ts';
import type { Finding } from '../../judge/finding.ts';
import { formatDuration, formatQuantity, type UnitSystem } from '../../units/format.ts';
import { type Block, heading, list, paragraph } from '../frame/block.ts';
import { bandWords, valueWords } from '../number-words.ts';
import type { Paper } from '../paper.ts';
import { controlWords } from './control-words.ts';

export const settings: Paper = {
  id: 'settings',
  title: 'Settings',
  what: 'Every thermostat, timer and control: what it is set to, why, and what to see when it works.',
  cautions: [
    'A setting is no protection: what must never get too hot has a device of its own that works with every processor dead.',
    'Change one setting at a time, write it down, and look again after the next hot day.',
  ],
  judged: true,
  make({ source: { cabinet }, judgement, units }) {
    const findings = judgement?.findings ?? [];
    const controls = controlled(cabinet);
    const blocks: Block[] = [
      heading('Fans, lamps, heaters'),
      ...(controls.length === 0
        ? [paragraph('Nothing in this file is switched.')]
        : [
            {
              kind: 'table',
              columns: [
                { head: 'what', share: 0.16 },
                { head: 'set to', share: 0.28 },
                { head: 'why', share: 0.2 },
                { head: 'works when you see', share: 0.24 },
                { head: 'set, seen', share: 0.12 },
              ],
              rows: controls.map(({ what, control, extra }) => {
                const { set, why, see } = controlWords(control, cabinet, units, what.startsWith('fan'));
                return [what, extra === '' ? set : `${set}; ${extra}`, why, see, ''];
              }),
            } as const satisfies Block,
          ]),
      ...others(cabinet, units),
      ...waits(findings, units),
    ];
    return { parts: [{ kind: 'written', blocks }], rests: ['sensors', 'power.stagger'] };
  },
};

interface Controlled {
  readonly what: string;
  readonly control: Control;
  readonly extra: string;
}

function controlled({ paths, heats }: Cabinet): Controlled[] {
  return [
    ...Object.entries(paths).flatMap(([id, { parts }]) =>
      parts.flatMap((part): Controlled[] =>
        part.part === 'fan'
          ? [
              {
                what: `fan of ${id} (${part.kind})`,
                control: part.control,
                extra: part.speed < 1 ? `speed at most ${Math.round(100 * part.speed)} %` : '',
              },
            ]
          : [],
      ),
    ),
    ...Object.entries(heats).map(([id, { what, control, holds }]) => ({
      what: `${what} ${id}`,
      control,
      extra: holds === undefined ? '' : `holds ${formatQuantity('temperature', holds)}`,
    })),
  ];
}

function others({ machines, power, protection }: Cabinet, units: UnitSystem): Block[] {
  const degrees = (kelvin: number): string => formatQuantity('temperature', kelvin, units);
  const told = [
    ...Object.entries(machines).flatMap(([id, { chamber }]) =>
      chamber === undefined || chamber.heater === 0
        ? []
        : [
            `chamber of ${id}: holds ${degrees(chamber.heaterSet)} with ${formatQuantity('power', chamber.heater, units)}; works when its own thermometer comes to that and stays, and an energy meter shows the heater come and go`,
          ],
    ),
    power.stagger > 0
      ? `machines heat one after another, ${formatDuration(power.stagger)} apart: start them so, or let the lock do it; works when an energy meter shows one rise after another, never two at once`
      : 'nothing keeps machines from heating together (power.stagger)',
    ...Object.entries(protection.chain ?? {}).flatMap(([id, { what, opensAt }]) =>
      opensAt === undefined
        ? []
        : [
            `${id} (${what}) opens at ${degrees(opensAt)}: read it off the part itself; it is never warmed to try it: a qualified person opens its wire, and the load must go off`,
          ],
    ),
  ];
  return [heading('Besides'), list(told, 'box')];
}

/** What a person has to wait for, which no control does for them. */
function waits(findings: readonly Finding[], units: UnitSystem): Block[] {
  const asked = findings.filter(
    ({ trade, quantity, value }) => trade === 'air-quality' && quantity === 'purge-time' && value !== undefined,
  );
  if (asked.length === 0) return [];
  const rows = asked.map((finding) => [
    finding.part,
    finding.day,
    valueWords(finding, units),
    bandWords(finding, units),
  ]);
  return [
    heading('How long to wait before the door is opened'),
    paragraph(`${asked[0]!.title}. A fan that runs on for less leaves the rest in the bay.`),
    {
      kind: 'table',
      columns: [{ head: 'after' }, { head: 'day' }, { head: 'wait' }, { head: '10 to 90 %' }],
      rows,
    },
  ];
}
