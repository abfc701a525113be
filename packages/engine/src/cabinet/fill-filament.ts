// Spools and drives, filled in: one spool for each machine and material that it prints where the file names none.

import type { Assumption } from './assumption.ts';
import type { Cabinet } from './cabinet.ts';
import { defaults } from './defaults.ts';
import type { Guide, Holder, SpoolPart, SpoolSpec, Way, WaySpec } from './filament.ts';
import { materialOn } from './fill-materials.ts';
import { noted } from './fill-room.ts';
import type { Fallback, Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, Given } from './spec.ts';

/** Mass of filament up to which a spool usually has this size, kg; diameter and width, m: no standard, common practice. */
const spoolSizes: readonly (readonly [mass: number, diameter: number, width: number])[] = [
  [0.6, 0.2, 0.04],
  [1.3, 0.2, 0.065],
  [3.2, 0.285, 0.09],
  [Number.POSITIVE_INFINITY, 0.35, 0.1],
];
/** Plastic spool without filament over its filament, kg/kg: 170 to 260 g for 1 kg, common practice. */
const EMPTY_SHARE = 0.22;

const usualHolder: Holder = 'bearing';

export function fillSpools(
  spec: FileSpec,
  materials: Cabinet['materials'],
  ledger: Ledger,
): Readonly<Record<string, SpoolPart>> {
  const written = Object.entries(spec.spools ?? {});
  const [only] = Object.keys(spec.machines ?? {});
  const named = new Set(written.map(([, { machine = only }]) => machine));
  const rest = Object.keys(spec.machines ?? {})
    .filter((machine) => !named.has(machine))
    .flatMap((machine) =>
      printedOn(spec, machine).map((material) => [`${machine}-${material}`, { machine, material }] as const),
    );
  return Object.fromEntries(
    [...written, ...rest].map(([id, spool]) => [id, fillSpool(id, spool, spec, materials, ledger)]),
  );
}

/** What a machine prints on any of its days, as the file calls it. */
function printedOn({ days, machines = {} }: FileSpec, id: string): string[] {
  const [first] = Object.keys(machines);
  const jobs = Object.values(days).flatMap((day) => Object.values(day.jobs ?? {}));
  return [...new Set(jobs.filter(({ machine = first }) => machine === id).map(({ material }) => material))];
}

function fillSpool(
  id: string,
  own: SpoolSpec,
  spec: FileSpec,
  materials: Cabinet['materials'],
  ledger: Ledger,
): SpoolPart {
  const at = `spools.${id}`;
  const file: FilePath = ['spools', id];
  const number = (path: string, key: keyof SpoolSpec, fallback: Fallback): number =>
    ledger.number(`${at}.${path}`, [{ quantity: own[key] as Given, file: [...file, key] }], fallback);
  const machine = own.machine ?? Object.keys(spec.machines ?? {})[0]!;
  const onMachine = materialOn(machine, own.material, spec);
  const mass = number('mass', 'mass', { value: 1, how: 'a full spool of 1 kg, unless given' });
  const [, diameter, width] = spoolSizes.find(([most]) => mass <= most)!;
  for (const side of ['diameter', 'width'])
    ledger.note(
      `${at}.${side}`,
      own.size === undefined
        ? { kind: 'derived', how: 'usual of its mass; there is no standard' }
        : ledger.given([...file, 'size']),
    );
  const bay = spec.machines?.[machine]?.bay ?? Object.keys(spec.bays ?? { inside: {} })[0]!;
  return {
    machine,
    material: materials[onMachine] === undefined ? own.material : onMachine,
    mass,
    empty: number('empty', 'empty', { value: EMPTY_SHARE * mass, how: 'usual of its mass; there is no standard' }),
    diameter: own.size?.[0] ?? diameter,
    width: own.size?.[1] ?? width,
    where: noted(
      ledger,
      `${at}.where`,
      own.where,
      [...file, 'where'],
      bay,
      'in the bay of its machine unless said otherwise',
    ),
    holder: noted(
      ledger,
      `${at}.holder`,
      own.holder,
      [...file, 'holder'],
      usualHolder,
      'on ball bearings, as it should be, unless said otherwise',
    ),
    written: spec.spools?.[id] !== undefined,
    path: fillWay(`${at}.path`, own.path ?? {}, [...file, 'path'], ledger),
    ...(own.temperature === undefined
      ? {}
      : { temperature: number('temperature', 'temperature', { value: 0, how: 'given' }) }),
    ...(own.humidity === undefined ? {} : { humidity: number('humidity', 'humidity', { value: 0, how: 'given' }) }),
  };
}

const frictions: Readonly<Record<Guide, Assumption | { readonly value: number; readonly how: string }>> = {
  tube: defaults.tubeFriction,
  printed: defaults.printedFriction,
  open: { value: 0, how: 'nothing rubs on it' },
};

function fillWay(at: string, own: WaySpec, file: FilePath, ledger: Ledger): Way {
  const number = (key: 'bends' | 'friction' | 'radius' | 'unwinding', fallback: Fallback): number =>
    ledger.number(`${at}.${key}`, [{ quantity: own[key], file: [...file, key] }], fallback);
  const guide = noted(ledger, `${at}.guide`, own.guide, [...file, 'guide'], 'tube', 'a tube unless said otherwise');
  return {
    bends: number('bends', defaults.pathBends),
    guide,
    friction: number('friction', frictions[guide]),
    radius: number('radius', defaults.bendRadius),
    unwinding: number('unwinding', defaults.unwinding),
  };
}
