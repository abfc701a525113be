// From what a person wrote to the whole cabinet: every default filled in, every part looked up, every origin written down.
// The file has been checked before: a part that is not there is a bug here.

import { isFault, parseQuantity } from '../units/quantity.ts';
import type { Assumption } from './assumption.ts';
import type { Cabinet, Factors, Option } from './cabinet.ts';
import { fillCalibration } from './calibration.ts';
import { defaults } from './defaults.ts';
import { splitPath } from './edit-path.ts';
import { fillHeats, fillPaths, fillSensors } from './fill-air.ts';
import { fillCameras } from './fill-cameras.ts';
import { fillBays, fillDoors, fillFaces, fillInside, fillPartitions } from './fill-carcass.ts';
import { fillCarcasses, fillCosts } from './fill-costs.ts';
import { fillDays } from './fill-days.ts';
import { fillSpools } from './fill-filament.ts';
import { fillFit } from './fill-fit.ts';
import { fillFittings } from './fill-fittings.ts';
import { fillJoinery } from './fill-joinery.ts';
import { fillLight } from './fill-light.ts';
import { fillMachines } from './fill-machines.ts';
import { fillMaterials, fillOwnEmissions } from './fill-materials.ts';
import { fillPower } from './fill-power.ts';
import { fillPrices } from './fill-prices.ts';
import { fillProtection } from './fill-protection.ts';
import { fillQueue } from './fill-queue.ts';
import { fillOutdoors, fillPeople, fillRoom } from './fill-room.ts';
import { fillSearch } from './fill-search.ts';
import { fillSound, shellLayers } from './fill-sound.ts';
import { fillStructure } from './fill-structure.ts';
import type { JobFiles } from './job-file.ts';
import { createLedger, type Ledger } from './ledger.ts';
import { limitKinds } from './limits.ts';
import type { Origins } from './origin.ts';
import { factorNames, findOverride, overrideOf } from './overrides.ts';
import type { SourceTree } from './source-tree.ts';
import type { FileSpec } from './spec.ts';

export function fillCabinet(
  spec: FileSpec,
  tree: SourceTree,
  files: JobFiles = {},
): { readonly cabinet: Cabinet; readonly origins: Origins } {
  const calibration = fillCalibration(spec.calibration);
  const ledger = createLedger(tree, calibration);
  const inside = fillInside(spec, ledger);
  const bays = fillBays(spec, inside, ledger);
  const materials = fillOwnEmissions(spec, fillMaterials(spec, ledger), ledger);
  const carcass = {
    inside,
    faces: fillFaces(spec, ledger),
    doors: fillDoors(spec, bays, ledger),
    bays,
    partitions: fillPartitions(spec, bays, ledger),
    jointGap: ledger.number(
      'jointGap',
      [{ quantity: spec.cabinet['joint-gap'], file: ['cabinet', 'joint-gap'] }],
      defaults.jointGap,
    ),
    paths: fillPaths(spec, bays, inside, ledger),
  };
  const currency = spec.currency ?? 'EUR';
  const days = fillDays(spec, materials, ledger);
  const people = fillPeople(spec, ledger, inside);
  const machines = fillMachines(spec, ledger);
  const heats = fillHeats(spec, ledger);
  const queue = fillQueue(spec, { machines, materials, people }, ledger, files);
  const search = fillSearch(spec);
  const cabinet: Cabinet = {
    title: spec.title ?? 'Cabinet',
    currency,
    room: fillRoom(spec, ledger),
    outdoors: fillOutdoors(spec, ledger),
    people,
    ...carcass,
    machines,
    materials,
    sensors: fillSensors(spec, bays, ledger),
    heats,
    light: fillLight(spec, { ...carcass, machines, heats }, ledger),
    cameras: fillCameras(spec, machines, ledger),
    days,
    ...(queue === undefined ? {} : { queue }),
    structure: fillStructure(spec, carcass, ledger),
    sound: fillSound(spec, shellLayers(carcass), Object.keys(people), ledger),
    power: fillPower(spec, { paths: carcass.paths, heats }, ledger),
    spools: fillSpools(spec, materials, ledger),
    factors: fillFactors(spec, ledger),
    overrides: fillOverrides(spec, carcass.partitions, ledger),
    limits: fillLimits(spec, ledger),
    prices: fillPrices(spec, carcass),
    protection: fillProtection(spec, { ...carcass, days }, ledger),
    costs: fillCosts(spec, { ...carcass, days, currency }, ledger),
    carcasses: fillCarcasses(spec, ledger),
    care: spec.care ?? {},
    options: fillOptions(spec),
    ...(search === undefined ? {} : { search }),
    fit: fillFit(spec, ledger),
    fittings: fillFittings(spec, ledger),
    joinery: fillJoinery(spec, Object.keys(carcass.doors), ledger),
    ...(calibration === undefined ? {} : { calibration }),
  };
  return { cabinet, origins: ledger.origins };
}

const factorDefaults: Readonly<Partial<Record<keyof Factors, Assumption>>> = {
  insideFilm: defaults.insideFilm,
  outsideFilm: defaults.outsideFilm,
  bedLoss: defaults.bedLoss,
  leakage: defaults.leakage,
  fanFlow: defaults.fanFlow,
  plume: defaults.plume,
};

function fillFactors({ overrides = {}, room }: FileSpec, ledger: Ledger): Factors {
  const { low, high, value, why } = defaults.roomLossPerArea;
  const roomLoss: Assumption = { value: 1, low: low / value, high: high / value, shape: 'log-normal', why };
  const factors = Object.entries(factorNames).map(([key, name]) => {
    const quantity = overrideOf({ overrides }, `factors.${key}`);
    const assumed =
      name === 'roomHeatLoss' && room?.['heat-loss'] === undefined && overrides['room.heat-loss'] === undefined
        ? roomLoss
        : factorDefaults[name];
    const fallback = assumed ?? { value: 1, how: 'nothing has corrected it' };
    return [
      name,
      ledger.number(`factors.${name}`, [{ quantity, file: ['overrides', `factors.${key}`] }], fallback),
    ] as const;
  });
  return Object.fromEntries(factors) as unknown as Factors;
}

/** Overrides that filling has put where they belong. */
const STANDS_ELSEWHERE = /^(?:factors|room)\.|\.emission\./;

function fillOverrides(
  { overrides = {} }: FileSpec,
  partitions: Cabinet['partitions'],
  ledger: Ledger,
): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(overrides).map(([path, written]) => {
      const { override, ids } = findOverride(splitPath(path)!)!;
      const read = parseQuantity(override.kind, String(written));
      if (isFault(read)) throw new Error(`fillOverrides: ${path} was not checked`);
      const names = override.cabinet.startsWith('partitions.')
        ? [String(partitions.findIndex(({ id }) => id === ids[0]))]
        : [...ids];
      const at = override.cabinet.replaceAll('*', () => names.shift()!);
      // The spread of what replaces one number of the cabinet stands with that number: only there does a sample of it count.
      if (STANDS_ELSEWHERE.test(at)) ledger.note(`overrides.${at}`, ledger.given(['overrides', path]));
      else
        ledger.number(`overrides.${at}`, [{ quantity: read, file: ['overrides', path] }], { value: 0, how: 'given' });
      return [at, read.value];
    }),
  );
}

function fillLimits({ limits = {} }: FileSpec, ledger: Ledger): Readonly<Record<string, number>> {
  return Object.fromEntries(
    Object.entries(limits).map(([id, written]) => {
      const read = parseQuantity(limitKinds[id]!, String(written));
      if (isFault(read)) throw new Error(`fillLimits: ${id} was not checked`);
      return [
        id,
        ledger.number(`limits.${id}`, [{ quantity: read, file: ['limits', id] }], { value: 0, how: 'given' }),
      ];
    }),
  );
}

function fillOptions({ options = {} }: FileSpec): Readonly<Record<string, Option>> {
  return Object.fromEntries(
    Object.entries(options).map(([id, { title = id, edits }]) => [
      id,
      {
        title,
        edits: edits.map(({ set, add, remove }) => ({
          ...(set === undefined ? {} : { set }),
          ...(add === undefined ? {} : { add }),
          ...(remove === undefined ? {} : { remove }),
        })),
      },
    ]),
  );
}
