import { describe, expect, it } from 'vitest';
import { editText } from '../../cabinet/edits.ts';
import { originText } from '../../cabinet/origin-text.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { dialReadings } from '../../logs/dial.ts';
import type { Log } from '../../logs/log.ts';
import { readLog } from '../../logs/read-log.ts';
import { ofColumns } from '../../numerics/dense.ts';
import { binomialRegion } from '../../numerics/distributions.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import { randomStream } from '../../numerics/random.ts';
import { type CalibrationStudy, calibrate } from './calibrate.ts';
import { chosen, strongest } from './choose.ts';
import { considered, fitLog, halvesOf } from './fit-log.ts';
import { type Invention, inventedLog } from './invented-log.ts';
import { type Channel, laidOut } from './log-days.ts';
import { nextReading } from './next-reading.ts';
import { editOf, knownUnknowns, type Unknown, unknownNamed, valueAway, widthsAway, withValues } from './unknowns.ts';
import { spreadText } from './write-back.ts';

/** One machine in one well mixed bay with an exhaust fan. Figures invented. */
const TEXT = `# Kept by hand.
stillair: 1
title: one
room: { temperature: 20 °C }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { one: { kind: moving bed 220, bay: only } }
air:
  intake: { from: room, to: only, hole: 60 mm round }
  exhaust: { from: only, to: room, parts: [{ filter: pleated H13 120 mm }, { fan: axial 60 mm strong }] }
sensors: { top: { bay: only, height: 700 mm } } # the little one
days: { usual: { jobs: { part: { material: ABS, start: 8:00, for: 5 h } } } }
`;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('one.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'one.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}
const source = sourceOf(TEXT);

const invention: Invention = {
  day: 'usual',
  seed: 7,
  firstDay: 20_770,
  dates: 1,
  every: 600,
  hours: [7, 17],
  columns: [
    { header: 'top (°C)', place: { what: 'sensor', id: 'top' }, kind: 'temperature', spread: 0.15, carry: 0.1 },
    { header: 'room (°C)', place: { what: 'room', id: '' }, kind: 'temperature', spread: 0.05, carry: 0 },
    { header: 'power one (W)', place: { what: 'machine', id: 'one' }, kind: 'power', spread: 2, carry: 0 },
  ],
  truth: () => ({ 'bed-loss': 1.2, 'fan-flow': 0.85 }),
};

function logOf(text: string): Log {
  const log = readLog('log.csv', text, source.cabinet);
  if ('fault' in log) throw new Error(log.fault);
  return log;
}
const log = logOf(inventedLog(source, invention, 'Invented.'));
const toldOf = (study: CalibrationStudy, id: string) => study.unknowns.find((unknown) => unknown.id === id)!;

describe('a log of a cabinet whose truth is known', () => {
  it('exact: what is asked for is found within its interval, and the residuals come down to the noise', async () => {
    const study = await calibrate(source, log, { day: 'usual', fit: ['bed-loss', 'fan-flow'] });
    for (const [id, truth] of [
      ['bed-loss', 1.2],
      ['fan-flow', 0.85],
    ] as const) {
      const { low, high, lowAll, highAll, was } = toldOf(study, id);
      expect(was).toBe(1);
      expect(low).toBeLessThan(truth);
      expect(high).toBeGreaterThan(truth);
      expect(lowAll).toBeLessThanOrEqual(low);
      expect(highAll).toBeGreaterThanOrEqual(high);
      expect(high / low).toBeLessThan(2);
    }
    const [top] = study.columns;
    expect(top!.before).toBeGreaterThan(3 * top!.after);
    expect(top!.after).toBeLessThan(0.25);
    expect(study).toMatchObject({ converged: true, prior: false, stopped: false, log: { dates: 1, roomLogged: true } });

    // Kept in the file: comments stay, the values have a spread and say where they come from, and reading them gives them back.
    const text = editText(TEXT, study.edits);
    expect(text).toContain('# Kept by hand.');
    expect(text).toContain('# the little one');
    expect(text.startsWith(TEXT)).toBe(true);
    const again = sourceOf(text);
    expect(again.cabinet.factors.bedLoss).toBeCloseTo(toldOf(study, 'bed-loss').value, 2);
    const origin = again.origins.get('factors.bedLoss');
    expect(originText(origin, () => 'line 9: ')).toMatch(/^measured, from log\.csv: line 9: .*factors\.bed-loss/);
    expect(origin?.spread?.p10).toBeGreaterThan(toldOf(study, 'bed-loss').lowAll);
    expect(again.cabinet.calibration).toMatchObject({ log: 'log.csv', day: 'usual', from: '2026-11-13' });
    expect(again.cabinet.calibration!.residuals['top']!.spread).toBeLessThan(0.3);
  }, 30_000);

  it('property: twins that only show together are said to be, and stopping leaves nothing half done', async () => {
    const study = await calibrate(source, log, {
      day: 'usual',
      fit: ['offset.top', 'bed-loss', 'heat.one', 'fan-flow'],
    });
    expect(study.apart.length).toBeGreaterThan(0);
    const stopped = await calibrate(source, log, { day: 'usual', stop: () => true });
    expect(stopped).toMatchObject({ stopped: true, unknowns: [], edits: [] });
  }, 30_000);

  it('limit: two dial readings lean on the file, and move what they show towards them', async () => {
    const dial = dialReadings(['12:30 top 41 °C', '12:30 room 20 °C'], source.cabinet) as Log;
    const study = await calibrate(source, dial, { day: 'usual' });
    expect(study.prior).toBe(true);
    expect(study.columns[0]!.assumedNoise).toBe(0.5);
    expect(Math.abs(study.columns[0]!.after)).toBeLessThan(Math.abs(study.columns[0]!.before));
    for (const { left } of study.unknowns) expect(left).toBeLessThanOrEqual(1);
    expect(study.next).toBeDefined();
  }, 30_000);

  it('refuses a day and an unknown that are not there, and a log of the room alone', async () => {
    await expect(calibrate(source, log, { day: 'never' })).rejects.toThrow(RangeError);
    await expect(calibrate(source, log, { day: 'usual', fit: ['nonsense'] })).rejects.toThrow(/no such unknown/);
    const room = logOf(`time,room (°C)\n${Array.from({ length: 8 }, (_, at) => `1${at}:00,20`).join('\n')}`);
    await expect(calibrate(source, room, { day: 'usual' })).rejects.toThrow(/nothing within the day/);
  });
});

/** A linear stand-in for a cabinet: two channels, three unknowns. */
const COUNT = 60;
/** 2,000 of them, of a real cabinet, are in docs/bench-calibrate.md. */
const TRIALS = 30;
const columns = [0, 1, 2].map((k) =>
  Float64Array.from({ length: 2 * COUNT }, (_, at) => {
    const [t, c] = [(at % COUNT) / COUNT, at < COUNT ? 0 : 1];
    return [Math.sin(3 * t + 1) + 0.3 * c, (1 - Math.exp(-5 * t)) * (c === 1 ? 0.6 : 1), t * t * (c === 1 ? -1 : 0.4)][
      k
    ]!;
  }),
);
const channels = [0, 1].map((at): Channel => {
  const slot = Array.from({ length: COUNT }, (_, each) => each);
  const zero = slot.map(() => 0);
  return {
    name: `${at}`,
    kind: 'temperature',
    place: { what: 'bay', id: '' },
    date: zero,
    time: zero,
    slot,
    value: slot.map(() => 300),
    count: zero,
  };
});
const straight = (id: string): Unknown => ({
  id,
  label: id,
  scale: 'shift',
  nominal: 0,
  unit: 'number',
  width: 1,
  from: 'usual',
  bounds: [-40, 40],
});

describe('intervals', () => {
  it('cross: over 30 seeded trials with noise that remembers, 95 % intervals hold the truth as often as they say', async () => {
    const truth = [0.3, -0.5, 0.8];
    const held = [0, 0, 0];
    for (let trial = 0; trial < TRIALS; trial += 1) {
      const random = randomStream(trial);
      const draw = (): number => normalQuantile(random());
      const noise = [0.4, 0.2].flatMap((spread) => {
        let last = draw();
        return Array.from({ length: COUNT }, () => {
          last = 0.5 * last + Math.sqrt(0.75) * draw();
          return spread * last;
        });
      });
      const residuals = (point: Float64Array): Float64Array =>
        Float64Array.from(
          noise,
          (each, row) => columns.reduce((sum, column, at) => sum + column[row]! * (point[at]! - truth[at]!), 0) - each,
        );
      const fit = await fitLog(
        async (points) => points.map(residuals),
        ['a', 'b', 'c'].map(straight),
        { channels },
        { prior: false },
      );
      const halves = halvesOf(fit);
      for (const [at, wanted] of truth.entries())
        if (Math.abs(fit.at[at]! - wanted) <= halves[at]!) held[at] = held[at]! + 1;
    }
    const [low, high] = binomialRegion(TRIALS, 0.95, 0.001);
    for (const each of held) {
      expect(each).toBeGreaterThanOrEqual(low);
      expect(each).toBeLessThanOrEqual(high);
    }
  }, 60_000);

  it('exact: an input that was not fitted adds what it would have moved the answer by', () => {
    // One unknown seen with slope 2 in one white row: variance 1/4. The other input moves the row by 3: the answer by 3/2.
    const white = ofColumns([[2]]);
    const extra = considered({ white, covariance: ofColumns([[0.25]]) }, ofColumns([[3]]));
    expect(extra.values[0]).toBeCloseTo(2.25, 12);
  });

  it('exact: the next reading of one unknown, by the formula of a single observation', () => {
    const grid = {
      places: [{ place: { what: 'bay', id: 'only' } as const, kind: 'temperature' as const }],
      times: [0, 3600],
    };
    const slopes = [[Float64Array.of(0.1), Float64Array.of(1)]];
    const next = nextReading(ofColumns([[1]]), grid, slopes, [0])!;
    // Precision before: one white row of slope 1 and the file's own 1; a dial of 0.5 K adds 1 / 0.25.
    expect(next.time).toBe(3600);
    expect(next.narrows.before).toBeCloseTo(Math.sqrt(1 / 2), 12);
    expect(next.narrows.after).toBeCloseTo(Math.sqrt(1 / 6), 12);
  });
});

describe('which unknowns', () => {
  const white = ofColumns([
    [5, 0, 0],
    [5, 0.1, 0],
    [0, 4, 0],
    [0, 0, 0.2],
  ]);
  const named = ['a', 'b', 'c', 'd'].map(straight);

  it('exact: the best shown first, a twin and a faint one left out with the reason', () => {
    const { taken, left } = chosen(white, named);
    expect(taken).toEqual([1, 2]);
    expect(left.map(({ at, why }) => [at, why.slice(0, 24)])).toEqual([
      [0, 'the log cannot tell it f'],
      [3, 'the log hardly shows it'],
    ]);
  });

  it('exact: where the file counts too, twins share', () => {
    expect(strongest(white).taken).toEqual([0, 1, 2]);
  });
});

describe('unknowns', () => {
  it('property: every one that is offered can be set and moves what it names', () => {
    for (const id of knownUnknowns(source)) {
      const unknown = unknownNamed(id, source)!;
      const value = valueAway(unknown, 1);
      expect(widthsAway(unknown, value)).toBeCloseTo(1, 9);
      expect(JSON.stringify(withValues(source.cabinet, 'usual', { [id]: value }))).not.toBe(
        JSON.stringify(source.cabinet),
      );
    }
    expect(unknownNamed('doors.door.sealGap', source)?.scale).toBe('factor');
    expect(unknownNamed('offset.nowhere', source)).toBeUndefined();
  });

  it('exact: where each is kept in the file', () => {
    const path = (id: string): string | undefined => editOf(unknownNamed(id, source)!, '1', source.cabinet)?.path;
    expect(['leakage', 'lag.top', 'heat.one', 'loading.exhaust', 'room-temperature'].map(path)).toEqual([
      'overrides.factors.leakage',
      'sensors.top.lag',
      'overrides.machines.one.heat',
      'air.exhaust.parts.0.loading',
      undefined,
    ]);
  });

  it.each([
    ['number', 1.3456, 1.2, 1.49, '1.35 (1.2 to 1.49)'],
    ['temperature-difference', -0.42, -0.6, -0.2, '-0.42 (-0.6 to -0.2) K'],
    ['duration', 71.3, 50, 100, '71 (50 to 100) s'],
    ['share', 0.456, 0.4, 0.51, '46 (40 to 51) %'],
    ['power', 29.51, 27.4, 31.8, '29.5 (27.4 to 31.8) W'],
  ] as const)('exact: %s as the file takes it', (unit, value, low, high, text) => {
    expect(spreadText(unit, value, low, high)).toBe(text);
  });
});

describe('a log laid on a day', () => {
  it('exact: means over slots by date, and the course of the room', () => {
    const rows = [0, 1].flatMap((date) =>
      Array.from(
        { length: 12 },
        (_, at) => `2026-11-${13 + date} 08:${String(at * 5).padStart(2, '0')},${30 + at},${20 + date}`,
      ),
    );
    const laid = laidOut(logOf(`time,top (°C),room (°C)\n${rows.join('\n')}`), 86_400, 900);
    expect(laid.days.map(({ room }) => room?.length)).toEqual([4, 4]);
    expect(laid.days[1]!.room![0]![1]).toBeCloseTo(294.15, 9);
    expect(laid.channels).toHaveLength(1);
    const [{ date, slot, value, time }] = laid.channels as [Channel];
    expect(date).toEqual([0, 0, 0, 0, 1, 1, 1, 1]);
    expect(value[0]).toBeCloseTo(273.15 + 31, 9);
    expect(time[0]).toBeCloseTo(8 * 3600 + 300, 9);
    expect(slot[4]! - slot[0]!).toBe(96);
  });
});
