// Machines: a kind of the catalogue, with whatever the file overrules.

import type { Bed, Chamber, Machine } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { contaminants } from './contaminants.ts';
import { fillBuild } from './fill-carcass.ts';
import { fillDrive, fillMains } from './fill-mains.ts';
import { fillStanding } from './fill-standing.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import { measuredHeat } from './measured-heat.ts';
import { overrideOf } from './overrides.ts';
import type { FilePath } from './source-tree.ts';
import type { Amounts, ChamberSpec, FileSpec, Given, MachineKindSpec, MachineSpec } from './spec.ts';

/** Used when neither the file nor its kind says it. */
export function unsaid(value: number, how: string): Fallback {
  return { value, how };
}

export function fillMachines(spec: FileSpec, ledger: Ledger): Readonly<Record<string, Machine>> {
  return Object.fromEntries(
    Object.entries(spec.machines ?? {}).map(([id, machine]) => [
      id,
      withHeat(id, fillMachine(id, machine, spec, ledger), spec, ledger),
    ]),
  );
}

/** A measured heat of everything but the bed scales its three parts. */
function withHeat(id: string, machine: Machine, spec: FileSpec, ledger: Ledger): Machine {
  const override = overrideOf(spec, `machines.${id}.heat`);
  if (override === undefined) return machine;
  for (const part of ['hotEnd', 'motors', 'electronics']) {
    ledger.note(`machines.${id}.${part}`, {
      kind: 'derived',
      how: `scaled so that hot end, motors and electronics give ${override.value} W together, as the file overrides`,
    });
  }
  return measuredHeat(machine, override.value);
}

/** The file's own value, else that of the kind. */
export interface TwoPlaces<T> {
  readonly own: T;
  readonly kind: T;
  readonly file: FilePath;
  readonly entry: { readonly file: FilePath } | { readonly part: string; readonly source: string };
}

export function candidates<T>(
  { own, kind, file, entry }: TwoPlaces<T>,
  read: (spec: T) => Given,
  ...keys: string[]
): Candidate[] {
  const quantity = read(kind);
  return [
    { quantity: read(own), file: [...file, ...keys] },
    'file' in entry ? { quantity, file: [...entry.file, ...keys] } : { quantity, ...entry },
  ];
}

function fillMachine(id: string, own: MachineSpec, spec: FileSpec, ledger: Ledger): Machine {
  const found = findPart(spec.parts, 'machines', own.kind)!;
  const kind: MachineKindSpec = found.spec;
  const at = `machines.${id}`;
  const file: FilePath = ['machines', id];
  const entry = found.own
    ? { file: ['parts', 'machines', own.kind] }
    : { part: `machines.${own.kind}`, source: found.source };
  const places: TwoPlaces<MachineKindSpec> = { own, kind, file, entry };
  const number = (
    path: string,
    read: (machine: MachineKindSpec) => Given,
    fallback: Fallback,
    ...keys: string[]
  ): number => ledger.number(`${at}.${path}`, candidates(places, read, ...keys), fallback);
  const lengths = (
    path: string,
    read: (machine: MachineKindSpec) => readonly number[] | undefined,
    keys: string[],
    otherwise: readonly number[],
  ): readonly number[] => {
    const mine = read(own);
    ledger.note(`${at}.${path}`, mine === undefined ? noteOf(places) : ledger.given([...file, ...keys]));
    return mine ?? read(kind) ?? otherwise;
  };
  const said = <T>(
    path: string,
    read: (machine: MachineKindSpec) => T | undefined,
    keys: string[],
    otherwise: T,
  ): T => {
    const mine = read(own);
    ledger.note(`${at}.${path}`, mine === undefined ? noteOf(places) : ledger.given([...file, ...keys]));
    return mine ?? read(kind) ?? otherwise;
  };

  const bays = Object.keys(spec.bays ?? { inside: {} });
  const [width, depth, height] = lengths('size', ({ size }) => size, ['size'], [0.5, 0.5, 0.5]);
  const bed = fillBed(places, at, ledger, lengths, number);
  const style = said('style', (machine) => machine.style, ['style'], 'fixed-bed');
  ledger.note(
    `${at}.at`,
    own.at === undefined ? { kind: 'derived', how: 'in the middle of its bay' } : ledger.given([...file, 'at']),
  );
  const chamber = own.chamber ?? kind.chamber;
  return {
    kind: own.kind,
    bay: own.bay ?? bays[0]!,
    style,
    at: own.at === undefined ? middleOf(spec, own.bay ?? bays[0]!) : [own.at[0]!, own.at[1]!],
    size: { width: width!, depth: depth!, height: height! },
    bed,
    hotEnd: number(
      'hotEnd',
      (machine) => machine['hot-end'],
      unsaid(16, 'typical of a 0.4 mm nozzle, from memory'),
      'hot-end',
    ),
    hotEndAt: number('hotEndAt', (machine) => machine['hot-end-at'], unsaid(498.15, '225 °C'), 'hot-end-at'),
    motors: number('motors', ({ motors }) => motors, unsaid(14, 'four motors, from memory'), 'motors'),
    electronics: number(
      'electronics',
      ({ electronics }) => electronics,
      unsaid(7, 'board and display, from memory'),
      'electronics',
    ),
    electronicsInside: said(
      'electronicsInside',
      (machine) => machine['electronics-inside'],
      ['electronics-inside'],
      true,
    ),
    electronicsLimit: number(
      'electronicsLimit',
      (machine) => machine['electronics-limit'],
      unsaid(323.15, '50 °C, from memory'),
      'electronics-limit',
    ),
    frameLimit: number(
      'frameLimit',
      (machine) => machine['frame-limit'],
      unsaid(328.15, '55 °C, from memory'),
      'frame-limit',
    ),
    supply: {
      inside: said('supply.inside', ({ supply }) => supply?.inside, ['supply', 'inside'], true),
      efficiency: number(
        'supply.efficiency',
        ({ supply }) => supply?.efficiency,
        unsaid(0.88, 'typical, from memory'),
        'supply',
        'efficiency',
      ),
      idle: number('supply.idle', ({ supply }) => supply?.idle, unsaid(3, 'typical, from memory'), 'supply', 'idle'),
    },
    standby: number('standby', ({ standby }) => standby, unsaid(8, 'typical, from memory'), 'standby'),
    frameHeatCapacity: number(
      'frameHeatCapacity',
      (machine) => machine['frame-heat-capacity'],
      unsaid(4500, 'about 7 kg of metal, from memory'),
      'frame-heat-capacity',
    ),
    frameArea: number(
      'frameArea',
      (machine) => machine['frame-area'],
      unsaid(0.5, 'typical, from memory'),
      'frame-area',
    ),
    ...fillStanding(
      {
        at,
        file,
        style,
        width: width!,
        depth: depth!,
        kindSays: (keys, quantity) =>
          'file' in entry ? { quantity, file: [...entry.file!, ...keys] } : { quantity, ...entry },
      },
      own,
      kind,
      spec,
      ledger,
    ),
    mains: fillMains(number, said),
    drive: fillDrive(number),
    ...(chamber === undefined
      ? {}
      : {
          chamber: fillChamber(
            at,
            {
              own: own.chamber ?? {},
              kind: kind.chamber ?? {},
              file: [...file, 'chamber'],
              entry: 'file' in entry ? { file: [...entry.file!, 'chamber'] } : entry,
            },
            spec,
            ledger,
          ),
        }),
  };
}

type Numbers = (
  path: string,
  read: (machine: MachineKindSpec) => Given,
  fallback: Fallback,
  ...keys: string[]
) => number;
type LengthsOf = (
  path: string,
  read: (machine: MachineKindSpec) => readonly number[] | undefined,
  keys: string[],
  otherwise: readonly number[],
) => readonly number[];

function fillBed(
  places: TwoPlaces<MachineKindSpec>,
  at: string,
  ledger: Ledger,
  lengths: LengthsOf,
  number: Numbers,
): Bed {
  const [width, depth] = lengths('bed.size', ({ bed }) => bed?.size, ['bed', 'size'], [0.235, 0.235]);
  for (const side of ['width', 'depth']) ledger.note(`${at}.bed.${side}`, ledger.origins.get(`${at}.bed.size`)!);
  const capacity = 9094 * width! * depth!;
  const under = places.own.bed?.underside;
  ledger.note(
    `${at}.bed.underside`,
    under === undefined ? noteOf(places) : ledger.given([...places.file, 'bed', 'underside']),
  );
  return {
    width: width!,
    depth: depth!,
    height: number('bed.height', ({ bed }) => bed?.height, unsaid(0.1, 'typical, from memory'), 'bed', 'height'),
    thickness: number(
      'bed.thickness',
      ({ bed }) => bed?.thickness,
      unsaid(0.004, 'plate and sheet'),
      'bed',
      'thickness',
    ),
    heatCapacity: number(
      'bed.heatCapacity',
      ({ bed }) => bed?.['heat-capacity'],
      unsaid(capacity, '3 mm aluminium and a steel sheet over its area'),
      'bed',
      'heat-capacity',
    ),
    powerMax: number(
      'bed.powerMax',
      ({ bed }) => bed?.power,
      unsaid(4900 * width! * depth!, '0.49 W/cm², from memory'),
      'bed',
      'power',
    ),
    emissivityTop: number(
      'bed.emissivityTop',
      ({ bed }) => bed?.emissivity,
      unsaid(0.9, 'coated sheet, from memory'),
      'bed',
      'emissivity',
    ),
    underside: under ?? places.kind.bed?.underside ?? { kind: 'bare', emissivity: 0.2 },
    motion: number('bed.motion', ({ bed }) => bed?.motion, unsaid(0, 'the bed stands still'), 'bed', 'motion'),
  };
}

function fillChamber(machine: string, places: TwoPlaces<ChamberSpec>, spec: FileSpec, ledger: Ledger): Chamber {
  const { own, kind, file } = places;
  const at = `${machine}.chamber`;
  const number = (path: string, key: keyof ChamberSpec, fallback: Fallback): number =>
    ledger.number(
      `${at}.${path}`,
      candidates(places, (chamber) => chamber[key] as Given, key),
      fallback,
    );
  const [width, depth, height] = own.size ?? kind.size ?? [0.35, 0.35, 0.4];
  ledger.note(`${at}.size`, own.size === undefined ? noteOf(places) : ledger.given([...file, 'size']));
  const build = own['made-of'] ??
    kind['made-of'] ?? { layers: [{ board: 'polycarbonate', thickness: 0.003, length: 0 }] };
  const filter = (path: string, key: 'exhaust-filter' | 'recirculation-filter'): Readonly<Record<string, number>> =>
    fillEfficiency(`${at}.${path}`, places, (chamber) => chamber[key], key, ledger);
  const none = (how: string): Fallback => unsaid(0, how);
  return {
    size: { width: width!, depth: depth!, height: height! },
    build: fillBuild(
      `${at}.build`,
      build,
      own['made-of'] === undefined ? file.slice(0, 2) : [...file, 'made-of'],
      spec.parts,
      ledger,
    ),
    leakArea: number('leakArea', 'leak', unsaid(0.002, 'gaps of 20 cm², from memory')),
    exhaustFlow: number('exhaustFlow', 'exhaust', none('it has none')),
    exhaustFilter: filter('exhaustFilter', 'exhaust-filter'),
    recirculation: number('recirculation', 'recirculation', none('it has none')),
    recirculationFilter: filter('recirculationFilter', 'recirculation-filter'),
    lamp: number('lamp', 'lamp', none('it has none')),
    heater: number('heater', 'heater', none('it has none')),
    heaterSet: number('heaterSet', 'heater-set', unsaid(323.15, '50 °C, without meaning unless there is a heater')),
  };
}

export function fillEfficiency<T>(
  at: string,
  places: TwoPlaces<T>,
  read: (spec: T) => Amounts | undefined,
  key: string,
  ledger: Ledger,
): Readonly<Record<string, number>> {
  const named = contaminants.filter(
    (contaminant) => (read(places.own) ?? read(places.kind))?.[contaminant] !== undefined,
  );
  return Object.fromEntries(
    named.map((contaminant) => [
      contaminant,
      ledger.number(
        `${at}.${contaminant}`,
        candidates(places, (spec) => read(spec)?.[contaminant], key, contaminant),
        unsaid(0, 'none'),
      ),
    ]),
  );
}

export function noteOf<T>({ entry, file }: TwoPlaces<T>): { kind: 'catalogue'; part: string; source: string } {
  return 'part' in entry
    ? { kind: 'catalogue', ...entry }
    : { kind: 'catalogue', part: entry.file.join('.'), source: `the cabinet file, as ${file.join('.')} says` };
}

function middleOf({ bays, cabinet }: FileSpec, bay: string): readonly [number, number] {
  const [left = 0, right = cabinet.inside[0]!] = bays?.[bay]?.x ?? [];
  return [(right - left) / 2, cabinet.inside[1]! / 2];
}
