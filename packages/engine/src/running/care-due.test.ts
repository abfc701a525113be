import { describe, expect, it } from 'vitest';
import type { CareTask } from '../cabinet/care.ts';
import { parseCareInterval } from '../cabinet/care-interval.ts';
import { cabinetByHand } from '../trades/run-by-hand.ts';
import { dayNumber, formatDate } from '../units/calendar.ts';
import { type Due, type DueQuestion, dueOf } from './care-due.ts';
import type { Diary, DoneEntry, JobRun } from './diary.ts';
import { loadOf, type StageUse, stageKey } from './load.ts';
import { drawnTimelines, middleTimeline } from './timeline.ts';

const TODAY = dayNumber(2026, 11, 28);
const HOUR = 3600;

function task(interval: string, more: Partial<CareTask> = {}): CareTask {
  return {
    id: 'filter exhaust change',
    part: 'filter exhaust',
    action: 'change',
    says: '',
    counts: { machine: 'left' },
    interval: parseCareInterval(interval) as CareTask['interval'],
    source: '',
    kind: 'filter',
    ...more,
  };
}

const did = (on: number, word: DoneEntry['did'], more: Partial<DoneEntry> = {}): DoneEntry => ({
  on,
  part: 'filter exhaust',
  did: word,
  ...more,
});

/** 4 h a day in the last 200 days. */
const jobs: JobRun[] = Array.from({ length: 200 }, (_, at) => ({
  first: TODAY - 200 + at,
  last: TODAY - 200 + at,
  times: 1,
  job: 'bracket',
  machine: 'left',
  duration: 4 * HOUR,
  failed: 0,
}));

function due(of: CareTask, done: readonly DoneEntry[], more: Partial<DueQuestion> = {}, use?: StageUse): Due {
  const diary: Diary = { began: TODAY - 300, done, jobs, remarks: [] };
  const load = loadOf(diary, cabinetByHand, TODAY, use ?? { ofRun: () => ({}), ofRest: {} })!;
  return dueOf({
    task: of,
    diary,
    today: TODAY,
    middle: middleTimeline(load),
    drawn: drawnTimelines(load, 50, 1),
    lives: new Map(),
    seed: 1,
    ...more,
  });
}

describe('when care is due', () => {
  it('exact: months go by the calendar, from the day on which it was last done', () => {
    const { p10, p50, p90, last, verdict } = due(task('6 months'), [
      did(TODAY - 300, 'change'),
      did(TODAY - 89, 'change'),
    ]);
    expect(formatDate(last!)).toBe('2026-08-31');
    expect([p10, p50, p90].map((day) => formatDate(day!))).toEqual(['2027-02-28', '2027-02-28', '2027-02-28']);
    expect(verdict).toBe('holds');
  });

  it('exact: what was never done counts from the beginning; a change counts as a check, a check not as a change', () => {
    expect(due(task('300 days'), []).p50).toBe(TODAY);
    expect(due(task('300 days'), [did(TODAY - 9, 'check')])).toMatchObject({ p50: TODAY, verdict: 'tight' });
    expect(due(task('300 days', { action: 'check' }), [did(TODAY - 9, 'change')]).p50).toBe(TODAY + 291);
  });

  it('exact: whichever comes first counts, and both are told, soonest first', () => {
    const { criteria, p50, verdict } = due(task('100 h or 1 year'), [did(TODAY - 50, 'change')]);
    expect(criteria.map(({ by }) => by)).toEqual(['printing', 'calendar']);
    expect(criteria[0]).toMatchObject({ used: 200 * HOUR, of: 100 * HOUR, share: 2, due: TODAY - 26 });
    expect({ p50, verdict }).toEqual({ p50: TODAY - 26, verdict: 'fails' });
  });

  it('property: an uncertain interval gives a band, and today inside it is tight', () => {
    const { p10, p50, p90, verdict } = due(task('150 to 250 h'), [did(TODAY - 50, 'change')]);
    expect(p10!).toBeLessThan(p50!);
    expect(p50!).toBeLessThan(p90!);
    expect(Math.abs(p50! - TODAY)).toBeLessThan(4);
    expect(verdict).toBe('tight');
  });

  it('exact: pressure grows with the hours as it did between readings, and is done at twice its first one', () => {
    const readings = [did(TODAY - 100, 'change', { reading: 20 }), did(TODAY - 50, 'measure', { reading: 30 })];
    const { criteria } = due(task('10 years'), readings);
    expect(criteria[0]).toMatchObject({ by: 'pressure', used: 30, of: 40, share: 0.75, due: TODAY - 1 });
    const hours = (own?: true): string[] =>
      due(task('100 h', own === undefined ? {} : { own }), readings).criteria.map(({ by }) => by);
    expect(hours()).toEqual(['pressure']);
    expect(hours(true)).toContain('printing');
    const own = due(task('50 Pa'), readings);
    expect(own).toMatchObject({ p50: TODAY + 50, verdict: 'holds' });
    expect(due(task('30 Pa'), readings)).toMatchObject({ p50: TODAY - 50, verdict: 'fails' });
    expect(due(task('50 Pa'), [])).toMatchObject({
      verdict: 'unknown',
      missing: expect.stringContaining('pressure loss') as string,
    });
  });

  it('exact: what the day’s model says is used of a life counts until somebody reads a pressure', () => {
    const of = task('10 years', { about: 'air.exhaust.0' });
    const use: StageUse = { ofRun: () => ({ 'air.exhaust.0': 0.01 }), ofRest: { 'air.exhaust.0': 0 } };
    const modelled = due(of, [did(TODAY - 50, 'change')], {}, use);
    expect(modelled.criteria[0]).toMatchObject({ by: 'life', due: TODAY + 50 });
    expect(modelled.criteria[0]!.share).toBeCloseTo(0.5, 9);
    const spread = due(
      of,
      [did(TODAY - 50, 'change')],
      { lives: new Map([['air.exhaust.0', { low: 0.5, high: 2 }]]) },
      use,
    );
    expect(spread.p10!).toBeLessThan(TODAY + 10);
    expect(spread.p90!).toBeGreaterThan(TODAY + 120);
    expect(stageKey('air.exhaust.0')).toBe('stage air.exhaust.0');
    const read = due(
      of,
      [did(TODAY - 50, 'change', { reading: 20 }), did(TODAY - 10, 'measure', { reading: 21 })],
      {},
      use,
    );
    expect(read.criteria.map(({ by }) => by)).not.toContain('life');
  });

  it('limit: without a diary, and hours without jobs, it is unknown and says what to give', () => {
    expect(due(task('6 months'), [], { diary: undefined })).toMatchObject({
      verdict: 'unknown',
      missing: expect.stringContaining('diary') as string,
    });
    expect(due(task('100 h'), [], { middle: undefined, drawn: [] })).toMatchObject({
      verdict: 'unknown',
      missing: expect.stringContaining('costs.times') as string,
    });
  });

  it('limit: what takes longer than twenty years has no date', () => {
    const { p50, verdict, criteria } = due(task('100000 h'), []);
    expect({ p50, verdict }).toEqual({ p50: undefined, verdict: 'holds' });
    expect(criteria[0]!.due).toBeUndefined();
  });
});
