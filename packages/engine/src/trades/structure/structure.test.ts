import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { limitKinds } from '../../cabinet/limits.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { Measure } from '../measure.ts';
import { structure } from './structure.ts';

const HAIR = 1e-6;

/** Two bays with a shelf between; what is asked for is put in. All figures invented. */
function read(
  parts: { cabinet?: string; shelf?: string; machine?: string; door?: string; inside?: string } = {},
): Cabinet {
  const { cabinet = '', shelf = '', machine = '', inside = '800 mm x 500 mm x 1200 mm' } = parts;
  const { door = '{ made-of: glass 4 mm }' } = parts;
  const answer = readCabinet(
    'cabinet.yaml',
    `stillair: 1
cabinet: { inside: ${inside}, made-of: plywood 18 mm, door: ${door}${cabinet} }
bays: { lower: { z: 0 mm to 580 mm }, upper: { z: 600 mm to 1200 mm } }
shelves: { deck: { between: [lower, upper], made-of: plywood 18 mm${shelf} } }
machines: { one: { kind: moving bed 220, bay: upper, mass: 12 kg, feet: 300 mm x 300 mm, stands-on: board${machine} } }
days: { usual: {} }
`,
  );
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

function find(cabinet: Cabinet, quantity: string, part?: string): Measure {
  const found = structure.standing!(cabinet).filter(
    (m) => m.quantity === quantity && (part === undefined || m.part === part),
  );
  expect(found, quantity).toHaveLength(1);
  return found[0]!;
}

const verdict = ({ value, limit }: Measure): string => verdictOf(value, undefined, limit);

describe('a shelf under a machine', () => {
  it('cross: its sag is that of two forces at the machine’s feet and of its own weight', () => {
    const [e, span] = [8e9, 0.8];
    const stiffness = (e * 0.5 * 0.018 ** 3) / 12;
    const [foot, a] = [(12 * 9.80665) / 2, 0.25];
    const own = 500 * 0.018 * 0.5 * 0.8 * 9.80665;
    const expected =
      (foot * a * (3 * span ** 2 - 4 * a ** 2)) / (24 * stiffness) + (5 * own * span ** 3) / (384 * stiffness);
    expect(find(read(), 'shelf-sag').value! / expected).toBeCloseTo(1, 9);
    expect(find(read(), 'shelf-sag-years').value! / expected).toBeCloseTo(1.8, 9);
  });

  it('property: a slab spreads the load, a strip stiffens, a post divides, a thinner board sags more', () => {
    const sag = (shelf: string, machine = ''): number => find(read({ shelf, machine }), 'shelf-sag', 'deck').value!;
    expect(sag(', lipping: 40 mm x 20 mm')).toBeLessThan(sag('') / 3);
    expect(sag(', posts: 1')).toBeLessThan(sag('') / 5);
    expect(sag(', grain: across')).toBeGreaterThan(1.3 * sag(''));
    expect(sag(', joint: glued')).toBeCloseTo(sag('') * 0.7, 6);
    expect(sag(', load: 20 kg')).toBeGreaterThan(1.5 * sag(''));
    expect(sag('', ', at: [400 mm, 250 mm]')).toBeGreaterThan(sag('', ', at: [160 mm, 250 mm]'));
  });

  it.each([
    ['shelf-sag', ', load: 4 kg'],
    ['shelf-sag-years', ', load: 4 kg'],
    ['shelf-stress', ''],
    ['pin-load', ', joint: pins'],
  ])('exact: %s holds a hair inside its limit and fails a hair outside', (quantity, shelf) => {
    const { value } = find(read({ shelf }), quantity);
    const held = (limit: number): string =>
      verdict(find({ ...read({ shelf }), limits: { [quantity]: limit } }, quantity));
    expect(held(value! * (1 + HAIR))).toBe('holds');
    expect(held(value! * (1 - HAIR))).toBe('fails');
  });

  it('exact: without a limit of the person’s own the span rules: span/300 at once, span/250 in the end', () => {
    expect(find(read(), 'shelf-sag').limit!.value).toBeCloseTo(0.8 / 300, 12);
    expect(find(read(), 'shelf-sag-years').limit!.value).toBeCloseTo(0.8 / 250, 12);
    expect(find(read({ shelf: ', posts: 1' }), 'shelf-sag').limit!.value).toBeCloseTo(0.4 / 300, 12);
  });

  it('exact: a warped board rests on two of four pins: each bears half of all', () => {
    const { value } = find(read({ shelf: ', joint: pins' }), 'pin-load');
    expect(value!).toBeCloseTo(((12 + 500 * 0.018 * 0.5 * 0.8) * 9.80665) / 2, 9);
    expect(find(read({ shelf: ', joint: pins' }), 'pin-load').remedies.map(({ says }) => says)).toEqual([
      'cleats below deck in place of pins',
    ]);
  });

  it('property: layers that nobody glued bend each by itself', () => {
    const single = find(read(), 'shelf-sag').value!;
    const layered = read();
    const deck = layered.partitions[0]!;
    const layer = deck.build.layers[0]!;
    const half = { ...layer, thickness: layer.thickness / 2 };
    const split = { ...layered, partitions: [{ ...deck, build: { ...deck.build, layers: [half, half] } }] };
    expect(find(split, 'shelf-sag').value! / single).toBeCloseTo(4, 6);
  });

  it('exact: a thin sheet without folded edges, and a board of unknown stiffness, are unknown and say what to give', () => {
    const deck = (build: string): Measure => {
      const answer = readCabinet(
        'cabinet.yaml',
        `stillair: 1
cabinet: { inside: 800 mm x 500 mm x 1200 mm, made-of: plywood 18 mm }
bays: { lower: { z: 0 mm to 580 mm }, upper: { z: 600 mm to 1200 mm } }
shelves: { deck: { between: [lower, upper], made-of: ${build} } }
machines: { one: { kind: moving bed 220, bay: upper } }
days: { usual: {} }
`,
      );
      if (!answer.ok) throw new Error('it should be read');
      return find(answer.cabinet, 'shelf-sag');
    };
    expect(deck('steel 1 mm')).toMatchObject({ missing: expect.stringContaining('shelves.deck.lipping') as string });
    expect(deck('cork 20 mm')).toMatchObject({
      missing: expect.stringContaining('parts.boards.cork.bending') as string,
    });
    expect(deck('steel 1 mm').value).toBeUndefined();
  });

  it('property: what stands on the floor needs no board; on feet the bottom is a shelf', () => {
    const on = (cabinet: string): string[] =>
      structure.standing!(read({ cabinet }))
        .filter(({ quantity }) => quantity === 'shelf-sag')
        .map(({ part }) => part);
    const lower = read();
    const moved = { ...lower, machines: { one: { ...lower.machines['one']!, bay: 'lower' } } };
    expect(structure.standing!(moved).filter(({ quantity }) => quantity === 'shelf-sag')).toEqual([]);
    expect(on(', feet: { count: 4 }')).toEqual(['deck']);
    const raised = read({ cabinet: ', feet: { count: 6, height: 100 mm }' });
    const standing = { ...raised, machines: { one: { ...raised.machines['one']!, bay: 'lower' } } };
    expect(find(standing, 'shelf-sag').part).toMatch(/^bottom-[12]$/);
  });
});

describe('a door on its hinges', () => {
  it('exact: a pane of 4 mm weighs 10 kg a square metre, shared by its hinges', () => {
    const { value } = find(read(), 'hinge-load');
    expect(value!).toBeCloseTo((0.8 * 1.2 * 10) / 3, 9);
    expect(find(read({ door: '{ made-of: glass 4 mm, hinges: { count: 2 } }' }), 'hinge-load').value!).toBeCloseTo(
      4.8,
      9,
    );
  });

  it('exact: it holds a hair inside what a hinge carries and fails a hair outside', () => {
    const carried = (carries: number): string =>
      verdict(
        find(read({ door: `{ made-of: glass 4 mm, hinges: { count: 2, carries: ${carries} kg } }` }), 'hinge-load'),
      );
    expect(carried(4.8001)).toBe('holds');
    expect(carried(4.7999)).toBe('fails');
  });

  it('property: a door that slides has no hinge to overload', () => {
    const measures = structure.standing!(read({ door: '{ made-of: glass 4 mm, hinge: slides }' }));
    expect(measures.some(({ quantity }) => quantity === 'hinge-load')).toBe(false);
  });
});

describe('whether it stands', () => {
  it('cross: its weight is that of boards, door, shelf and machine', () => {
    const area = 2 * 0.8 * 0.5 + 2 * 0.5 * 1.2 + 0.8 * 1.2 + 0.8 * 0.5;
    const mass = area * 9 + 0.8 * 1.2 * 10 + 12;
    expect(find(read(), 'floor-load').value! / (9.80665 * mass)).toBeCloseTo(1, 6);
  });

  it('cross: an open door uses up what its weight before the feet is of all behind them', () => {
    // The front feet stand below the outer front, 18 mm before the inside; the door's middle swings 400 mm forward.
    const boards = (2 * 0.8 * 0.5 + 2 * 0.5 * 1.2 + 0.8 * 0.5) * 9;
    const behind = (boards + 12) * (0.25 + 0.018) + 0.8 * 1.2 * 9 * (0.509 + 0.018);
    const before = 0.8 * 1.2 * 10 * (0.4 - 0.009);
    expect(find(read(), 'tip-open').value! / (before / behind)).toBeCloseTo(1, 9);
  });

  it.each(['tip-open', 'tip-hung', 'free-height', 'floor-load'])(
    'exact: %s holds a hair inside its limit and fails a hair outside',
    (quantity) => {
      const { value } = find(read(), quantity);
      const held = (limit: number): string => verdict(find({ ...read(), limits: { [quantity]: limit } }, quantity));
      expect(held(value! * (1 + HAIR))).toBe('holds');
      expect(held(value! * (1 - HAIR))).toBe('fails');
    },
  );

  it('exact: by itself it tips at 100 %, above 800 mm it wants a strap, and the floor is asked for 2 kN', () => {
    expect(find(read(), 'tip-open').limit).toMatchObject({ kind: 'at-most', value: 1 });
    expect(find(read(), 'free-height').limit).toMatchObject({ kind: 'at-most', value: 0.8 });
    expect(find(read({ inside: '800 mm x 200 mm x 1200 mm' }), 'free-height').limit!.value).toBeCloseTo(3 * 0.236, 9);
    expect(find(read(), 'floor-load').limit).toMatchObject({ kind: 'at-most', value: 2000 });
  });

  it('exact: the push that tips it is told, and held against a limit only where the person sets one', () => {
    expect(find(read(), 'tip-push').limit).toBeUndefined();
    const { value } = find(read(), 'tip-push');
    expect(verdict(find({ ...read(), limits: { 'tip-push': value! * (1 - HAIR) } }, 'tip-push'))).toBe('holds');
    expect(verdict(find({ ...read(), limits: { 'tip-push': value! * (1 + HAIR) } }, 'tip-push'))).toBe('fails');
  });

  it('property: a strap takes the limits away and leaves the numbers', () => {
    const strapped = read({ cabinet: ', wall-strap: yes' });
    for (const quantity of ['tip-open', 'tip-hung', 'free-height']) {
      expect(find(strapped, quantity).limit).toBeUndefined();
      expect(find(strapped, quantity).value).toBe(find(read(), quantity).value);
    }
  });

  it('property: a heavier machine low down steadies it; a shelf that pulls out unsteadies it', () => {
    const tip = (cabinet: Cabinet): number => find(cabinet, 'tip-open').value!;
    expect(tip(read({ machine: ', size: 400 mm x 400 mm x 400 mm' }))).toBeLessThan(1);
    const heavier = read();
    const heavy = { ...heavier, machines: { one: { ...heavier.machines['one']!, mass: 30 } } };
    expect(tip(heavy)).toBeLessThan(tip(heavier));
    expect(tip(read({ shelf: ', pulls-out: 450 mm' }))).toBeGreaterThan(2 * tip(read()));
    expect(find(read({ shelf: ', pulls-out: 450 mm' }), 'tip-hung').value!).toBeGreaterThan(
      find(read(), 'tip-hung').value!,
    );
  });
});

describe('the examples', () => {
  const names = ['tool-library', 'school-locker', 'winter-shed'];
  let all: ReadonlyMap<string, readonly Measure[]>;
  beforeAll(() => {
    all = new Map(
      names.map((name) => {
        const answer = readCabinet(
          name,
          readFileSync(new URL(`../../../../../examples/${name}.yaml`, import.meta.url), 'utf8'),
        );
        if (!answer.ok) throw new Error(name);
        return [name, structure.standing!(answer.cabinet)];
      }),
    );
  });

  it.each(names)(
    'order: %s weighs as much as furniture with printers does, and its boards sag by tenths of millimetres',
    (name) => {
      const values = all.get(name)!;
      const weight = values.find(({ quantity }) => quantity === 'floor-load')!.value! / 9.80665;
      expect(weight).toBeGreaterThan(30);
      expect(weight).toBeLessThan(300);
      for (const { quantity, value } of values) if (quantity === 'shelf-sag') expect(value!).toBeLessThan(0.002);
    },
  );

  it('property: every measure has a value, steps that say how, and a limit that can be set', () => {
    for (const measure of [...all.values()].flat()) {
      expect(measure.value, measure.quantity).toBeDefined();
      expect(Number.isFinite(measure.value), measure.quantity).toBe(true);
      expect(measure.steps.length, measure.quantity).toBeGreaterThan(0);
      if (measure.limit !== undefined) expect(limitKinds[measure.limit.id], measure.quantity).toBeDefined();
    }
  });
});

describe('what may mend it', () => {
  it('property: every remedy can be written into the file, and mends what it is for', () => {
    const text = `stillair: 1
cabinet: { inside: 1100 mm x 500 mm x 1200 mm, made-of: MDF 16 mm, doors: { leaf: { made-of: glass 6 mm } } }
bays: { lower: { z: 0 mm to 580 mm }, upper: { z: 600 mm to 1200 mm } }
machines: { one: { kind: moving bed 300, bay: upper, mass: 16 kg, stands-on: { slab: 500 mm x 500 mm x 50 mm } } }
days: { usual: {} }
`;
    const before = readCabinet('cabinet.yaml', text);
    if (!before.ok) throw new Error('it should be read');
    const measures = structure.standing!(before.cabinet);
    const failing = measures.filter((measure) => verdict(measure) === 'fails');
    expect(failing.map(({ quantity }) => quantity)).toEqual(
      expect.arrayContaining(['shelf-sag', 'shelf-sag-years', 'hinge-load', 'free-height']),
    );
    for (const measure of failing)
      for (const { says, edits } of measure.remedies) {
        const after = readCabinet('cabinet.yaml', text, edits);
        if (!after.ok) throw new Error(`${says}: ${after.complaints.map(({ what }) => what).join('; ')}`);
        const now = structure.standing!(after.cabinet).find(
          ({ quantity, part }) => quantity === measure.quantity && part === measure.part,
        )!;
        expect(now.limit === undefined || now.value! < measure.value!, says).toBe(true);
      }
  });
});
