// The one registry of overrides: what a person may put in place of a derived quantity, by its path in the file, its unit,
// and under which path of the cabinet the engine finds it.

import { isFault, parseQuantity, type Quantity } from '../units/quantity.ts';
import type { KindName } from '../units/unit-table.ts';
import type { Factors } from './cabinet.ts';
import { contaminants, rateKind } from './contaminants.ts';
import type { FileSpec } from './spec.ts';

export interface Override {
  /** Path in the file; `*` stands for an id. */
  readonly path: string;
  readonly kind: KindName;
  /** What it replaces. */
  readonly replaces: string;
  /** Path under which the cabinet carries it; `*` as in `path`, in order. */
  readonly cabinet: string;
}

export const factorNames: Readonly<Record<string, keyof Factors>> = {
  'inside-film': 'insideFilm',
  'outside-film': 'outsideFilm',
  'wall-loss': 'wallLoss',
  'bed-loss': 'bedLoss',
  leakage: 'leakage',
  'fan-flow': 'fanFlow',
  plume: 'plume',
  'emission-particles': 'emissionParticles',
  'emission-vapours': 'emissionVapours',
  'room-heat-loss': 'roomHeatLoss',
};

const factorTexts: Readonly<Record<string, string>> = {
  'inside-film': 'factor on natural convection inside',
  'outside-film': 'factor on convection outside',
  'wall-loss': 'factor on the heat that boards and panes conduct, without the films of air on them',
  'bed-loss': 'factor on the heat that beds lose',
  leakage: 'factor on every crack of doors and joints',
  'fan-flow': 'factor on the flow of every fan',
  plume: 'factor on the air that plumes carry up',
  'emission-particles': 'factor on particles given off',
  'emission-vapours': 'factor on vapours given off',
  'room-heat-loss': "factor on the room's heat loss",
};

export const overrideRegistry: readonly Override[] = [
  {
    path: 'faces.*.u-value',
    kind: 'u-value',
    replaces: 'U-value of a face between two room films (0.13 m² K/W each)',
    cabinet: 'faces.*.uValue',
  },
  {
    path: 'doors.*.u-value',
    kind: 'u-value',
    replaces: 'U-value of a door between two room films',
    cabinet: 'doors.*.uValue',
  },
  {
    path: 'shelves.*.u-value',
    kind: 'u-value',
    replaces: 'U-value of a shelf between two room films',
    cabinet: 'partitions.*.uValue',
  },
  {
    path: 'room.heat-loss',
    kind: 'heat-loss',
    replaces: "heat loss through the room's walls",
    cabinet: 'room.heatLoss',
  },
  {
    path: 'bays.*.leakage',
    kind: 'area',
    replaces: 'leakage area of a bay at 4 Pa, instead of the gaps of its doors and joints',
    cabinet: 'bays.*.leakage',
  },
  {
    path: 'machines.*.heat',
    kind: 'power',
    replaces: 'heat of hot end, motors and electronics together while a job runs, at the reference nozzle temperature',
    cabinet: 'machines.*.heat',
  },
  {
    path: 'air.*.effective-area',
    kind: 'area',
    replaces: 'discharge coefficient times area of the hole of a path',
    cabinet: 'paths.*.effectiveArea',
  },
  ...contaminants.map(
    (contaminant): Override => ({
      path: `machines.*.emission.${contaminant}`,
      kind: rateKind(contaminant),
      replaces: `${contaminant} given off by a machine while printing, whatever the material`,
      cabinet: `machines.*.emission.${contaminant}`,
    }),
  ),
  ...Object.entries(factorNames).map(
    ([name, factor]): Override => ({
      path: `factors.${name}`,
      kind: 'number',
      replaces: factorTexts[name]!,
      cabinet: `factors.${factor}`,
    }),
  ),
];

/** The registered override for a path, with the ids that stand for its `*`. */
export function findOverride(
  segments: readonly string[],
): { readonly override: Override; readonly ids: readonly string[] } | undefined {
  for (const override of overrideRegistry) {
    const ids = match(override.path, segments);
    if (ids !== undefined) return { override, ids };
  }
  return undefined;
}

function match(pattern: string, segments: readonly string[]): string[] | undefined {
  // `PM2.5` holds a dot, so that the pattern is matched from the front and its last piece may hold the rest.
  const pieces = pattern.split('.');
  const ids: string[] = [];
  for (const [index, segment] of segments.entries()) {
    const isLast = index === segments.length - 1;
    const piece = isLast ? pieces.slice(index).join('.') : pieces[index];
    if (piece === '*') ids.push(segment);
    else if (piece !== segment) return undefined;
  }
  return segments.length <= pieces.length ? ids : undefined;
}

/** What the file puts in place of a derived quantity, if it does. */
export function overrideOf({ overrides = {} }: Pick<FileSpec, 'overrides'>, path: string): Quantity | undefined {
  const kind = findOverride(path.split('.'))?.override.kind;
  if (kind === undefined || !Object.hasOwn(overrides, path)) return undefined;
  const read = parseQuantity(kind, String(overrides[path]));
  return isFault(read) ? undefined : read;
}
