import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import type { DayRecord, Table } from '../day/record.ts';
import type { DayRun } from '../trades/measure.ts';
import { dayPicture } from './day-picture.ts';

describe('dayPicture', () => {
  const picture = dayPicture(madeUpDay());

  it('exact: every element that is opened is closed, in order', () => {
    expect(unclosed(picture)).toEqual([]);
  });

  it('exact: names its cabinet and day, its panels with units, its lines and the hours', () => {
    const texts = [...picture.matchAll(/<text[^>]*>([^<]*)<\/text>/g)].map(([, text]) => text);
    for (const text of [
      'Two &lt;boxes&gt; &amp; a door: Usual day',
      'Air in bay lower, °C',
      'Particles in the air, 1/cm³',
      'Power drawn by the machines, W',
      'high air',
      'low air',
      'room',
      'electronics limit',
      'ABS prints well',
      'bracket, ABS',
      'exhaust fan',
      'front door open',
      '12:00',
      '10⁴',
      '10³',
    ]) {
      expect(texts).toContain(text);
    }
  });

  it('exact: the day is also told in words, with its peaks', () => {
    const words = /<desc id="desc">(.*)<\/desc>/.exec(picture)?.[1] ?? '';
    expect(words).toContain('Over the day: left prints once, exhaust fan 2 times, front door open once.');
    expect(words).toContain('low air up to 42.8 at 15:00; high air up to 53.8 at 15:00;');
  });

  it('exact: draws what lies above the limit again in the accent, and nothing when it stays below', () => {
    expect(picture.match(/class="over"/g)).toHaveLength(1);
    expect(dayPicture(madeUpDay({ limit: 273.15 + 70 }))).not.toContain('class="over"');
  });

  it('exact: marks each opening of a door in the panels of air, and the guideline for particles by its own thin line', () => {
    expect(picture.match(/class="mark"/g)).toHaveLength(2);
    expect(picture.match(/>front door<\/text>/g)).toHaveLength(2);
    expect(picture).toContain('>WHO, 24 h mean</text>');
    expect(picture).toContain('>thin line: WHO 2021, good practice, for the mean of 24 h in the room</text>');
    const y = /y1="([\d.]+)"[^>]*class="level mean"/.exec(picture)?.[1];
    // The scale runs from 10³ to 10⁶: the guideline of 10⁴ lies a third of the way up, with its tick.
    expect(picture).toMatch(new RegExp(`y="${(Number(y) + 4).toFixed(2).replace(/\\.?0+$/, '')}"[^>]*>10⁴</text>`));
  });

  it('exact: a person’s own limit takes the place of the guideline', () => {
    const day = madeUpDay();
    const own = { ...day, cabinet: { ...day.cabinet, limits: { 'room-particles-24h': 5e9 } } };
    expect(dayPicture(own)).toContain('>own, 24 h mean</text>');
  });

  it('exact: ticks between decades are written as what they are', () => {
    const day = madeUpDay();
    const particles = day.record.concentrations['particles']!;
    const still = { ...particles, values: particles.values.map(() => 3e9) };
    const calm = dayPicture({ ...day, record: { ...day.record, concentrations: { particles: still } } });
    for (const tick of ['10³', '2·10³', '5·10³', '10⁴']) expect(calm.split(`>${tick}</text>`), tick).toHaveLength(2);
  });

  it('exact: writes degrees Fahrenheit when asked', () => {
    expect(dayPicture(madeUpDay(), { units: 'imperial' })).toContain('Air in bay lower, °F');
  });

  it('property: holds no number that is none, and the same day gives the same text', () => {
    expect(picture).not.toMatch(/NaN|Infinity|undefined/);
    expect(dayPicture(madeUpDay())).toBe(picture);
  });

  it('regression: looks as it was last agreed to look', async () => {
    await expect(picture).toMatchFileSnapshot('day-picture.snapshot.svg');
  });
});

/** Names of elements left open, or closed out of turn. */
function unclosed(svg: string): string[] {
  const open: string[] = [];
  for (const [, closing, name = '', rest = ''] of svg.matchAll(/<(\/?)([a-zA-Z]+)((?:"[^"]*"|[^">])*)>/g)) {
    if (closing === '') {
      if (!rest.endsWith('/')) open.push(name);
    } else if (open.pop() !== name) return [`</${name}>`];
  }
  return open;
}

const HOUR = 3600;

/** One bay, one machine, one job from 9 to 15 h; all figures invented. Only what the picture reads is filled in. */
function madeUpDay({ limit = 273.15 + 50 }: { limit?: number } = {}): DayRun {
  // Two rows of equal time at each jump, as in a record; the courses are asked a hair before it for the first of them.
  const jumps = [8.5, 9, 15, 18].map((hour) => hour * HOUR);
  const even = Array.from({ length: 97 }, (_, row) => row * 900);
  const asked = [...even, ...jumps.map((jump) => jump - 1e-6)].sort((a, b) => a - b);
  const times = Float64Array.from(asked.map(Math.round));
  const warm = (time: number, rise: number, delay: number) => {
    const on = Math.max(0, Math.min(time, 15 * HOUR) - 9 * HOUR);
    const top = rise * (1 - Math.exp(-on / delay));
    return 294 + top * Math.exp(-Math.max(0, time - 15 * HOUR) / delay);
  };
  const courses: Record<string, (time: number) => number> = {
    room: (time) => 293 + 2 * Math.sin((Math.PI * time) / (12 * HOUR)),
    'lower.low': (time) => warm(time, 22, 4000),
    'lower.high': (time) => warm(time, 33, 3000),
  };
  const printing = (time: number) => time >= 9 * HOUR && time < 15 * HOUR;
  const table = (columns: Record<string, (time: number) => number>): Table => {
    const names = Object.keys(columns);
    return {
      names,
      values: Float64Array.from(asked.flatMap((time) => names.map((name) => columns[name]!(time)))),
    };
  };
  const slopes = Object.fromEntries(
    Object.entries(courses).map(([name, course]) => [
      name,
      (time: number) => (Number.isInteger(time) ? course(time + 1) - course(time) : course(time) - course(time - 1)),
    ]),
  );
  const network = {
    contaminants: [{ name: 'particles', unit: '1/m3' }],
    recirculations: [],
    machines: [
      {
        name: 'left',
        bed: { node: 'left.bed', powerMax: 300, supply: { node: 'room', share: 0.15 } },
        modes: [
          { name: 'idle', powers: [{ node: 'room', watts: 8 }], emissions: [] },
          { name: 'bracket', powers: [{ node: 'room', watts: 60 }], emissions: [] },
        ],
      },
    ],
    schedule: [{ machine: 'left', mode: 'bracket', start: 9 * HOUR, end: 15 * HOUR }],
  };
  const record = {
    network,
    times,
    temperatures: table(courses),
    slopes: table(slopes),
    fanSpeeds: table({
      'exhaust.fan': (time) =>
        time >= 8.5 * HOUR && time < 15 * HOUR ? 1 : time < 18 * HOUR && time >= 15 * HOUR ? 0.5 : 0,
    }),
    bedPowers: table({ left: (time) => (printing(time) ? 95 + 180 * Math.exp(-(time - 9 * HOUR) / 600) : 0) }),
    concentrations: {
      particles: table({
        'lower.low': (time) => 3e9 + (printing(time) ? 4e11 : 0),
        room: (time) => 3e9 + (printing(time) ? 6e9 : 0),
      }),
    },
  } as unknown as DayRecord;
  const cabinet = {
    title: 'Two <boxes> & a door',
    bays: { lower: {} },
    doors: { front: { bays: ['lower'] } },
    limits: {},
    machines: { left: { bay: 'lower', electronicsInside: true, electronicsLimit: limit } },
    paths: { exhaust: { parts: [] } },
    materials: { ABS: { emissions: { particles: {} }, bandWell: [273.15 + 40, 273.15 + 60] } },
    days: {
      usual: {
        title: 'Usual day',
        length: 24 * HOUR,
        jobs: { bracket: { machine: 'left', material: 'ABS', start: 9 * HOUR, duration: 6 * HOUR } },
        doorOpenings: [{ door: 'front', start: 15.2 * HOUR, duration: 300 }],
      },
    },
  } as unknown as Cabinet;
  const assembly = {
    room: 'room',
    bays: { lower: { zones: ['lower.low', 'lower.high'] } },
    machines: { left: { printAir: 'lower.low', electronicsAir: 'lower.high' } },
    paths: { exhaust: { kind: 'path', name: 'exhaust', fans: ['exhaust.fan'], efficiency: {} } },
  } as unknown as DayRun['assembly'];
  return { cabinet, day: 'usual', assembly, record };
}
