import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { Measure } from '../measure.ts';
import { standOf } from './stand.ts';
import { vibration } from './vibration.ts';

const HAIR = 1e-6;

/** The worked machine: 10 kg, on a floor that does not give. All figures invented. */
function text(stands: string, kind = 'moving bed 220', more = ''): string {
  return `stillair: 1
cabinet: { inside: 700 mm x 600 mm x 700 mm, made-of: plywood 18 mm }
machines: { one: { kind: ${kind}, mass: 10 kg, feet: 300 mm x 300 mm, shaking: { speed: 100 mm/s, acceleration: 3 m/s2, bed-mass: 1.5 kg, stroke: 5 mm }${stands === '' ? '' : `, stands-on: ${stands}`}${more} } }
parts: { foams: { test foam: { stiffness: 100 kPa, stiffening: 1.5, damping: 10 %, creep: 10 %, usable-strain: 20 % } } }
days: { usual: {} }
`;
}

function read(stands: string, kind?: string, more?: string): Cabinet {
  const answer = readCabinet('cabinet.yaml', text(stands, kind, more));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

function find(cabinet: Cabinet, quantity: string): Measure {
  const found = vibration.standing!(cabinet).filter((measure) => measure.quantity === quantity);
  expect(found, quantity).toHaveLength(1);
  return found[0]!;
}

const verdict = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);
const SLAB = 'slab: 400 mm x 400 mm x 40 mm, slab-density: 2343.75 kg/m3';
const SHEET = `{ ${SLAB}, foam: test foam 20 mm }`;
const PADS = `{ ${SLAB}, foam: test foam 25 mm, pads: 4, pad-size: 60 mm x 60 mm }`;

describe('a machine on slab and foam', () => {
  it('cross: 25 kg on a full sheet bounce at 34.9 Hz, on four pads at 9.4 Hz', () => {
    expect(find(read(SHEET), 'upright-frequency').value!).toBeCloseTo(34.87, 1);
    expect(find(read(PADS), 'upright-frequency').value!).toBeCloseTo(9.36, 2);
  });

  it('cross: the sheet is pressed by 1.5 % and 0.31 mm, the pads by 17 %', () => {
    expect(find(read(SHEET), 'foam-strain').value!).toBeCloseTo(0.0153, 4);
    expect(find(read(PADS), 'foam-strain').value!).toBeCloseTo(0.17, 2);
  });

  it('cross: steps at 500 Hz are 36.6 dB down on the sheet, all there on the board', () => {
    expect(20 * Math.log10(find(read(SHEET), 'step-transmission').value!)).toBeCloseTo(-36.6, 1);
    expect(find(read('board'), 'step-transmission').value).toBe(1);
  });

  it('exact: 1.5 kg at 3 m/s² shake 10 kg by 0.45 m/s², with a slab of 15 kg by 0.18', () => {
    expect(find(read('board'), 'shake').value!).toBeCloseTo(0.45, 9);
    expect(find(read(SHEET), 'shake').value!).toBeCloseTo(0.18, 9);
    expect(find(read(SHEET), 'slab-share').value!).toBeCloseTo(1.5, 9);
  });

  it('property: sideways it swings slower than up and down, and slower still the higher its weight', () => {
    const sway = (cabinet: Cabinet): number => standOf(cabinet, cabinet.machines['one']!).springs!.swayHz;
    expect(sway(read(PADS))).toBeLessThan(0.58 * 9.36);
    expect(sway(read(PADS, undefined, ', size: 450 mm x 500 mm x 650 mm'))).toBeLessThan(sway(read(PADS)));
    expect(sway(read(SHEET))).toBeGreaterThan(2 * sway(read(PADS)));
  });

  it('property: strokes near the sway make it worse, far above it better, on the board neither', () => {
    const gain = (stroke: string, stands: string): number => {
      const cabinet = read(stands);
      const one = cabinet.machines['one']!;
      const shaking = { ...one.shaking, stroke: Number(stroke) };
      return find({ ...cabinet, machines: { one: { ...one, shaking } } }, 'reversal-gain').value!;
    };
    expect(gain('0.005', 'board')).toBe(1);
    expect(gain('0.01', PADS)).toBeGreaterThan(2);
    expect(gain('0.0005', PADS)).toBeLessThan(0.3);
    expect(gain('0.2', PADS)).toBeLessThan(1.05);
  });

  it.each([
    ['slab-share', SHEET, 1],
    ['reversal-gain', PADS, -1],
    ['step-transmission', SHEET, -1],
    ['foam-strain', PADS, -1],
    ['shake', 'board', -1],
  ])('exact: %s holds a hair inside its limit and fails a hair outside', (quantity, stands, side) => {
    const { value } = find(read(stands), quantity);
    const held = (limit: number): string => verdict(find({ ...read(stands), limits: { [quantity]: limit } }, quantity));
    expect(held(value! * (1 - side * HAIR))).toBe('holds');
    expect(held(value! * (1 + side * HAIR))).toBe('fails');
  });

  it('exact: limits of the trade: a slab as heavy as the machine, twofold, 10 dB, what the foam bears', () => {
    expect(find(read(SHEET), 'slab-share').limit).toMatchObject({ kind: 'at-least', value: 1 });
    expect(find(read(SHEET), 'reversal-gain').limit).toMatchObject({ kind: 'at-most', value: 2 });
    expect(find(read(SHEET), 'step-transmission').limit!.value).toBeCloseTo(0.3162, 4);
    expect(find(read(SHEET), 'foam-strain').limit!.value).toBeCloseTo(0.2, 9);
    expect(find(read('board'), 'shake').limit).toBeUndefined();
    expect(find(read('board'), 'step-transmission').limit).toBeUndefined();
  });

  it('exact: a bed that travels without a slab fails; one that stands still is not asked for one', () => {
    expect(verdict(find(read('board'), 'slab-share'))).toBe('fails');
    const measures = vibration.standing!(read('board', 'fixed-frame 250'));
    expect(measures.some(({ quantity }) => quantity === 'slab-share')).toBe(false);
  });

  it('exact: where nobody says what it stands on, that is what is missing', () => {
    const { value, missing } = find(read(''), 'reversal-gain');
    expect(value).toBeUndefined();
    expect(missing).toContain('machines.one.stands-on');
    expect(vibration.standing!(read('')).map(({ quantity }) => quantity)).toEqual(['shake', 'reversal-gain']);
  });

  it('property: solid pads are the stiffer the flatter they are, foam is not', () => {
    const hertz = (foam: string): number =>
      find(read(`{ ${SLAB}, foam: ${foam} 10 mm, pads: 4, pad-size: 60 mm x 60 mm }`), 'upright-frequency').value!;
    const flat = hertz('rubber');
    const cut = find(read(`{ ${SLAB}, foam: rubber 10 mm, pads: 36, pad-size: 20 mm x 20 mm }`), 'upright-frequency')
      .value!;
    expect(flat).toBeGreaterThan(1.5 * cut);
    const foam = find(
      read(`{ ${SLAB}, foam: test foam 10 mm, pads: 36, pad-size: 20 mm x 20 mm }`),
      'upright-frequency',
    ).value!;
    expect(foam).toBeCloseTo(hertz('test foam'), 6);
  });
});

describe('on a shelf', () => {
  it('cross: 25 kg on a stiff sheet on the worked shelf bounce at 16.9 Hz: the shelf is the spring', () => {
    const answer = readCabinet(
      'cabinet.yaml',
      `stillair: 1
cabinet: { inside: 600 mm x 600 mm x 1200 mm, made-of: test board 18 mm }
bays: { lower: { z: 0 mm to 590 mm }, upper: { z: 608 mm to 1200 mm } }
machines: { one: { kind: fixed-frame 250, bay: upper, mass: 10 kg, stands-on: ${SHEET} } }
parts:
  boards: { test board: { conductivity: 0.1 W/(m K), density: 600 kg/m3, heat-capacity: 1600 J/(kg K), emissivity: 0.9, bending: 6000 N/mm2, bending-stress: 10 N/mm2, sag-growth: 0.8 } }
  foams: { test foam: { stiffness: 100 kPa, stiffening: 1.5, damping: 10 %, creep: 10 %, usable-strain: 20 % } }
days: { usual: {} }
`,
    );
    if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
    const measure = find(answer.cabinet, 'upright-frequency');
    expect(measure.value!).toBeCloseTo(16.87, 1);
    expect(measure.steps.map((step) => step.text).join(' ')).toContain('the shelf is the spring');
  });
});

describe('the examples', () => {
  it.each(['tool-library', 'school-locker', 'winter-shed'])(
    'order: %s swings at a few to a few tens of hertz',
    (name) => {
      const answer = readCabinet(
        name,
        readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8'),
      );
      if (!answer.ok) throw new Error(name);
      const measures = vibration.standing!(answer.cabinet);
      for (const { quantity, value, steps } of measures) {
        expect(steps.length).toBeGreaterThan(0);
        if (quantity === 'upright-frequency') {
          expect(value!).toBeGreaterThan(3);
          expect(value!).toBeLessThan(90);
        }
        if (quantity === 'shake') expect(value!).toBeLessThan(1);
      }
      expect(measures.some((measure) => verdict(measure) === 'fails')).toBe(true);
    },
  );
});

describe('what may quieten it', () => {
  it.each(['board', PADS, '{ foam: test foam 20 mm, pads: 4, pad-size: 30 mm x 30 mm }'])(
    'property: every remedy for %s can be written into the file',
    (stands) => {
      const measures = vibration.standing!(read(stands));
      expect(measures.flatMap(({ remedies }) => remedies).length).toBeGreaterThan(0);
      for (const { remedies } of measures)
        for (const { says, edits } of remedies) {
          const after = readCabinet('cabinet.yaml', text(stands), edits);
          expect(after.ok, says).toBe(true);
        }
    },
  );

  it('property: a slab mends what the lack of one fails, a sheet what pads fail', () => {
    const mended = (stands: string, quantity: string): string[] => {
      const measure = find(read(stands), quantity);
      return measure.remedies.map(({ edits }) => {
        const after = readCabinet('cabinet.yaml', text(stands), edits);
        if (!after.ok) throw new Error('it should be read');
        const now = vibration.standing!(after.cabinet).find((one) => one.quantity === quantity);
        return now === undefined ? 'gone' : verdict(now);
      });
    };
    expect(mended('board', 'slab-share')[0]).toBe('holds');
    expect(mended(`{ ${SLAB}, foam: seating foam 25 mm, pads: 4, pad-size: 50 mm x 50 mm }`, 'foam-strain')[0]).toBe(
      'holds',
    );
  });
});
