import { describe, expect, it } from 'vitest';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { CameraArm, FittingPart } from '../../cabinet/fittings.ts';
import { limitKinds } from '../../cabinet/limits.ts';
import { verdictOf } from '../../judge/verdict.ts';
import type { Measure } from '../measure.ts';
import { cabinetByHand, runByHand } from '../run-by-hand.ts';
import { swing } from './camera-arms.ts';
import { fittings } from './fittings.ts';

const C = 273.15;
const HAIR = 1e-9;

const plain: FittingPart = { what: 'other', where: 'lower', reached: false, cables: {} };

const withOne = (one: Partial<FittingPart>, more: Cabinet['fittings'] = {}): Cabinet => ({
  ...cabinetByHand,
  fittings: { one: { ...plain, ...one }, ...more },
});

function found(cabinet: Cabinet, quantity: string): Measure {
  const measures = fittings.standing!(cabinet).filter((measure) => measure.quantity === quantity);
  expect(measures).toHaveLength(1);
  return measures[0]!;
}

function verdict(cabinet: Cabinet, quantity: string): string {
  const { value, limit } = found(cabinet, quantity);
  return verdictOf(value, undefined, limit);
}

describe('cables', () => {
  const cable = (bend: number | undefined, moved: boolean): Cabinet =>
    withOne({ cables: { cord: { diameter: 0.008, count: 1, moved, ...(bend === undefined ? {} : { bend }) } } });

  it.each([
    [false, 4],
    [true, 7.5],
  ])('exact: cable-bend: moved %s: %d outside diameters', (moved, times) => {
    expect(verdict(cable(times * 0.008 + HAIR, moved), 'cable-bend')).toBe('holds');
    expect(verdict(cable(times * 0.008 - HAIR, moved), 'cable-bend')).toBe('fails');
  });

  it('limit: a bend that nobody measured is unknown, and the key is named', () => {
    const { value, missing } = found(cable(undefined, true), 'cable-bend');
    expect(value).toBeUndefined();
    expect(missing).toContain('fittings.one.cables.cord.bend');
  });

  it('exact: channel-fill: 45 % of the section, the longest side being the channel’s length', () => {
    const channel = (diameter: number): Cabinet =>
      withOne({
        what: 'cable channel',
        size: { width: 0.04, depth: 0.025, height: 1.2 },
        cables: { cords: { diameter, count: 4, moved: false, bend: 1 } },
      });
    const largest = Math.sqrt((0.45 * 0.04 * 0.025) / Math.PI);
    expect(verdict(channel(largest - HAIR), 'channel-fill')).toBe('holds');
    expect(verdict(channel(largest + HAIR), 'channel-fill')).toBe('fails');
  });

  it('exact: sockets-left: a bulky adapter takes its neighbour’s socket', () => {
    const strip = (sockets: number, width: number): Cabinet =>
      withOne(
        { what: 'strip', where: 'room', sockets, pitch: 0.043 },
        Object.fromEntries(
          ['a', 'b', 'c'].map((id) => [
            id,
            {
              ...plain,
              what: 'adapter',
              where: 'room',
              on: 'one',
              size: { width, depth: 0.09, height: 0.05 },
            } as const,
          ]),
        ),
      );
    expect(found(strip(6, 0.04), 'sockets-left').value).toBe(3);
    expect(found(strip(6, 0.06), 'sockets-left').value).toBe(0);
    expect(verdict(strip(6, 0.06), 'sockets-left')).toBe('holds');
    expect(verdict(strip(5, 0.06), 'sockets-left')).toBe('fails');
  });
});

describe('places', () => {
  it('exact: fitting-gap: 20 mm from the bed where it is fully forward', () => {
    const box = (y: number): Cabinet =>
      withOne({ at: [0.4, y, 0.15], size: { width: 0.05, depth: 0.02, height: 0.02 } });
    const edge = 0.3 - 0.245 - 0.02 - 0.01;
    expect(verdict(box(edge - HAIR), 'fitting-gap')).toBe('holds');
    expect(verdict(box(edge + HAIR), 'fitting-gap')).toBe('fails');
    expect(found(box(edge), 'fitting-gap').steps.at(-1)!.text).toContain('the bed fully forward');
  });

  it('exact: fitting-reach: 550 mm, and unknown without a place', () => {
    const tools = (y?: number): Cabinet =>
      withOne({ what: 'tools', reached: true, ...(y === undefined ? {} : { at: [0.05, y, 0.7] as const }) });
    expect(verdict(tools(0.55), 'fitting-reach')).toBe('holds');
    expect(verdict(tools(0.55 + HAIR), 'fitting-reach')).toBe('fails');
    expect(verdict(tools(), 'fitting-reach')).toBe('unknown');
  });

  it('limit: what hangs in the room is asked neither', () => {
    expect(fittings.standing!(withOne({ what: 'tools', where: 'room', reached: true }))).toEqual([]);
  });
});

describe('a camera’s arm', () => {
  const arm: CameraArm = {
    length: 0.15,
    width: 0.02,
    thickness: 0.008,
    load: 0.05,
    shake: 0.00005,
    frequency: 12,
    distance: 0.35,
    sees: 0.35,
    pixels: 1920,
  };
  const mount = (more: Partial<CameraArm>, material: string | undefined = 'ABS'): Cabinet =>
    withOne({ what: 'camera mount', arm: { ...arm, ...more }, ...(material === undefined ? {} : { material }) });

  it('exact: camera-blur: a pixel, in proportion to the shaking', () => {
    const { value } = found(mount({}), 'camera-blur');
    const limit = arm.shake / value!;
    expect(verdict(mount({ shake: limit * (1 - HAIR) }), 'camera-blur')).toBe('holds');
    expect(verdict(mount({ shake: limit * (1 + HAIR) }), 'camera-blur')).toBe('fails');
  });

  it('property: a shorter or a thicker arm blurs less, far below its own frequency', () => {
    const of = (more: Partial<CameraArm>): number => found(mount({ frequency: 3, ...more }), 'camera-blur').value!;
    expect(of({ length: 0.1 })).toBeLessThan(of({}));
    expect(of({ thickness: 0.016 })).toBeLessThan(of({}));
    expect(of({ load: 0.2 })).toBeGreaterThan(of({}));
  });

  it('exact: its remedies find their way into a name with a dot', () => {
    const mounted: FittingPart = { ...plain, what: 'camera mount', material: 'ABS', arm };
    const cabinet = { ...cabinetByHand, fittings: { 'arm.left': mounted } };
    expect(
      found(cabinet, 'camera-blur').remedies.flatMap(({ edits }) => edits.flatMap(({ set = {} }) => Object.keys(set))),
    ).toEqual(['fittings."arm.left".arm.length', 'fittings."arm.left".arm.thickness']);
  });

  it('order: a printed arm of 150 mm swings at 10 to 100 times a second', () => {
    const { frequency } = swing(arm, { glassTransition: 340, modulus: 2e9 }, 1240);
    expect(frequency).toBeGreaterThan(10);
    expect(frequency).toBeLessThan(100);
  });

  it('exact: a camera that it holds says from where, how wide and in how many pixels it looks', () => {
    const base = mount({});
    const camera = {
      bay: 'lower',
      at: [0.4, 0, 0.15 + 0.4],
      looksAt: 'left',
      view: [Math.PI / 2, 1],
      aperture: 2,
      iso: 100,
      shutter: 0,
      readout: 0.03,
      pixels: [1000, 800],
      task: 'watching',
      subjectSpeed: 0.1,
    } as const;
    // 400 mm above the bed and 300 before its middle: half a metre; a right angle sees a metre across.
    const held: Cabinet = {
      ...base,
      cameras: { eye: camera },
      fittings: { one: { ...base.fittings['one']!, holds: 'eye' } },
    };
    expect(found(held, 'camera-blur').value).toBeCloseTo(
      found(mount({ distance: 0.5, sees: 1, pixels: 1000 }), 'camera-blur').value!,
      9,
    );
  });

  it('limit: without material, or without an arm, it is unknown and names the key', () => {
    const { what, where, reached, cables, arm: told } = mount({}).fittings['one']!;
    const bare = (one: FittingPart): string => found({ ...cabinetByHand, fittings: { one } }, 'camera-blur').missing!;
    expect(bare({ what, where, reached, cables, arm: told! })).toContain('fittings.one.material');
    expect(bare({ what, where, reached, cables, material: 'ABS' })).toContain('fittings.one.arm');
  });
});

describe('printed brackets', () => {
  const hook = (celsius: number, more: Partial<FittingPart> = {}): { value: number | undefined; verdict: string } => {
    const cabinet = withOne({ what: 'bracket', material: 'ABS', ...more });
    const measures = fittings.measure!(runByHand({ cabinet, temperatures: { lower: C + celsius } }));
    const { value, limit } = measures.find(({ quantity }) => quantity === 'bracket-warmth')!;
    return { value, verdict: verdictOf(value, undefined, limit) };
  };

  it.each([
    ['PLA', 50],
    ['PETG', 65],
    ['ABS', 85],
    ['ASA', 95],
    ['PA', 45],
    ['PC', 140],
  ])('exact: bracket-warmth: %s bears %d °C, at any moment of the day', (material, celsius) => {
    expect(hook(celsius - 1e-6, { material }).verdict).toBe('holds');
    expect(hook(celsius + 1e-6, { material }).verdict).toBe('fails');
  });

  it('property: nearer to the hot bed it gets warmer, and never cooler than the air', () => {
    const values = [1, 0.3, 0.1, 0.03].map((fromBed) => hook(30, { fromBed }).value!);
    expect(values[0]).toBeGreaterThan(C + 30);
    for (const [index, value] of values.entries()) if (index > 0) expect(value).toBeGreaterThan(values[index - 1]!);
  });

  it('limit: a filament of one’s own is unknown, and it is said why', () => {
    expect(hook(30, { material: 'my own' }).verdict).toBe('unknown');
  });

  it('exact: every bay with a machine tells which materials a bracket may be of', () => {
    const measures = fittings.measure!(runByHand({ temperatures: { lower: C + 60 } }));
    const { value, steps } = measures.find(({ quantity }) => quantity === 'bracket-air')!;
    expect(value).toBeCloseTo(C + 60, 9);
    const text = steps.map((step) => step.text).join('\n');
    expect(text).toContain('PLA under load creeps: up to 50 °C');
    expect(text).toContain('PETG under load bears it: up to 65 °C');
  });
});

describe('an extinguisher that is listed', () => {
  it.each([
    ['room', 'holds', []],
    ['lower', 'fails', [{ set: { 'fittings.one.where': 'room' } }]],
  ])('exact: extinguisher: in %s %s', (where, expected, edits) => {
    const cabinet = withOne({ what: 'extinguisher', where });
    expect(verdict(cabinet, 'extinguisher')).toBe(expected);
    expect(found(cabinet, 'extinguisher').remedies.flatMap((remedy) => remedy.edits)).toEqual(edits);
  });

  it('property: it promises nothing and says what goes before it', () => {
    const text = found(withOne({ what: 'extinguisher', where: 'room', agent: 'carbon dioxide' }), 'extinguisher')
      .steps.map((step) => step.text)
      .join(' ');
    expect(text).toContain('Cut the power first');
    expect(text).not.toMatch(/\bsafe\b/);
  });
});

it('cross: every limit of fittings can be written in the cabinet file, and says which way is better', () => {
  const cabinet = withOne(
    {
      what: 'cable channel',
      material: 'ABS',
      reached: true,
      at: [0.1, 0.1, 0.7],
      size: { width: 0.02, depth: 0.02, height: 0.2 },
      cables: { cord: { diameter: 0.008, count: 1, moved: true, bend: 0.1 } },
    },
    {
      strip: { ...plain, what: 'strip', sockets: 4, pitch: 0.04 },
      red: { ...plain, what: 'extinguisher', where: 'room', agent: 'powder' },
    },
  );
  const measures = [...fittings.standing!(cabinet), ...fittings.measure!(runByHand({ cabinet }))];
  const limited = measures.filter(({ limit }) => limit !== undefined);
  expect(limited.length).toBeGreaterThan(5);
  for (const { limit, better } of limited) {
    expect(Object.keys(limitKinds)).toContain(limit!.id);
    expect(limit!.source.length).toBeGreaterThan(10);
    expect(better).toBe(limit!.kind === 'at-most' ? 'lower' : 'higher');
  }
});
