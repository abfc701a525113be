import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { ReadSource } from '../judge/judge.ts';
import { numbersOfDays } from '../judge/pipeline.ts';
import { airQuality } from '../trades/air-quality/air-quality.ts';
import { heat } from '../trades/heat/heat.ts';
import { type Paring, pare } from './pare.ts';
import { editsWithout, pareableParts } from './pare-parts.ts';

/** A bay that its exhaust keeps below the owner's limit, and parts that do nothing for it. Figures invented. */
function sourceOf(limit: number, more: string = ''): ReadSource {
  const text = `
stillair: 1
title: one
room: { temperature: 20 °C, held: yes }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { one: { kind: moving bed 220, bay: only, stands-on: { slab: 400 mm x 400 mm x 40 mm, foam: bonded foam 20 mm } } }
air:
  intake: { from: room, to: only, hole: 80 mm round }
  exhaust: { from: only, to: room, parts: [{ filter: prefilter mat 120 mm }, { fan: axial 92 mm quiet }] }
sensors: { idle: { bay: only } }
heats: { night: { kind: LED strip 5 W, bay: only, control: { timer: 2:00 to 3:00 } } }
limits: { bay-air: ${limit} °C }
days: { usual: { jobs: { part: { material: ABS, start: 8:00, for: 8 h } } } }
${more}
`;
  const answer = readCabinet('one.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return { file: 'one.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
}

const PEAK = 'heat/peak-air/only/usual';
const trades = [
  {
    ...heat,
    measure: (run: Parameters<NonNullable<typeof heat.measure>>[0]) =>
      heat.measure!(run).filter(({ quantity }) => quantity === 'peak-air'),
  },
];
const pared = (source: ReadSource): Promise<Paring> => pare(source, { trades, samples: 0 });
const idle = ({ parts }: Paring): string[] =>
  parts.filter(({ misses, fault }) => misses.length === 0 && fault === undefined).map(({ id }) => id);

describe('pare', () => {
  it('exact: where only the hottest air has a limit, the exhaust and its fan are missed and what does not cool is not', async () => {
    const paring = await pared(sourceOf(35));
    const missed = paring.parts.filter(({ misses }) => misses.length > 0);
    expect(missed.map(({ id }) => id)).toEqual(['air.exhaust.parts.1', 'air.exhaust']);
    for (const { misses } of missed)
      expect(misses.map(({ id, was, verdict }) => [id, was, verdict])).toEqual([[PEAK, 'holds', 'fails']]);
    expect(idle(paring)).toEqual(
      expect.arrayContaining(['heats.night', 'sensors.idle', 'machines.one.stands-on', 'air.exhaust.parts.0']),
    );
    expect(paring.together).not.toContain('air.exhaust');
  });

  it('property: a part that a failing finding needs is never taken out, alone or with others', async () => {
    const paring = await pared(sourceOf(22));
    for (const id of ['air.exhaust.parts.1', 'air.exhaust', 'air.intake']) {
      const row = paring.parts.find((part) => part.id === id)!;
      expect(
        row.misses.map(({ was, verdict }) => [was, verdict]),
        id,
      ).toEqual([['fails', 'fails']]);
      expect(paring.together).not.toContain(id);
    }
  });

  it('property: without all that goes together no limit is broken that was kept', async () => {
    const source = sourceOf(35);
    const { together, edits } = await pared(source);
    expect(together.length).toBeGreaterThan(2);
    const answer = readCabinet(source.file, source.text, edits);
    expect(answer.ok).toBe(true);
    const bare = (answer as typeof answer & { ok: true }).cabinet;
    expect(Object.keys(bare.heats)).toEqual([]);
    expect(numbersOfDays(bare, trades).values[PEAK]).toBeLessThan(273.15 + 35);
    expect(numbersOfDays(source.cabinet, trades).values[PEAK]).toBeLessThan(273.15 + 35);
  });

  it('exact: the last fan is missed by what a job gives off while no fan draws, though without any fan nobody asks for it', async () => {
    const release = 'air-quality/unguarded-release/one.part/usual';
    const only: typeof trades = [
      {
        ...heat,
        measure: (run) => airQuality.measure!(run).filter(({ quantity }) => quantity === 'unguarded-release'),
      },
    ];
    const source = sourceOf(35).text.replace('{ fan: axial 92 mm quiet }', '{ fan: axial 92 mm quiet, control: job }');
    const answer = readCabinet('one.yaml', source);
    expect(answer.ok).toBe(true);
    const { cabinet, origins } = answer as typeof answer & { ok: true };
    const { parts } = await pare({ file: 'one.yaml', text: source, cabinet, origins }, { trades: only, samples: 0 });
    for (const id of ['air.exhaust.parts.1', 'air.exhaust'])
      expect(parts.find((part) => part.id === id)!.misses).toMatchObject([
        { id: release, was: 'holds', verdict: 'fails', value: 1 },
      ]);
  });

  it('exact: what the dearest saves is its price, and nothing is paid for what was made', async () => {
    const source = sourceOf(35);
    const { parts } = await pared(source);
    const fan = parts.find(({ id }) => id === 'air.exhaust.parts.1')!;
    expect(fan.saves).toMatchObject(
      source.cabinet.prices['paths.exhaust.parts.1'] === undefined
        ? {}
        : { low: source.cabinet.prices['paths.exhaust.parts.1'].low },
    );
    expect(parts.find(({ id }) => id === 'air.intake')!.saves).toMatchObject({ low: 0, high: 0 });
  });

  it('exact: of two parts of one list the later goes first, and a part of a path that goes whole is not named', () => {
    const source = sourceOf(35);
    const parts = pareableParts(source.cabinet);
    const of = (...ids: string[]) =>
      editsWithout(
        source.cabinet,
        parts.filter(({ id }) => ids.includes(id)),
      )[0];
    expect(of('air.exhaust.parts.0', 'air.exhaust.parts.1')).toEqual([
      { remove: ['air.exhaust.parts.1', 'air.exhaust.parts.0'] },
    ]);
    expect(of('air.exhaust', 'air.exhaust.parts.1')?.at(-1)).toEqual({ remove: ['air.exhaust'] });
  });

  it('exact: a supply that then feeds nothing goes with what it fed, and the strip keeps the rest', async () => {
    const power =
      'power: { strips: { s: { sockets: 4, feeds: [one, small] } }, supplies: { small: { voltage: 12 V, power: 20 W, feeds: [night] } }, wires: { lead: { feeds: night, section: 0.5 mm2, length: 1 m } } }';
    const source = sourceOf(35, power);
    const row = (await pared(source)).parts.find(({ id }) => id === 'heats.night')!;
    expect(row.fault).toBeUndefined();
    expect(row.edits).toEqual([
      { set: { 'power.strips.s.feeds': ['one'] } },
      { remove: ['power.supplies.small', 'power.wires.lead'] },
      { remove: ['heats.night'] },
    ]);
  });

  it('exact: a part that the file cannot do without is told, with the reason', async () => {
    const { parts } = await pared(
      sourceOf(35, 'protection: { detectors: { smoke: { what: smoke, where: exhaust } } }'),
    );
    expect(parts.find(({ id }) => id === 'air.exhaust')!.fault).toMatch(/exhaust/);
  });

  it('property: plain data; a stop leaves parts that were not run', async () => {
    const paring = await pared(sourceOf(35));
    expect(JSON.parse(JSON.stringify(paring))).toEqual(paring);
    const stopped = await pare(sourceOf(35), { trades, samples: 0, stop: () => true });
    expect(stopped.stopped).toBe(true);
    expect(stopped.together).toEqual([]);
    expect(stopped.parts.filter(({ notRun }) => notRun === true).length).toBeGreaterThan(3);
  });
});
