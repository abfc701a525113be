import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { temperatureSeries, valueAt } from '../day/series.ts';
import type { ReadSource } from '../judge/judge.ts';
import { numbersOfDays, runDay } from '../judge/pipeline.ts';
import { heat } from '../trades/heat/heat.ts';
import { faultsOf } from './fault-list.ts';
import { type FaultRow, type FaultStudy, faults } from './faults.ts';
import { evaluateFaultsHere, faultRunner, faultTrades } from './run-fault.ts';

const CELSIUS = 273.15;
const examples = join(import.meta.dirname, '../../../../examples');

interface Told {
  readonly protection?: string;
  readonly fan?: string;
  readonly rest?: string;
}

/**
 * One machine in one well mixed bay, an exhaust fan, a door. Figures invented: the bay comes to 26 °C, with its bed stuck on to 33 °C,
 * and its owner wants it at 30 °C at most.
 */
function sourceOf({ protection = '{}', fan = '', rest = '' }: Told = {}): ReadSource {
  const text = `
stillair: 1
title: one
room: { temperature: 20 °C, held: yes }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { one: { kind: moving bed 220, bay: only } }
air:
  intake: { from: room, to: only, hole: 80 mm round }
  exhaust: { from: only, to: room, parts: [{ fan: axial 92 mm quiet${fan} }] }
protection: ${protection}
limits: { bay-air: 30 °C }
days: { usual: { jobs: { part: { material: ABS, start: 8:00, for: 8 h } } } }
${rest}
`;
  return read('one.yaml', text);
}

function read(file: string, text: string): ReadSource {
  const answer = readCabinet(file, text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file, text, cabinet: answer.cabinet, origins: answer.origins };
}

const study = (told: Told = {}): Promise<FaultStudy> => faults(sourceOf(told), { trades: [heat], samples: 0 });
const rowOf = ({ faults: rows }: FaultStudy, id: string): FaultRow => rows.find((row) => row.id === id)!;
const kinds = (told: Told): string[] => faultsOf(sourceOf(told).cabinet).map(({ id }) => id);

describe('the list of faults', () => {
  it('exact: has every fault that the parts of a small cabinet can have, and no other', () => {
    expect(kinds({})).toEqual([
      'opening blocked/intake',
      'fan stopped/exhaust',
      'fan reversed/exhaust',
      'bed stuck on/one',
      'seal worn/door',
      'door ajar/door',
      'door left open/door',
      'power cut',
      'room unheated',
      'room hot',
    ]);
  });

  it('exact: a fan that something switches may run on and on, and what it asks may read wrong', () => {
    const more = kinds({ fan: ', control: { thermostat: only, on: 30 °C, off: 28 °C }' }).filter(
      (id) => !kinds({}).includes(id),
    );
    expect(more).toEqual(['fan never stops/exhaust', 'sensor reads high/only', 'sensor reads low/only']);
  });

  it.each(readdirSync(examples).filter((name) => /(?<!\.diary)\.yaml$/.test(name)))(
    'property: every fault of %s is an edit that the file takes, and that changes the cabinet',
    (name) => {
      const text = readFileSync(join(examples, name), 'utf8');
      const { cabinet } = read(name, text);
      const list = faultsOf(cabinet);
      expect(list.length).toBeGreaterThan(10);
      expect(new Set(list.map(({ id }) => id)).size).toBe(list.length);
      for (const { id, edits, otherwise } of list) {
        const first = readCabinet(name, text, edits);
        const answer = first.ok ? first : readCabinet(name, text, otherwise ?? edits);
        expect(answer.ok ? [] : answer.complaints.map(({ what }) => what), id).toEqual([]);
        expect(answer.ok && JSON.stringify(answer.cabinet) !== JSON.stringify(cabinet), id).toBe(true);
      }
    },
  );
});

describe('a fault that is run', () => {
  it('property: no fault gives the nominal run, to the last digit', () => {
    const source = sourceOf();
    const outcome = faultRunner(source, [heat])({ edits: [], inputs: {}, days: ['usual'] });
    expect(outcome).toMatchObject(numbersOfDays(source.cabinet, faultTrades([heat])));
    expect(outcome.passed).toEqual({});
  });

  it('property: with no fault nothing is worse', async () => {
    const source = sourceOf();
    const run = evaluateFaultsHere(source, [heat]);
    // Every fault is replaced by none.
    const well = await faults(source, {
      trades: [heat],
      samples: 0,
      evaluate: (tasks, hooks) =>
        run(
          tasks.map((task) => ({ ...task, edits: [], otherwise: [] })),
          hooks,
        ),
    });
    expect(well.faults.flatMap(({ effects }) => effects)).toEqual([]);
  });

  it('cross: the limit is passed when the air of the edited day gets to it', async () => {
    const source = sourceOf();
    const row = rowOf(await study(), 'bed stuck on/one');
    const effect = row.effects.find(({ id }) => id === 'heat/peak-air/only/usual')!;
    const edited = readCabinet(source.file, source.text, row.edits);
    const { record } = runDay((edited as typeof edited & { ok: true }).cabinet, 'usual');
    expect(valueAt(temperatureSeries(record, 'only'), effect.passed!)).toBeCloseTo(effect.limit.value, 3);
    expect(valueAt(temperatureSeries(record, 'only'), effect.passed! - 60)).toBeLessThan(effect.limit.value);
    expect(effect).toMatchObject({ severity: 'machine', was: 'holds', verdict: 'fails' });
  });

  it('property: how hot a bed gets that is stuck on has a band from the heat that beds lose', async () => {
    const tight = { trades: [heat], samples: 0 };
    const source = read(
      'hot.yaml',
      sourceOf().text.replace(
        'kind: moving bed 220, bay: only',
        'kind: moving bed 220, bay: only, bed: { power: 900 W }',
      ),
    );
    const { effects } = rowOf(await faults(source, tight), 'bed stuck on/one');
    const bed = effects.find(({ id }) => id === 'faults/hottest-bed/one/usual')!;
    expect(bed).toMatchObject({ severity: 'people', was: 'holds', verdict: 'fails' });
    expect(bed.p10).toBeLessThan(bed.value - 3);
    expect(bed.p90).toBeGreaterThan(bed.value + 3);
  });

  it('exact: a print is lost with its power; machine and heater come back by themselves unless something latches', async () => {
    const counts = async (protection: string): Promise<(number | undefined)[]> => {
      const { effects } = rowOf(
        await study({ protection, rest: 'heats: { warm: { what: heater, bay: only, power: 5 W, holds: 25 °C } }' }),
        'power cut',
      );
      return ['prints-lost', 'back-by-itself'].map(
        (of) => effects.find(({ id }) => id === `faults/${of}/cabinet/usual`)?.value,
      );
    };
    expect(await counts('{}')).toEqual([1, 2]);
    expect(await counts('{ latch: yes }')).toEqual([1, undefined]);
  });
});

describe('what catches a fault', () => {
  const thermostat = (degrees: number): Told => ({
    protection: `{ chain: { warm: { what: reset thermostat, bay: only, opens-at: ${degrees} °C } } }`,
  });

  it('exact: without protection nothing does, and the study says that the file names none', async () => {
    const bare = await study();
    expect(bare.faults.filter(({ caught }) => caught !== 'nothing')).toEqual([]);
    expect(bare).not.toHaveProperty('protection');
  });

  it('exact: a thermostat below the limit is in time, one above it late, one that is never reached catches nothing', async () => {
    const stuck = async (degrees: number): Promise<FaultRow> =>
      rowOf(await study(thermostat(degrees)), 'bed stuck on/one');
    const nominal = numbersOfDays(sourceOf().cabinet, [heat]).values['heat/peak-air/only/usual']! - CELSIUS;
    const { passed, limit } = (await stuck(120)).effects.find(({ passed: at }) => at !== undefined)!;
    expect(nominal + 2).toBeLessThan(limit.value - CELSIUS - 1);
    const [early, late, never] = [
      await stuck(limit.value - CELSIUS - 1),
      await stuck(limit.value - CELSIUS + 1),
      await stuck(120),
    ];
    expect([early, late, never].map(({ caught }) => caught)).toEqual(['in time', 'late', 'nothing']);
    const [catching] = early.catches;
    expect(catching).toMatchObject({ device: 'warm', does: 'cuts', day: 'usual' });
    expect(catching!.leaves).toBeCloseTo(passed! - catching!.latest!, 6);
    expect(catching!.leaves).toBeGreaterThan(0);
    expect(late.catches[0]!.leaves).toBeLessThan(0);
  });

  it('exact: a link acts up to 10 K below its mark, so that it is told from when to when', async () => {
    const chain = '{ chain: { link: { what: thermal link, bay: only, opens-at: 32 °C, holds: 20 °C } } }';
    const { catches, edits } = rowOf(await study({ protection: chain }), 'bed stuck on/one');
    const { file, text } = sourceOf({ protection: chain });
    const edited = readCabinet(file, text, edits);
    const { record } = runDay((edited as typeof edited & { ok: true }).cabinet, 'usual');
    const [link] = catches;
    expect(valueAt(temperatureSeries(record, 'only'), link!.earliest)).toBeCloseTo(CELSIUS + 22, 3);
    expect(valueAt(temperatureSeries(record, 'only'), link!.latest!)).toBeCloseTo(CELSIUS + 32, 3);
  });

  it('exact: a device that acts on the day without any fault catches nothing', async () => {
    const { catches } = rowOf(await study(thermostat(22)), 'bed stuck on/one');
    expect(catches).toEqual([]);
  });

  it('exact: a door switch catches a door that stands open as it opens; a stop button catches nothing by itself', async () => {
    const told = (what: string): Told => ({ protection: `{ chain: { guard: { what: ${what}, contact: opens } } }` });
    // Air at the print is too cold with the door open.
    const [guarded, button] = [
      rowOf(await study(told('door switch')), 'door left open/door'),
      rowOf(await study(told('stop button')), 'door left open/door'),
    ];
    expect(guarded.effects.length).toBeGreaterThan(0);
    expect([guarded.caught, button.caught]).toEqual(['in time', 'nothing']);
  });
});

describe('the table', () => {
  it('property: what nothing catches comes first, and in each group the worst; all of it is plain data', async () => {
    const table = await study({
      protection: '{ chain: { warm: { what: reset thermostat, bay: only, opens-at: 29 °C } } }',
    });
    const groups = table.faults
      .filter(({ effects }) => effects.length > 0)
      .map(({ caught }) => ['nothing', 'late', 'in time'].indexOf(caught));
    expect(groups).toEqual([...groups].sort((a, b) => a - b));
    expect(new Set(groups).size).toBeGreaterThan(1);
    expect(JSON.parse(JSON.stringify(table))).toEqual(table);
  });

  it('exact: a stop leaves what was not run, and says so', async () => {
    let finished = 0;
    const stopped = await faults(sourceOf(), {
      trades: [heat],
      samples: 0,
      progress: () => (finished += 1),
      stop: () => finished >= 3,
    });
    expect(stopped.stopped).toBe(true);
    expect(stopped.faults.filter(({ notRun }) => notRun === true)).toHaveLength(stopped.faults.length - 2);
  });
});
