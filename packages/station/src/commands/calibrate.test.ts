import { makePaper, papers, readCabinet } from '@stillair/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { textWidth } from '../text.ts';
import { type CalibrateOptions, calibrate } from './calibrate.ts';
import { drift } from './drift.ts';

/** Figures invented. */
const one = `# mine
stillair: 1
title: One machine
room: { temperature: 20 °C, held: yes }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { left: { kind: moving bed 220, bay: only } }
air: { intake: { from: room, to: only, hole: 60 mm round }, out: { from: only, to: room, hole: 60 mm round } }
sensors: { top: { bay: only, height: 700 mm } }
days: { usual: { jobs: { part: { material: ABS, start: 8:00, for: 3 h } } } }
`;
/** A bay hotter than the file says while it prints; one cell is broken. */
const log = `time;Temp 1 (°C)\n${Array.from({ length: 30 }, (_, at) => {
  const minutes = 7 * 60 + 10 * at;
  const heat = minutes < 480 ? 0 : 21 * (1 - Math.exp(-(minutes - 480) / 50));
  const value = at === 4 ? '-' : (21 + heat + 0.1 * ((at * 7) % 5)).toFixed(1).replace('.', ',');
  return `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')};${value}`;
}).join('\n')}\n`;

const usual: CalibrateOptions = { units: 'metric', workers: 1 };
const files = { 'one.yaml': one, 'log.csv': log };

async function run(
  logFile: string | undefined,
  options: Partial<CalibrateOptions>,
  outside: Parameters<typeof fakeIo>[0] = {},
) {
  const io = fakeIo({ files, ...outside });
  return { code: await calibrate('one.yaml', logFile, { ...usual, ...options }, io), io, ...io.printed };
}

describe('stillair calibrate', () => {
  let told: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    told = await run('log.csv', {
      column: ['Temp 1=top'],
      fit: ['bed-loss', 'heat.left'],
      write: true,
      svg: 'out.svg',
    });
  }, 60_000);

  it('tells what was wrong with the log, each unknown with its interval, what is off before and after', () => {
    const text = told.out.replaceAll(/\s+/g, ' ');
    expect(text).toContain('Of the log: - Temp 1: "-" is no number (line 6); left out.');
    expect(text).toMatch(/heat lost by hot beds 1 \d/);
    expect(text).toMatch(/Measured less computed .* sensor top 29 [\d.]+ K [\d.]+ K [\d.]+ K/);
    expect(text).toContain('only bounds are taken from it');
    expect(told.err).toBe('');
    expect(told.out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b|NaN|undefined/i);
  });

  it('puts the values into the file and leaves the rest of it as it was; draws what it found', () => {
    const written = told.io.written.get('one.yaml')!;
    expect(written.startsWith(one)).toBe(true);
    expect(written).toMatch(/factors\.bed-loss: [\d.]+ \([\d.]+ to [\d.]+\)/);
    expect(written).toContain('calibration:');
    expect(told.io.written.get('out.svg')).toMatch(/^<svg [\s\S]*class="dot"[\s\S]*<\/svg>\n$/);
  });

  it('fits a terminal of 60 columns', async () => {
    const { out } = await run(undefined, { readings: ['10:30 top 39 °C'], fit: ['bed-loss'] }, { columns: 60 });
    expect(out.split('\n').filter((line) => textWidth(line) > 60)).toEqual([]);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('Read next: ');
  }, 60_000);

  it('reads the empty log of the commissioning paper, once there are rows in it', async () => {
    const answer = readCabinet('one.yaml', one);
    if (!answer.ok) throw new Error(answer.complaints[0]!.what);
    const source = { file: 'one.yaml', text: one, cabinet: answer.cabinet, origins: answer.origins };
    const paper = papers.find(({ id }) => id === 'commissioning')!;
    const { files: beside } = await makePaper(paper, {
      source,
      version: '0',
      units: 'metric',
      angle: 'first',
      format: 'a4',
    });
    const empty = String(beside.find(({ name }) => name === 'log-template.csv')!.content);
    const rows = Array.from({ length: 60 }, (_, at) => {
      const warmer = 15 * (1 - Math.exp(-(5 * at) / 50));
      const clock = `${String(8 + Math.floor(at / 12)).padStart(2, '0')}:${String((5 * at) % 60).padStart(2, '0')}`;
      return `2026-11-28 ${clock}:00,${(20 + warmer + 0.1 * ((7 * at) % 3)).toFixed(1)},20.0,${110 + ((3 * at) % 7)}`;
    });
    const { out, err, code } = await run(
      'filled.csv',
      { fit: ['bed-loss'] },
      {
        files: { ...files, 'filled.csv': `${empty}${rows.join('\n')}\n` },
      },
    );
    expect(err).toBe('');
    // 3: what these invented rows leave at a bound. A log that is not read ends with 2.
    expect([0, 3]).toContain(code);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(/sensor top 60 /);
    expect(out).not.toContain('left out');
  }, 60_000);

  it('prints one JSON object, and nothing else, with --json', async () => {
    const { out, err, code } = await run(undefined, { readings: ['10:30 top 39 °C'], fit: ['bed-loss'], json: true });
    const study = JSON.parse(out) as {
      version: number;
      unknowns: { id: string; low: number; value: number; high: number }[];
    };
    expect(study.version).toBe(1);
    const [unknown] = study.unknowns;
    expect(unknown!.id).toBe('bed-loss');
    expect(unknown!.low).toBeLessThan(unknown!.value);
    expect(unknown!.high).toBeGreaterThan(unknown!.value);
    expect([err, code]).toEqual(['', 0]);
  }, 60_000);

  it.each([
    [undefined, {}, 'neither a log nor a reading'],
    ['other.csv', {}, 'cannot read other.csv'],
    ['log.csv', { day: 'usal' }, 'did you mean usual?'],
    ['log.csv', { fit: ['leekage'] }, 'did you mean leakage?'],
    ['log.csv', { column: ['Temp 1'] }, 'has no "="'],
    ['log.csv', {}, 'could be placed'],
    ['log.csv', { shift: 'soon' }, 'is no time'],
    [undefined, { readings: ['top 41'] }, 'cannot be read'],
  ] as const)('refuses %s with %j', async (logFile, options, words) => {
    const { err, out, code } = await run(logFile, options);
    expect(err).toContain('stillair calibrate: ');
    expect(err).toContain(words);
    expect([out, code]).toEqual(['', 2]);
  });
});

describe('stillair drift', () => {
  it('tells a drift with what would explain it, and draws it', async () => {
    const io = fakeIo({ files });
    const code = await drift('one.yaml', 'log.csv', { ...usual, column: ['Temp 1=top'], settled: '1 h', svg: '-' }, io);
    const text = io.printed.out.replaceAll(/\s+/g, ' ');
    expect(text).toContain('which no log has put right');
    expect(text).toContain('Drifted since about day 1, ');
    expect(text).toContain('What would explain it');
    expect(io.printed.out).toContain('class="onset"');
    expect(code).toBe(3);
  }, 60_000);

  it.each([
    [24, 3, /Too short to tell/],
    [96, 0, /No drift\. A log of this length raises an alarm without a cause with a chance of \d+ %\./],
  ])(
    'says that there is none, and how often it would be mistaken: %d quarters of an hour',
    async (count, code, says) => {
      const rows = Array.from(
        { length: count },
        (_, at) =>
          `${Math.floor(at / 4)}:${String(15 * (at % 4)).padStart(2, '0')},${(20 + 0.1 * ((at * 7) % 5)).toFixed(1)}`,
      );
      const idle = one.replace(/^days: .*$/m, 'days: { usual: {} }');
      const io = fakeIo({ files: { 'idle.yaml': idle, 'log.csv': `time,top (°C)\n${rows.join('\n')}` } });
      expect(await drift('idle.yaml', 'log.csv', usual, io)).toBe(code);
      expect(io.printed.out.replaceAll(/\s+/g, ' ')).toMatch(says);
    },
    60_000,
  );

  it('refuses a day and a time that are none', async () => {
    const io = fakeIo({ files });
    expect(await drift('one.yaml', 'log.csv', { ...usual, day: 'usal' }, io)).toBe(2);
    expect(await drift('one.yaml', 'log.csv', { ...usual, settled: 'long' }, io)).toBe(2);
    expect(io.printed.err).toMatch(/did you mean usual\?[\s\S]*--settled/);
  });
});
