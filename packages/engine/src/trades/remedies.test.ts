import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import type { Remedy } from './measure.ts';
import type { FanPart } from './plant.ts';
import {
  cleanerAir,
  coolerBay,
  dryBay,
  electronicsOutside,
  fanWithJob,
  flapIn,
  insulateFace,
  inwardLeaks,
  largerFilter,
  largerInlet,
  noStall,
  quieterFan,
  runOn,
  stillerAir,
  strongerFan,
  warmerBay,
} from './remedies.ts';

/** Written in the short forms, and in the long ones. Figures invented. */
const SHORT = `
stillair: 1
title: short
cabinet: { inside: 800 mm x 600 mm x 1750 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { lower: { z: 0 mm to 850 mm }, upper: { z: 870 mm to 1750 mm } }
shelves: { deck: { between: [lower, upper], holes: { up: { hole: 100 mm round } } } }
machines: { left: { kind: moving bed 220, bay: lower }, right: { kind: moving bed 220, bay: upper } }
sensors: { top: { bay: upper } }
air:
  intake: { from: room, to: lower, hole: 80 mm round }
  exhaust: { from: upper, to: room, parts: [ { filter: pleated H13 150 mm }, { fan: axial 92 mm quiet, control: { thermostat: top, on: 32 °C, off: 30 °C } } ] }
days: { usual: { jobs: { bracket: { machine: left, material: ABS, start: 9:00, for: 6 h } } } }
`;
const LONG = `
stillair: 1
title: long
cabinet:
  inside: 800 mm x 600 mm x 900 mm
  made-of: [plywood 18 mm, cork 10 mm]
  doors: { front: { made-of: acrylic 5 mm, bays: [only] } }
bays: { only: { z: 0 mm to 900 mm } }
machines: { one: { kind: moving bed 220, bay: only } }
air:
  intake: { from: room, to: only, hole: 60 mm round, parts: [ { fan: axial 60 mm quiet } ] }
  exhaust: { from: only, to: room, hole: 90 mm round, parts: [ { carbon: granular 25 mm 150 mm }, { fan: blower 97 mm, control: never } ] }
days: { usual: { jobs: { part: { material: PLA, start: 9:00, for: 2 h } } } }
`;

function cabinetOf(text: string): Cabinet {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

function edited(text: string, { says, edits }: Remedy): Cabinet {
  const answer = readCabinet('test.yaml', text, edits);
  if (!answer.ok) throw new Error(`${says}: ${answer.complaints.map(({ what }) => what).join('; ')}`);
  return answer.cabinet;
}

function allFor(cabinet: Cabinet): Remedy[] {
  const bays = Object.keys(cabinet.bays);
  const paths = Object.keys(cabinet.paths);
  const machines = Object.keys(cabinet.machines);
  const fanned = paths.filter((id) => cabinet.paths[id]!.parts.some(({ part }) => part === 'fan'));
  return [
    ...bays.flatMap((bay) => [
      ...coolerBay(cabinet, bay),
      ...warmerBay(cabinet, bay),
      ...dryBay(cabinet, bay),
      ...largerInlet(cabinet, bay),
      ...inwardLeaks(cabinet, bay),
      ...runOn(cabinet, bay),
    ]),
    ...machines.flatMap((machine) => [
      ...electronicsOutside(cabinet, machine),
      ...fanWithJob(cabinet, fanned, machine),
    ]),
    ...fanned.flatMap((id) => [
      ...strongerFan(cabinet, id),
      ...largerFilter(cabinet, id),
      ...noStall(cabinet, id),
      ...flapIn(cabinet, id),
    ]),
    ...['intake', 'exhaust'].flatMap((id) => stillerAir(cabinet, id)),
    ...['faces.back', 'faces.top', ...Object.keys(cabinet.doors).map((id) => `doors.${id}`)].flatMap((part) =>
      insulateFace(cabinet, part),
    ),
    ...quieterFan(cabinet),
    ...cleanerAir(cabinet, 'particles'),
    ...cleanerAir(cabinet, 'vapours'),
  ];
}

describe.each([
  ['short', SHORT],
  ['long', LONG],
])('remedies for a file in its %s forms', (_, text) => {
  const cabinet = cabinetOf(text);
  const remedies = allFor(cabinet);

  it('property: there are many, and each is an edit that the file takes and that changes the cabinet', () => {
    expect(remedies.length).toBeGreaterThan(20);
    for (const remedy of remedies) expect(edited(text, remedy), remedy.says).not.toEqual(cabinet);
  });

  it('property: each says what it does in a few words, without the units of one country only', () => {
    for (const { says } of remedies) {
      expect(says.length).toBeLessThan(90);
      expect(says).not.toMatch(/undefined|NaN|\bsafe/);
    }
  });
});

describe('what a remedy changes', () => {
  const cabinet = cabinetOf(SHORT);

  it('exact: a larger inlet has twice the area and stays where it was', () => {
    const [remedy] = largerInlet(cabinet, 'upper');
    const { intake } = edited(SHORT, remedy!).paths;
    expect(intake!.parts).toMatchObject([{ part: 'hole', section: { diameter: 0.113 } }]);
    expect(intake!.place).toEqual(cabinet.paths['intake']!.place);
  });

  it('exact: where air goes through a machine’s own chamber an inlet still leads to a bay', () => {
    const text = `
stillair: 1
cabinet: { inside: 900 mm x 650 mm x 800 mm, made-of: plywood 12 mm }
bays: { one: {} }
machines: { new: { kind: chambered 250, bay: one } }
air:
  inner: { from: new.chamber, to: one, parts: [{ fan: axial 40 mm strong }] }
  out: { from: new.chamber, to: outdoors, parts: [{ fan: axial 40 mm strong }] }
days: { usual: { jobs: { one: { material: PC, start: 9:00, for: 2 h } } } }
`;
    const cabinet = cabinetOf(text);
    for (const place of ['one', 'new.chamber'])
      for (const remedy of largerInlet(cabinet, place))
        expect(Object.values(edited(text, remedy).paths).filter(({ to }) => to === 'one')).toHaveLength(2);
    expect(largerInlet(cabinet, 'one')).toHaveLength(1);
    const { inner: _, ...alone } = cabinet.paths;
    expect(largerInlet({ ...cabinet, paths: alone }, 'new.chamber')).toEqual([]);
    for (const remedy of coolerBay(cabinet, 'one')) expect(edited(text, remedy), remedy.says).not.toEqual(cabinet);
  });

  it('exact: a stronger fan has more pressure in the same frame; the other is a blower', () => {
    const [axial, blower] = strongerFan(cabinet, 'exhaust').map(
      (remedy) => edited(SHORT, remedy).paths['exhaust']!.parts[1] as FanPart,
    );
    expect(axial!.kind).toBe('axial 92 mm strong');
    expect(blower!.kind).toMatch(/blower/);
    expect(blower!.curve[0]![1]).toBeGreaterThan(axial!.curve[0]![1]);
  });

  it('exact: a larger filter keeps its class', () => {
    const [remedy] = largerFilter(cabinet, 'exhaust');
    expect(edited(SHORT, remedy!).paths['exhaust']!.parts[0]).toMatchObject({ kind: 'pleated H13 200 mm' });
  });

  it('exact: an earlier thermostat keeps its sensor and its hysteresis', () => {
    const remedy = coolerBay(cabinet, 'upper').find(({ says }) => says.includes('earlier'))!;
    const [, fan] = edited(SHORT, remedy).paths['exhaust']!.parts;
    expect(fan).toMatchObject({ control: { kind: 'thermostat', sensor: 'top' } });
    const { control } = fan as { control: { on: number; off: number } };
    expect([control.on, control.off].map((kelvin) => kelvin - 273.15).map(Math.round)).toEqual([29, 27]);
  });

  it('exact: a sealed short-form door keeps its pane', () => {
    const remedy = inwardLeaks(cabinet, 'lower').find(({ says }) => says.startsWith('seal'))!;
    const { door } = edited(SHORT, remedy).doors;
    expect(door!.sealGap).toBeLessThan(cabinet.doors['door']!.sealGap);
    expect(door!.build.layers).toEqual(cabinet.doors['door']!.build.layers);
  });

  it('exact: outdoors is where the exhaust then ends', () => {
    const remedy = cleanerAir(cabinet, 'particles').find(({ says }) => says.includes('outdoors'))!;
    expect(edited(SHORT, remedy).paths['exhaust']!.to).toBe('outdoors');
  });

  it('exact: a fan switched by jobs runs from before to after them', () => {
    const [remedy] = fanWithJob(cabinet, ['exhaust'], 'left');
    expect(edited(SHORT, remedy!).paths['exhaust']!.parts[1]).toMatchObject({
      control: { kind: 'job', machines: ['left', 'right'], lead: 300, runOn: 7200 },
    });
  });

  it('property: a cabinet without any fan is offered one', () => {
    const still = SHORT.replace(/\n {2}exhaust:.*/, '');
    const remedy = coolerBay(cabinetOf(still), 'lower').find(({ says }) => says.startsWith('an exhaust fan'))!;
    const added = edited(still, remedy);
    expect(Object.values(added.paths).filter(({ to }) => to === 'room')).toHaveLength(1);
  });
});
