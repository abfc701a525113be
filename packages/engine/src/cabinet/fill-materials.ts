// Materials: a filament of the catalogue, with whatever the file overrules, and what a machine gives off when the file knows it.

import type { Material } from './cabinet.ts';
import { findPart, kindsOf } from './catalogue.ts';
import { contaminants } from './contaminants.ts';
import { candidates, noteOf, type TwoPlaces, unsaid } from './fill-machines.ts';
import { type Ledger, spreadOf } from './ledger.ts';
import { overrideOf } from './overrides.ts';
import type { FileSpec, Given, MaterialSpec } from './spec.ts';

/** What a machine prints is a material of its own when the file overrides what that machine gives off. */
export function materialOn(machine: string, material: string, { overrides = {} }: Pick<FileSpec, 'overrides'>): string {
  const own = Object.keys(overrides).some((path) => path.startsWith(`machines.${machine}.emission.`));
  return own ? `${material} on ${machine}` : material;
}

/** Materials whose emissions a machine overrides, beside those of the catalogue and the file. */
export function fillOwnEmissions(
  spec: FileSpec,
  materials: Readonly<Record<string, Material>>,
  ledger: Ledger,
): Readonly<Record<string, Material>> {
  const machines = Object.keys(spec.machines ?? {});
  const jobs = Object.values(spec.days).flatMap((day) => Object.values(day.jobs ?? {}));
  const own = jobs.flatMap(({ machine = machines[0]!, material }) => {
    const id = materialOn(machine, material, spec);
    const base = materials[material]!;
    if (id === material) return [];
    ledger.note(`materials.${id}`, { kind: 'derived', how: `${material}, but for what the file overrides` });
    const emissions = contaminants.flatMap((contaminant) => {
      const path = `machines.${machine}.emission.${contaminant}`;
      const rate = overrideOf(spec, path);
      const known = base.emissions[contaminant];
      if (rate === undefined) return known === undefined ? [] : [[contaminant, known] as const];
      const { value, low = value, high = value } = rate;
      const spread = spreadOf(rate);
      const origin = ledger.given(['overrides', path]);
      ledger.note(`materials.${id}.emissions.${contaminant}`, origin);
      if (spread !== undefined) ledger.note(`materials.${id}.emissions.${contaminant}.p50`, { ...origin, spread });
      return [[contaminant, { p10: low, p50: value, p90: high }] as const];
    });
    return [[id, { ...base, emissions: Object.fromEntries(emissions) }] as const];
  });
  return { ...materials, ...Object.fromEntries(own) };
}

/** Every material of the catalogue and of the file. Emissions of those that jobs use carry their spread. */
export function fillMaterials(spec: FileSpec, ledger: Ledger): Readonly<Record<string, Material>> {
  const used = new Set(
    Object.values(spec.days).flatMap(({ jobs = {} }) => Object.values(jobs).map(({ material }) => material)),
  );
  const names = new Set([...Object.keys(spec.materials ?? {}), ...kindsOf(spec.parts, 'materials')]);
  return Object.fromEntries([...names].map((id) => [id, fillMaterial(id, spec, ledger, used.has(id))]));
}

function fillMaterial(id: string, { materials = {}, parts }: FileSpec, ledger: Ledger, used: boolean): Material {
  const own: MaterialSpec = materials[id] ?? {};
  const like = own.like ?? id;
  const found = findPart(parts, 'materials', like) ?? findPart(parts, 'materials', 'PLA')!;
  const places: TwoPlaces<MaterialSpec> = {
    own,
    kind: found.spec,
    file: ['materials', id],
    entry: found.own
      ? { file: ['parts', 'materials', like] }
      : { part: `materials.${found.kind}`, source: found.source },
  };
  const at = `materials.${id}`;
  const number = (path: string, key: keyof MaterialSpec, value: number): number =>
    ledger.number(
      `${at}.${path}`,
      candidates(places, (material) => material[key] as Given, key),
      unsaid(value, 'typical, from memory'),
    );
  const band = (
    path: string,
    key: 'prints-well' | 'prints-best',
    otherwise: readonly [number, number],
  ): readonly [number, number] => {
    ledger.note(`${at}.${path}`, own[key] === undefined ? noteOf(places) : ledger.given(['materials', id, key]));
    return own[key] ?? found.spec[key] ?? otherwise;
  };
  const emissions = contaminants.flatMap((contaminant) => {
    const rate = own.emissions?.[contaminant] ?? found.spec.emissions?.[contaminant];
    if (rate === undefined) return [];
    const path = `${at}.emissions.${contaminant}`;
    const given = own.emissions?.[contaminant] !== undefined;
    const origin = given ? ledger.given(['materials', id, 'emissions', contaminant]) : noteOf(places);
    const { value, low = value, high = value } = rate;
    const spread = spreadOf(rate);
    ledger.note(path, origin);
    if (used && spread !== undefined)
      ledger.note(`${path}.p50`, { ...origin, spread: { ...spread, shape: 'log-normal' } });
    return [[contaminant, { p10: low, p50: value, p90: high }] as const];
  });
  return {
    nozzle: number('nozzle', 'nozzle', 493.15),
    bed: number('bed', 'bed', 333.15),
    bandWell: band('bandWell', 'prints-well', [288.15, 318.15]),
    bandBest: band('bandBest', 'prints-best', [291.15, 313.15]),
    draughtLimit: number('draughtLimit', 'draught', 0.3),
    density: number('density', 'density', 1200),
    glassTransition: number('glassTransition', 'glass-transition', 343.15),
    spoolLimit: number('spoolLimit', 'spool-limit', 313.15),
    humidityLimit: number('humidityLimit', 'humidity-limit', 0.5),
    elasticModulus: number('elasticModulus', 'elastic-modulus', 2e9),
    bendStrain: number('bendStrain', 'bend-strain', 0.0175),
    emissions: Object.fromEntries(emissions),
  };
}
