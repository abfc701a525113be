import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type JobAnswer, type JobRules, type JobSummary, usualRules } from './job.ts';
import { endJob, openJob, takeBytes } from './read-job.ts';

const encode = (text: string): Uint8Array => new TextEncoder().encode(text);

function readBytes(bytes: Uint8Array, rules: Partial<JobRules> = {}, piece = bytes.length + 1): JobAnswer {
  const job = openJob('test.gcode', { ...usualRules, ...rules });
  for (let at = 0; at < bytes.length; at += piece) takeBytes(job, bytes.slice(at, at + piece));
  return endJob(job);
}

function read(text: string, rules: Partial<JobRules> = {}): JobSummary {
  const answer = readBytes(encode(text.endsWith('\n') ? text : `${text}\n`), rules);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.job;
}

const estimate = (text: string, rules: Partial<JobRules> = {}): number => read(text, rules).duration.estimate;

/** mm, mm/s and mm/s² as people have them in mind. */
const A = 1500;

describe('how long it lasts', () => {
  it.each([
    [100, 0.76667],
    [15, 0.2],
    [2, 0.07303],
  ])('cross: %d mm at 150 mm/s and 1500 mm/s² from rest to rest: %d s', (way, seconds) => {
    expect(estimate(`G1 X${way} F9000`)).toBeCloseTo(seconds, 5);
  });

  it('cross: a thousand moves of 1 mm to and fro, 100 mm/s and 1000 mm/s²: 63.25 s, not 10 s', () => {
    const there = Array.from({ length: 1000 }, (_, at) => `G1 X${(at + 1) % 2}`).join('\n');
    const { duration } = read(`F6000\n${there}`, { acceleration: 1 });
    expect(duration.estimate).toBeCloseTo(63.25, 2);
    expect(duration.atSpeed).toBeCloseTo(10, 9);
    expect(duration.stopAndGo).toBeCloseTo(duration.estimate, 9);
  });

  it.each([1, 7, 1000, 5000])('exact: a straight line in %d pieces lasts as long as in one', (pieces) => {
    const lines = Array.from({ length: pieces }, (_, at) => `G1 X${((at + 1) * 500) / pieces}`).join('\n');
    expect(estimate(`F9000\n${lines}`)).toBeCloseTo(500 / 150 + 150 / A, 6);
  });

  it('exact: a square, each of its corners taken at the speed of a right angle', () => {
    const [v, side, deviation] = [100, 40, 0.02];
    const half = Math.SQRT1_2;
    const corner = Math.sqrt((A * deviation * half) / (1 - half));
    const end = (v - corner) / A + v / A + (side - (v * v - corner * corner) / (2 * A) - (v * v) / (2 * A)) / v;
    const middle = (2 * (v - corner)) / A + (side - (v * v - corner * corner) / A) / v;
    expect(estimate('F6000\nG1 X40\nG1 Y40\nG1 X0\nG1 Y0')).toBeCloseTo(2 * end + 2 * middle, 6);
  });

  it('exact: a whole circle by its middle, and by two halves of given radius', () => {
    const way = 2 * Math.PI * 30;
    const whole = way / 100 + 100 / A;
    expect(estimate('G0 X30 F6000\nG92 X0\nG4 S0\nG2 I-30')).toBeCloseTo(whole + 30 / 100 + 100 / A, 6);
    const halves = estimate('G92 X30 Y0\nF6000\nG3 X-30 Y0 R30\nG3 X30 Y0 R30');
    expect(halves).toBeCloseTo(whole, 6);
  });

  it('exact: a small circle is no faster than its pull inwards allows', () => {
    const top = Math.sqrt(A * 2);
    expect(estimate('F6000\nG2 I2')).toBeCloseTo((2 * Math.PI * 2) / top + top / A, 6);
  });

  it('limit: a circle of many straight pieces tends to the arc', () => {
    const pieces = 2000;
    const lines = Array.from({ length: pieces }, (_, at) => {
      const angle = (2 * Math.PI * (at + 1)) / pieces;
      return `G1 X${(30 * Math.cos(angle) - 30).toFixed(9)} Y${(30 * Math.sin(angle)).toFixed(9)}`;
    });
    expect(estimate(`F3000\n${lines.join('\n')}`)).toBeCloseTo(estimate('F3000\nG3 I-30'), 2);
  });

  it('exact: dwells in milliseconds or seconds, and those of S always in seconds', () => {
    expect(estimate('G1 X0.001 F6000\nG4 P2500\nG4 S3')).toBeCloseTo(5.5, 2);
    const { duration, notes } = read('G1 X0.001 F6000\nG4 P2.5', { dwell: 'seconds' });
    expect(duration.dwell).toBe(2.5);
    expect(notes).toEqual([
      'P of its dwells (1, 2.5 s in all) counts seconds, not milliseconds, as most printers have it',
    ]);
  });

  it('exact: the file sets the acceleration of what is printed and of the ways between', () => {
    const rest = (way: number, a: number) => 2 * Math.sqrt(way / a);
    const text = 'M204 P500 T4000\nM83\nG1 X2 E0.1 F60000\nG4 P0\nG1 X4';
    expect(estimate(text)).toBeCloseTo(rest(2, 500) + rest(2, 4000), 6);
    expect(estimate('M204 S1000\nG1 X2 F60000')).toBeCloseTo(rest(2, 1000), 6);
  });

  it('exact: filament alone takes its time, and stops what moves before it', () => {
    const { duration } = read('M83\nG1 X10 F6000\nG1 E-2 F2100\nG1 X20 F6000');
    expect(duration.filament).toBeCloseTo(2 / 35 + 35 / A, 6);
    expect(duration.travelling).toBeCloseTo(2 * (10 / 100 + 100 / A), 6);
  });
});

describe('what a line may look like', () => {
  const plain = 'G21\nG90\nM82\nG1 X10 Y20 Z0.3 F3000\nG1 X40 Y20 E1.5\nG1 X40 Y60 E3.5\n';
  it.each([
    ['in lower case', plain.toLowerCase()],
    ['with spaces and tabs in its words', plain.replaceAll('X', ' X\t').replaceAll('Y', 'Y ')],
    ['without any', plain.replaceAll(' ', '')],
    ['with comments', plain.replaceAll('\n', ' (level) ; and more (of it\n')],
    ['with carriage returns', plain.replaceAll('\n', '\r\n')],
    ['without repeating the code', plain.replaceAll('\nG1 X40', '\nX40')],
    ['several codes on a line', plain.replace('G21\nG90\nM82\n', 'G21 G90 M82 ')],
    ['in inches', inches(plain)],
    ['in steps', 'G91\nG1 X10 Y20 Z0.3 F3000\nG1 X30 E1.5\nG1 Y40 E2\n'],
    ['filament in steps', plain.replace('M82', 'M83').replace('E3.5', 'E2')],
    ['filament reset', plain.replace('G1 X40 Y60 E3.5', 'G92 E100\nG1 X40 Y60 E102')],
    ['between marks of a tape', `%\n${plain}%\n`],
    ['behind a byte order mark', `\uFEFF${plain}`],
    ['numbered and summed', numbered(plain)],
    ['with signs and points', plain.replaceAll('X10', 'X+10.').replaceAll('Z0.3', 'Z.3').replaceAll('E1.5', 'E01.50')],
  ])('exact: %s it means the same', (_, text) => {
    const [one, other] = [read(plain), read(text)];
    expect(other.duration.estimate).toBeCloseTo(one.duration.estimate, 9);
    expect(other.filament[0]!.length).toBeCloseTo(0.0035, 12);
    expect(other.extents.printed.x![1]).toBeCloseTo(0.04, 12);
    expect(other.extents.printed.y![1]).toBeCloseTo(0.06, 12);
    expect(other.unknown).toEqual([]);
  });

  it('exact: words that it does not know are counted, never fatal', () => {
    const { unknown, moves } = read(
      'M117 Layer 3 of 7*\nSTART_NOW BED=60 X=3\nM205 X8 Y8\nM205 X9\nG29\nG92.1\nT99\nG1 X1 F600\n@hold\n',
    );
    expect(moves).toBe(1);
    expect(unknown).toEqual([
      { word: 'M205', times: 2 },
      { word: 'M117', times: 1 },
      { word: 'START_NOW', times: 1 },
      { word: 'G29', times: 1 },
      { word: 'G92.1', times: 1 },
      { word: 'T99', times: 1 },
      { word: '@hold', times: 1 },
    ]);
  });

  it('exact: nothing behind the end of the job is read', () => {
    expect(read('G1 X10 F600\nM2\nG1 X500\n').extents.all.x).toEqual([0.01, 0.01]);
  });
});

describe('where it goes', () => {
  it('exact: arcs to their outermost points, printed or not', () => {
    const { extents } = read('G92 X10 Y0\nM83\nF3000\nG3 X-10 Y0 I-10 E2\nG2 X30 Y0 I20');
    expect(extents.printed.y![1]).toBeCloseTo(0.01, 9);
    expect(extents.all.y![1]).toBeCloseTo(0.02, 9);
  });

  it('exact: a position that is set moves the name, not the machine', () => {
    const { extents } = read('G1 X50 F3000\nG92 X0\nG1 X20\nG28 X\nG1 X5');
    expect(extents.all.x![0]).toBeCloseTo(0.005, 12);
    expect(extents.all.x![1]).toBeCloseTo(0.07, 12);
  });

  it('exact: way and turns of a bed that moves in depth, on arcs too', () => {
    expect(read('F3000\nG1 Y30\nG1 Y10\nG1 X5\nG1 Y40').depth).toMatchObject({ reversals: 2 });
    expect(read('F3000\nG1 Y30\nG1 Y10\nG1 X5\nG1 Y40').depth.way).toBeCloseTo(0.08, 12);
    const circle = read('F3000\nG2 I10').depth;
    expect(circle.way).toBeCloseTo(0.04, 12);
    expect(circle.reversals).toBe(2);
  });
});

describe('what it uses and sets', () => {
  it('exact: filament drawn back and fed again counts once; each tool for itself', () => {
    const { filament, waits } = read('M83\nF3000\nG1 X10 E5\nG1 E-3\nG1 E3\nG1 X20 E1\nT1\nG1 X30 E4\nG1 E-1');
    expect(filament.map(({ tool, length }) => [tool, Math.round(length * 1e6)])).toEqual([
      [0, 6000],
      [1, 4000],
    ]);
    expect(waits.toolChanges).toBe(1);
  });

  it('exact: set-points at the time of the move that they stand before; what is held longest', () => {
    const { setPoints, held } = read('M140 S60\nM109 S230\nF6000\nG1 X100\nM104 S215\nG1 X500\nM104 S0\nM140 S0');
    expect(setPoints.map(({ what, to }) => [what, to])).toEqual([
      ['bed', 333.15],
      ['nozzle', 503.15],
      ['nozzle', 488.15],
      ['nozzle', undefined],
      ['bed', undefined],
    ]);
    expect(setPoints[2]!.at).toBeCloseTo(100 / 100 + 50 / A, 6);
    expect(setPoints[3]!.at).toBeCloseTo(500 / 100 + 100 / A, 6);
    expect(held).toEqual({ nozzle: 488.15, bed: 333.15 });
  });

  it('exact: the part fan over time, another fan left out', () => {
    const { fan } = read('F6000\nM106 S255\nG1 X100\nG4 P0\nM107\nM106 P1 S255\nG1 X200');
    expect(fan.mean).toBeCloseTo(0.5, 9);
    expect(fan.most).toBe(1);
  });

  it('exact: counts its waits, and says what is left heated', () => {
    const { waits, notes } = read('G28\nM190 S60\nM109 S200\nM0\nG1 X1 F600');
    expect(waits).toEqual({ heat: 2, homing: 1, pauses: 1, toolChanges: 0 });
    expect(notes).toEqual(['left heated at its end: bed, nozzle 0; is the file whole?']);
  });

  it('exact: tells what it took for granted', () => {
    expect(read('G1 X10').notes).toEqual(['moves before any feed (F) are taken at 25 mm/s']);
    expect(estimate('G1 X100')).toBeCloseTo(4 + 25 / A, 6);
    const answer = readBytes(encode('G1 X10 F600\nG1 X20'));
    expect(answer.ok && answer.job.notes).toEqual([
      'its last line has no end: if more was meant to follow, the file has been cut off',
    ]);
  });

  it.each(['M84 X Y E', 'G28 X Y', 'PARK', 'M117 the end.', '; end.', 'G1 X3'])(
    'exact: a last line without end may be whole: %s',
    (last) => {
      expect(readBytes(encode(`G1 X10 F600\n${last}`)).ok).toBe(true);
    },
  );
});

/** Moves of a random job: where to, how fast, how much filament. */
const step = fc.record({
  x: fc.integer({ min: 0, max: 2000 }),
  y: fc.integer({ min: 0, max: 2000 }),
  feed: fc.constantFrom(600, 1800, 3000, 9000),
  push: fc.integer({ min: -50, max: 200 }),
});
const steps = fc.array(step, { minLength: 1, maxLength: 700 });
type Steps = { x: number; y: number; feed: number; push: number }[];
const written = (all: Steps): string =>
  `M83\n${all.map(({ x, y, feed, push }) => `G1 X${x / 20} Y${y / 20} E${push / 1000} F${feed}`).join('\n')}\n`;

describe('any job', () => {
  it('property: lasts no shorter than at speed throughout and no longer than with a stop after each move', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const { duration } = read(written(all));
        expect(duration.estimate).toBeGreaterThanOrEqual(duration.atSpeed * (1 - 1e-12));
        expect(duration.estimate).toBeLessThanOrEqual(duration.stopAndGo * (1 + 1e-12));
      }),
      { numRuns: 60 },
    );
  });

  it('property: goes backward in the same time', () => {
    fc.assert(
      fc.property(fc.array(step, { minLength: 2, maxLength: 700 }), (all) => {
        const at = (points: Steps) => points.map(({ x, y }) => `G1 X${x / 20} Y${y / 20} F3000`).join('\n');
        const begin = ({ x, y }: Steps[number]) => `G92 X${x / 20} Y${y / 20}\n`;
        const forward = estimate(begin(all[0]!) + at(all.slice(1)));
        const back = [...all].reverse();
        const backward = estimate(begin(back[0]!) + at(back.slice(1)));
        expect(backward).toBeCloseTo(forward, 6);
      }),
      { numRuns: 60 },
    );
  });

  it('property: four times as large at twice the speed, it lasts twice as long', () => {
    fc.assert(
      fc.property(steps, (all) => {
        const larger = all.map(({ x, y, feed, push }) => ({ x: 4 * x, y: 4 * y, feed: 2 * feed, push: 4 * push }));
        const one = estimate(written(all));
        const other = estimate(written(larger), { deviation: 4 * usualRules.deviation });
        expect(other / one).toBeCloseTo(2, 9);
      }),
      { numRuns: 40 },
    );
  });

  it('property: comes to the same in pieces of any length', () => {
    fc.assert(
      fc.property(steps, fc.integer({ min: 1, max: 300 }), (all, piece) => {
        const bytes = encode(written(all));
        expect(readBytes(bytes, {}, piece)).toEqual(readBytes(bytes));
      }),
      { numRuns: 40 },
    );
  });

  it('property: whatever the bytes, an answer and no number that is none', () => {
    const scrap = fc.oneof(
      fc.constantFrom(
        'G1',
        'G2',
        'G3',
        'X',
        'Y',
        'Z',
        'I',
        'J',
        'R',
        'E',
        'F',
        'G92',
        'G28',
        'M104',
        'M109',
        'G4',
        'T1',
      ),
      fc.constantFrom(
        '*',
        ';',
        '(',
        ')',
        '%',
        '-',
        '.',
        'N',
        'M2',
        'G20',
        'G91',
        'G18',
        'M204',
        'M106',
        ' ',
        '\n',
        '\r\n',
      ),
      fc.constantFrom('S', 'P', '0', '1', '-1', '999999999', '0.0000001', '1e5', 'é', '\u0000', '\u0007'),
    );
    fc.assert(
      fc.property(fc.array(scrap, { maxLength: 200 }), (scraps) => {
        const answer = readBytes(encode(scraps.join('')));
        if (answer.ok) expect(JSON.stringify(answer.job)).not.toMatch(/null/);
        else expect(answer.complaints.length).toBeGreaterThan(0);
      }),
      { numRuns: 3000 },
    );
  });
});

function inches(text: string): string {
  return text
    .replace('G21', 'G20')
    .replaceAll(
      /([XYZEF])([\d.]+)/g,
      (_, letter: string, number: string) => `${letter}${(Number(number) / 25.4).toFixed(15)}`,
    );
}

function numbered(text: string): string {
  const lines = text
    .trim()
    .split('\n')
    .map((line, at) => `N${at} ${line}`);
  return `${lines.map((line) => `${line}*${encode(line).reduce((sum, byte) => sum ^ byte, 0)}`).join('\n')}\n`;
}
