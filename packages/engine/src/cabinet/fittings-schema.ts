// Keys of `fittings:`.

import type { CableRun, CameraArm, FittingPart, FittingWhat } from './fittings.ts';
import { count, mapOf, name, place, quantity, type Schema, sizes, thing, word, yesNo } from './shape.ts';
import type { Given, Lengths } from './spec.ts';

type Maybe<T> = T | undefined;
type Numbers<T, K extends keyof T> = { readonly [Key in K]?: Given };

export interface CableSpec extends Numbers<CableRun, 'diameter' | 'bend'> {
  readonly count?: Maybe<number>;
  readonly moved?: Maybe<boolean>;
}

export type ArmSpec = Numbers<
  CameraArm,
  'length' | 'width' | 'thickness' | 'load' | 'shake' | 'distance' | 'sees' | 'pixels'
>;

export interface FittingPartSpec extends Numbers<FittingPart, 'mass' | 'load' | 'pitch'> {
  readonly what: FittingWhat;
  readonly where?: Maybe<string>;
  readonly at?: Maybe<Lengths>;
  readonly size?: Maybe<Lengths>;
  readonly material?: Maybe<string>;
  readonly 'from-bed'?: Given;
  readonly reached?: Maybe<boolean>;
  readonly cables?: Maybe<Readonly<Record<string, CableSpec>>>;
  readonly sockets?: Maybe<number>;
  readonly on?: Maybe<string>;
  readonly holds?: Maybe<string>;
  readonly arm?: Maybe<ArmSpec>;
  readonly agent?: Maybe<(typeof agents)[number]>;
}

export const agents = ['carbon dioxide', 'clean agent', 'powder', 'foam', 'water', 'blanket'] as const;

const whats: readonly FittingWhat[] = [
  'tools',
  'bin',
  'strip',
  'adapter',
  'bracket',
  'cable channel',
  'sensor mount',
  'camera mount',
  'extinguisher',
  'other',
];

const span = (about: string, to = 3): Schema<NonNullable<Given>> => quantity('length', about, { above: 0, to });

const cableFields = {
  diameter: span('over its sheath', 0.1).optional(),
  count: count('how many of it', 1000).optional(),
  moved: yesNo('it moves while the machine works').optional(),
  bend: span('inner radius of its tightest bend').optional(),
};

const armFields = {
  length: span('from its clamp to the camera').optional(),
  width: span('across its section', 0.5).optional(),
  thickness: span('of its section in the direction in which it is shaken', 0.5).optional(),
  load: quantity('mass', 'of the camera', { above: 0, to: 20 }).optional(),
  shake: span('half the way of the shaking at its clamp', 0.01).optional(),
  distance: span('from the lens to the print', 10).optional(),
  sees: span('width of what the picture shows at the print', 10).optional(),
  pixels: quantity('number', 'pixels across the picture', { above: 0, to: 100_000 }).optional(),
};

export function fittingPartSchema(): Schema<FittingPartSpec> {
  return thing(
    {
      what: word(whats, 'what it is'),
      where: name('bay in which it is, or room').optional(),
      at: place(3, 'its centre, from the left front lower corner of its bay').optional(),
      size: sizes(3, 'width x depth x height').optional(),
      mass: quantity('mass', 'its own', { above: 0, to: 500 }).optional(),
      load: quantity('mass', 'what hangs on it', { above: 0, to: 500 }).optional(),
      material: name('filament of which it is printed').optional(),
      'from-bed': span('from the nearest hot bed').optional(),
      reached: yesNo('a hand must get there').optional(),
      cables: mapOf(thing(cableFields, 'a cable'), 'cables in it', 'cable').optional(),
      sockets: count('sockets of a strip', 100).optional(),
      pitch: span('distance of its sockets', 1).optional(),
      on: name('strip that the adapter sits on').optional(),
      holds: name('camera that the mount holds: its place, view and pixels are then those of the camera').optional(),
      arm: thing(armFields, 'arm of a camera').optional(),
      agent: word(agents, 'what an extinguisher holds').optional(),
    },
    'something that needs a place',
  ) as unknown as Schema<FittingPartSpec>;
}
