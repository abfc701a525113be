import { describe, expect, it } from 'vitest';
import type { Cabinet } from './cabinet.ts';
import { formatComplaint } from './complaint.ts';
import { parseConductor } from './conductor-form.ts';
import { readCabinet } from './read-cabinet.ts';

const file = (more: string, currency = 'EUR'): string => `stillair: 1
currency: ${currency}
cabinet: { inside: 800 mm x 600 mm x 850 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { left: { kind: moving bed 220 }, right: { kind: moving bed 180 } }
air:
  exhaust: { from: inside, to: room, parts: [ { fan: axial 92 mm quiet } ] }
heats: { light: { what: lamp, power: 20 W }, dry: { kind: filament drier 50 W } }
days:
  usual:
    jobs:
      a: { machine: left, material: ABS, start: 9:00, for: 2 h }
      b: { machine: right, material: PLA, start: 9:00, for: 2 h }
      c: { machine: left, material: PLA, start: 12:00, for: 2 h }
${more}`;

function cabinetOf(more = '', currency = 'EUR'): Cabinet {
  const answer = readCabinet('test.yaml', file(more, currency));
  if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
  return answer.cabinet;
}

describe('electricity that a file says nothing of', () => {
  it.each([
    ['EUR', 'EU', 230, 16, 16, 0.03],
    ['GBP', 'UK', 230, 32, 13, 0.03],
    ['USD', 'US', 120, 15, 15, 0],
    ['JPY', 'other', 230, 10, 10, 0.03],
  ])('exact: prices in %s suggest the usual values of %s', (currency, region, voltage, circuit, strip, rcd) => {
    const { power } = cabinetOf('', currency);
    expect(power).toMatchObject({ region, voltage, circuit, rcd });
    expect(power.strips['strip']!.rating).toBe(strip);
  });

  it('exact: one supply feeds fans and lamps, one strip feeds it and everything else', () => {
    const { supplies, strips } = cabinetOf().power;
    expect(supplies['low-voltage']).toMatchObject({ feeds: ['exhaust', 'light'], plug: 'bulky' });
    expect(supplies['low-voltage']!.watts).toBeGreaterThanOrEqual(25);
    expect(strips['strip']!.feeds).toEqual(['left', 'right', 'low-voltage', 'dry']);
  });

  it('exact: the first strip that names nothing takes what the others leave', () => {
    const { strips } = cabinetOf('power: { strips: { a: { feeds: left }, b: {}, c: {} } }').power;
    expect(strips['b']!.feeds).toEqual(['right', 'low-voltage', 'dry']);
    expect(strips['c']!.feeds).toEqual([]);
  });
});

describe('a tariff', () => {
  const tariffOf = (text: string): (readonly [number, number])[] =>
    cabinetOf(`power: { tariff: ${text} }`).power.tariff.map(([time, price]) => [time, price * 3.6e6]);

  it('exact: each price counts from its time; before the first, the last of the day before', () => {
    const steps = tariffOf('{ 7:00: 0.2 EUR/kWh, 23:00: 0.1 EUR/kWh }');
    expect(steps.map(([time]) => time / 3600)).toEqual([0, 7, 23]);
    expect(steps.map(([, price]) => Math.round(price * 1000) / 1000)).toEqual([0.1, 0.2, 0.1]);
  });

  it('exact: one price is the whole day’s', () => {
    expect(tariffOf('25 ct/kWh')[0]![1]).toBeCloseTo(0.25, 12);
  });
});

describe('spools that a file says nothing of', () => {
  it('exact: one for each machine and material, in the bay of the machine, on bearings', () => {
    const { spools } = cabinetOf();
    expect(Object.keys(spools)).toEqual(['left-ABS', 'left-PLA', 'right-PLA']);
    expect(spools['right-PLA']).toMatchObject({ machine: 'right', where: 'inside', holder: 'bearing', mass: 1 });
  });

  it('exact: a machine with a spool of its own gets no other', () => {
    const { spools } = cabinetOf('spools: { white: { machine: left, material: PLA, mass: 5 kg } }');
    expect(Object.keys(spools)).toEqual(['white', 'right-PLA']);
    expect(spools['white']).toMatchObject({ diameter: 0.35, empty: 1.1 });
  });
});

it('exact: a cross-section is square millimetres or a gauge', () => {
  expect(parseConductor('0.75 mm2')).toEqual({ area: 0.75e-6 });
  expect(parseConductor('AWG 18')).toMatchObject({ gauge: 18 });
  expect(parseConductor('0.75')).toMatchObject({ mend: 'write 0.75 mm2 or 0.75 AWG' });
});
