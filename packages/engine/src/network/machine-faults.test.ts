import { describe, expect, it } from 'vitest';
import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet, Job } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { setInput } from '../cabinet/set-input.ts';
import type { DayRecord } from '../day/record.ts';
import { seriesOf, temperatureSeries, valueAt } from '../day/series.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { assemble } from './assemble.ts';

const HOUR = 3600;
const CELSIUS = 273.15;

interface Found {
  readonly cabinet: Cabinet;
  readonly origins: Origins;
}

const cabinetOf = (job: string, day?: string): Cabinet => read('6 h, mass: 60 g', job, day).cabinet;

function read(length: string, job: string, day: string = ''): Found {
  const text = `
stillair: 1
room: { temperature: 20 °C, held: yes }
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { only: { air-zones: 1 } }
machines: { one: { kind: moving bed 220, bay: only } }
air:
  intake: { from: room, to: only, hole: 80 mm round }
  exhaust: { from: only, to: room, parts: [{ fan: axial 92 mm quiet }] }
heats: { lamp: { kind: LED strip 10 W, bay: only }, warm: { what: heater, bay: only, power: 50 W, holds: 30 °C, control: always } }
days: { d: { jobs: { part: { material: ABS, start: 8:00, for: ${length}${job} } }${day} } }
`;
  const answer = readCabinet('fault.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer;
}

const run = (cabinet: Cabinet): DayRecord => simulateDay(assemble(cabinet, 'd').network);
const bed = (record: DayRecord, time: number): number => valueAt(temperatureSeries(record, 'one.bed'), time) - CELSIUS;
const power = (record: DayRecord, of: string, time: number): number =>
  valueAt(seriesOf(record.times, record.bedPowers, of), time);

describe('a bed that is stuck on', () => {
  const cabinet = cabinetOf(', bed-stuck: yes');
  const record = run(cabinet);
  const full = cabinet.machines['one']!.bed.powerMax;

  it('exact: takes its full power from the start of the job to the end of the day, and none before', () => {
    expect(power(record, 'one', 7 * HOUR)).toBe(0);
    for (const hour of [9, 13, 15, 23]) expect(power(record, 'one', hour * HOUR)).toBe(full);
  });

  it('property: gets hotter than the one that is asked for its temperature, and stays hot after the job', () => {
    const well = run(cabinetOf(''));
    expect(bed(well, 12 * HOUR)).toBeCloseTo(cabinet.days['d']!.jobs['part']!.bed - CELSIUS, 0);
    expect(bed(record, 12 * HOUR)).toBeGreaterThan(bed(well, 12 * HOUR) + 20);
    expect(bed(record, 22 * HOUR)).toBeGreaterThan(bed(well, 22 * HOUR) + 100);
  });

  it('limit: without the fault a file gives the network that it gave before there were faults', () => {
    expect(assemble(cabinetOf(', bed-stuck: no'), 'd').network).toEqual(assemble(cabinetOf(''), 'd').network);
  });
});

describe('a power cut', () => {
  const cabinet = cabinetOf('', ', power-cut: 10:00 to 12:00');
  const record = run(cabinet);

  it('exact: ends the print, whose mass is that of the part that was printed', () => {
    expect(cabinet.days['d']!.jobs['part']).toMatchObject({ start: 8 * HOUR, duration: 2 * HOUR });
    expect(cabinet.days['d']!.jobs['part']!.mass).toBeCloseTo(0.02, 12);
  });

  it('property: no sample prints what the cut has kept from being printed', () => {
    for (const length of ['6 h (5 h to 7 h), mass: 60 g (50 g to 80 g)', '6 h', '110 min (100 min to 180 min)']) {
      const { cabinet: cut, origins } = read(length, '', ', power-cut: 10:00 to 12:00');
      const whole = read(length, '');
      const jobOf = (of: Cabinet): Job => of.days['d']!.jobs['part']!;
      const rateOf = ({ cabinet: of }: Found): number => jobOf(of).mass / jobOf(of).duration;
      const mass = 'days.d.jobs.part.mass';
      expect(rateOf({ cabinet: cut, origins })).toBeCloseTo(rateOf(whole), 12);
      for (const { path, spread } of assumedInputs(origins).filter(({ path: of }) => of.startsWith('days.d.jobs.'))) {
        expect(setInput(cut, path, spread.p50), path).toEqual(cut);
        expect(jobOf(setInput(cut, path, spread.p90)).duration).toBeLessThanOrEqual(2 * HOUR);
        if (path !== mass) continue;
        const { spread: unhindered } = whole.origins.get(mass)!;
        expect(spread.p90 / spread.p50).toBeCloseTo(unhindered!.p90 / unhindered!.p50, 12);
      }
    }
  });

  it('exact: stops fan, heater and bed while it lasts; fan and heater come back by themselves, the print does not', () => {
    const fan = (time: number): number => valueAt(seriesOf(record.times, record.fanSpeeds, 'exhaust.fan'), time);
    expect([9, 11, 13].map((hour) => fan(hour * HOUR))).toEqual([1, 0, 1]);
    expect(power(record, 'heater warm', 11 * HOUR)).toBe(0);
    expect([11, 13].map((hour) => power(record, 'one', hour * HOUR))).toEqual([0, 0]);
    expect(power(record, 'one', 9 * HOUR)).toBeGreaterThan(20);
  });

  it('exact: a machine without power gives off nothing at all', () => {
    const { network } = assemble(cabinet, 'd');
    const mode = network.schedule.find(({ start }) => start === 10 * HOUR)!.mode;
    expect(network.machines.find(({ name }) => name === 'one')!.modes.find(({ name }) => name === mode)).toEqual({
      name: mode,
      powers: [],
      emissions: [],
    });
  });

  it('exact: a print that would begin meanwhile is not begun; over midnight it lasts to the end of the day', () => {
    expect(Object.keys(cabinetOf('', ', power-cut: 7:00 to 9:00').days['d']!.jobs)).toEqual([]);
    expect(cabinetOf('', ', power-cut: 22:00 to 3:00').days['d']!.powerCut).toEqual([22 * HOUR, 24 * HOUR]);
  });
});
