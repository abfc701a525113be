import { describe, expect, it } from 'vitest';
import type { Cabinet, Job } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { belowFrom, hotEndBelow } from './cool-down.ts';
import { shutOffs } from './shut-off.ts';
import { drawsOf, switchRule } from './switch-rule.ts';

const C = 273.15;
const HOUR = 3600;

const text = (jobs: string, more = ''): string => `
stillair: 1
cabinet: { inside: 700 mm x 600 mm x 800 mm, made-of: plywood 12 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 } }
days: { usual: { jobs: ${jobs} } }
${more}`;

function read(jobs: string, more?: string) {
  const answer = readCabinet('test.yaml', text(jobs, more));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer;
}

const decay = (tau: number, first: number, end: number, seconds: number) => {
  const times = Float64Array.from({ length: seconds / 10 + 1 }, (_, at) => 10 * at);
  const values = times.map((time) => end + (first - end) * Math.exp(-time / tau));
  return { times, values, slopes: times.map((time) => (-(first - end) / tau) * Math.exp(-time / tau)) };
};

describe('cooling down', () => {
  it('exact: a bed of 866.5 J/K and 0.994 W/K is below 40 °C after 28.3 min in air of 30 °C', () => {
    const tau = 866.5 / 0.994;
    expect(belowFrom(decay(tau, 100 + C, 30 + C, 7200), 40 + C, 0, 7200)! / 60).toBeCloseTo(
      (tau * Math.log(70 / 10)) / 60,
      6,
    );
  });

  it('exact: counts from the last moment above the level, and not at all when it is still above at the end', () => {
    const course = { times: Float64Array.of(0, 10, 20, 30), values: Float64Array.of(60, 40, 60, 40) };
    expect(belowFrom(course, 50, 0, 30)).toBeCloseTo(25, 6);
    expect(belowFrom(course, 50, 0, 22)).toBeUndefined();
    expect(belowFrom({ ...course, values: Float64Array.of(40, 40, 40, 40) }, 50, 10, 30)).toBe(10);
  });

  it('exact: a hot end of 25 J/K that gives off 25 W at 210 °C is below 50 °C after 6.2 min in air of 25 °C', () => {
    const air = { times: Float64Array.of(0, 7200), values: Float64Array.of(25 + C, 25 + C) };
    const time = hotEndBelow({ nozzle: 210 + C, watts: 25, at: 210 + C, capacity: 25 }, air, 50 + C, 0, 7200)!;
    expect(time).toBeGreaterThanOrEqual(185 * Math.log(185 / 25));
    expect(time).toBeLessThanOrEqual(185 * Math.log(185 / 25) + 5);
  });
});

describe('when a socket may go off', () => {
  const one = read('{ bracket: { material: PLA, start: 9:00, for: 3 h } }');
  const { jobs } = shutOffs(one);
  const [pla] = jobs as [(typeof jobs)[number]];

  it('property: after the job, with a quarter more than the slower of bed and hot end, on the minute', () => {
    const cool = Math.max(pla.bed.after!, pla.hotEnd.after!);
    expect(pla.wait!).toBeGreaterThanOrEqual(1.25 * cool);
    expect(pla.wait!).toBeGreaterThanOrEqual(pla.spread![1]);
    expect(pla.spread![0]).toBeLessThan(cool);
    expect(pla.off! % 60).toBe(0);
    expect(pla.off! - pla.end - pla.wait!).toBeGreaterThanOrEqual(0);
    expect(pla.off! - pla.end - pla.wait!).toBeLessThan(60);
    expect(pla.afterStart).toBe(pla.off! - pla.start);
  });

  it('property: a hotter bed waits longer', () => {
    const abs = shutOffs(read('{ bracket: { material: ABS, start: 9:00, for: 3 h } }')).jobs[0]!;
    expect(abs.bed.first).toBeCloseTo(100 + C, 0);
    expect(abs.bed.after!).toBeGreaterThan(pla.bed.after!);
  });

  it('property: a job that begins before the bed is cool keeps the socket on; later it does not', () => {
    const next = (start: string) =>
      shutOffs(read(`{ a: { material: PLA, start: 9:00, for: 3 h }, b: { material: PLA, start: ${start}, for: 1 h } }`))
        .jobs[0]!;
    expect(next('12:05')).toMatchObject({ next: { job: 'b', start: 12 * HOUR + 300 } });
    expect(next('12:05').off).toBeUndefined();
    expect(next('15:00').off).toBe(pla.off);
  });

  it('property: a job that ends with the day is followed into the next', () => {
    const late = shutOffs(read('{ bracket: { material: PLA, start: 20:00, for: 4 h } }')).jobs[0]!;
    expect(late.end).toBe(24 * HOUR);
    expect(late.off!).toBeGreaterThan(24 * HOUR);
  });

  it('property: is not known where the bay never gets cool enough', () => {
    const hot = read(
      '{ bracket: { material: PLA, start: 9:00, for: 3 h } }',
      'room: { temperature: 47 °C, held: yes }',
    );
    const found = shutOffs(hot);
    expect(found.jobs[0]!.off).toBeUndefined();
    expect(found.switches[0]!.why).toContain('not seen to cool down');
  });
});

describe('a switch that measures power', () => {
  const { cabinet } = read('{ bracket: { material: ABS, start: 9:00, for: 3 h } }');
  const draws = drawsOf(cabinet, 'left');

  it('property: its threshold lies between rest and a bed that rests, its delay beyond the cool-down and the bed’s rests', () => {
    const rule = shutOffs({ cabinet, origins: new Map() }).switches[0]!;
    expect(rule.threshold!).toBeGreaterThan(1.3 * rule.rest);
    expect(rule.threshold!).toBeLessThan(rule.least / 1.3);
    expect(rule.delay!).toBeGreaterThan(2 * rule.lull!);
    expect(rule.armed!).toBeGreaterThan(rule.least);
    expect(switchRule(draws, 60, 600, 200).delay).toBe(1200);
    expect(switchRule(draws, 3000, 60, 200).delay).toBe(3000);
  });

  it('property: there is none where rest and printing draw nearly the same', () => {
    const rule = switchRule({ rest: 14, least: 24 }, 900, 60, 200);
    expect(rule.threshold).toBeUndefined();
    expect(rule.why).toContain('cannot tell them apart');
  });

  it('property: tells what else hangs on its strip', () => {
    const shared: Cabinet = {
      ...cabinet,
      machines: { ...cabinet.machines, right: cabinet.machines['left']! },
      power: {
        ...cabinet.power,
        strips: { strip: { sockets: 4, rating: 10, where: 'outside', from: 'wall', feeds: ['left', 'right'] } },
      },
    };
    const [rule] = shutOffs({ cabinet: shared, origins: new Map() }).switches;
    expect(rule!.shares).toMatchObject({ strip: 'strip', machines: ['right'], fans: [] });
  });

  it('limit: without any job there is nothing to switch', () => {
    const none = shutOffs({
      cabinet: { ...cabinet, days: { usual: { ...cabinet.days['usual']!, jobs: {} as Record<string, Job> } } },
      origins: new Map(),
    });
    expect([none.jobs, none.switches]).toEqual([[], []]);
  });
});
