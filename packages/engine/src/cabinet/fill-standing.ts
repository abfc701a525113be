// What a machine weighs, how it stands and how it shakes.

import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, Given, MachineKindSpec, MachineStyle } from './spec.ts';
import type { Foam, Shaking, Slab, Standing, StandsOn } from './structure.ts';
import type { FoamSpec, StandsOnSpec } from './structure-spec.ts';

interface MachineBefore {
  readonly at: string;
  readonly file: FilePath;
  readonly style: MachineStyle;
  readonly width: number;
  readonly depth: number;
  /** The kind's own place, as origins tell it. */
  readonly kindSays: (keys: readonly string[], quantity: Given) => Candidate;
}

export function fillStanding(
  machine: MachineBefore,
  own: MachineKindSpec & { readonly 'stands-on'?: StandsOnSpec | undefined },
  kind: MachineKindSpec,
  spec: FileSpec,
  ledger: Ledger,
): Standing {
  const { at, file, style, width, depth, kindSays } = machine;
  const number = (
    path: string,
    read: (spec: MachineKindSpec) => Given,
    fallback: Fallback,
    ...keys: readonly string[]
  ): number =>
    ledger.number(
      `${at}.${path}`,
      [{ quantity: read(own), file: [...file, ...keys] }, kindSays(keys, read(kind))],
      fallback,
    );
  const feet = own.feet ?? kind.feet;
  ledger.note(
    `${at}.feet`,
    own.feet === undefined
      ? { kind: 'derived', how: 'seven tenths of its width, six tenths of its depth in motion' }
      : ledger.given([...file, 'feet']),
  );
  const travels = style === 'moving-bed';
  const shaking: Shaking = {
    headMass: number('shaking.headMass', (m) => m.shaking?.['head-mass'], defaults.headMass, 'shaking', 'head-mass'),
    bedMass: number(
      'shaking.bedMass',
      (m) => m.shaking?.['bed-mass'],
      travels ? defaults.movingBedMass : { value: 0, how: 'its bed stands still in plan' },
      'shaking',
      'bed-mass',
    ),
    acceleration: number(
      'shaking.acceleration',
      (m) => m.shaking?.acceleration,
      travels ? defaults.accelerationOfMovingBed : defaults.accelerationOfFixedBed,
      'shaking',
      'acceleration',
    ),
    speed: number('shaking.speed', (m) => m.shaking?.speed, defaults.strokeSpeed, 'shaking', 'speed'),
    stroke: number('shaking.stroke', (m) => m.shaking?.stroke, defaults.stroke, 'shaking', 'stroke'),
    travelPerTurn: number(
      'shaking.travelPerTurn',
      (m) => m.shaking?.['travel-per-turn'],
      { value: 0.04, how: 'a pulley of 20 teeth on a belt of 2 mm pitch, from memory' },
      'shaking',
      'travel-per-turn',
    ),
    stepsPerTurn: number(
      'shaking.stepsPerTurn',
      (m) => m.shaking?.['steps-per-turn'],
      { value: 200, how: 'a motor of 1.8 degree, from memory' },
      'shaking',
      'steps-per-turn',
    ),
  };
  const stands = own['stands-on'];
  return {
    mass: number('mass', ({ mass }) => mass, defaults.machineMass, 'mass'),
    feet: { width: feet?.[0] ?? 0.7 * width, depth: feet?.[1] ?? 0.6 * depth },
    ...(stands === undefined ? {} : { standsOn: fillStandsOn(machine, stands, feet, spec, ledger) }),
    shaking,
  };
}

function fillStandsOn(
  { at, file, width, depth }: MachineBefore,
  stands: StandsOnSpec,
  feet: readonly number[] | undefined,
  spec: FileSpec,
  ledger: Ledger,
): StandsOn {
  const path = `${at}.standsOn`;
  ledger.note(path, ledger.given([...file, 'stands-on']));
  const slab = fillSlab(path, stands, [...file, 'stands-on'], ledger);
  const sheet: readonly [number, number] = slab
    ? [slab.width, slab.depth]
    : [feet?.[0] ?? 0.7 * width, feet?.[1] ?? 0.6 * depth];
  const { foam } = stands;
  return {
    ...(slab === undefined ? {} : { slab }),
    ...(foam === undefined ? {} : { foam: fillFoam(path, foam, stands, sheet, spec, ledger) }),
  };
}

function fillSlab(path: string, stands: StandsOnSpec, file: FilePath, ledger: Ledger): Slab | undefined {
  const { slab, slabs = 1 } = stands;
  if (slab === undefined) return undefined;
  ledger.note(`${path}.slab`, ledger.given([...file, 'slab']));
  const [width, depth, thickness] = slab;
  return {
    width: width!,
    depth: depth!,
    thickness: thickness! * slabs,
    density: ledger.number(
      `${path}.slab.density`,
      [{ quantity: stands['slab-density'], file: [...file, 'slab-density'] }],
      defaults.slabDensity,
    ),
  };
}

function fillFoam(
  path: string,
  foam: FoamSpec,
  stands: StandsOnSpec,
  sheet: readonly [number, number],
  spec: FileSpec,
  ledger: Ledger,
): Foam {
  const { kind, spec: entry, own, source } = findPart(spec.parts, 'foams', foam.foam)!;
  const number = (name: keyof Foam, key: keyof typeof entry): number => {
    const quantity = entry[key] as Given;
    const candidate: Candidate = own
      ? { quantity, file: ['parts', 'foams', kind, key] }
      : { quantity, part: `foams.${kind}`, source };
    return ledger.number(`${path}.foam.${name}`, [candidate], { value: 0, how: 'given' });
  };
  const { pads = 0, 'pad-size': size } = stands;
  const [width, depth] = pads === 0 ? sheet : [size?.[0] ?? USUAL_PAD, size?.[1] ?? USUAL_PAD];
  return {
    kind,
    thickness: foam.thickness,
    pads,
    width: width!,
    depth: depth!,
    solid: entry.solid ?? false,
    stiffness: number('stiffness', 'stiffness'),
    stiffening: number('stiffening', 'stiffening'),
    damping: number('damping', 'damping'),
    creep: number('creep', 'creep'),
    usableStrain: number('usableStrain', 'usable-strain'),
  };
}

/** Side of a pad that is given by number alone, m. */
const USUAL_PAD = 0.06;
