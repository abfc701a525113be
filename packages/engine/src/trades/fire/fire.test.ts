import { airHeat, openingAir } from '@stillair/physics';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Protection } from '../../cabinet/protection.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { DayRun, Measure } from '../measure.ts';
import { cabinetByHand, exhaustFan, filter, hole, pathByHand, type RunByHand, runByHand } from '../run-by-hand.ts';
import { fire } from './fire.ts';

const C = 273.15;
const HAIR = 1e-6;

type Told = Partial<Omit<Protection, 'combustion' | 'figures'>>;

function cabinetWith(protection: Told, more: Partial<Cabinet> = {}): Cabinet {
  return { ...cabinetByHand, ...more, protection: { ...cabinetByHand.protection, ...protection } };
}

function standing(cabinet: Cabinet, quantity: string): Measure {
  const found = fire.standing(cabinet).filter((measure) => measure.quantity === quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

function onDay(run: DayRun, quantity: string): Measure {
  const found = fire.measure(run).filter((measure) => measure.quantity === quantity);
  expect(found.map(({ part }) => part)).toHaveLength(1);
  return found[0]!;
}

const verdict = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);

describe('a file that says nothing of protection', () => {
  const measures = fire.standing(cabinetByHand);

  it('exact: what is missing is unknown, and each says which key to give', () => {
    const missing = measures.filter(({ value }) => value === undefined);
    expect(missing.map(({ quantity }) => quantity)).toEqual([
      'chain-states',
      'restart',
      'left-running',
      'smoke-in-room',
      'stored-fuel',
    ]);
    for (const measure of missing) {
      expect(measure.missing).toContain('protection.');
      expect(verdict(measure)).toBe('unknown');
      expect(measure.remedies).toEqual([]);
    }
  });

  it('property: numbers of fire come with a source and a caution, and nothing is called free of danger', () => {
    const run = runByHand({ flows: { exhaust: 0.01, intake: 0.01 } });
    for (const measure of [...measures, ...fire.measure(run)]) {
      const texts = measure.steps.map(({ text }) => text).join(' ');
      expect(texts, measure.quantity).toMatch(/no substitute|local code decides|smoke is toxic/);
      expect(`${measure.title} ${texts} ${measure.missing ?? ''}`, measure.quantity).not.toMatch(/\bsafe|fireproof/i);
    }
  });

  it('exact: it says with numbers that a closed box does not make a fire harmless', () => {
    const texts = standing(cabinetByHand, 'fuel-load').steps.map(({ text }) => text);
    expect(texts.join(' ')).toMatch(/does not make a fire in an unattended machine harmless.*\d/);
  });
});

describe('chain', () => {
  const device = (what: 'stop button' | 'smoke relay', contact?: 'opens' | 'closes') =>
    ({ what, through: 'wire', ...(contact === undefined ? {} : { contact }) }) as const;

  it('exact: members that open leave one state on; one that closes makes two and fails', () => {
    const good = cabinetWith({
      chain: { stop: device('stop button', 'opens'), smoke: device('smoke relay', 'opens') },
    });
    expect(standing(good, 'chain-states')).toMatchObject({ value: 1 });
    expect(verdict(standing(good, 'chain-states'))).toBe('holds');
    const bad = cabinetWith({
      chain: { stop: device('stop button', 'opens'), smoke: device('smoke relay', 'closes') },
    });
    expect(standing(bad, 'chain-states').value).toBe(2);
    expect(verdict(standing(bad, 'chain-states'))).toBe('fails');
    expect(standing(bad, 'chain-states').remedies[0]!.edits).toEqual([
      { set: { 'protection.chain.smoke.contact': 'opens' } },
    ]);
  });

  it('exact: a member of which nobody says what its contact does leaves it unknown', () => {
    const cabinet = cabinetWith({ chain: { stop: device('stop button') } });
    expect(standing(cabinet, 'chain-states').missing).toContain('protection.chain.stop.contact');
  });

  it('exact: heat is cut off by wire alone, or not at all', () => {
    const link = (through: 'wire' | 'program'): Measure =>
      standing(
        cabinetWith({ chain: { link: { what: 'thermal link', contact: 'opens', through } } }),
        'overheat-devices',
      );
    expect(verdict(link('wire'))).toBe('holds');
    expect(verdict(link('program'))).toBe('fails');
    const none = cabinetWith({ chain: {} });
    expect(verdict(standing(none, 'overheat-devices'))).toBe('fails');
    expect(fire.standing(none).some(({ quantity }) => quantity === 'chain-states')).toBe(false);
  });

  it('exact: a circuit that comes back by itself fails', () => {
    expect(verdict(standing(cabinetWith({ latch: true }), 'restart'))).toBe('holds');
    expect(verdict(standing(cabinetWith({ latch: false }), 'restart'))).toBe('fails');
  });

  it('exact: fans that run on fail whatever else is said; all stopped holds; half said is unknown', () => {
    expect(verdict(standing(cabinetWith({ onAlarm: { fans: 'run' } }), 'left-running'))).toBe('fails');
    expect(verdict(standing(cabinetWith({ onAlarm: { fans: 'stop' } }), 'left-running'))).toBe('unknown');
    expect(verdict(standing(cabinetWith({ onAlarm: { fans: 'stop', heaters: 'cut' } }), 'left-running'))).toBe('holds');
  });
});

describe('detectors', () => {
  const smoke = (where: string, side?: 'before' | 'after') =>
    ({ what: 'smoke', where, rateOfRise: false, ...(side === undefined ? {} : { filter: side }) }) as const;

  it('exact: one in the bay or in its exhaust before the filter counts, one behind the filter does not', () => {
    const of = (detectors: Protection['detectors']): Measure =>
      standing(cabinetWith({ detectors: detectors! }), 'smoke-in-bay');
    expect(verdict(of({ a: smoke('lower') }))).toBe('holds');
    expect(verdict(of({ a: smoke('exhaust', 'before') }))).toBe('holds');
    expect(verdict(of({ a: smoke('exhaust', 'after') }))).toBe('fails');
    expect(verdict(of({}))).toBe('fails');
    expect(of({}).remedies[0]!.edits).toEqual([
      { add: { 'protection.detectors.lower-smoke': { what: 'smoke', where: 'lower' } } },
    ]);
    expect(verdict(standing(cabinetWith({ detectors: { a: smoke('exhaust', 'after') } }), 'smoke-after-filter'))).toBe(
      'fails',
    );
  });

  it('exact: the room has its own', () => {
    expect(verdict(standing(cabinetWith({ detectors: { a: smoke('room') } }), 'smoke-in-room'))).toBe('holds');
    expect(verdict(standing(cabinetWith({ detectors: { a: smoke('lower') } }), 'smoke-in-room'))).toBe('fails');
  });

  it('exact: one that answers to a fast rise beside a bed fails', () => {
    const heat = (rateOfRise: boolean) => ({ what: 'heat', where: 'lower', heatClass: 'A1', rateOfRise }) as const;
    expect(verdict(standing(cabinetWith({ detectors: { a: heat(true) } }), 'rate-of-rise-at-bed'))).toBe('fails');
    expect(verdict(standing(cabinetWith({ detectors: { a: heat(false) } }), 'rate-of-rise-at-bed'))).toBe('holds');
  });

  const withHeat = (heatClass: 'A2' | 'B' | 'C' | 'D', celsius: number, more: RunByHand = {}): DayRun =>
    runByHand({
      ...more,
      cabinet: cabinetWith({ detectors: { hot: { what: 'heat', where: 'lower', heatClass, rateOfRise: false } } }),
      temperatures: { lower: C + celsius },
    });

  it.each([
    ['A2', 50, 35],
    ['B', 65, 40],
    ['C', 80, 55],
    ['D', 95, 70],
  ] as const)('exact: class %s bears %d °C for a moment and %d °C for hours', (heatClass, peak, long) => {
    expect(verdict(onDay(withHeat(heatClass, peak - HAIR), 'heat-detector-peak'))).toBe('holds');
    expect(verdict(onDay(withHeat(heatClass, peak + HAIR), 'heat-detector-peak'))).toBe('fails');
    expect(verdict(onDay(withHeat(heatClass, long - HAIR), 'heat-detector-long'))).toBe('holds');
    expect(verdict(onDay(withHeat(heatClass, long + HAIR), 'heat-detector-long'))).toBe('fails');
  });

  it('cross: a bay held at 60 °C wants class D, at 55 °C class C; class B is wrong though 60 is below its 65', () => {
    const measure = onDay(withHeat('B', 60), 'heat-detector-long');
    expect(verdict(onDay(withHeat('B', 60), 'heat-detector-peak'))).toBe('holds');
    expect(verdict(measure)).toBe('fails');
    expect(measure.remedies[0]!.edits).toEqual([{ set: { 'protection.detectors.hot.class': 'D' } }]);
    expect(onDay(withHeat('B', 55), 'heat-detector-long').remedies[0]!.edits[0]!.set).toEqual({
      'protection.detectors.hot.class': 'C',
    });
  });

  it('exact: two hours above are no long time: the mean of four counts', () => {
    const times = [0, 10, 10, 12, 12, 24].map((hour) => hour * 3600);
    const course = (t: number): number => C + (t >= 36_000 && t < 43_200 ? 46 : 32);
    const run = runByHand({
      times,
      cabinet: cabinetWith({ detectors: { hot: { what: 'heat', where: 'lower', heatClass: 'B', rateOfRise: false } } }),
      temperatures: { lower: course },
    });
    expect(onDay(run, 'heat-detector-long').value).toBeCloseTo(C + 39, 6);
  });

  it('exact: while fans carry 0.02 kg/s off, class B at 30 °C needs 0.02 · 1006 · 39 W', () => {
    const run = withHeat('B', 30, { flows: { exhaust: 0.02, intake: 0.02 } });
    expect(onDay(run, 'heat-detector-fire').value).toBeCloseTo(0.02 * 1006 * 39, 6);
  });
});

describe('links', () => {
  const margin = (what: 'thermal link' | 'reset thermostat', celsius: number): Measure =>
    onDay(
      runByHand({
        cabinet: cabinetWith({
          chain: { it: { what, through: 'wire', contact: 'opens', bay: 'lower', opensAt: C + 94, holds: C + 74 } },
        }),
        temperatures: { lower: C + celsius },
      }),
      what === 'thermal link' ? 'link-margin' : 'thermostat-margin',
    );

  it('exact: a link holds 10 K above the hottest air, a thermostat opens 5 K above it', () => {
    expect(verdict(margin('thermal link', 64 - HAIR))).toBe('holds');
    expect(verdict(margin('thermal link', 64 + HAIR))).toBe('fails');
    expect(verdict(margin('reset thermostat', 89 - HAIR))).toBe('holds');
    expect(verdict(margin('reset thermostat', 89 + HAIR))).toBe('fails');
  });

  it('exact: a link that is too low is offered in the next rating that would do', () => {
    expect(margin('thermal link', 66).remedies[0]!.edits).toEqual([
      { set: { 'protection.chain.it.opens-at': '98 °C' } },
    ]);
  });
});

describe('what feeds a fire', () => {
  it('exact: a fan that moves 60 m³/h feeds 60 kW', () => {
    const run = runByHand({ flows: { exhaust: (60 / 3600) * 1.2, intake: (60 / 3600) * 1.2 } });
    expect(onDay(run, 'fan-fire').value! / 1000).toBeCloseTo(60.6, 0);
  });

  it('exact: air that two fans push through in line is counted once', () => {
    const paths = {
      intake: pathByHand('room', 'lower', 0.1, [hole(0.092), exhaustFan()]),
      exhaust: pathByHand('lower', 'room', 0.75, [filter, exhaustFan()]),
    };
    const run = runByHand({ cabinet: cabinetWith({}, { paths }), flows: { exhaust: 0.02, intake: 0.02 } });
    expect(onDay(run, 'fan-fire').value).toBeCloseTo(0.02 * airHeat(), 6);
  });

  it('exact: the open door by Kawagoe’s law', () => {
    expect(standing(cabinetByHand, 'door-fire').value).toBeCloseTo(openingAir(0.8 * 0.85, 0.85) * airHeat(), 6);
  });

  it('property: a flap that the alarm shuts, a better seal and a smaller hole feed less', () => {
    const of = (cabinet: Cabinet): number => standing(cabinet, 'vent-fire').value!;
    const withFlap = cabinetWith(
      {},
      {
        paths: {
          ...cabinetByHand.paths,
          intake: pathByHand('room', 'lower', 0.1, [hole(0.092), { part: 'flap', opensAt: 2, leakArea: 1e-4 }]),
        },
      },
    );
    expect(of(cabinetWith({ onAlarm: { flaps: 'shut' } }, { paths: withFlap.paths }))).toBeLessThan(of(withFlap));
    const door = { ...cabinetByHand.doors['front']!, sealGap: 0.0001 };
    expect(of(cabinetWith({}, { doors: { front: door } }))).toBeLessThan(of(cabinetByHand));
    const paths = { ...cabinetByHand.paths, intake: pathByHand('room', 'lower', 0.1, [hole(0.04)]) };
    expect(of(cabinetWith({}, { paths }))).toBeLessThan(of(cabinetByHand));
  });

  it('property: order of magnitude: a bay of 0.4 m³ burns some hundred kJ by its own air, its gaps feed kilowatts', () => {
    expect(standing(cabinetByHand, 'own-oxygen').value! / 1e6).toBeCloseTo(0.42, 1);
    expect(standing(cabinetByHand, 'growth-time').value).toBeGreaterThan(20);
    expect(standing(cabinetByHand, 'growth-time').value).toBeLessThan(100);
    const vent = standing(cabinetByHand, 'vent-fire').value!;
    expect(vent).toBeGreaterThan(3000);
    expect(vent).toBeLessThan(100_000);
  });
});

describe('what is kept and what puts it out', () => {
  const stored = (of: string, where: string): Cabinet => cabinetWith({ stored: { it: { of, mass: 2, where } } });

  it('exact: spools inside fail by their mass, outside hold', () => {
    expect(standing(stored('ABS', 'lower'), 'stored-fuel').value).toBe(2);
    expect(verdict(standing(stored('ABS', 'lower'), 'stored-fuel'))).toBe('fails');
    expect(verdict(standing(stored('ABS', 'outside'), 'stored-fuel'))).toBe('holds');
    expect(verdict(standing(cabinetWith({ stored: {} }), 'stored-fuel'))).toBe('holds');
    expect(
      standing(stored('ABS', 'lower'), 'fuel-load').value! - standing(cabinetByHand, 'fuel-load').value!,
    ).toBeCloseTo(2 * 36e6, 0);
  });

  it('exact: a spool that feeds a machine from its bay is no spare, which the title says, and its mass is told', () => {
    const spool = { ...cabinetByHand.spools['left-ABS']!, where: 'lower', mass: 0.8 };
    const hung = { spools: { 'left-ABS': spool } };
    const told = (measure: Measure): number | undefined =>
      measure.steps.find(({ text }) => text.startsWith('not counted here'))?.value;
    const measure = standing(cabinetWith({ stored: {} }, hung), 'stored-fuel');
    expect(measure.title).toContain('spare spools');
    expect(measure.value).toBe(0);
    expect(told(measure)).toBe(0.8);
    expect(told(standing(cabinetWith({ stored: {} }, { spools: {} }), 'stored-fuel'))).toBeUndefined();
  });

  it('exact: one can of spray in a bay fails', () => {
    expect(verdict(standing(stored('aerosol', 'lower'), 'stored-vapour'))).toBe('fails');
    expect(verdict(standing(stored('aerosol', 'outside'), 'stored-vapour'))).toBe('holds');
  });

  it('exact: 2 kg of carbon dioxide are 2.7 % of a room of 40 m³ and hold; of one of 30 m³ they fail', () => {
    const of = (height: number): Measure =>
      standing(
        cabinetWith(
          { extinguisher: { agent: 'carbon dioxide', mass: 2 } },
          { room: { ...cabinetByHand.room, size: { width: 4, depth: 4, height } } },
        ),
        'extinguisher-gas',
      );
    expect(of(2.5).value).toBeCloseTo(2 / 1.84 / 40, 3);
    expect(verdict(of(2.5))).toBe('holds');
    expect(verdict(of(1.9))).toBe('fails');
    const water = cabinetWith({ extinguisher: { agent: 'water', mass: 6 } });
    expect(verdict(standing(water, 'extinguisher-agent'))).toBe('fails');
    expect(fire.standing(water).some(({ quantity }) => quantity === 'extinguisher-gas')).toBe(false);
  });

  it('exact: one that is only listed among the fittings is asked for its agent, and each remedy names its own key', () => {
    const red = { what: 'extinguisher', where: 'room', cables: {}, reached: true } as const;
    const of = (agent: string): Cabinet => ({ ...cabinetByHand, fittings: { red: { ...red, agent } } });
    expect(verdict(standing(of('powder'), 'extinguisher-agent'))).toBe('holds');
    const foam = standing(of('foam'), 'extinguisher-agent');
    expect(verdict(foam)).toBe('fails');
    expect(foam.remedies[0]!.edits).toEqual([{ set: { 'fittings.red.agent': 'clean agent' } }]);
    const told = {
      ...of('foam'),
      protection: { ...cabinetByHand.protection, extinguisher: { agent: 'powder', mass: 2 } },
    } as const;
    expect(verdict(standing(told, 'extinguisher-agent'))).toBe('holds');
  });

  it('exact: six hours of print of which two fall into the desk’s hours', () => {
    const people = { desk: { at: [0, -1, 1] as const, hours: [[9 * 3600, 11 * 3600]] as const } };
    expect(onDay(runByHand({ cabinet: cabinetWith({}, { people }) }), 'alone').value).toBe(4 * 3600);
  });
});
