import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { Finding } from '../judge/finding.ts';
import { type Judgement, judge, type ReadSource } from '../judge/judge.ts';
import { placeText } from '../logs/places.ts';
import { readLog } from '../logs/read-log.ts';
import { printingAWeek } from './care/printing-a-week.ts';
import { logTemplate } from './commissioning/log-template.ts';
import { marksOf, type Page } from './frame/page.ts';
import { textWidth } from './frame/text-width.ts';
import type { PaperInput } from './paper.ts';
import { type MadePaper, makePaper, papers } from './papers.ts';
import { nextSteps } from './weekend/next-steps.ts';
import { truthTable } from './wiring/tables.ts';

const OURS = [
  'this-weekend',
  'buying-list',
  'printed-parts',
  'wiring',
  'settings',
  'commissioning',
  'care',
  'labels',
  'report',
];

function sourceOf(file: string, text: string): ReadSource {
  const answer = readCabinet(file, text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file, text, cabinet: answer.cabinet, origins: answer.origins };
}

const shed = readFileSync(join(import.meta.dirname, '../../../../examples/winter-shed.yaml'), 'utf8');
const cases = [
  ['winter-shed.yaml', shed],
  ['many.yaml', manyMachines(12)],
] as const;

interface Made {
  readonly source: ReadSource;
  readonly judgement: Judgement;
  readonly made: readonly MadePaper[];
}

async function make(file: string, text: string): Promise<Made> {
  const source = sourceOf(file, text);
  const judgement = await judge(source, { samples: 0, remedies: false });
  const input: PaperInput = { source, judgement, version: '0', units: 'metric', angle: 'first', format: 'a4' };
  // Alternatives run every day again: the shed alone shows them.
  const asked = papers.filter(({ id }) => OURS.includes(id) && (id !== 'buying-list' || file !== 'many.yaml'));
  return { source, judgement, made: await Promise.all(asked.map((paper) => makePaper(paper, input))) };
}

const all = new Map<string, Made>();
beforeAll(async () => {
  for (const [file, text] of cases) all.set(file, await make(file, text));
}, 60_000);

const wordsOn = (page: Page): string =>
  marksOf(page)
    .flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []))
    .join(' ');

describe.each(cases.map(([file]) => file))('sheets of %s', (file) => {
  it('property: every sheet carries file, version and a caution, and promises nothing', () => {
    for (const { id, pages } of all.get(file)!.made) {
      const paper = papers.find((one) => one.id === id)!;
      for (const page of pages) {
        const words = wordsOn(page);
        for (const said of [file, 'stillair 0', paper.cautions[0].slice(0, 25)]) expect(words, id).toContain(said);
        expect(words, id).not.toMatch(/\bsafe\b/i);
      }
    }
  });

  it('property: nothing leaves its sheet', () => {
    const outside = all.get(file)!.made.flatMap(({ id, pages }) =>
      pages.flatMap((page) =>
        marksOf(page)
          .filter((mark) => {
            const places = mark.kind === 'line' ? mark.points : [mark.at];
            const long = mark.kind === 'text' && mark.align === undefined ? textWidth(mark.text, mark.size) : 0;
            return places.some(([x, y]) => x <= 0 || x + long >= page.width - 4 || y <= 0 || y >= page.height);
          })
          .map((mark) => `${id}: ${JSON.stringify(mark)}`),
      ),
    );
    expect(outside).toEqual([]);
  });

  it('property: machines, wires and members of the chain all stand on the wiring sheets', () => {
    const { source, made } = all.get(file)!;
    const words = made
      .find(({ id }) => id === 'wiring')!
      .pages.map(wordsOn)
      .join(' ');
    const { machines, power, protection } = source.cabinet;
    for (const id of [...Object.keys(machines), ...Object.keys(power.wires), ...Object.keys(protection.chain ?? {})])
      expect(words).toContain(id);
  });
});

describe('report as one file', () => {
  it('exact: text of the file stays text, and nothing is fetched or run', () => {
    const { made } = all.get('many.yaml')!;
    const html = String(
      made.find(({ id }) => id === 'report')!.files.find(({ name }) => name === 'report.html')!.content,
    );
    expect(html).toContain('A long title with &lt;b&gt;signs&lt;/b&gt; &amp; &quot;quotes&quot;');
    expect(html).not.toMatch(/<script|<img|<link|https?:|<b>signs/);
  });

  it('property: it holds every finding with its limit’s source', () => {
    const { made, judgement } = all.get('winter-shed.yaml')!;
    const html = String(made.find(({ id }) => id === 'report')!.files[0]!.content);
    expect(html.split('<details>').length - 1).toBe(judgement.findings.length);
  });
});

describe('truth table of the cut-off chain', () => {
  const rowsOf = (contacts: Record<string, 'opens' | 'closes'>): readonly (readonly string[])[] => {
    const chain = Object.fromEntries(
      Object.entries(contacts).map(([id, contact]) => [id, { what: 'stop button', contact, through: 'wire' } as const]),
    );
    const table = truthTable(chain).find(({ kind }) => kind === 'table')!;
    return table.kind === 'table' ? table.rows : [];
  };

  it('exact: with contacts that open, only all well leaves the load on, in 2^n states', () => {
    const rows = rowsOf({ a: 'opens', b: 'opens', c: 'opens' });
    expect(rows).toHaveLength(8);
    expect(rows.filter((row) => row[3] === 'stays on')).toEqual([['well', 'well', 'well', 'stays on', '']]);
  });

  it('exact: a contact that closes leaves it on when its wire is broken', () => {
    const on = rowsOf({ a: 'opens', b: 'closes' }).filter((row) => row[2] === 'stays on');
    expect(on.map(([, b]) => b)).toEqual(['well', 'TRIPPED']);
  });
});

describe('lists', () => {
  it('exact: the empty log has a column for each sensor, its unit beside it', () => {
    const { cabinet } = sourceOf('many.yaml', manyMachines(2));
    expect(logTemplate(cabinet).split('\n')[1]).toBe('time,s-m1 [°C],s-m2 [°C],room [°C],m1 [W],m2 [W]');
  });

  it.each(['tool-library', 'school-locker', 'winter-shed', 'many'])(
    'exact: the empty log of %s, with rows written into it, is read without a remark and each column at its place',
    (name) => {
      const file = join(import.meta.dirname, `../../../../examples/${name}.yaml`);
      const { cabinet } = sourceOf(name, name === 'many' ? manyMachines(12) : readFileSync(file, 'utf8'));
      const empty = logTemplate(cabinet);
      const columns = empty.trimEnd().split('\n').at(-1)!.split(',').slice(1);
      const rows = Array.from({ length: 30 }, (_, minute) => [
        `2026-11-28 14:${String(minute).padStart(2, '0')}:00`,
        ...columns.map((column, at) => (20 + at + minute * 0.1 + (column.endsWith('[W]') ? 80 : 0)).toFixed(1)),
      ]);
      const log = readLog('log.csv', `${empty}${rows.map((row) => row.join(',')).join('\n')}\n`, cabinet);
      if ('fault' in log) throw new Error(log.fault);
      expect(log.remarks).toEqual([]);
      const { sensors, bays, machines } = cabinet;
      expect(log.columns.map(({ place }) => placeText(place))).toEqual([
        ...Object.keys(sensors).map((id) => placeText({ what: 'sensor', id })),
        ...(Object.keys(sensors).length > 0 ? [] : Object.keys(bays)).map((id) => placeText({ what: 'bay', id })),
        placeText({ what: 'room', id: '' }),
        ...Object.keys(machines).map((id) => placeText({ what: 'machine', id })),
      ]);
      for (const { kind, readings, name: head } of log.columns) {
        expect(readings).toHaveLength(30);
        const at = columns.findIndex((column) => column.startsWith(`${head} [`));
        const first = 20 + at + (kind === 'power' ? 80 : 0);
        expect(readings[0]!.value).toBeCloseTo(kind === 'power' ? first : first + 273.15, 9);
      }
    },
  );

  it('exact: what is printed in a week counts jobs that overlap once', () => {
    const job = (start: number, duration: number, machine: string) => ({ start, duration, machine }) as never;
    const days = { usual: { jobs: { a: job(0, 7200, 'one'), b: job(3600, 7200, 'two') } } } as never;
    const costs = { times: { usual: 52.18 } } as never;
    expect(printingAWeek({ days, costs })).toBeCloseTo(10_800, 9);
    expect(printingAWeek({ days, costs }, 'one')).toBeCloseTo(7200, 9);
  });

  it('property: the next steps take what mends most, and fire before comfort', () => {
    const source = sourceOf('winter-shed.yaml', shed);
    const tried = (says: string, verdict: 'holds' | 'fails') =>
      ({
        says,
        edits: [{ set: { 'cabinet.wall-strap': 'yes', _note: says } }],
        verdict,
        worsens: [],
        mends: [],
      }) as never;
    const finding = (trade: string, part: string, ...trials: never[]): Finding =>
      ({ trade, part, title: part, verdict: 'fails', weight: 0.5, tried: trials }) as unknown as Finding;
    const findings = [
      finding('sound', 'one', tried('quieter fan', 'holds'), tried('no help', 'fails')),
      finding('sound', 'two', tried('quieter fan', 'holds')),
      finding('fire', 'three', tried('a link', 'holds')),
    ];
    expect(nextSteps(source, findings).map(({ says, mends }) => [says, mends.length])).toEqual([
      ['a link', 1],
      ['quieter fan', 2],
    ]);
  });
});

/** A cabinet with many machines, for what must hold of every sheet however much stands on it. Invented. */
function manyMachines(count: number): string {
  const places = Array.from({ length: count }, (_, at) => ({
    id: `m${at + 1}`,
    bay: `b${at + 1}`,
    column: at % 4,
    row: Math.floor(at / 4),
  }));
  const mm = (from: number, to: number): string => `${from} mm to ${to} mm`;
  const lines = (of: (place: (typeof places)[number]) => string): string =>
    places.map((place) => `  ${of(place)}`).join('\n');
  const columns = Math.min(count, 4);
  const rows = Math.ceil(count / 4);
  return `stillair: 1
title: A long title with <b>signs</b> & "quotes" that must go on every sheet without leaving its field
room: { size: 9 m x 7 m x 3 m, temperature: 21 °C }
people: { desk: { at: [1 m, -2 m, 1.2 m] } }
cabinet: { inside: ${columns * 465 - 15} mm x 460 mm x ${rows * 470 - 10} mm, made-of: plywood 18 mm, door: polycarbonate 4 mm }
bays:
${lines(({ bay, column, row }) => `${bay}: { x: ${mm(column * 465, column * 465 + 450)}, z: ${mm(row * 470, row * 470 + 460)} }`)}
machines:
${lines(({ id, bay }) => `${id}: { kind: fixed bed 120, bay: ${bay} }`)}
air:
${lines(({ id, bay }) => `in-${id}: { from: room, to: ${bay}, hole: 60 mm round }`)}
${lines(({ id, bay }) => `out-${id}: { from: ${bay}, to: room, parts: [{ filter: pleated H13 120 mm }, { fan: axial 60 mm strong, control: { job: [${id}], run-on: 20 min } }, { duct: smooth 80 mm, length: 1 m }] }`)}
sensors:
${lines(({ id, bay }) => `s-${id}: { bay: ${bay}, height: 400 mm }`)}
power:
  strips:
    left: { sockets: 8, rating: 16 A, feeds: [${places
      .filter((_, at) => at % 2 === 0)
      .map(({ id }) => id)
      .join(', ')}] }
    right: { sockets: 8, rating: 16 A, feeds: [${['fans', ...places.filter((_, at) => at % 2 === 1).map(({ id }) => id)].join(', ')}] }
  supplies: { fans: { voltage: 24 V, power: 60 W, where: outside, feeds: [${places.map(({ id }) => `out-${id}`).join(', ')}] } }
  wires:
${lines(({ id }) => `  w-${id}: { feeds: [out-${id}], section: 0.5 mm2, length: 2 m, where: outside, fuse: 1 A }`)}
protection:
  chain: { knob: { what: stop button, contact: opens }, link: { what: thermal link, bay: b1, opens-at: 77 °C }, relay: { what: smoke relay, contact: closes } }
  latch: yes
days:
  usual:
    jobs:
${lines(({ id }) => `    job-${id}: { machine: ${id}, material: PLA, start: 9:00, for: 3 h }`)}
`;
}
