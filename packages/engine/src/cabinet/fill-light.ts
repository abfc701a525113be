// What the inside throws back, and the lamps: kinds of the catalogue, with whatever the file overrules.

import type { Assumption } from './assumption.ts';
import type { Bay, Build, Cabinet, HeatPart, Size } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { faceNames } from './fill-carcass.ts';
import { noted } from './fill-room.ts';
import type { Candidate, Ledger } from './ledger.ts';
import type { Lamp, LampFacing, LampShape, Light, Pulsation } from './light.ts';
import type { DimmingSpec } from './light-spec.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, Given, HeatKindSpec, HeatSpec } from './spec.ts';

/** The frame and bed of a machine that says nothing of its finish. */
const MACHINE = 'machine frames';

/** From a lamp's face to the board that it is fixed to, m. */
const LAMP_DEPTH = 0.01;

/** Mains frequency doubled: a lamp brightens with each half wave. */
const RIPPLE_FREQUENCY = 100;

type Filled = Pick<Cabinet, 'inside' | 'bays' | 'faces' | 'doors' | 'partitions' | 'machines' | 'heats'>;

export function fillLight(spec: FileSpec, filled: Filled, ledger: Ledger): Light {
  const reflectances: Record<string, number> = {};
  const painted = (name: string): string => {
    reflectances[name] ??= reflectanceOf(spec, name, 'finishes', ledger);
    return name;
  };
  const bare = ({ layers }: Build): string => {
    const name = layers[0]!.material;
    reflectances[name] ??= reflectanceOf(spec, name, 'boards', ledger);
    return name;
  };
  const { cabinet, shelves = {}, machines = {} } = spec;
  /** The finish of the whole cabinet leaves panes clear. */
  const inside = (build: Build, own: string | undefined): string => {
    const finish = own ?? (build.solarTransmittance > 0 ? undefined : cabinet.finish);
    return finish === undefined ? bare(build) : painted(finish);
  };
  const named = <T>(map: Readonly<Record<string, T>>, nameOf: (id: string, part: T) => string) =>
    Object.fromEntries(Object.entries(map).map(([id, part]) => [id, nameOf(id, part)]));
  const doorFinish = (id: string): string | undefined =>
    cabinet.doors?.[id]?.finish ?? (id === 'door' ? cabinet.door?.finish : undefined);
  const chambers = Object.entries(filled.machines).flatMap(([id, { chamber }]) =>
    chamber === undefined ? [] : [[id, chamber] as const],
  );
  return {
    faces: Object.fromEntries(
      faceNames.map((name) => [name, inside(filled.faces[name].build, cabinet.faces?.[name]?.finish)]),
    ),
    doors: named(filled.doors, (id, { build }) => inside(build, doorFinish(id))),
    partitions: filled.partitions.map(({ id, build }) => inside(build, shelves[id]?.finish)),
    machines: named(filled.machines, (id) => {
      const finish = machines[id]?.finish;
      if (finish !== undefined) return painted(finish);
      reflectances[MACHINE] ??= ledger.number(`light.reflectances.${MACHINE}`, [], defaults.machineReflectance);
      return MACHINE;
    }),
    chambers: Object.fromEntries(chambers.map(([id, { build }]) => [id, bare(build)])),
    reflectances,
    lamps: fillLamps(spec, filled, ledger),
    chamberLamps: Object.fromEntries(
      chambers.map(([id, { lamp }]) => [
        id,
        ledger.number(
          `light.chamberLamps.${id}`,
          [],
          lamp > 0 ? fluxByPower(lamp) : { value: 0, how: 'its chamber has no lamp' },
        ),
      ]),
    ),
  };
}

function reflectanceOf(spec: FileSpec, name: string, group: 'finishes' | 'boards', ledger: Ledger): number {
  const found = findPart(spec.parts, group, name);
  const quantity = found?.spec.reflectance;
  const candidate: Candidate =
    found?.own === true
      ? { quantity, file: ['parts', group, name, 'reflectance'] }
      : { quantity, part: `${group}.${name}`, source: found?.source ?? '' };
  return ledger.number(`light.reflectances.${name}`, [candidate], defaults.boardReflectance);
}

function fillLamps(spec: FileSpec, filled: Filled, ledger: Ledger): Readonly<Record<string, Lamp>> {
  return Object.fromEntries(
    Object.entries(filled.heats).flatMap(([id, heat]) =>
      heat.what === 'lamp' ? [[id, fillLamp(id, heat, spec, filled, ledger)]] : [],
    ),
  );
}

function fillLamp(id: string, heat: HeatPart, spec: FileSpec, { bays, inside }: Filled, ledger: Ledger): Lamp {
  const own: HeatSpec = spec.heats![id]!;
  const found = own.kind === undefined ? undefined : findPart(spec.parts, 'heats', own.kind);
  const kind: HeatKindSpec = found?.spec ?? {};
  const at = `light.lamps.${id}`;
  const file: FilePath = ['heats', id];
  /** Where the kind has a number. */
  const ofKind = (quantity: Given, ...keys: string[]): Candidate =>
    found?.own === true
      ? { quantity, file: ['parts', 'heats', found.kind, ...keys] }
      : { quantity, part: `heats.${own.kind}`, source: found?.source ?? '' };
  // A lamp that was given its own power shines by that power, not by that of its kind.
  const fluxOfKind = own.power === undefined ? [ofKind(kind.flux, 'flux')] : [];
  const flux = ledger.number(
    `${at}.flux`,
    [{ quantity: own.flux, file: [...file, 'flux'] }, ...fluxOfKind],
    heat.watts > 0 ? fluxByPower(heat.watts) : { value: 0, how: 'a lamp without power' },
  );
  const shape: LampShape = own.shape ?? kind.shape ?? { kind: 'point' };
  ledger.note(
    `${at}.shape`,
    own.shape !== undefined
      ? ledger.given([...file, 'shape'])
      : kind.shape !== undefined
        ? originOfKind(ledger, own, found?.source)
        : { kind: 'derived', how: 'taken as a point: nothing says how large it is' },
  );
  const bay = bays[heat.bay]!;
  const place = fillLampPlace(at, own, shape, bay, inside, ledger);
  const pulsation = fillPulsation(`${at}.pulsation`, own.dimming, kind.dimming, file, ofKind, ledger);
  return { bay: heat.bay, flux, shape, ...place, ...(pulsation === undefined ? {} : { pulsation }) };
}

function fluxByPower(watts: number): Assumption {
  const { value, low, high, shape, why } = defaults.lampEfficacy;
  return {
    value: watts * value,
    low: watts * low,
    high: watts * high,
    shape,
    why: `${value} lm from each of its watts: ${why}`,
  };
}

function originOfKind(ledger: Ledger, own: HeatSpec, source: string | undefined): ReturnType<Ledger['given']> {
  return source === undefined || source === 'the cabinet file'
    ? ledger.given(['parts', 'heats', own.kind!, 'shape'])
    : { kind: 'catalogue', part: `heats.${own.kind}`, source };
}

/** Under the ceiling behind the front unless the file says where; sending its light away from the face that it is nearest to. */
function fillLampPlace(
  at: string,
  own: HeatSpec,
  shape: LampShape,
  bay: Bay,
  inside: Size,
  ledger: Ledger,
): Pick<Lamp, 'at' | 'faces' | 'along'> {
  const file: FilePath = ['heats', at.split('.').slice(2).join('.')];
  const size = [bay.x[1] - bay.x[0], inside.depth, bay.z[1] - bay.z[0]] as const;
  const half = shape.kind === 'panel' ? shape.height / 2 : 0;
  const { lampFromFront } = defaults;
  const fromFront = (part: number): number => Math.max(part * size[1], Math.min(half + LAMP_DEPTH, size[1] / 2));
  let place: readonly number[];
  if (own.at === undefined) {
    ledger.note(`${at}.at.0`, { kind: 'derived', how: 'in the middle from left to right' });
    ledger.note(`${at}.at.2`, { kind: 'derived', how: 'under the ceiling' });
    const y = ledger.number(`${at}.at.1`, [], {
      ...lampFromFront,
      value: fromFront(lampFromFront.value),
      low: fromFront(lampFromFront.low),
      high: fromFront(lampFromFront.high),
    });
    place = [size[0] / 2, y, size[2] - LAMP_DEPTH];
  } else {
    ledger.note(`${at}.at`, ledger.given([...file, 'at']));
    place = own.at;
  }
  const faces = noted(
    ledger,
    `${at}.faces`,
    own.faces,
    [...file, 'faces'],
    own.at === undefined ? 'down' : awayFromNearest(place, size),
    'away from the board that it is nearest to',
  );
  const usual = faces === 'left' || faces === 'right' ? 'y' : 'x';
  const along = noted(
    ledger,
    `${at}.along`,
    own.along,
    [...file, 'along'],
    usual,
    'along the longer edge, as strips are',
  );
  return { at: [place[0]!, place[1]!, place[2]!], faces, along };
}

function awayFromNearest(place: readonly number[], size: readonly number[]): LampFacing {
  const [x = 0, y = 0, z = 0] = place;
  const [width = 0, depth = 0, height = 0] = size;
  const distances: readonly (readonly [number, LampFacing])[] = [
    [height - z, 'down'],
    [y, 'back'],
    [x, 'right'],
    [width - x, 'left'],
    [depth - y, 'front'],
    [z, 'up'],
  ];
  return distances.reduce((nearest, next) => (next[0] < nearest[0] - 1e-9 ? next : nearest))[1];
}

function fillPulsation(
  at: string,
  own: DimmingSpec | undefined,
  kind: DimmingSpec | undefined,
  file: FilePath,
  ofKind: (quantity: Given, ...keys: string[]) => Candidate,
  ledger: Ledger,
): Pulsation | undefined {
  const dimming = own ?? kind;
  if (dimming === undefined) return undefined;
  const number = (name: string, key: 'frequency' | 'duty' | 'depth', fallback: Parameters<Ledger['number']>[2]) =>
    ledger.number(
      `${at}.${name}`,
      own === undefined
        ? [ofKind(kind![key], 'dimming', key)]
        : [{ quantity: own[key], file: [...file, 'dimming', key] }],
      fallback,
    );
  switch (dimming.by) {
    case 'dc':
      return { by: 'dc' };
    case 'pwm':
      return {
        by: 'pwm',
        frequency: number('frequency', 'frequency', { value: 0, how: 'nothing says how fast it pulsates' }),
        duty: number('duty', 'duty', { value: 0.5, how: 'half on: the dimmer in the middle' }),
      };
    case 'mains':
      return {
        by: 'mains',
        frequency: number('frequency', 'frequency', {
          value: RIPPLE_FREQUENCY,
          how: 'twice the 50 Hz of the mains; give 120 Hz where it has 60 Hz',
        }),
        ripple: number('ripple', 'depth', defaults.rippleDepth),
      };
  }
}
