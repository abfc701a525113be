// Protection: what the file says stays as it is said; only what nature decides is filled in, with its spread.

import { type Assumption, normal } from './assumption.ts';
import type { Cabinet } from './cabinet.ts';
import { findPart, type PartGroup } from './catalogue.ts';
import type { Ledger } from './ledger.ts';
import type { ChainDevice, ChainWhat, Detector, FireFigures, Protection, Stored } from './protection.ts';
import type { ChainDeviceSpec, DetectorSpec } from './protection-schema.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec } from './spec.ts';

/** Things other than filament that may lie about, with their net heat of combustion, J/kg. */
export const keptThings: Readonly<Record<string, number>> = {
  aerosol: 40e6,
  solvent: 30e6,
  wipes: 20e6,
  paper: 16e6,
  cardboard: 16e6,
  wood: 18e6,
};

/** What one can or packet holds when no mass is given, kg. */
const ONE_PIECE = 0.4;

export const fireFigures: Readonly<Record<keyof FireFigures, Assumption>> = {
  oxygenHeat: normal(
    13.1e6,
    12.2e6,
    14e6,
    'Huggett 1980, and 49 polymers at 13.10 ± 0.78 MJ/kg (Walters, Hackett, Lyon 2000); single polymers lie up to 7 % off',
  ),
  weakOxygen: normal(
    0.15,
    0.12,
    0.16,
    'about 15 % by volume, at which the risk of fire still exists (review of hypoxic air, Fire and Materials 2013); spread from memory',
  ),
  growth: {
    value: 11.72,
    low: 2.93,
    high: 46.9,
    shape: 'log-normal',
    why: 'medium growth, from slow to fast: classes of NFPA 204',
  },
  openingAir: normal(0.5, 0.4, 0.6, 'Kawagoe’s law of one upright opening; its constant differs between authors'),
};

/** These open by their nature, whatever their wiring is called. */
const OPEN_BY_NATURE: ReadonlySet<ChainWhat> = new Set(['thermal link', 'reset thermostat', 'self-reset thermostat']);

/** How far below its rating a link carries for good, K. */
const HOLDING = normal(20, 14, 30, 'thermal links hold 14 to 30 K below their rating, from memory');

export function fillProtection(
  spec: FileSpec,
  { faces, doors, partitions, days }: Pick<Cabinet, 'faces' | 'doors' | 'partitions' | 'days'>,
  ledger: Ledger,
): Protection {
  const { protection = {} } = spec;
  const { chain, latch, detectors, stored, extinguisher, 'on-alarm': alarm = {} } = protection;
  const builds = [...Object.values(faces), ...Object.values(doors), ...partitions].map(({ build }) => build);
  const boards = builds.flatMap(({ layers }) => layers.map(({ material }) => material));
  const printed = Object.values(days).flatMap(({ jobs }) => Object.values(jobs).map(({ material }) => material));
  const kept = Object.values(stored ?? {}).map(({ of }) => of);
  if (extinguisher !== undefined) ledger.note('protection.extinguisher', ledger.given(['protection', 'extinguisher']));
  return {
    ...(chain === undefined ? {} : { chain: mapped(chain, (id, device) => fillDevice(id, device, ledger)) }),
    ...(latch === undefined ? {} : { latch }),
    ...(detectors === undefined ? {} : { detectors: mapped(detectors, (_, detector) => fillDetector(detector)) }),
    onAlarm: {
      ...(alarm.fans === undefined ? {} : { fans: alarm.fans }),
      ...(alarm.heaters === undefined ? {} : { heaters: alarm.heaters }),
      ...(alarm.flaps === undefined ? {} : { flaps: alarm.flaps }),
    },
    ...(stored === undefined
      ? {}
      : {
          stored: mapped(stored, (id, { of, mass, where }): Stored => {
            const file: FilePath = ['protection', 'stored', id, 'mass'];
            const fallback = normal(ONE_PIECE, 0.2, 0.6, 'one can or packet, from memory');
            return {
              of,
              where,
              mass: ledger.number(`protection.stored.${id}.mass`, [{ quantity: mass, file }], fallback),
            };
          }),
        }),
    ...(extinguisher === undefined
      ? {}
      : { extinguisher: { agent: extinguisher.agent, mass: extinguisher.mass.value } }),
    combustion: Object.fromEntries(
      [...new Set([...boards, ...printed, ...kept])].map((material) => [
        material,
        fillCombustion(material, boards.includes(material) ? 'boards' : 'materials', spec, ledger),
      ]),
    ),
    figures: mapped(fireFigures, (name, assumed) => ledger.number(`protection.figures.${name}`, [], assumed)),
  };
}

function fillDevice(id: string, device: ChainDeviceSpec, ledger: Ledger): ChainDevice {
  const { what, through = what === 'watchdog' ? 'program' : 'wire', bay, 'opens-at': opens } = device;
  const contact = device.contact ?? (OPEN_BY_NATURE.has(what) ? 'opens' : undefined);
  const at = `protection.chain.${id}`;
  const file: FilePath = ['protection', 'chain', id];
  const opensAt =
    opens === undefined
      ? {}
      : {
          opensAt: ledger.number(`${at}.opensAt`, [{ quantity: opens, file: [...file, 'opens-at'] }], {
            value: 0,
            how: 'given',
          }),
        };
  const holds =
    what !== 'thermal link' || (opens === undefined && device.holds === undefined)
      ? {}
      : {
          holds: ledger.number(`${at}.holds`, [{ quantity: device.holds, file: [...file, 'holds'] }], {
            ...HOLDING,
            value: (opens?.value ?? 0) - HOLDING.value,
            low: (opens?.value ?? 0) - HOLDING.high,
            high: (opens?.value ?? 0) - HOLDING.low,
          }),
        };
  return {
    what,
    through,
    ...(contact === undefined ? {} : { contact }),
    ...(bay === undefined ? {} : { bay }),
    ...opensAt,
    ...holds,
  };
}

function fillDetector({ what, where, filter, class: heatClass, 'rate-of-rise': rise = false }: DetectorSpec): Detector {
  return {
    what,
    where,
    rateOfRise: rise,
    ...(filter === undefined ? {} : { filter }),
    ...(heatClass === undefined ? {} : { heatClass }),
  };
}

/** Net heat of a board or filament: the file's own, the catalogue's, or what stands for something unknown. */
function fillCombustion(
  material: string,
  group: PartGroup & ('boards' | 'materials'),
  spec: FileSpec,
  ledger: Ledger,
): number {
  const at = `protection.combustion.${material}`;
  const things = keptThings[material];
  if (things !== undefined && group === 'materials')
    return ledger.number(at, [], normal(things, 0.85 * things, 1.1 * things, 'from memory'));
  const own = group === 'materials' ? spec.materials?.[material] : undefined;
  const like = own?.like ?? material.replace(/ on .*$/, '');
  const found = findPart(spec.parts, group, like) ?? findPart(spec.parts, group, spec.materials?.[like]?.like ?? like);
  const quantity = found?.spec['heat-of-combustion'];
  const unknown: Assumption =
    group === 'materials'
      ? normal(28e6, 18e6, 40e6, 'a plastic of which nobody said its heat of combustion')
      : normal(18e6, 1e6, 30e6, 'a board of which nobody said its heat of combustion');
  return ledger.number(
    at,
    [
      { quantity: own?.['heat-of-combustion'], file: ['materials', material, 'heat-of-combustion'] },
      ...(found === undefined
        ? []
        : [
            found.own
              ? { quantity, file: ['parts', group, like, 'heat-of-combustion'] }
              : { quantity, part: `${group}.${found.kind}`, source: found.source },
          ]),
    ],
    unknown,
  );
}

function mapped<Key extends string, From, To>(
  map: Readonly<Record<Key, From>>,
  of: (id: Key, value: From) => To,
): Readonly<Record<Key, To>> {
  return Object.fromEntries(Object.entries<From>(map).map(([id, value]) => [id, of(id as Key, value)])) as Readonly<
    Record<Key, To>
  >;
}
