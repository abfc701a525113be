// The wiring sheet: single-line diagram, sockets, wires, cut-off chain. It adds up and warns; it is no permit to work on the mains.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { type Block, heading, list, paragraph } from '../frame/block.ts';
import { drawingArea } from '../frame/page.ts';
import type { Paper, PaperContent } from '../paper.ts';
import { chainDiagram } from './chain-diagram.ts';
import { diagram } from './diagram.ts';
import { socketPlan, type Told, truthTable, wireTable } from './tables.ts';
import { inNoStrip } from './tree.ts';

export const wiring: Paper = {
  id: 'wiring',
  title: 'Wiring',
  what: 'What is plugged in where, every wire of the low-voltage side with its fuse, and what cuts the power: to be checked by a qualified person.',
  cautions: [
    'Mains kills. Everything on the mains side is done or checked by a qualified person, and the local code decides.',
    'These are sums from a file, not an inspection. Unplug before you open anything; a capacitor stays charged for minutes.',
    'Low voltage burns too: 24 V with a bad contact heats it by tens of watts. A fuse at each supply, ferrules under screws, no solder there.',
    'Mains and low voltage lie apart, or all insulation is rated for the mains (IEC 60364-5-52, from memory).',
  ],
  judged: true,
  make({ source: { cabinet }, judgement, units, format }): PaperContent {
    const told: Told = { cabinet, findings: judgement?.findings ?? [], units };
    const area = drawingArea(format);
    return {
      parts: [
        {
          kind: 'written',
          blocks: [...socketPlan(told), ...wireTable(told), ...chainBlocks(told, area.width), ...checked()],
        },
        ...diagram(cabinet, area),
      ],
      missing: unique(
        told.findings.flatMap(({ trade, quantity, missing }) =>
          missing !== undefined && (trade === 'power' || (trade === 'fire' && quantity.startsWith('chain')))
            ? [missing]
            : [],
        ),
      ),
      rests: ['power'],
      assumes: looseWords(cabinet),
    };
  },
};

function looseWords(cabinet: Cabinet): readonly string[] {
  const loose = inNoStrip(cabinet);
  return loose.length === 0
    ? []
    : [
        `${loose.join(', ')}: in no strip and behind no supply of the file, so drawn as if each had a socket of the circuit of its own; say which with feeds: of power.strips or power.supplies`,
      ];
}

const unique = (words: readonly string[]): readonly string[] => [...new Set(words)];

function chainBlocks({ cabinet }: Told, width: number): Block[] {
  const { chain, latch } = cabinet.protection;
  if (chain === undefined)
    return [heading('Cut-off chain'), paragraph('The file does not say what cuts the power: give protection.chain.')];
  if (Object.keys(chain).length === 0)
    return [
      heading('Cut-off chain'),
      paragraph('The file says that nothing cuts the power: a heater that fails closed heats on.'),
    ];
  const { marks, height } = chainDiagram(chain, latch, width);
  return [
    heading('Cut-off chain'),
    {
      kind: 'picture',
      width,
      height,
      says: `In series with the coil of contactor K1: ${Object.keys(chain).join(', ')}`,
      marks,
    },
    list([
      'K1 feeds machines, heaters and fans. Camera, alarm and logger stay on, from a small supply of their own with its own fuse.',
      'Any broken wire, dead supply or tripped member drops the load; a program may open the chain and never holds it closed alone (IEC 60204-1, ISO 13849: the idea, from memory).',
      latch === true
        ? 'K1 holds itself and is started by hand: nothing starts by itself when the power comes back.'
        : latch === false
          ? 'The file says that the chain does not hold itself: machines start by themselves when the power comes back.'
          : 'Whether K1 holds itself is not said: give protection.latch.',
      'Contactor of at least 1.5 times the load in class AC-1 (common practice, no source), and a mirror contact that shows a welded one.',
    ]),
    heading('States of the chain, to be tried one by one'),
    ...truthTable(chain),
    ...Object.entries(chain).flatMap(([id, { what, bay, opensAt }]) =>
      bay === undefined || opensAt === undefined
        ? []
        : [
            paragraph(
              `${id}: ${what} in ${bay}, opens at ${Math.round(opensAt - 273.15)} °C; clamped where the fault would be, not soldered short.`,
            ),
          ],
    ),
  ];
}

function checked(): Block[] {
  return [
    heading('Checked by a qualified person'),
    list(
      [
        'protective earth reaches every metal part that mains could touch',
        'sections, fuses and breakers suit what is plugged in, by the local code',
        'each member of the chain was tripped, and the load dropped each time',
        'name, date, signature: ______________________________________________',
      ],
      'box',
    ),
  ];
}
