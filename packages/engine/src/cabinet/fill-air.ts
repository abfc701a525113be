// Air paths, sensors and other sources of heat.

import type { Bay, CabinetPath, FaceName, HeatPart, PathPart, SensorPart, Size } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { fillControl } from './fill-control.ts';
import { areaOf, fillPart, type PartPlace } from './fill-part.ts';
import { noted } from './fill-room.ts';
import type { Ledger } from './ledger.ts';
import { overrideOf } from './overrides.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, HeatKindSpec, PartSpec, PathSpec, PlaceSpec } from './spec.ts';

/** Clear distance from a bay's floor or ceiling to the edge of a hole whose height is not given, m. */
const EDGE = 0.05;

export function fillPaths(
  spec: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  inside: Size,
  ledger: Ledger,
): Readonly<Record<string, CabinetPath>> {
  const written = Object.entries(spec.air ?? {}).map(
    ([id, path]) => [id, fillPath(id, path, spec, bays, inside, ledger)] as const,
  );
  return Object.fromEntries([...written, ...shelfHoles(spec, bays, inside, ledger)]);
}

function fillPath(
  id: string,
  path: PathSpec,
  spec: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  inside: Size,
  ledger: Ledger,
): CabinetPath {
  const at = `paths.${id}`;
  const file: FilePath = ['air', id];
  const parts = partsOf(path, file).map(({ part, place }, index, all) =>
    fillPart(
      part,
      { ...place, at: `${at}.parts.${index}`, others: all.map(({ part: other }) => other), index },
      spec,
      ledger,
    ),
  );
  const override = overrideOf(spec, `air.${id}.effective-area`);
  const opening = parts.findIndex(({ part }) => part === 'hole');
  const hole = parts[opening];
  if (override !== undefined && hole?.part === 'hole') {
    const discharge = override.value / (areaOf(hole.section) * hole.count);
    ledger.note(`${at}.parts.${opening}.dischargeCoefficient`, ledger.given(['overrides', `air.${id}.effective-area`]));
    parts[opening] = { ...hole, dischargeCoefficient: discharge };
  }
  const outside = [path.from, path.to].includes('outdoors');
  return {
    from: path.from,
    to: path.to,
    place: fillPlace(`${at}.place`, path.at, [...file, 'at'], path, halfHeight(parts), spec, bays, inside, ledger),
    blows: noted(
      ledger,
      `${at}.blows`,
      path.blows,
      [...file, 'blows'],
      'in',
      'straight into the bay unless said otherwise',
    ),
    parts,
    windCoefficient: ledger.number(
      `${at}.windCoefficient`,
      [{ quantity: path.wind, file: [...file, 'wind'] }],
      outside ? defaults.windCoefficient : { value: 0, how: 'neither end is outdoors' },
    ),
  };
}

/** `hole:` stands for a first part. */
function partsOf(
  { hole, count, parts = [] }: PathSpec,
  file: FilePath,
): { part: PartSpec; place: Pick<PartPlace, 'file'> }[] {
  const listed = parts.map((part, index) => ({ part, place: { file: [...file, 'parts', index] } }));
  return hole === undefined ? listed : [{ part: { part: 'hole', hole, count }, place: { file } }, ...listed];
}

/** Holes of shelves are paths between their two bays. */
function shelfHoles(
  spec: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  inside: Size,
  ledger: Ledger,
): (readonly [string, CabinetPath])[] {
  return Object.entries(spec.shelves ?? {}).flatMap(([shelf, { between, holes = {} }]) => {
    const [a, b] = [between[0]!, between[1]!];
    const [from, to] = bays[a]!.z[0] <= bays[b]!.z[0] ? [a, b] : [b, a];
    return Object.entries(holes).map(([id, hole]) => {
      const name = `${shelf}-${id}`;
      const at = `paths.${name}`;
      const file: FilePath = ['shelves', shelf, 'holes', id];
      const part = fillPart(
        { part: 'hole', ...hole },
        { at: `${at}.parts.0`, file, others: [], index: 0 },
        spec,
        ledger,
      );
      ledger.note(`${at}.windCoefficient`, { kind: 'derived', how: 'neither end is outdoors' });
      return [
        name,
        {
          from,
          to,
          place: fillPlace(
            `${at}.place`,
            hole.at,
            [...file, 'at'],
            { from, to },
            halfHeight([part]),
            spec,
            bays,
            inside,
            ledger,
          ),
          blows: 'in' as const,
          parts: [part],
          windCoefficient: 0,
        },
      ] as const;
    });
  });
}

/** Low where air comes in, high where it goes out, unless the file says where. */
function fillPlace(
  at: string,
  given: PlaceSpec = {},
  file: FilePath,
  { from, to }: Pick<PathSpec, 'from' | 'to'>,
  half: number,
  { machines = {} }: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  inside: Size,
  ledger: Ledger,
): CabinetPath['place'] {
  const bayOf = (end: string): Bay | undefined =>
    bays[end] ?? bays[machines[end.replace(/\.chamber$/, '')]?.bay ?? Object.keys(bays)[0]!];
  const outside = (end: string): boolean => end === 'room' || end === 'outdoors';
  const bay = (outside(from) ? bayOf(to) : bayOf(from)) ?? Object.values(bays)[0]!;
  const other = outside(from) || outside(to) || from === to ? undefined : bays[to];
  const middle = (bay.z[0] + bay.z[1]) / 2;
  const reach = Math.min(half + EDGE, (bay.z[1] - bay.z[0]) / 2);
  const [height, how] =
    other !== undefined
      ? [(Math.max(bay.z[0], other.z[0]) + Math.min(bay.z[1], other.z[1])) / 2, 'at the board between the bays']
      : outside(from)
        ? [bay.z[0] + reach, 'low, as cool air comes in here']
        : outside(to)
          ? [bay.z[1] - reach, 'high, as warm air leaves here']
          : [middle, 'half way up the bay'];
  const stacked = other !== undefined && (other.z[0] >= bay.z[1] - 1e-6 || bay.z[0] >= other.z[1] - 1e-6);
  const usual: FaceName = stacked ? 'bottom' : 'back';
  const face = noted(
    ledger,
    `${at}.face`,
    given.face,
    [...file, 'face'],
    usual,
    stacked ? 'through the shelf' : 'through the back unless said otherwise',
  );
  const across = face === 'left' || face === 'right' ? inside.depth / 2 : (bay.x[0] + bay.x[1]) / 2;
  return {
    face,
    along: ledger.number(`${at}.along`, [{ quantity: given.along, file: [...file, 'along'] }], {
      value: across,
      how: 'in the middle of the face',
    }),
    z: ledger.number(`${at}.z`, [{ quantity: given.z, file: [...file, 'z'] }], { value: height, how }),
  };
}

/** Half the height of what pierces the wall, m. */
function halfHeight(parts: readonly PathPart[]): number {
  const heights = parts.map((part) =>
    part.part === 'hole'
      ? part.section.shape === 'round'
        ? part.section.diameter
        : part.section.height
      : part.part === 'fan'
        ? part.diameter
        : 0,
  );
  return Math.max(0.02, ...heights) / 2;
}

export function fillSensors(
  { sensors = {} }: FileSpec,
  bays: Readonly<Record<string, Bay>>,
  ledger: Ledger,
): Readonly<Record<string, SensorPart>> {
  return Object.fromEntries(
    Object.entries(sensors).map(([id, { bay, height, offset, lag }]) => {
      const at = `sensors.${id}`;
      const file: FilePath = ['sensors', id];
      const [low, high] = bays[bay]!.z;
      return [
        id,
        {
          bay,
          height: ledger.number(`${at}.height`, [{ quantity: height, file: [...file, 'height'] }], {
            value: (high - low) / 2,
            how: 'half way up the bay',
          }),
          offset: ledger.number(
            `${at}.offset`,
            [{ quantity: offset, file: [...file, 'offset'] }],
            defaults.sensorOffset,
          ),
          lag: ledger.number(`${at}.lag`, [{ quantity: lag, file: [...file, 'lag'] }], defaults.sensorLag),
        },
      ];
    }),
  );
}

export function fillHeats(spec: FileSpec, ledger: Ledger): Readonly<Record<string, HeatPart>> {
  const bays = Object.keys(spec.bays ?? { inside: {} });
  return Object.fromEntries(
    Object.entries(spec.heats ?? {}).map(([id, own]) => {
      const at = `heats.${id}`;
      const file: FilePath = ['heats', id];
      const found = own.kind === undefined ? undefined : findPart(spec.parts, 'heats', own.kind);
      const kind: HeatKindSpec = found?.spec ?? {};
      const number = (path: string, key: 'power' | 'holds' | 'water', fallback: number): number =>
        ledger.number(
          `${at}.${path}`,
          [
            { quantity: own[key], file: [...file, key] },
            ...(found === undefined
              ? []
              : found.own
                ? [{ quantity: kind[key], file: ['parts', 'heats', found.kind, key] }]
                : [{ quantity: kind[key], part: `heats.${found.kind}`, source: found.source }]),
          ],
          { value: fallback, how: 'none unless given' },
        );
      const what = own.what ?? kind.what ?? 'other';
      const holds = own.holds ?? kind.holds;
      const heat: HeatPart = {
        what,
        bay: own.bay ?? bays[0]!,
        watts: number('watts', 'power', 0),
        control: fillControl(`${at}.control`, own.control, [...file, 'control'], spec, ledger),
        water: number('water', 'water', 0),
        ...(holds === undefined ? {} : { holds: number('holds', 'holds', 0) }),
      };
      return [id, heat];
    }),
  );
}
