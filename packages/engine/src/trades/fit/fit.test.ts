import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Motion } from '../../cabinet/fit.ts';
import { limitKinds } from '../../cabinet/limits.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { setInput } from '../../cabinet/set-input.ts';
import { verdictOf } from '../../judge/verdict.ts';
import { machineParts } from '../machine-solids.ts';
import type { Measure } from '../measure.ts';
import { cabinetByHand } from '../run-by-hand.ts';
import { fit } from './fit.ts';
import { neededInside } from './need.ts';

const HAIR = 1e-9;

const all = (cabinet: Cabinet): readonly Measure[] => fit.standing!(cabinet);

function found(cabinet: Cabinet, quantity: string, part?: string): Measure {
  const measures = all(cabinet).filter((one) => one.quantity === quantity && (part === undefined || one.part === part));
  expect(measures.map(({ part: of }) => of)).toHaveLength(1);
  return measures[0]!;
}

function verdict(cabinet: Cabinet, quantity: string, part?: string): string {
  const { value, limit } = found(cabinet, quantity, part);
  return verdictOf(value, undefined, limit);
}

const withMotion = (motion: Partial<Motion>, base: Cabinet = cabinetByHand): Cabinet => ({
  ...base,
  fit: { ...base.fit, machines: { left: { ...base.fit.machines['left']!, ...motion } } },
});

const withInside = (more: Partial<Cabinet['inside']>): Cabinet => {
  const inside = { ...cabinetByHand.inside, ...more };
  return { ...cabinetByHand, inside, bays: { lower: { x: [0, inside.width], z: [0, inside.height], airZones: 1 } } };
};

const at = (x: number, y: number, base: Cabinet = cabinetByHand): Cabinet => ({
  ...base,
  machines: { left: { ...base.machines['left']!, at: [x, y] } },
});

const file = (rest: string): string => `stillair: 1
${rest}
days: { usual: { jobs: { a: { machine: m, material: PLA, start: 9:00, for: 2 h } } } }
`;

function read(text: string): Cabinet {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

describe('a bed that travels', () => {
  // Reaches 245 mm before and 285 mm behind the middle of its frame.
  it.each([
    ['gap-front', 0.245 + 0.02, 1],
    ['gap-back', 0.6 - 0.285 - 0.02, -1],
  ] as const)('exact: %s: 20 mm of air over all positions', (quantity, y, sign) => {
    expect(verdict(at(0.4, y + sign * HAIR), quantity)).toBe('holds');
    expect(verdict(at(0.4, y - sign * HAIR), quantity)).toBe('fails');
  });

  it('exact: the trap: a frame of 400 mm in 440 mm of depth; the bed hits the door by 45 mm', () => {
    const trap = at(0.4, 0.22, withInside({ depth: 0.44 }));
    const { value, steps } = found(trap, 'gap-front');
    expect(value).toBeCloseTo(0.22 - 0.245, 9);
    expect(verdict(trap, 'gap-front')).toBe('fails');
    expect(steps[0]!.text).toContain('bed (the bed fully forward)');
    expect(steps.at(-1)!.text).toContain('the shut door front');
    // The frame alone would have been accepted.
    const still = withMotion({ bedTravel: 0, clipFront: 0, cableRear: 0 }, trap);
    expect(found(still, 'gap-front').value).toBeCloseTo(0.02, 9);
  });

  it('exact: it needs 570 mm of depth, and 570 mm do', () => {
    expect(neededInside(cabinetByHand).depth).toBeCloseTo(0.57, 9);
    const placed = at(0.4, 0.265, withInside({ depth: 0.57 + HAIR }));
    expect([verdict(placed, 'gap-front'), verdict(placed, 'gap-back')]).toEqual(['holds', 'holds']);
  });

  it('exact: what stands in from the door takes the depth', () => {
    const door = (standsIn: number): Cabinet => ({
      ...cabinetByHand,
      fit: { ...cabinetByHand.fit, doors: { front: { hinge: 'left', takes: 0, standsIn, lip: 0 } } },
    });
    expect(found(door(0.012), 'gap-front').value).toBeCloseTo(0.3 - 0.012 - 0.245, 9);
  });

  it('property: a carcass smaller than written takes from back, right and top; never gives', () => {
    const smaller = setInput(cabinetByHand, 'fit.tolerance', 0.003);
    for (const quantity of ['gap-back', 'gap-sides', 'gap-above'])
      expect(found(smaller, quantity).value!).toBeLessThanOrEqual(found(cabinetByHand, quantity).value!);
    expect(found(smaller, 'gap-back').value).toBeCloseTo(found(cabinetByHand, 'gap-back').value! - 0.003, 9);
  });

  it('property: a longer way never leaves more room anywhere', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.5, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (way, more) => {
          const [short, long] = [withMotion({ bedTravel: way }), withMotion({ bedTravel: way + more })];
          const spare = (cabinet: Cabinet, quantity: string): number => {
            const { value, limit } = found(cabinet, quantity);
            return value! - limit!.value;
          };
          for (const quantity of ['gap-front', 'gap-back', 'gap-sides', 'gap-above'])
            expect(spare(long, quantity)).toBeLessThanOrEqual(spare(short, quantity) + 1e-12);
        },
      ),
    );
  });
});

describe('beside and above', () => {
  it('exact: the carriage counts beside, with 20 mm', () => {
    const left = 0.2 + 0.03 + 0.02;
    expect(verdict(at(left + HAIR, 0.3), 'gap-sides')).toBe('holds');
    expect(verdict(at(left - HAIR, 0.3), 'gap-sides')).toBe('fails');
  });

  it('exact: the arch wants 50 mm above it', () => {
    const height = 0.5 + 0.08 + 0.05;
    expect(verdict(withInside({ height: height + HAIR }), 'gap-above')).toBe('holds');
    expect(verdict(withInside({ height: height - HAIR }), 'gap-above')).toBe('fails');
  });

  it('exact: a spool on top of slab, foam and frame', () => {
    const machine = cabinetByHand.machines['left']!;
    const foam = {
      kind: 'x',
      solid: false,
      thickness: 0.02,
      pads: 0,
      width: 0.4,
      depth: 0.4,
      stiffness: 1e5,
      stiffening: 1,
      damping: 0.1,
      creep: 0,
      usableStrain: 0.3,
    };
    const slab = { width: 0.4, depth: 0.4, thickness: 0.03, density: 2300 };
    const raised: Cabinet = { ...cabinetByHand, machines: { left: { ...machine, standsOn: { slab, foam } } } };
    const { value, steps } = found(withMotion({ spool: 'top' }, raised), 'gap-above');
    expect(value).toBeCloseTo(0.85 - (0.05 + 0.5 + 0.03 + 0.2), 9);
    expect(steps[0]!.text).toContain('spool');
  });

  it('exact: a plug needs no air beyond its own length', () => {
    const still = withMotion({ bedTravel: 0, clipFront: 0, cableRear: 0 });
    expect(verdict(at(0.4, 0.6 - 0.2 - 0.07 - HAIR, still), 'gap-back')).toBe('holds');
    expect(verdict(at(0.4, 0.6 - 0.2 - 0.07 + HAIR, still), 'gap-back')).toBe('fails');
  });
});

describe('two machines in one bay', () => {
  const one = cabinetByHand.machines['left']!;
  const motion = cabinetByHand.fit.machines['left']!;
  const pair = (x: number): Cabinet => ({
    ...withInside({ width: 1.4 }),
    machines: { left: { ...one, at: [0.3, 0.3] }, right: { ...one, at: [x, 0.3] } },
    fit: { ...cabinetByHand.fit, machines: { left: motion, right: motion } },
  });

  it('exact: 20 mm between what moves of either', () => {
    const touching = 0.3 + 2 * 0.23;
    expect(verdict(pair(touching + 0.02 + HAIR), 'gap-between')).toBe('holds');
    expect(verdict(pair(touching + 0.02 - HAIR), 'gap-between')).toBe('fails');
    expect(found(pair(touching + 0.1), 'gap-between').value).toBeCloseTo(0.1, 9);
  });

  it('exact: without at they stand side by side with equal gaps', () => {
    const free: Cabinet = {
      ...pair(0.3),
      fit: {
        ...cabinetByHand.fit,
        machines: { left: { ...motion, placed: false }, right: { ...motion, placed: false } },
      },
    };
    const spare = (1.4 - 2 * (0.46 + 0.04)) / 3;
    expect(found(free, 'gap-between').value).toBeCloseTo(spare + 0.04, 9);
    expect(found(free, 'gap-sides', 'left').value).toBeCloseTo(spare + 0.02, 9);
  });
});

describe('through the opening', () => {
  const wide = (width: number): Cabinet => withInside({ width });

  it('exact: 20 mm beside the frame and its motor, the hinge taken off', () => {
    const needed = 0.4 + 0.03 + 0.02 + 0.015;
    // Too narrow a bay to turn it, so that its width counts.
    expect(verdict(wide(needed + HAIR), 'way-out')).toBe('holds');
    expect(verdict(wide(needed - HAIR), 'way-out')).toBe('fails');
  });

  it('exact: its height counts, on its slab, or without its upper part', () => {
    const low = withInside({ height: 0.51 });
    expect(verdict(low, 'way-out')).toBe('fails');
    expect(verdict(withMotion({ withoutTop: 0.2 }, low), 'way-out')).toBe('holds');
  });

  it('limit: no door, no verdict, and the key that would give one', () => {
    const shut: Cabinet = { ...cabinetByHand, doors: {}, fit: { ...cabinetByHand.fit, doors: {} } };
    const { value, missing } = found(shut, 'way-out');
    expect(value).toBeUndefined();
    expect(missing).toContain('cabinet: door:');
  });
});

describe('hands', () => {
  it('exact: hand-room: the widest of three gaps against 120 mm', () => {
    const tight = (width: number): Cabinet => at(0.2 + 0.02, 0.3, withInside({ width, height: 0.6 }));
    expect(verdict(tight(0.42 + 0.12 + HAIR), 'hand-room')).toBe('holds');
    expect(verdict(tight(0.42 + 0.12 - HAIR), 'hand-room')).toBe('fails');
  });

  it('exact: reach: 550 mm to the back of the frame', () => {
    expect(verdict(at(0.4, 0.35 - HAIR), 'reach')).toBe('holds');
    expect(verdict(at(0.4, 0.35 + HAIR), 'reach')).toBe('fails');
  });

  it('exact: lift: 25 kg', () => {
    const heavy = (mass: number): Cabinet => ({
      ...cabinetByHand,
      machines: { left: { ...cabinetByHand.machines['left']!, mass } },
    });
    expect(verdict(heavy(25), 'lift')).toBe('holds');
    expect(verdict(heavy(25 + HAIR), 'lift')).toBe('fails');
  });

  it('exact: spool-off: its width and a hand along the axle; reach to its middle', () => {
    const spool = (x: number): Cabinet => at(x, 0.3, withMotion({ spool: 'top' }));
    const edge = 0.8 - 0.035 - (0.07 + 0.097);
    // The longer side counts: right of the middle it is the left one.
    expect(verdict(spool(0.4), 'spool-off')).toBe('holds');
    const narrow = (width: number): Cabinet => at(width / 2, 0.3, withMotion({ spool: 'top' }, withInside({ width })));
    expect(verdict(narrow(2 * (0.035 + 0.167) + HAIR), 'spool-off')).toBe('holds');
    expect(verdict(narrow(2 * (0.035 + 0.167) - HAIR), 'spool-off')).toBe('fails');
    expect(edge).toBeGreaterThan(0.4);
    expect(found(spool(0.4), 'spool-reach').value).toBeCloseTo(0.3, 9);
  });

  it('limit: a spool that hangs away is not asked about', () => {
    expect(all(cabinetByHand).filter(({ quantity }) => quantity.startsWith('spool'))).toEqual([]);
  });
});

describe('lamps and cameras', () => {
  it('exact: lamp-gap and camera-gap: 20 mm from what moves, over the arch or beside the bed', () => {
    const hang = (z: number, y: number): Cabinet => ({
      ...cabinetByHand,
      light: {
        ...cabinetByHand.light,
        lamps: {
          lamp: {
            bay: 'lower',
            flux: 500,
            shape: { kind: 'strip', length: 0.5 },
            at: [0.4, 0.3, z],
            faces: 'down',
            along: 'x',
          },
        },
      },
      cameras: {
        eye: {
          bay: 'lower',
          at: [0.4, y, 0.15],
          looksAt: 'left',
          view: [1, 1],
          aperture: 2,
          iso: 100,
          shutter: 0,
          readout: 0.03,
          pixels: [1920, 1080],
          task: 'watching',
          subjectSpeed: 0.1,
        },
      },
    });
    const [over, before] = [0.58 + 0.02 + 0.008, 0.3 - 0.245 - 0.02 - 0.02];
    expect(verdict(hang(over + HAIR, before - HAIR), 'lamp-gap')).toBe('holds');
    expect(verdict(hang(over - HAIR, before - HAIR), 'lamp-gap')).toBe('fails');
    expect(verdict(hang(over, before - HAIR), 'camera-gap')).toBe('holds');
    expect(verdict(hang(over, before + HAIR), 'camera-gap')).toBe('fails');
    expect(found(hang(over, before), 'camera-gap').steps.at(-1)!.text).toContain('the bed fully forward');
  });
});

describe('openings and doors', () => {
  it('exact: opening-gap: 50 mm before the exhaust’s fan, a quarter of a plain hole', () => {
    expect(found(cabinetByHand, 'opening-gap', 'exhaust').limit!.value).toBe(0.05);
    expect(found(cabinetByHand, 'opening-gap', 'intake').limit!.value).toBeCloseTo(0.023, 9);
  });

  it('exact: a bed fully back covers a hole in the back at its height', () => {
    const low: Cabinet = {
      ...cabinetByHand,
      paths: { intake: { ...cabinetByHand.paths['intake']!, place: { face: 'back', along: 0.4, z: 0.15 } } },
    };
    const { value, steps } = found(low, 'opening-gap', 'intake');
    expect(value).toBeCloseTo(0.3 - 0.285, 9);
    expect(steps.at(-1)!.text).toContain('the bed fully back');
    expect(verdict(at(0.4, 0.6 - 0.285 - 0.023 - HAIR, low), 'opening-gap', 'intake')).toBe('holds');
    expect(verdict(at(0.4, 0.6 - 0.285 - 0.023 + HAIR, low), 'opening-gap', 'intake')).toBe('fails');
  });

  it('exact: swing-room: the leaf’s corner and a person behind it', () => {
    const sweep = Math.hypot(0.8, 0.018);
    const before = (length: number, hinge: 'left' | 'slides' = 'left'): Cabinet => ({
      ...cabinetByHand,
      fit: { ...cabinetByHand.fit, doors: { front: { hinge, takes: 0.015, standsIn: 0, lip: 0, before: length } } },
    });
    expect(verdict(before(sweep + 0.6 + HAIR), 'swing-room')).toBe('holds');
    expect(verdict(before(sweep + 0.6 - HAIR), 'swing-room')).toBe('fails');
    expect(verdict(before(0.6 + HAIR, 'slides'), 'swing-room')).toBe('holds');
    // Unless said otherwise it is what the room leaves.
    expect(found(cabinetByHand, 'swing-room').value).toBeCloseTo(4 - 0.6 - 2 * 0.018 - sweep - 0.6, 9);
  });
});

describe('what would do', () => {
  const carcass = (inside: Cabinet['inside'], opening: readonly [number, number]): Cabinet => ({
    ...cabinetByHand,
    carcasses: {
      candidate: {
        title: 'a cupboard',
        inside,
        opening,
        from: 'bought',
        board: 'plywood',
        thickness: 0.018,
        changes: { shelf: { low: 20, high: 30 } },
        price: { low: 100, high: 120 },
      },
    },
  });
  const needed = neededInside(cabinetByHand);
  const large = { width: needed.width + HAIR, depth: needed.depth + HAIR, height: needed.height + HAIR };

  it('exact: carcass-fit: every axis, and the opening', () => {
    const spare = (...told: Parameters<typeof carcass>): number => found(carcass(...told), 'carcass-fit').value!;
    expect(spare(large, [0.42 + HAIR, 0.52 + HAIR])).toBeGreaterThan(0);
    for (const axis of ['width', 'depth', 'height'] as const)
      expect(spare({ ...large, [axis]: large[axis] - 2 * HAIR }, [0.6, 0.6])).toBeLessThan(0);
    expect(spare(large, [0.42 - HAIR, 0.6])).toBeLessThan(0);
    expect(spare(large, [0.6, 0.52 - HAIR])).toBeLessThan(0);
    // That another carcass does not do is no fault of this one.
    expect(found(carcass(large, [0.1, 0.1]), 'carcass-fit').limit).toBeUndefined();
  });

  it('exact: it tells what is too little, what it costs and what must be done to it', () => {
    const text = found(carcass({ ...large, depth: 0.44 }, [0.6, 0.6]), 'carcass-fit').steps.map((step) => step.text);
    expect(text.join('\n')).toContain('inside depth: wants 570 mm, has 440 mm, 130 mm too little');
    expect(text.join('\n')).toContain('bought for 100 to 120 EUR');
    expect(text.join('\n')).toContain('and shelf for 20 to 30 EUR');
  });

  it('cross: bays one above another add up with their boards, bays side by side do not', () => {
    const cabinet = read(
      file(`cabinet: { inside: 1200 mm x 640 mm x 1500 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { a: { z: 0 mm to 740 mm, x: 0 mm to 590 mm }, b: { z: 0 mm to 740 mm, x: 610 mm to 1200 mm }, c: { z: 760 mm to 1500 mm } }
machines: { m: { kind: moving bed 220, bay: a }, n: { kind: moving bed 220, bay: b }, o: { kind: fixed bed 120, bay: c } }`),
    );
    const whole = neededInside(cabinet);
    const [a, b, c] = [whole.bays['a']!, whole.bays['b']!, whole.bays['c']!];
    expect(whole.width).toBeCloseTo(Math.max(a.width + 0.02 + b.width, c.width), 9);
    expect(whole.height).toBeCloseTo(Math.max(a.height, b.height) + 0.02 + c.height, 9);
  });
});

describe('a file that says nothing of motion', () => {
  const cabinet = read(
    file(`cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { m: { kind: moving bed 220, size: 400 mm x 400 mm x 500 mm } }`),
  );

  it('exact: a size of one’s own is taken as the frame, and the bed sweeps beyond it', () => {
    expect(neededInside(cabinet).depth).toBeCloseTo(0.53 + 0.04 + 0.004, 9);
  });

  it('exact: a spool that the file hangs outside takes no room in the bay', () => {
    const hung = (where: string): string =>
      read(
        file(`cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { m: { kind: moving bed 220 } }
spools: { s: { material: PLA, where: ${where} } }`),
      ).fit.machines['m']!.spool;
    expect([hung('outside'), hung('inside')]).toEqual(['away', 'top']);
  });

  it('property: nothing of it is without value, source and a way that is better', () => {
    for (const measure of all(cabinet)) {
      expect(Number.isFinite(measure.value), measure.quantity).toBe(true);
      if (measure.limit === undefined) continue;
      expect(measure.limit.source.length).toBeGreaterThan(10);
      expect(measure.better).toBe(measure.limit.kind === 'at-most' ? 'lower' : 'higher');
      expect(Object.keys(limitKinds)).toContain(measure.limit.id);
    }
  });

  it('property: every kind of the catalogue sweeps no more than its size says, arch and spool left out', () => {
    for (const kind of [
      'fixed bed 120',
      'moving bed 180',
      'moving bed 220',
      'moving bed 300',
      'moving bed 350',
      'fixed-frame 250',
      'chambered 250',
      'delta 200',
    ]) {
      const one = read(
        file(`cabinet: { inside: 1500 mm x 1500 mm x 1500 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { m: { kind: ${kind} } }`),
      );
      const { size } = one.machines['m']!;
      const parts = machineParts(one, 'm').filter(({ air, what }) => air === 'moving' && what !== 'spool');
      const span = (axis: 0 | 1 | 2): number =>
        Math.max(...parts.map(({ to }) => to[axis])) - Math.min(...parts.map(({ from }) => from[axis]));
      expect(span(0), kind).toBeLessThanOrEqual(size.width + 1e-9);
      expect(span(1), kind).toBeLessThanOrEqual(size.depth + 1e-9);
      expect(span(2), kind).toBeLessThanOrEqual(size.height + 1e-9);
    }
  });

  it('order: a bay for a usual machine is half a metre to a metre each way', () => {
    const { width, depth, height } = neededInside(cabinet);
    for (const length of [width, depth, height]) {
      expect(length).toBeGreaterThan(0.5);
      expect(length).toBeLessThan(1);
    }
  });
});
