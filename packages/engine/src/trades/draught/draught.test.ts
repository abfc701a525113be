import { describe, expect, it } from 'vitest';
import type { Cabinet, CabinetPath } from '../../cabinet/cabinet.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, exhaustFan, filter, hole, pathByHand, runByHand } from '../run-by-hand.ts';
import { draught } from './draught.ts';
import { jetAtPart } from './jet-at-part.ts';
import { alongAndBeside, distanceTo, type Target } from './openings.ts';

const RHO = 101325 / (287.055 * 294.15);
const box: Target = { low: [1, 1, 1], high: [2, 2, 2], bed: { low: [0.8, 0.8, 0.9], high: [2.2, 2.2, 1] } };

function speedOf(run: DayRun): Measure {
  const found = draught.measure(run);
  expect(found).toHaveLength(1);
  return found[0]!;
}

const withPaths = (paths: Cabinet['paths']): Cabinet => ({ ...cabinetByHand, paths });
const step = ({ steps }: Measure, words: string): number | undefined =>
  steps.find(({ text }) => text.includes(words))?.value;

describe('geometry of a jet', () => {
  it('exact: a ray that meets the box is beside it by nothing', () => {
    expect(alongAndBeside(box, { place: [1.5, 0, 1.2], inward: [0, 1, 0] })).toEqual({ along: 1, beside: 0 });
    expect(alongAndBeside(box, { place: [1.5, 5, 1.2], inward: [0, -1, 0] })).toEqual({ along: 3, beside: 0 });
    expect(alongAndBeside(box, { place: [1.5, 5, 1.2], inward: [0, 1, 0] })).toBeUndefined();
    expect(alongAndBeside(box, { place: [0.6, 1.5, 0.7], inward: [0, 1, 0] })).toEqual({ along: 0, beside: 0.5 });
  });

  it('exact: the nearest distance to the box is Pythagoras from its corner', () => {
    expect(distanceTo(box, [0.7, 0.6, 1.5])).toBeCloseTo(0.5, 12);
    expect(distanceTo(box, [1.5, 1.5, 1.5])).toBe(0);
  });

  const opening = { place: [1.5, 0, 1.5], inward: [0, 1, 0], area: (Math.PI * 0.04 ** 2) / 4 } as const;

  it('exact: a 40 mm jet has slowed to 6.2 d/x = 0.248 of its speed after 1 m', () => {
    expect(jetAtPart(opening, 'in', box)).toMatchObject({ share: expect.closeTo(0.248, 9) as number, inCore: false });
  });

  it('exact: half its axis speed remains at 0.094 of its length beside the axis', () => {
    const beside = jetAtPart({ ...opening, place: [1 - 0.094, 0, 1.5] }, 'in', box);
    expect(beside.share).toBeCloseTo(0.124, 9);
  });

  it('exact: a full-bore jet of 200 mm keeps its core over 1 m and says so', () => {
    expect(jetAtPart({ ...opening, area: (Math.PI * 0.2 ** 2) / 4 }, 'in', box)).toMatchObject({
      share: 1,
      inCore: true,
    });
  });

  it('exact: a slot of 10 mm has slowed to 2.47 √(h/x) after 1 m', () => {
    expect(jetAtPart({ ...opening, slot: 0.01 }, 'in', box).share).toBeCloseTo(0.247, 9);
  });

  it('exact: a jet from below the bed does not reach the part; one from beside the bed may', () => {
    const up = { ...opening, place: [1.5, 1.5, 0], inward: [0, 0, 1] } as const;
    expect(jetAtPart(up, 'in', box)).toMatchObject({ share: 0, shielded: true });
    expect(jetAtPart({ ...up, place: [0.7, 1.5, 0] }, 'in', box)).toMatchObject({ shielded: false });
  });

  it('limit: a jet that blows away reaches nothing, one along the wall hardly anything a metre off it', () => {
    expect(jetAtPart(opening, 'away', box).share).toBe(0);
    expect(jetAtPart(opening, 'wall', box).share).toBeLessThan(1e-6);
  });
});

describe('air speed at the print', () => {
  /** An intake at the height of the part, straight behind it: the part is 150 mm wide on a bed in the middle of 600 mm. */
  const aimed: CabinetPath = pathByHand('room', 'lower', 0.2, [hole(0.04)]);
  const paths = { intake: aimed, exhaust: cabinetByHand.paths['exhaust']! };
  const flows = { intake: 0.002 * RHO, exhaust: 0.002 * RHO };

  it('exact: an aimed inlet gives its jet’s speed at the near side of the part, 225 mm away', () => {
    const run = runByHand({ cabinet: withPaths(paths), flows });
    const outlet = 0.002 / ((Math.PI * 0.04 ** 2) / 4);
    const measure = speedOf(run);
    expect(step(measure, 'in its opening')).toBeCloseTo(outlet, 9);
    expect(step(measure, 'at the part')).toBeCloseTo(outlet * Math.min(1, (6.2 * 0.04) / 0.225), 9);
    expect(measure.cause).toBe('an inlet blows at the print');
    expect(measure.value).toBeGreaterThan(outlet);
  });

  it('exact: what remains without jets is the air passing through: V̇ over the smallest section, 0.48 m²', () => {
    const away = { ...paths, intake: { ...aimed, blows: 'away' as const } };
    const measure = speedOf(runByHand({ cabinet: withPaths(away), flows }));
    expect(step(measure, 'passing through')).toBeCloseTo(0.002 / 0.48, 9);
    expect(measure.value).toBeLessThan(0.02);
  });

  it('property: an outlet as near as an inlet draughts far less', () => {
    const outlet = pathByHand('lower', 'room', 0.2, [hole(0.04)]);
    const sucked = speedOf(runByHand({ cabinet: withPaths({ outlet }), flows: { outlet: 0.002 * RHO } }));
    const blown = speedOf(runByHand({ cabinet: withPaths({ outlet }), flows: { outlet: -0.002 * RHO } }));
    expect(sucked.value!).toBeLessThan(blown.value! / 20);
    expect(blown.cause).toBe('an inlet blows at the print');
  });

  it('property: a fan that turns the air round counts while it is on, and is blamed by name', () => {
    const turning = {
      ...paths,
      scrub: { ...pathByHand('lower', 'lower', 0.2, [filter, exhaustFan()]), blows: 'in' as const },
    };
    const still = runByHand({ cabinet: withPaths(turning) });
    const measure = speedOf(still);
    expect(measure.cause).toBe('a fan that turns the air round blows at the print');
    expect(measure.steps[0]!.text).toContain('scrub');
  });

  it('property: only the time of the job counts', () => {
    const night = (t: number): number => (t < 6 * 3600 ? 0.01 : 0.0001);
    const run = runByHand({ cabinet: withPaths(paths), flows: { intake: night } });
    expect(step(speedOf(run), 'in its opening')).toBeCloseTo(0.0001 / RHO / ((Math.PI * 0.04 ** 2) / 4), 9);
  });

  it('property: what moves while a door is open does not count', () => {
    const doorOpenings = [{ door: 'front', start: 12 * 3600, duration: 300 }];
    const cabinet = { ...withPaths(paths), days: { usual: { ...cabinetByHand.days['usual']!, doorOpenings } } };
    const times = [0, 9 * 3600, 12 * 3600, 12 * 3600, 12 * 3600 + 300, 12 * 3600 + 300, 15 * 3600, 86400];
    const gust = (t: number): number => (t >= 12 * 3600 && t < 12 * 3600 + 300 ? 0.02 : 0.001);
    const run = runByHand({ cabinet, times, flows: { intake: gust } });
    expect(step(speedOf(run), 'in its opening')).toBeCloseTo(0.001 / RHO / ((Math.PI * 0.04 ** 2) / 4), 9);
  });

  it('limit: a door that is open during the whole job leaves the speed unknown, never 0', () => {
    const doorOpenings = [{ door: 'front', start: 8 * 3600, duration: 10 * 3600 }];
    const cabinet = { ...withPaths(paths), days: { usual: { ...cabinetByHand.days['usual']!, doorOpenings } } };
    const measure = speedOf(runByHand({ cabinet, flows }));
    expect(measure.value).toBeUndefined();
    expect(measure.missing).toContain('door');
  });

  it('cross: tells the bed’s own plume, 0.25 to 0.45 m/s for a bed of 235 mm (published range for 9 to 28 W)', () => {
    const plume = step(speedOf(runByHand({ cabinet: withPaths(paths), flows })), 'own plume');
    expect(plume).toBeGreaterThan(0.25);
    expect(plume).toBeLessThan(0.5);
  });

  it('property: a chamber keeps the bay’s jets off', () => {
    const machine = cabinetByHand.machines['left']!;
    const chamber = {
      size: { width: 0.4, depth: 0.4, height: 0.4 },
      build: cabinetByHand.faces.back.build,
      leakArea: 0.001,
      exhaustFlow: 0,
      exhaustFilter: {},
      recirculation: 0.008,
      recirculationFilter: {},
      lamp: 0,
      heater: 0,
      heaterSet: 0,
    };
    const boxed = { ...withPaths(paths), machines: { left: { ...machine, style: 'chambered' as const, chamber } } };
    expect(speedOf(runByHand({ cabinet: boxed, flows })).value).toBeCloseTo(0.008 / 0.16, 9);
  });
});
