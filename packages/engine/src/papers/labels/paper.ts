// Labels to cut out: for each door, each socket, each wire. Nothing on them but what whoever stands before them must know.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Finding } from '../../judge/finding.ts';
import { machinesIn } from '../../trades/plant.ts';
import { socketsFor } from '../../trades/power/strips.ts';
import { formatDuration } from '../../units/format.ts';
import { box, type Mark, text } from '../frame/mark.ts';
import { type Area, drawingArea } from '../frame/page.ts';
import { brokenLines } from '../frame/text-width.ts';
import type { Paper, Part } from '../paper.ts';
import { sectionText } from '../wiring/tree.ts';

interface Label {
  readonly title: string;
  readonly lines: readonly string[];
}

interface Sheet {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly size: number;
  readonly labels: readonly Label[];
}

/** Between labels, for the scissors, mm. */
const GAP = 3;

export const labels: Paper = {
  id: 'labels',
  title: 'Labels',
  what: 'To cut out: a label for each door, each socket and each wire.',
  cautions: [
    'A label tells what the file said when it was printed: print it again when a machine, a plug or a filter changes.',
    'Labels at sockets do not replace the marks that a code asks for.',
  ],
  judged: true,
  make({ source: { cabinet }, judgement, format }) {
    const area = drawingArea(format);
    const sheets: Sheet[] = [
      {
        title: 'labels of doors',
        width: 83,
        height: 52,
        size: 3,
        labels: doorLabels(cabinet, judgement?.findings ?? []),
      },
      { title: 'labels of sockets', width: 54, height: 20, size: 3.2, labels: socketLabels(cabinet) },
      { title: 'labels of wires', width: 54, height: 15, size: 2.6, labels: wireLabels(cabinet) },
    ];
    return { parts: sheets.flatMap((sheet) => labelParts(sheet, area)), rests: [] };
  },
};

function doorLabels(
  { doors, machines, bays, days, protection, cameras }: Cabinet,
  findings: readonly Finding[],
): Label[] {
  return Object.entries(doors).map(([id, { bays: opened }]) => {
    const standing = opened
      .filter((bay) => bays[bay] !== undefined)
      .flatMap((bay) => machinesIn({ machines } as Cabinet, bay));
    const materials = new Set(
      Object.values(days).flatMap(({ jobs }) =>
        Object.values(jobs).flatMap(({ machine, material }) => (standing.includes(machine) ? [material] : [])),
      ),
    );
    const waits = findings.flatMap(({ trade, quantity, part, value, p90 }) =>
      trade === 'air-quality' && quantity === 'purge-time' && opened.includes(part) ? (p90 ?? value ?? []) : [],
    );
    const stops = Object.entries(protection.chain ?? {})
      .filter(([, { what }]) => what === 'stop button')
      .map(([name]) => name);
    const seen = Object.entries(cameras)
      .filter(([, { looksAt }]) => standing.includes(looksAt))
      .map(([name]) => name);
    return {
      title: id,
      lines: [
        `${opened.join(', ')}${standing.length === 0 ? '' : `: ${standing.join(', ')}`}`,
        ...(materials.size === 0 ? [] : [`prints ${[...materials].join(', ')}`]),
        ...(waits.length === 0
          ? []
          : [`after a print wait ${formatDuration(Math.ceil(Math.max(...waits) / 300) * 300)} before you open`]),
        'hot inside: bed and nozzle burn the skin',
        stops.length === 0 ? 'stop: pull the plug' : `stop: ${stops.join(', ')}`,
        'if it smokes: cut the power, keep the door shut, leave, call for help',
        ...(seen.length === 0 ? [] : [`watched by ${seen.join(', ')}`]),
      ],
    };
  });
}

function socketLabels(cabinet: Cabinet): Label[] {
  const { strips } = cabinet.power;
  return Object.entries(strips).flatMap(([id, strip]) => {
    let next = 1;
    const plugs = [
      ...strip.feeds.map((user) => ({ user, takes: socketsFor(cabinet, user) })),
      ...Object.keys(strips)
        .filter((other) => strips[other]!.from === id)
        .map((other) => ({ user: `strip ${other}`, takes: 1 })),
    ];
    return plugs.map(({ user, takes }): Label => {
      const at = next;
      next += takes;
      return { title: user, lines: [`${id}, socket ${at}${takes > 1 ? ` (covers ${at + 1})` : ''}`] };
    });
  });
}

function wireLabels({ power }: Cabinet): Label[] {
  return Object.entries(power.wires).flatMap(([id, wire]) => {
    const label: Label = {
      title: id,
      lines: [
        `${wire.supply} to ${wire.feeds.join(', ')}: ${sectionText(wire)}${wire.fuse === undefined ? '' : `, fuse ${wire.fuse} A`}`,
      ],
    };
    // One at each end.
    return [label, label];
  });
}

function labelParts({ title, width, height, size, labels: all }: Sheet, area: Area): Part[] {
  const across = Math.max(1, Math.floor((area.width + GAP) / (width + GAP)));
  const down = Math.max(1, Math.floor((area.height + GAP) / (height + GAP)));
  const each = across * down;
  return Array.from({ length: Math.ceil(all.length / each) }, (_, sheet): Part => {
    const shown = all.slice(sheet * each, (sheet + 1) * each);
    return {
      kind: 'drawn',
      title,
      says: shown.map(({ title: name, lines }) => `${name}: ${lines.join('; ')}`).join('. '),
      marks: shown.flatMap((label, at) =>
        labelMarks(
          label,
          area.x + (at % across) * (width + GAP),
          area.y + Math.floor(at / across) * (height + GAP),
          width,
          height,
          size,
        ),
      ),
    };
  });
}

function labelMarks(
  { title, lines }: Label,
  x: number,
  y: number,
  width: number,
  height: number,
  size: number,
): Mark[] {
  const big = size * 1.5;
  const [first = ''] = brokenLines(title, width - 6, big, true);
  const room = Math.floor((height - 4 - big * 1.4) / (size * 1.3));
  const body = lines.flatMap((words) => brokenLines(words, width - 6, size)).slice(0, room);
  return [
    box(x, y, width, height, 'outline'),
    text([x + 3, y + 2 + big], first, big, { bold: true }),
    ...body.map((words, at): Mark => text([x + 3, y + 3 + big * 1.4 + size * (0.9 + 1.3 * at)], words, size)),
  ];
}
