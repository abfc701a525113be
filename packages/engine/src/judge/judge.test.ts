import { describe, expect, it } from 'vitest';
import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { Measure, Trade } from '../trades/measure.ts';
import type { Finding } from './finding.ts';
import { judge, type ReadSource } from './judge.ts';
import { runDay } from './pipeline.ts';
import { type Evaluate, evaluateHere, type Outcome, variantRunner } from './variants.ts';

/** A bay with nothing in it: a day of it takes a few milliseconds. */
const EMPTY = `
stillair: 1
title: empty
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { z: 0 mm to 900 mm } }
days: { usual: {} }
`;

function sourceOf(text: string): ReadSource {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'test.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}

const limit = { id: 'made-up', kind: 'at-most', value: 1, source: 'made up for this test', standing: 'own' } as const;

function trade(id: string, measures: (cabinet: ReadSource['cabinet']) => Partial<Measure>[]): Trade {
  return {
    id,
    title: id,
    measure: ({ cabinet }) =>
      measures(cabinet).map((measure, at) => ({
        trade: id,
        quantity: `quantity-${at}`,
        part: 'room',
        title: `quantity ${at} of ${id}`,
        unit: 'number',
        steps: [],
        remedies: [],
        weight: 0.5,
        better: 'lower',
        ...measure,
      })),
  };
}

const source = sourceOf(EMPTY);
const changes = trade('changes', ({ room }) => [{ value: room.airChangesPerHour, limit, logarithmic: true }]);

async function judgeOne(made: Trade, options: Parameters<typeof judge>[1] = {}): Promise<Finding> {
  const { findings } = await judge(source, { trades: [made], samples: 40, ...options });
  return findings[0]!;
}

describe('judge', () => {
  it('exact: a measure that is an input has that input’s spread as its band, and the input as its driver', async () => {
    const { spread } = assumedInputs(source.origins).find(({ path }) => path === 'room.airChangesPerHour')!;
    const finding = await judgeOne(changes, { samples: 200 });
    expect(Math.log(finding.p10! / spread.p10)).toBeCloseTo(0, 1);
    expect(Math.log(finding.p50! / spread.p50)).toBeCloseTo(0, 1);
    expect(Math.log(finding.p90! / spread.p90)).toBeCloseTo(0, 1);
    expect(finding.value).toBe(source.cabinet.room.airChangesPerHour);
    expect(finding.drivers).toMatchObject([{ path: 'room.airChangesPerHour', label: 'air changes of the room' }]);
    expect(finding.drivers[0]!.share).toBeCloseTo(1, 9);
    expect(finding.id).toBe('changes/quantity-0/room/usual');
  });

  it('exact: the verdict is tight when the limit lies in the band, and the chance is the share of samples inside', async () => {
    const finding = await judgeOne(changes);
    expect(finding.p10!).toBeLessThan(1);
    expect(finding.p90!).toBeGreaterThan(1);
    expect(finding.verdict).toBe('tight');
    expect(finding.chance!).toBeGreaterThan(0.5);
    expect(finding.chance!).toBeLessThan(0.95);
  });

  it('order: the nominal findings are told before anything is varied', async () => {
    const told: string[] = [];
    await judge(source, {
      trades: [changes],
      samples: 2,
      first: (findings) => told.push(...findings.map(({ id, verdict }) => `${id} ${verdict}`)),
      progress: (done) => told.push(`${done}`),
    });
    expect(told).toEqual(['changes/quantity-0/room/usual holds', '2', '3']);
  });

  it('order: bands are told after the last sample and before anything is tried', async () => {
    const told: string[] = [];
    const { findings } = await judge(source, {
      trades: [changes],
      samples: 4,
      sampled: (banded) => told.push(...banded.map(({ p10, tried }) => `${String(p10)} ${tried.length}`)),
      progress: (done) => told.push(`${done}`),
    });
    expect(told.slice(0, 5)).toEqual(['2', '3', '4', '5', `${String(findings[0]!.p10)} 0`]);
  });

  it('property: an input that nature rules out is never named, however well luck pairs it', async () => {
    const air = trade('heat', ({ room }) => [{ value: room.background['particles'] ?? 0, logarithmic: true }]);
    expect((await judgeOne(air)).drivers).toEqual([]);
  });

  it('limit: without samples the nominal value decides alone', async () => {
    const finding = await judgeOne(changes, { samples: 0 });
    expect(finding.verdict).toBe('holds');
    expect(finding.p50).toBeUndefined();
    expect(finding.drivers).toEqual([]);
  });

  it('property: equal seeds give equal findings, whoever runs the samples and in which order', async () => {
    const backwards: Evaluate = async (variants, hooks) => {
      const run = variantRunner(source, [changes]);
      const outcomes: Outcome[] = [];
      for (let at = variants.length - 1; at >= 0; at -= 1) {
        outcomes[at] = run(variants[at]!);
        hooks.finished();
      }
      return outcomes;
    };
    const one = await judgeOne(changes, { seed: 3 });
    expect(await judgeOne(changes, { seed: 3 })).toEqual(one);
    expect(await judgeOne(changes, { seed: 3, evaluate: backwards })).toEqual(one);
    expect((await judgeOne(changes, { seed: 4 })).p10).not.toBe(one.p10);
  });

  it('property: an unknown value is unknown, never a pass, and says what is missing', async () => {
    const finding = await judgeOne(trade('gap', () => [{ limit, missing: 'give the air changes of the room' }]));
    expect(finding.verdict).toBe('unknown');
    expect(finding.missing).toContain('give');
  });

  it('property: findings are plain data', async () => {
    const { findings } = await judge(source, { trades: [changes], samples: 8 });
    expect(JSON.parse(JSON.stringify(findings))).toEqual(findings);
  });
});

describe('remedies', () => {
  const remedy = { says: 'air the room less', edits: [{ set: { 'room.air-changes': '0.1 /h' } }] };
  const useless = { says: 'wish', edits: [{ set: { title: 'another title' } }] };
  const wrong = { says: 'nonsense', edits: [{ set: { 'room.no-such-key': '1' } }] };
  const pair = trade('pair', ({ room }) => [
    { value: room.airChangesPerHour, limit: { ...limit, value: 0.05 }, remedies: [remedy, useless, wrong] },
    {
      value: room.airChangesPerHour,
      limit: { ...limit, kind: 'at-least', value: 0.15 },
      better: 'higher',
      title: 'fresh air',
    },
  ]);

  it('exact: each is run once and told with its value, its verdict and what it worsens', async () => {
    const { findings, remediesTried } = await judge(source, { trades: [pair], samples: 20 });
    expect(remediesTried).toBe(3);
    const [tried, wished, ...others] = findings[0]!.tried;
    expect(others).toEqual([]); // an edit that the file does not take is not offered
    expect(tried).toMatchObject({ says: 'air the room less', value: 0.1 });
    expect(tried!.worsens).toEqual(['fresh air (room)']);
    expect(wished).toMatchObject({ value: findings[0]!.value, verdict: findings[0]!.verdict, worsens: [], mends: [] });
  });

  it('property: a change with which the limit does not apply any more keeps it', async () => {
    const sometimes = trade('sometimes', ({ room }) => [
      { value: 1, remedies: [remedy], ...(room.airChangesPerHour > 0.2 ? { limit: { ...limit, value: 0.5 } } : {}) },
    ]);
    const { findings } = await judge(source, { trades: [sometimes], samples: 0 });
    expect(findings[0]!.tried).toMatchObject([{ says: 'air the room less', value: 1, verdict: 'holds' }]);
  });

  it('exact: a finding that a change takes away is kept by it; one that it makes unknown is not', async () => {
    const verdictWith = async (then: Partial<Measure>[]): Promise<string> => {
      const asked = trade('asked', ({ room }) =>
        room.airChangesPerHour > 0.2 ? [{ value: 2, limit, remedies: [remedy] }] : then,
      );
      return (await judge(source, { trades: [asked], samples: 0 })).findings[0]!.tried[0]!.verdict;
    };
    expect(await verdictWith([])).toBe('holds');
    expect(await verdictWith([{ missing: 'a number' }])).toBe('unknown');
  });

  it('property: what holds is not mended', async () => {
    const fine = trade('fine', () => [{ value: 0, limit, remedies: [remedy] }]);
    const { findings, remediesTried } = await judge(source, { trades: [fine], samples: 8 });
    expect(findings[0]!.verdict).toBe('holds');
    expect(remediesTried).toBe(0);
  });
});

describe('a run that goes wrong or is stopped', () => {
  it('property: samples that cannot be run are counted and their reasons told once', async () => {
    const broken: Evaluate = (variants) =>
      Promise.resolve(
        variants.map((_, at) =>
          at % 2 === 0
            ? { values: {}, limits: {}, unknown: [], fault: 'no such day' }
            : { values: { 'changes/quantity-0/room/usual': 1 }, limits: {}, unknown: [] },
        ),
      );
    const { samples, findings } = await judge(source, { trades: [changes], samples: 20, evaluate: broken });
    expect(samples).toEqual({ asked: 20, ran: 10, faults: ['no such day'] });
    expect(findings[0]!.p50).toBe(1);
  });

  it('property: stopped at once it still tells the nominal findings, and says that it was stopped', async () => {
    const judgement = await judge(source, { trades: [changes], samples: 20, stop: () => true });
    expect(judgement.stopped).toBe(true);
    expect(judgement.samples.ran).toBe(0);
    expect(judgement.findings[0]!.verdict).toBe('holds');
  });

  it('property: progress counts up to all runs', async () => {
    const told: [number, number][] = [];
    await judge(source, { trades: [changes], samples: 10, progress: (done, all) => told.push([done, all]) });
    expect(told.map(([done]) => done)).toEqual(told.map((_, at) => at + 2));
    expect(told.at(-1)![0]).toBe(told.at(-1)![1]);
  });

  it('exact: two measures of one name are a bug, and the message says which', async () => {
    const twice = trade('twice', () => [{ quantity: 'same' }, { quantity: 'same' }]);
    await expect(judge(source, { trades: [twice], samples: 0 })).rejects.toThrow(
      'two measures are called twice/same/room/usual',
    );
  });

  it('exact: variants of one file share what was read; an unreadable edit is an outcome with its complaint', async () => {
    const run = evaluateHere(source, [changes]);
    const outcomes = await run(
      [
        { edits: [], inputs: { 'room.airChangesPerHour': 2 } },
        { edits: [{ set: { 'room.air-changes': '3 /h' } }], inputs: {} },
        { edits: [{ set: { 'room.size': 'large' } }], inputs: {} },
      ],
      { finished: () => undefined, stop: () => false },
    );
    expect(outcomes.map((outcome) => outcome?.values['changes/quantity-0/room/usual'])).toEqual([2, 3, undefined]);
    expect(outcomes[2]!.fault).toBeTruthy();
  });
});

it('cross: a day that is repeated ends as it begins', () => {
  const repeated = sourceOf(
    EMPTY.replace('usual: {}', 'usual: { repeated: yes, room-temperature: { 6:00: 18 °C, 18:00: 24 °C } }'),
  );
  const { record } = runDay(repeated.cabinet, 'usual');
  const column = record.temperatures.names.indexOf('only');
  const width = record.temperatures.names.length;
  const last = record.times.length - 1;
  expect(record.temperatures.values[last * width + column]).toBeCloseTo(record.temperatures.values[column]!, 1);
});
