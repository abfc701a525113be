import { describe, expect, it } from 'vitest';
import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import type { Camera, Lamp } from '../../cabinet/light.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { runDay } from '../../judge/pipeline.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { Measure } from '../measure.ts';
import { stripesOf } from './cameras.ts';
import { light } from './light.ts';
import { litPrint, sideLight } from './lit.ts';

const HAIR = 1e-6;

/** A bay of 0.6 x 0.6 x 0.7 m with a machine of next to no frame, whose bed lies on the floor; a strip along the front. */
const BAY = `
stillair: 1
cabinet: { inside: 600 mm x 600 mm x 700 mm, made-of: birch plywood 18 mm, door: birch plywood 18 mm }
machines:
  one:
    kind: fixed bed 120
    bed: { size: 200 mm x 200 mm, height: 0 mm }
    frame-area: 1 mm2
heats:
  strip: { what: lamp, power: 5 W, flux: 500 lm, shape: strip 500 mm, at: [300 mm, 30 mm, 695 mm], dimming: { by: dc } }
cameras:
  eye: { looks-at: one, at: [300 mm, 20 mm, 400 mm], aperture: 2, iso: 800, task: time-lapse, subject-speed: 100 mm/s }
days: { usual: { jobs: { part: { material: PLA, start: 9:00, for: 2 h, part-size: 60 mm } } } }
`;

function read(edits: readonly Edit[] = [], text: string = BAY): Cabinet {
  const answer = readCabinet('bay.yaml', text, edits);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

/** Bay, machine and bed of one finish. */
const finished = (finish: string): Cabinet =>
  read([{ set: { 'cabinet.finish': finish, 'machines.one.finish': finish } }]);

function standing(cabinet: Cabinet, quantity: string): Measure {
  const found = light.standing!(cabinet).filter((measure) => measure.quantity === quantity);
  expect(found, quantity).toHaveLength(1);
  return found[0]!;
}

function verdict(cabinet: Cabinet, quantity: string): string {
  const { value, limit } = standing(cabinet, quantity);
  return verdictOf(value, undefined, limit);
}

const withLamp = (cabinet: Cabinet, change: Partial<Lamp>): Cabinet => ({
  ...cabinet,
  light: { ...cabinet.light, lamps: { strip: { ...cabinet.light.lamps['strip']!, ...change } } },
});
const withCamera = (cabinet: Cabinet, change: Partial<Camera>): Cabinet => ({
  ...cabinet,
  cameras: { eye: { ...cabinet.cameras['eye']!, ...change } },
});

describe('light on the print', () => {
  // 600 patches by an independent script: 235 lx in matt black, 370 in birch, 1007 in white.
  it.each([
    ['matt black paint', 235.5],
    ['matt white paint', 1007.4],
  ])('cross: a bay in %s has about %d lx in the middle of its floor', (finish, lux) => {
    expect(standing(finished(finish), 'print-light').value! / lux).toBeCloseTo(1, 1);
  });

  it('order: black throws nothing into the shadows, white some seventy times as much', () => {
    const [black, white] = ['matt black paint', 'matt white paint'].map(
      (finish) => standing(finished(finish), 'shadow-light').value!,
    );
    expect(black).toBeLessThan(20);
    expect(white! / black!).toBeGreaterThan(20);
    expect(white! / black!).toBeLessThan(200);
  });

  it('property: a strip in a black bay is too dim for stills, a flood panel suffices, and so does paint', () => {
    const black = { set: { 'cabinet.finish': 'matt black paint', 'machines.one.finish': 'matt black paint' } };
    const panel = {
      set: {
        'heats.strip.shape': 'panel 300 mm x 300 mm',
        'heats.strip.power': '20 W',
        'heats.strip.flux': '2000 lm',
        'heats.strip.at': ['300 mm', '200 mm', '690 mm'],
      },
    };
    expect(verdict(read([black]), 'shadow-light')).toBe('fails');
    expect(verdict(read([black, panel]), 'shadow-light')).toBe('holds');
    expect(verdict(read([black, { set: { 'cabinet.finish': 'matt white paint' } }]), 'shadow-light')).toBe('holds');
  });

  it('exact: twice the flux is twice the light, everywhere', () => {
    const once = read();
    const twice = withLamp(once, { flux: 1000 });
    for (const quantity of ['print-light', 'camera-light', 'shadow-light'])
      expect(standing(twice, quantity).value! / standing(once, quantity).value!).toBeCloseTo(2, 9);
    expect(standing(twice, 'light-evenness').value).toBeCloseTo(standing(once, 'light-evenness').value!, 9);
  });

  it('property: a brighter inside is never darker, and a dark machine in it takes light away', () => {
    const at = (reflectance: number, frameArea = 1e-6): number => {
      const cabinet = read();
      const machine = { ...cabinet.machines['one']!, frameArea };
      const reflectances = { ...cabinet.light.reflectances, 'birch plywood': reflectance };
      return litPrint({ ...cabinet, machines: { one: machine }, light: { ...cabinet.light, reflectances } }, 'one')
        .mean;
    };
    const values = [0, 0.1, 0.3, 0.5, 0.7, 0.9].map((reflectance) => at(reflectance));
    expect(values).toEqual([...values].sort((a, b) => a - b));
    expect(at(0.8, 0.4)).toBeLessThan(0.8 * at(0.8));
  });

  it('exact: a lamp and its mirror image light the mirrored side alike', () => {
    const cabinet = read();
    const left = litPrint(withLamp(cabinet, { shape: { kind: 'point' }, at: [0.15, 0.3, 0.69] }), 'one');
    const right = litPrint(withLamp(cabinet, { shape: { kind: 'point' }, at: [0.45, 0.3, 0.69] }), 'one');
    expect(sideLight(left, [0, 0.3, 0.3]).direct).toBeCloseTo(sideLight(right, [0.6, 0.3, 0.3]).direct, 9);
    expect(left.mean).toBeCloseTo(right.mean, 6);
  });

  it('limit: a side that looks away from the only lamp has only what is thrown back', () => {
    const lit = litPrint(read(), 'one');
    expect(sideLight(lit, [0.3, 2, 0.3]).direct).toBe(0);
    expect(sideLight(lit, [0.3, 2, 0.3]).thrown).toBeGreaterThan(10);
  });

  it('exact: without a lamp there is no value, and the key to give is named', () => {
    const [measure] = light.standing!(read([{ remove: ['heats.strip', 'cameras.eye'] }]));
    expect(measure).toMatchObject({ quantity: 'print-light', part: 'one' });
    expect(measure!.value).toBeUndefined();
    expect(measure!.missing).toContain('heats:');
  });

  it('exact: a machine with its own chamber is lit by its own lamp, and not without one', () => {
    const chambered = read([{ set: { 'machines.one.kind': 'chambered 250', 'machines.one.chamber.lamp': '5 W' } }]);
    expect(litPrint(chambered, 'one').space.name).toBe('the chamber of one');
    expect(standing(chambered, 'print-light').value).toBeGreaterThan(100);
    const dark = read([
      { set: { 'machines.one.kind': 'chambered 250', 'machines.one.chamber.lamp': '0 W' } },
      { remove: ['cameras.eye'] },
    ]);
    expect(standing(dark, 'print-light').missing).toContain('chamber: lamp:');
  });
});

describe('limits of light, a hair inside and a hair outside', () => {
  const scaledTo = (cabinet: Cabinet, quantity: string, target: number): Cabinet => {
    const flux = cabinet.light.lamps['strip']!.flux;
    return withLamp(cabinet, { flux: (flux * target) / standing(cabinet, quantity).value! });
  };

  it.each([
    ['print-light', 200],
    ['camera-light', 20],
    ['shadow-light', 20],
  ])('exact: %s wants %d lx', (quantity, lux) => {
    const cabinet = finished('matt white paint');
    expect(verdict(scaledTo(cabinet, quantity, lux * (1 + HAIR)), quantity)).toBe('holds');
    expect(verdict(scaledTo(cabinet, quantity, lux * (1 - HAIR)), quantity)).toBe('fails');
  });

  it.each([
    ['live', 100],
    ['watching', 300],
  ] as const)('exact: a camera for %s wants %d lx', (task, lux) => {
    const cabinet = withCamera(read(), { task });
    expect(verdict(scaledTo(cabinet, 'camera-light', lux * (1 + HAIR)), 'camera-light')).toBe('holds');
    expect(verdict(scaledTo(cabinet, 'camera-light', lux * (1 - HAIR)), 'camera-light')).toBe('fails');
  });

  it('exact: evenness of 0.4 is asked where a camera watches, and nowhere else', () => {
    expect(standing(read(), 'light-evenness').limit).toBeUndefined();
    const watched = withCamera(read(), { task: 'watching' });
    expect(standing(watched, 'light-evenness').limit?.value).toBe(0.4);
    const { value } = standing(watched, 'light-evenness');
    const own = (limit: number): Cabinet => ({ ...watched, limits: { 'light-evenness': limit } });
    expect(verdict(own(value! - HAIR), 'light-evenness')).toBe('holds');
    expect(verdict(own(value! + HAIR), 'light-evenness')).toBe('fails');
  });

  it('exact: exposure: the given shutter, else what the task bears', () => {
    const { value } = standing(read(), 'exposure-time');
    expect(verdict(withCamera(read(), { shutter: value! * (1 + HAIR) }), 'exposure-time')).toBe('holds');
    expect(verdict(withCamera(read(), { shutter: value! * (1 - HAIR) }), 'exposure-time')).toBe('fails');
    expect(standing(read(), 'exposure-time').limit?.value).toBe(0.25);
    expect(standing(withCamera(read(), { task: 'watching' }), 'exposure-time').limit?.value).toBe(1 / 30);
  });

  it('exact: exposure is C N²/(E S) of the light that the camera gets', () => {
    const cabinet = read();
    const lux = standing(cabinet, 'camera-light').value!;
    expect(standing(cabinet, 'exposure-time').value).toBeCloseTo((250 * 4) / (lux * 800), 12);
  });

  it('exact: smear: 5 mm live, 1 mm watching, free for stills', () => {
    expect(standing(read(), 'motion-blur').limit).toBeUndefined();
    for (const [task, most] of [
      ['live', 0.005],
      ['watching', 0.001],
    ] as const) {
      const at = (smear: number): string =>
        verdict(withCamera(read(), { task, shutter: 0.01, subjectSpeed: smear / 0.01 }), 'motion-blur');
      expect(at(most * (1 - HAIR))).toBe('holds');
      expect(at(most * (1 + HAIR))).toBe('fails');
    }
  });

  it('exact: stripes of 5 %', () => {
    // 2 m/(pi f T) with a quarter of a period less than two: |sin| = 1 at 1.5 periods.
    const striped = (ripple: number): Cabinet =>
      withCamera(withLamp(read(), { pulsation: { by: 'mains', frequency: 100, ripple } }), { shutter: 0.015 });
    const share = 2 / (Math.PI * 1.5);
    expect(verdict(striped((0.05 / share) * (1 - HAIR)), 'banding')).toBe('holds');
    expect(verdict(striped((0.05 / share) * (1 + HAIR)), 'banding')).toBe('fails');
  });

  it.each([
    [50, 0.0125],
    [100, 0.08],
    [120, 0.096],
    [1000, 0.8],
  ])('exact: flicker at %d Hz: %d of IEEE 1789', (frequency, most) => {
    const at = (ripple: number): string =>
      verdict(withLamp(read(), { pulsation: { by: 'mains', frequency, ripple } }), 'lamp-flicker');
    expect(at(most * (1 - HAIR))).toBe('holds');
    expect(at(most * (1 + HAIR))).toBe('fails');
  });

  it('exact: full pulses fail below 1250 Hz and are only told above', () => {
    const at = (frequency: number): Measure =>
      standing(withLamp(read(), { pulsation: { by: 'pwm', frequency, duty: 0.5 } }), 'lamp-flicker');
    expect(verdictOf(at(1249).value, undefined, at(1249).limit)).toBe('fails');
    expect(at(1250).limit).toBeUndefined();
    expect(at(1250).value).toBe(1);
  });

  it('exact: a lamp of unknown drive has no value, and the key to give is named', () => {
    const { pulsation: _, ...silent } = read().light.lamps['strip']!;
    const cabinet = read();
    const unknown = standing({ ...cabinet, light: { ...cabinet.light, lamps: { strip: silent } } }, 'lamp-flicker');
    expect(unknown.missing).toContain('heats.strip.dimming');
    const pulses = standing(withLamp(cabinet, { pulsation: { by: 'pwm', frequency: 0, duty: 0.5 } }), 'lamp-flicker');
    expect(pulses.missing).toContain('dimming.frequency');
  });
});

describe('what the camera sees', () => {
  const seen = (change: Partial<Camera>): number => standing(withCamera(read(), change), 'print-seen').value!;

  it('exact: straight above, the angle that just holds the bed holds all, a hair less does not', () => {
    // The bed's edge is 0.1 m beside the axis; the part's top is nearest to the lens, 0.44 m below it.
    const at = [0.3, 0.3, 0.5] as const;
    const angle = 2 * Math.atan(0.1 / 0.44);
    const holds = withCamera(read(), { at, view: [angle * (1 + HAIR), angle * (1 + HAIR)] });
    const fails = withCamera(read(), { at, view: [angle * (1 - HAIR), angle * (1 + HAIR)] });
    expect(verdict(holds, 'print-seen')).toBe('holds');
    expect(verdict(fails, 'print-seen')).toBe('fails');
  });

  it('property: a narrower lens sees no more, nor does a nearer one', () => {
    const shares = [1.4, 1, 0.7, 0.4, 0.2].map((across) => seen({ view: [across, 0.75 * across] }));
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(seen({ at: [0.3, 0.15, 0.15], view: [0.8, 0.6] })).toBeLessThan(seen({ view: [0.8, 0.6] }));
  });

  it('exact: a camera without a place has no value, and the key to give is named', () => {
    const cabinet = read([{ remove: ['cameras.eye.at'] }]);
    expect(standing(cabinet, 'print-seen').missing).toContain('cameras.eye.at');
    expect(standing(cabinet, 'camera-light').value).toBeGreaterThan(0);
  });
});

describe('stripes', () => {
  it('limit: a camera that chooses its exposure may hit the worst phase, one that is set may hit none', () => {
    const pulses = { by: 'pwm', frequency: 100, duty: 0.5 } as const;
    expect(stripesOf(pulses, 0.02, true)).toBe(0);
    expect(stripesOf(pulses, 0.02, false)).toBeCloseTo(0.5, 12);
    expect(stripesOf({ by: 'mains', frequency: 100, ripple: 0.3 }, 0.02, false)).toBeGreaterThan(0);
    expect(stripesOf({ by: 'dc' }, 0.001, false)).toBe(0);
  });
});

describe('light during a print', () => {
  const lit = (control: unknown): Measure => {
    const run = runDay(read([{ set: { 'heats.strip.control': control } }]), 'usual');
    const found = light.measure!(run);
    expect(found.map(({ quantity, part }) => `${quantity} ${part}`)).toEqual(['lit-while-printing eye.part']);
    return found[0]!;
  };
  const judged = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);

  it('exact: a lamp by the clock that goes off a minute too early fails, one that covers the job holds', () => {
    expect(judged(lit({ timer: ['9:00 to 11:00'] }))).toBe('holds');
    const early = lit({ timer: ['9:00 to 10:59'] });
    expect(early.value).toBeCloseTo(119 / 120, 6);
    expect(judged(early)).toBe('fails');
  });

  it('exact: switched with the job it burns all the time, never it does not', () => {
    expect(lit('job').value).toBeCloseTo(1, 9);
    expect(lit('never').value).toBe(0);
  });
});

describe('remedies of light', () => {
  const pulsing = { set: { 'heats.strip.dimming': { by: 'pwm', frequency: '200 Hz', duty: '30 %' } } };
  const cabinet = read([pulsing]);
  const all = light.standing!(cabinet).flatMap(({ remedies }) => remedies);

  it('property: each is an edit that the file takes and that changes the cabinet, and says so in a few words', () => {
    expect(all.length).toBeGreaterThan(10);
    for (const { says, edits } of all) {
      expect(read([pulsing, ...edits]), says).not.toEqual(cabinet);
      expect(says.length).toBeLessThan(90);
    }
  });

  it('property: no measure offers more than four', () => {
    for (const { remedies, quantity } of light.standing!(cabinet))
      expect(remedies.length, quantity).toBeLessThanOrEqual(4);
  });

  it('exact: paint, panel and one lamp more are brighter', () => {
    const dark = standing(finished('matt black paint'), 'print-light');
    for (const { says, edits } of dark.remedies) {
      const better = standing(read([{ set: { 'cabinet.finish': 'matt black paint' } }, ...edits]), 'print-light');
      expect(better.value, says).toBeGreaterThan(dark.value! * 1.2);
    }
  });
});
