import { describe, expect, it } from 'vitest';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import type { Log } from '../../logs/log.ts';
import { readLog } from '../../logs/read-log.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import { randomStream } from '../../numerics/random.ts';
import { twoSidedCusumRunLength } from '../../numerics/run-length.ts';
import { type Invention, inventedLog } from '../calibrate/invented-log.ts';
import { drift } from './drift.ts';
import { byTheHour, innovations, settledNoise } from './hourly.ts';

/** One machine in one well mixed bay with an exhaust fan behind a filter. Figures invented. */
const TEXT = `
stillair: 1
title: one
room: { temperature: 20 °C }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { one: { kind: moving bed 220, bay: only } }
air:
  intake: { from: room, to: only, hole: 60 mm round }
  exhaust: { from: only, to: room, parts: [{ filter: pleated H13 120 mm }, { fan: axial 60 mm strong, control: job }] }
days: { usual: { jobs: { part: { material: ABS, start: 8:00, for: 5 h } } } }
`;

function read(text: string): ReadSource {
  const answer = readCabinet('one.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'one.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}
const source = read(TEXT);

interface Case {
  readonly truth?: Invention['truth'];
  /** K warmer from the third day on. */
  readonly warmer?: number;
  readonly roomLogged?: boolean;
  /** On the text of the log. */
  readonly edit?: (text: string) => string;
}

/** Four days; something changes on the third. */
function logOf({ truth = () => ({}), warmer = 0, roomLogged = true, edit = (text) => text }: Case): Log {
  const room = {
    header: 'room (°C)',
    place: { what: 'room', id: '' },
    kind: 'temperature',
    spread: 0.05,
    carry: 0,
  } as const;
  const text = inventedLog(
    source,
    {
      day: 'usual',
      seed: 9,
      firstDay: 20_770,
      dates: 4,
      every: 900,
      hours: [6, 20],
      columns: [
        { header: 'only (°C)', place: { what: 'bay', id: 'only' }, kind: 'temperature', spread: 0.2, carry: 0.2 },
        ...(roomLogged ? [room] : []),
      ],
      truth,
      room: (date) => {
        const base = 293.15 + (date >= 2 ? warmer : 0) + (roomLogged ? Math.sin(date) : 0);
        return [
          [0, base],
          [86_400, base],
        ];
      },
    },
    'Invented.',
  );
  const log = readLog('newer.csv', edit(text), source.cabinet);
  if ('fault' in log) throw new Error(log.fault);
  return log;
}

describe('a newer log', () => {
  it('property: raises no alarm while nothing drifts, nor on warm days that it has the room of', async () => {
    const study = await drift(source, logOf({ warmer: 4 }), { day: 'usual' });
    expect(study.drifted).toBe(false);
    expect(study.explanations).toEqual([]);
    expect(study.columns[0]!.cusum.most).toBeLessThan(study.columns[0]!.cusum.limit);
    expect(study.columns[0]!.falseAlarm).toBeLessThan(0.11);
  }, 30_000);

  it.each([
    ['a filter that clogs', { truth: (date: number) => (date < 2 ? {} : { 'loading.exhaust': 2 }) }, 'loading.exhaust'],
    ['a seal that is worn', { truth: (date: number) => (date < 2 ? {} : { leakage: 12 }) }, 'leakage'],
    ['warm days that it does not know of', { warmer: 4, roomLogged: false }, 'room-temperature'],
  ] as const)(
    'exact: %s is told from the others, and when it began',
    async (_, what, id) => {
      const study = await drift(source, logOf(what), { day: 'usual' });
      expect(study.drifted).toBe(true);
      expect(study.explanations[0]!.id).toBe(id);
      expect(study.notToldApart).toEqual([id]);
      const began = study.onset!;
      // What needs the fan shows when it runs, at eight.
      expect(began.from).toBeLessThanOrEqual(2 * 86_400 + 9 * 3600);
      expect(began.to).toBeGreaterThanOrEqual(86_400 + 19 * 3600);
      expect(Math.abs(began.time - 2.3 * 86_400)).toBeLessThan(0.5 * 86_400);
    },
    60_000,
  );

  it('property: takes how the log scattered from the file where its calibration says it', async () => {
    const kept = read(
      `${TEXT}calibration: { log: old.csv, day: usual, residuals: { only: { spread: 0.2, carry: 0.2 } } }\n`,
    );
    const study = await drift(kept, logOf({}), { day: 'usual' });
    expect(study.calibratedWith).toBe('old.csv');
    expect(study.columns[0]!.noise).toMatchObject({ from: 'calibration', mean: 0, carry: 0.2 });
    expect(study.drifted).toBe(false);
  }, 30_000);

  it('property: one odd hour, as with a door that nobody noted, is told and is no drift', async () => {
    const kept = read(
      `${TEXT}calibration: { log: old.csv, day: usual, residuals: { only: { spread: 0.2, carry: 0.2 } } }\n`,
    );
    const colder = (text: string): string =>
      text.replaceAll(
        /^(\S+-13[ T]10:\d\d,)([\d.]+)/gm,
        (_, when: string, value: string) => `${when}${(Number(value) - 3).toFixed(1)}`,
      );
    const study = await drift(kept, logOf({ edit: colder }), { day: 'usual' });
    expect(study.columns[0]!.cusum.most).toBeGreaterThan(study.columns[0]!.cusum.limit);
    expect(study.drifted).toBe(false);
    expect(study.passing?.column).toBe('only');
    expect(study.explanations).toEqual([]);
  }, 30_000);

  it('refuses a day that is not there, and stops when asked', async () => {
    await expect(drift(source, logOf({}), { day: 'never' })).rejects.toThrow(RangeError);
    expect(await drift(source, logOf({}), { day: 'usual', stop: () => true })).toMatchObject({
      stopped: true,
      drifted: false,
    });
  }, 30_000);
});

describe('what is new in each hour', () => {
  it('exact: by hand, over a gap of two hours', () => {
    const z = innovations({ hours: [0, 1, 3], values: [1, 1, 1] }, { spread: 2, carry: 0.5 });
    expect(z[0]).toBeCloseTo(0.5, 12);
    expect(z[1]).toBeCloseTo(0.5 / (2 * Math.sqrt(0.75)), 12);
    expect(z[2]).toBeCloseTo(0.75 / (2 * Math.sqrt(1 - 0.0625)), 12);
  });

  it('exact: means over hours with enough values', () => {
    expect(byTheHour([0, 1800, 3600, 7300], [1, 3, 5, 7])).toEqual({ hours: [0, 1, 2], values: [2, 5, 7] });
    expect(byTheHour([0, 1800, 3600], [1, 3, 5], 2).hours).toEqual([0]);
  });

  it('exact: mean and deviation of the settled hours', () => {
    const { mean, spread, count } = settledNoise({ hours: [0, 1, 2, 3, 9], values: [1, 3, 1, 3, 100] }, 4);
    expect([mean, count]).toEqual([2, 4]);
    expect(spread).toBeCloseTo(Math.sqrt(4 / 3), 12);
  });

  it('cross: without them an alarm comes by itself far too soon, with them as late as computed', () => {
    const random = randomStream(3);
    const [carry, k, h] = [0.5, 0.5, 4];
    const length = (fresh: boolean): number => {
      let [sum, trials] = [0, 0];
      while (trials < 400) {
        let [last, s, t, count] = [normalQuantile(random()), 0, 0, 0];
        while (s <= h && t <= h) {
          const here = carry * last + Math.sqrt(1 - carry * carry) * normalQuantile(random());
          const z = fresh ? innovations({ hours: [0, 1], values: [last, here] }, { spread: 1, carry })[1]! : here;
          last = here;
          s = Math.max(0, s + z - k);
          t = Math.max(0, t - z - k);
          count += 1;
        }
        sum += count;
        trials += 1;
      }
      return sum / trials;
    };
    const computed = twoSidedCusumRunLength(k, h, 0);
    expect(Math.abs(length(true) - computed)).toBeLessThan((4 * computed) / Math.sqrt(400));
    expect(length(false)).toBeLessThan(0.35 * computed);
  });
});
