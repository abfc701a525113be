import { describe, expect, it } from 'vitest';
import { cabinetByHand } from '../trades/run-by-hand.ts';
import type { Diary, JobRun } from './diary.ts';
import { type Load, loadKey, loadOf, type StageUse, stageKey } from './load.ts';
import { drawnTimelines, middleTimeline } from './timeline.ts';

const HOUR = 3600;
const NO_USE: StageUse = { ofRun: () => ({}), ofRest: {} };
const TODAY = 20_000;
const left = loadKey({ machine: 'left' });

const run = (first: number, hours: number, more: Partial<JobRun> = {}): JobRun => ({
  first,
  last: first,
  times: 1,
  job: 'bracket',
  machine: 'left',
  duration: hours * HOUR,
  failed: 0,
  ...more,
});

function load(jobs: readonly JobRun[], use: StageUse = NO_USE, began = TODAY - 400): Load {
  return loadOf({ began, done: [], jobs, remarks: [] } satisfies Diary, cabinetByHand, TODAY, use)!;
}

/** The same on every day of half a year. */
const steady = (hours: number): JobRun[] => Array.from({ length: 200 }, (_, at) => run(TODAY - 200 + at, hours));

describe('what has run', () => {
  it('exact: hours are those of the jobs since a day, that day included', () => {
    const { used } = middleTimeline(load([run(TODAY - 30, 5), run(TODAY - 20, 3), run(TODAY, 2)]));
    expect(used(left, TODAY - 400)).toBe(10 * HOUR);
    expect(used(left, TODAY - 20)).toBe(5 * HOUR);
    expect(used(left, TODAY - 19)).toBe(2 * HOUR);
    expect(used(loadKey({ machine: 'right' }), TODAY - 400)).toBe(0);
  });

  it('exact: jobs that overlap on two machines fill the hours of the cabinet once, those of no known start run side by side', () => {
    const at = (start: number, hours: number, machine: string): JobRun =>
      run(TODAY - 9, hours, { start: start * HOUR, machine });
    const both = load([at(9, 6, 'left'), at(12, 6, 'right'), at(20, 8, 'left')]);
    expect(middleTimeline(both).used('cabinet', TODAY - 9)).toBe((9 + 8) * HOUR);
    expect(middleTimeline(both).used(left, TODAY - 9)).toBe(14 * HOUR);
    const untimed = load([run(TODAY - 9, 6), run(TODAY - 9, 6, { machine: 'right' })]);
    expect(middleTimeline(untimed).used('cabinet', TODAY - 9)).toBe(6 * HOUR);
  });

  it('property: jobs of a time are spread over it, and none of them is lost', () => {
    const { used } = middleTimeline(load([run(TODAY - 50, 4, { last: TODAY - 11, times: 20 })]));
    expect(used(left, TODAY - 60)).toBeCloseTo(80 * HOUR, 6);
    expect(used(left, TODAY - 30)).toBeCloseTo(40 * HOUR, 6);
  });

  it('exact: without jobs in the diary, days come as often as costs.times says', () => {
    const cabinet = { ...cabinetByHand, costs: { ...cabinetByHand.costs, times: { usual: 100 } } };
    const began = TODAY - 1461;
    const usual = loadOf({ began, done: [], jobs: [], remarks: [] }, cabinet, TODAY, NO_USE)!;
    const { duration } = cabinetByHand.days['usual']!.jobs['bracket']!;
    expect(usual.from).toBe('costs.times');
    expect(middleTimeline(usual).used(left, began)).toBeCloseTo(400 * duration, 3);
    expect(loadOf(undefined, cabinetByHand, TODAY, NO_USE)).toBeUndefined();
  });
});

describe('when an amount is reached', () => {
  it('exact: 100 h at 4 h a day since 20 days take 25 days, the twentieth of which was yesterday', () => {
    const { reached } = middleTimeline(load(steady(4)));
    expect(reached(left, TODAY - 20, 100 * HOUR)).toBe(TODAY + 5);
    expect(reached(left, TODAY - 20, 40 * HOUR)).toBe(TODAY - 11);
    expect(reached(left, TODAY - 20, 80 * HOUR)).toBe(TODAY - 1);
  });

  it('limit: what never runs reaches nothing', () => {
    expect(middleTimeline(load(steady(4))).reached(loadKey({ machine: 'right' }), TODAY, 1)).toBe(Infinity);
  });

  it('limit: an even past makes for one future; an uneven or a short one spreads it', () => {
    const ends = (jobs: readonly JobRun[]): [number, number] => {
      const days = drawnTimelines(load(jobs), 60, 1).map(({ reached }) => reached(left, TODAY, 200 * HOUR));
      return [Math.min(...days), Math.max(...days)];
    };
    expect(ends(steady(4))).toEqual([TODAY + 50, TODAY + 50]);
    const [soonest, latest] = ends(steady(4).filter((_, at) => at % 28 < 14));
    expect(latest - soonest).toBeGreaterThan(40);
    const [few, many] = ends(steady(4).slice(-14));
    expect(many / (TODAY + 50)).toBeGreaterThan(1);
    expect(many - TODAY).toBeGreaterThan(2 * (few - TODAY));
  });

  it('exact: a stage is used by what prints and by days on which nothing does', () => {
    const use: StageUse = { ofRun: ({ times }) => ({ it: 0.01 * times }), ofRest: { it: 0.001 } };
    const { used, reached } = middleTimeline(load(steady(4), use));
    expect(used(stageKey('it'), TODAY - 20)).toBeCloseTo(20 * 0.01 + 21 * 0.001, 12);
    expect(reached(stageKey('it'), TODAY - 20, 20 * 0.011 + 0.001 + 10 * 0.011)).toBe(TODAY + 10);
  });

  it('property: the same seed gives the same ways', () => {
    const days = (seed: number): number[] =>
      drawnTimelines(load(steady(4).filter((_, at) => at % 5 < 2)), 10, seed).map(({ reached }) =>
        reached(left, TODAY, 300 * HOUR),
      );
    expect(days(3)).toEqual(days(3));
    expect(days(3)).not.toEqual(days(4));
  });
});
