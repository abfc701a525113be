// The carcass: what its faces, doors and shelves are made of, and how it is divided into bays.

import { airLayerResistance } from '@stillair/physics';
import type { Bay, Build, Door, Face, FaceName, Layer, Partition, Size } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { fillCourse, noted } from './fill-room.ts';
import type { Ledger } from './ledger.ts';
import type { LiningSpec } from './sound-spec.ts';
import type { FilePath } from './source-tree.ts';
import type { BuildSpec, DoorSpec, FaceSpec, FileSpec, LayerSpec, PartsSpec } from './spec.ts';

export const faceNames: readonly FaceName[] = ['front', 'back', 'left', 'right', 'top', 'bottom'];

/** Bays whose borders are nearer than this share the board between them, m. */
const THICKEST_SHELF = 0.08;

/** What stands for a layer of air in a build-up. */
const STILL_AIR = 'still air';

/** `lining`: what lies on the inside of the layers that the file names here. */
export function fillBuild(
  at: string,
  spec: BuildSpec,
  file: FilePath,
  own: PartsSpec | undefined,
  ledger: Ledger,
  lining?: LayerSpec,
): Build {
  const written = lining === undefined ? spec.layers : [lining, ...spec.layers];
  const boards = written.map(({ board }) => findPart(own, 'boards', board)!);
  const layers = written.map((layer, index): Layer => {
    const { board, thickness } = layer;
    const { kind, spec: entry, own: mine, source } = boards[index]!;
    const path = `${at}.layers.${index}`;
    ledger.note(
      path,
      mine ? ledger.given(['parts', 'boards', kind]) : { kind: 'catalogue', part: `boards.${kind}`, source },
    );
    ledger.note(`${path}.thickness`, ledger.given(layer === lining ? ['cabinet', 'lining'] : file));
    const conductivity =
      board === STILL_AIR ? thickness / airLayerResistance(thickness, 'horizontal') : entry.conductivity.value;
    return {
      material: board,
      thickness,
      conductivity,
      density: entry.density.value,
      heatCapacity: entry['heat-capacity'].value,
      ...(layer === lining ? { lining: true } : {}),
    };
  });
  const emissivity = (name: 'emissivity-inside' | 'emissivity-outside', key: string, index: number): number => {
    const { kind, spec: entry, own: mine, source } = boards[index]!;
    return ledger.number(
      `${at}.${key}`,
      [
        { quantity: spec[name], file: [...file, name] },
        mine
          ? { quantity: entry.emissivity, file: ['parts', 'boards', kind, 'emissivity'] }
          : { quantity: entry.emissivity, part: `boards.${kind}`, source },
      ],
      defaults.insideFilm,
    );
  };
  const sunlight = boards.reduce((share, { spec: entry }) => share * (entry.sunlight?.value ?? 0), 1);
  return {
    layers,
    emissivityInside: emissivity('emissivity-inside', 'emissivityInside', 0),
    emissivityOutside: emissivity('emissivity-outside', 'emissivityOutside', layers.length - 1),
    solarTransmittance: ledger.number(
      `${at}.solarTransmittance`,
      [{ quantity: spec.sunlight, file: [...file, 'sunlight'] }],
      {
        value: sunlight,
        how: 'product of its layers',
      },
    ),
  };
}

export function fillInside({ cabinet }: FileSpec, ledger: Ledger): Size {
  ledger.note('inside', ledger.given(['cabinet', 'inside']));
  const [width, depth, height] = cabinet.inside;
  return { width: width!, depth: depth!, height: height! };
}

/** Faces that a lining covers unless it says which: all but the door's and the floor. */
const USUALLY_LINED: readonly FaceName[] = ['back', 'left', 'right', 'top'];

function linedFaces(lining: LiningSpec | undefined): readonly FaceName[] {
  return lining === undefined ? [] : (lining.faces ?? USUALLY_LINED);
}

export function fillFaces({ cabinet, parts }: FileSpec, ledger: Ledger): Readonly<Record<FaceName, Face>> {
  const face = (name: FaceName): Face => {
    const spec: FaceSpec = cabinet.faces?.[name] ?? {};
    const at = `faces.${name}`;
    const file: FilePath = ['cabinet', 'faces', name];
    const usual = name === 'bottom' ? 'floor' : 'room';
    const against = noted(
      ledger,
      `${at}.against`,
      spec.against,
      [...file, 'against'],
      usual,
      name === 'bottom' ? 'it stands on the floor' : 'it stands free in the room',
    );
    const own = spec['made-of'];
    const lining = linedFaces(cabinet.lining).includes(name) ? cabinet.lining : undefined;
    return {
      build: fillBuild(
        `${at}.build`,
        own ?? cabinet['made-of'],
        own === undefined ? ['cabinet', 'made-of'] : [...file, 'made-of'],
        parts,
        ledger,
        lining?.of,
      ),
      against,
      gap: ledger.number(
        `${at}.gap`,
        [{ quantity: spec.gap, file: [...file, 'gap'] }],
        against === 'wall'
          ? defaults.wallGap
          : { value: 0, how: against === 'floor' ? 'it touches the floor' : 'nothing stands before it' },
      ),
    };
  };
  return Object.fromEntries(faceNames.map((name) => [name, face(name)])) as Readonly<Record<FaceName, Face>>;
}

export function fillBays(
  { bays, machines = {} }: FileSpec,
  inside: Size,
  ledger: Ledger,
): Readonly<Record<string, Bay>> {
  const written = bays ?? { inside: {} };
  const ids = Object.keys(written);
  return Object.fromEntries(
    Object.entries(written).map(([id, spec]) => {
      const at = `bays.${id}`;
      const file: FilePath = ['bays', id];
      const holdsMachine = Object.values(machines).some(
        ({ bay }) => bay === id || (bay === undefined && ids.length === 1),
      );
      const zones = noted(
        ledger,
        `${at}.airZones`,
        spec['air-zones'],
        [...file, 'air-zones'],
        holdsMachine ? 2 : 1,
        holdsMachine ? 'it holds a machine: warm air gathers at the top' : 'nothing in it makes a warm layer',
      );
      return [
        id,
        {
          x: noted(ledger, `${at}.x`, spec.x, [...file, 'x'], [0, inside.width] as const, 'the whole width'),
          z: noted(ledger, `${at}.z`, spec.z, [...file, 'z'], [0, inside.height] as const, 'the whole height'),
          airZones: zones === 2 ? 2 : 1,
        } satisfies Bay,
      ];
    }),
  );
}

export function fillDoors(
  { cabinet, parts }: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  ledger: Ledger,
): Readonly<Record<string, Door>> {
  const written: [string, DoorSpec, FilePath][] = Object.entries(cabinet.doors ?? {}).map(([id, spec]) => [
    id,
    spec,
    ['cabinet', 'doors', id],
  ]);
  if (cabinet.door !== undefined) written.unshift(['door', cabinet.door, ['cabinet', 'door']]);
  return Object.fromEntries(
    written.map(([id, spec, file]) => {
      const at = `doors.${id}`;
      const seal = spec.seal === undefined ? undefined : findPart(parts, 'seals', spec.seal);
      const sealed = (key: 'gap' | 'depth') =>
        seal === undefined
          ? []
          : seal.own
            ? [{ quantity: seal.spec[key], file: ['parts', 'seals', seal.kind, key] }]
            : [{ quantity: seal.spec[key], part: `seals.${seal.kind}`, source: seal.source }];
      const leaf = spec['made-of'];
      const door: Door = {
        face: noted(
          ledger,
          `${at}.face`,
          spec.face,
          [...file, 'face'],
          'front',
          'doors are in the front unless said otherwise',
        ),
        bays: noted(ledger, `${at}.bays`, spec.bays, [...file, 'bays'], Object.keys(bays), 'it opens every bay'),
        build: fillBuild(
          `${at}.build`,
          leaf ?? cabinet['made-of'],
          leaf === undefined ? ['cabinet', 'made-of'] : [...file, 'made-of'],
          parts,
          ledger,
        ),
        sealGap: ledger.number(
          `${at}.sealGap`,
          [{ quantity: spec['seal-gap'], file: [...file, 'seal-gap'] }, ...sealed('gap')],
          defaults.sealGap,
        ),
        sealDepth: ledger.number(
          `${at}.sealDepth`,
          [{ quantity: spec['seal-depth'], file: [...file, 'seal-depth'] }, ...sealed('depth')],
          defaults.sealDepth,
        ),
        sun:
          spec.sun === undefined
            ? []
            : fillCourse(`${at}.sun`, spec.sun, [...file, 'sun'], { value: 0, how: 'no sun' }, ledger),
      };
      return [id, door];
    }),
  );
}

/** Bays that share a board: the given shelves, and the carcass' own board wherever two bays meet without one. */
export function fillPartitions(
  { cabinet, shelves = {}, parts }: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  ledger: Ledger,
): readonly Partition[] {
  const partitions: Partition[] = [];
  for (const [id, { between, 'made-of': own }] of Object.entries(shelves)) {
    const pair = [between[0]!, between[1]!] as const;
    const file: FilePath = own === undefined ? ['cabinet', 'made-of'] : ['shelves', id, 'made-of'];
    partitions.push({
      id,
      bays: pair,
      build: fillBuild(`partitions.${partitions.length}.build`, own ?? cabinet['made-of'], file, parts, ledger),
    });
  }
  const ids = Object.keys(bays);
  for (const [index, a] of ids.entries()) {
    for (const b of ids.slice(index + 1)) {
      const known = partitions.some(({ bays: pair }) => pair.includes(a) && pair.includes(b));
      if (known || !neighbours(bays[a]!, bays[b]!)) continue;
      const build = fillBuild(
        `partitions.${partitions.length}.build`,
        cabinet['made-of'],
        ['cabinet', 'made-of'],
        parts,
        ledger,
      );
      partitions.push({ id: `${a}-${b}`, bays: [a, b], build });
    }
  }
  return partitions;
}

function neighbours(a: Bay, b: Bay): boolean {
  const gap = (one: readonly [number, number], other: readonly [number, number]): number =>
    Math.max(one[0], other[0]) - Math.min(one[1], other[1]);
  const [x, z] = [gap(a.x, b.x), gap(a.z, b.z)];
  return Math.min(x, z) < -1e-6 && Math.max(x, z) >= -1e-6 && Math.max(x, z) <= THICKEST_SHELF;
}
