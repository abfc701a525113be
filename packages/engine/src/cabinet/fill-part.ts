// One part of an air path: its kind's physics, with whatever the file says about this one.

import type { Profile } from '../units/profile.ts';
import type { PathPart, Section } from './cabinet.ts';
import { type CatalogueEntry, findPart, type PartGroup } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { fillControl } from './fill-control.ts';
import { fillEfficiency } from './fill-machines.ts';
import { fillMuffler } from './fill-sound.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type {
  CarbonSpec,
  DuctSpec,
  FanSpec,
  FileSpec,
  FilterSpec,
  FittingName,
  FittingSpec,
  FlapSpec,
  Given,
  PartSpec,
} from './spec.ts';

export interface PartPlace {
  /** Path in the cabinet. */
  readonly at: string;
  readonly file: FilePath;
  /** Parts of the same air path: a part without a size takes it from its neighbours. */
  readonly others: readonly PartSpec[];
  readonly index: number;
}

/** Section of a part about which nothing is said and whose neighbours say nothing either. */
const USUAL: Section = { shape: 'round', diameter: 0.1 };

const known = (value: number, how: string): Fallback => ({ value, how });

export function fillPart(part: PartSpec, place: PartPlace, spec: FileSpec, ledger: Ledger): PathPart {
  const { at, file } = place;
  switch (part.part) {
    case 'hole':
      ledger.note(`${at}.section`, ledger.given([...file, 'hole']));
      ledger.note(
        `${at}.count`,
        part.count === undefined ? { kind: 'derived', how: 'one' } : ledger.given([...file, 'count']),
      );
      return {
        part: 'hole',
        section: part.hole,
        count: part.count ?? 1,
        dischargeCoefficient: ledger.number(
          `${at}.dischargeCoefficient`,
          [{ quantity: part.discharge, file: [...file, 'discharge'] }],
          defaults.discharge,
        ),
      };
    case 'fan':
      return fillFan(part, place, spec, ledger);
    case 'filter':
      return fillFilter(part, place, spec, ledger);
    case 'carbon':
      return fillCarbon(part, place, spec, ledger);
    case 'duct': {
      const number = numbers<DuctSpec>(part, 'ducts', part.kind, place, spec, ledger);
      ledger.note(`${at}.flexible`, number.entryOrigin);
      return {
        part: 'duct',
        diameter: number('diameter', 'size', known(0.1, 'a usual duct')),
        length: ledger.number(
          `${at}.length`,
          [{ quantity: part.length, file: [...file, 'length'] }],
          defaults.ductLength,
        ),
        flexible: part.flexible ?? number.kind.flexible ?? false,
      };
    }
    case 'flap': {
      const number = numbers<FlapSpec>(part, 'flaps', part.kind, place, spec, ledger);
      return {
        part: 'flap',
        opensAt: number('opensAt', 'opens-at', known(5, 'typical, from memory')),
        leakArea: number('leakArea', 'leak', known(1e-4, 'typical, from memory')),
      };
    }
    case 'loss':
      ledger.note(at, ledger.given(file));
      return { part: 'loss', what: 'other', loss: part.loss.value, area: areaOf(part.size), section: part.size };
    default:
      return fillFitting(part, place, spec, ledger);
  }
}

function fillFan(part: PartSpec & { part: 'fan' }, place: PartPlace, spec: FileSpec, ledger: Ledger): PathPart {
  const { at, file } = place;
  const number = numbers<FanSpec>(part, 'fans', part.kind, place, spec, ledger);
  ledger.note(`${at}.curve`, part.curve === undefined ? number.entryOrigin : ledger.given([...file, 'curve']));
  return {
    part: 'fan',
    kind: part.kind,
    curve: part.curve ?? number.kind.curve ?? [],
    diameter: number('diameter', 'size', known(0.092, 'a usual fan')),
    watts: number('watts', 'power', known(2, 'typical, from memory')),
    noiseDbA: number('noiseDbA', 'noise', known(25, 'typical, from memory')),
    speed: ledger.number(`${at}.speed`, [{ quantity: part.speed, file: [...file, 'speed'] }], known(1, 'full speed')),
    control: fillControl(`${at}.control`, part.control, [...file, 'control'], spec, ledger),
  };
}

function fillFilter(part: PartSpec & { part: 'filter' }, place: PartPlace, spec: FileSpec, ledger: Ledger): PathPart {
  const { at } = place;
  const number = numbers<FilterSpec>(part, 'filters', part.kind, place, spec, ledger);
  const section = sectionOf(part.size ?? number.kind.size, place);
  for (const of of ['faceArea', 'section'])
    ledger.note(`${at}.${of}`, part.size === undefined ? number.entryOrigin : ledger.given([...place.file, 'size']));
  const { width, height } = sides(section);
  return {
    part: 'filter',
    kind: part.kind,
    faceArea: areaOf(section),
    section,
    ...resistance(part.resistance, number.kind.resistance, place, number.entryOrigin, ledger),
    efficiency: fillEfficiency(`${at}.efficiency`, number.places, ({ efficiency }) => efficiency, 'efficiency', ledger),
    seatGap: number('seatGap', 'seat-gap', defaults.seatGap),
    seatLength: ledger.number(
      `${at}.seatLength`,
      [],
      known(section.shape === 'round' ? Math.PI * section.diameter : 2 * (width + height), 'all round its face'),
    ),
    seatDepth: number('seatDepth', 'seat-depth', defaults.seatDepth),
    loading: number('loading', 'loading', known(0, 'taken as new')),
    dustCapacity: number(
      'dustCapacity',
      'dust-capacity',
      known(0.3 * areaOf(section), '300 g for each m² of face, from memory'),
    ),
  };
}

function fillCarbon(part: PartSpec & { part: 'carbon' }, place: PartPlace, spec: FileSpec, ledger: Ledger): PathPart {
  const { at } = place;
  const number = numbers<CarbonSpec>(part, 'carbons', part.kind, place, spec, ledger);
  const section = sectionOf(part.size ?? number.kind.size, place);
  for (const of of ['faceArea', 'section'])
    ledger.note(`${at}.${of}`, part.size === undefined ? number.entryOrigin : ledger.given([...place.file, 'size']));
  const depth = number('depth', 'depth', known(0.025, 'typical, from memory'));
  return {
    part: 'carbon',
    kind: part.kind,
    mass: number('mass', 'mass', known(areaOf(section) * depth * 450, '450 kg/m³ of granules')),
    depth,
    grain: number('grain', 'grain', known(0.003, 'typical, from memory')),
    faceArea: areaOf(section),
    section,
    ...resistance(part.resistance, number.kind.resistance, place, number.entryOrigin, ledger),
    efficiency: fillEfficiency(`${at}.efficiency`, number.places, ({ efficiency }) => efficiency, 'efficiency', ledger),
    load: number('load', 'load', known(0, 'taken as fresh')),
  };
}

function fillFitting(
  part: PartSpec & { part: FittingName },
  place: PartPlace,
  spec: FileSpec,
  ledger: Ledger,
): PathPart {
  const number = numbers<FittingSpec>(part, 'fittings', part.kind, place, spec, ledger);
  const own = part.size ?? number.kind.size;
  const section = sectionOf(own, place);
  const muffler = fillMuffler(part, number.kind, spec.parts);
  const mine = (['length', 'box', 'lined-with', 'quietens'] as const).some((key) => part[key] !== undefined);
  if (muffler !== undefined) ledger.note(`${place.at}.muffler`, mine ? ledger.given(place.file) : number.entryOrigin);
  for (const of of ['area', 'section'])
    ledger.note(
      `${place.at}.${of}`,
      part.size !== undefined
        ? ledger.given([...place.file, 'size'])
        : section === undefined
          ? { kind: 'derived', how: 'the section of what it sits on' }
          : number.entryOrigin,
    );
  return {
    part: 'loss',
    what: `${part.part}: ${part.kind}`,
    loss: number('loss', 'loss', known(1, 'typical, from memory')),
    area: areaOf(section),
    section,
    ...(muffler === undefined ? {} : { muffler }),
  };
}

interface Numbers<T> {
  (path: string, key: keyof T & string, fallback: Fallback): number;
  readonly kind: T;
  readonly places: Parameters<typeof fillEfficiency<T>>[1];
  readonly entryOrigin: { readonly kind: 'catalogue'; readonly part: string; readonly source: string };
}

/** Reads the fields of a part: its own, else those of its kind. */
function numbers<T>(
  own: T,
  group: PartGroup,
  kind: string,
  { at, file }: PartPlace,
  spec: FileSpec,
  ledger: Ledger,
): Numbers<T> {
  const found = findPart(spec.parts, group, kind) as CatalogueEntry<typeof group>;
  const entrySpec = found.spec as T;
  const entry = found.own ? { file: ['parts', group, kind] } : { part: `${group}.${kind}`, source: found.source };
  const read = (path: string, key: keyof T & string, fallback: Fallback): number => {
    const candidates: Candidate[] = [
      { quantity: own[key] as Given, file: [...file, key] },
      'file' in entry
        ? { quantity: entrySpec[key] as Given, file: [...entry.file!, key] }
        : { quantity: entrySpec[key] as Given, part: entry.part!, source: entry.source! },
    ];
    return ledger.number(`${at}.${path}`, candidates, fallback);
  };
  const places = { own, kind: entrySpec, file, entry } as Numbers<T>['places'];
  const entryOrigin = { kind: 'catalogue' as const, part: `${group}.${kind}`, source: found.source };
  return Object.assign(read, { kind: entrySpec, places, entryOrigin });
}

/** dp = linear·Q + quadratic·Q², through the given points as well as possible, neither below 0. */
export function fitResistance(points: Profile): { readonly linear: number; readonly quadratic: number } {
  let [s2, s3, s4, d1, d2] = [0, 0, 0, 0, 0];
  // Weighted by 1/Q², so that a loss at a small flow counts as much as one at a large flow.
  for (const [flow, pressure] of points) {
    if (flow <= 0) continue;
    s2 += 1;
    s3 += flow;
    s4 += flow * flow;
    d1 += pressure / flow;
    d2 += pressure;
  }
  if (s2 === 0) return { linear: 0, quadratic: 0 };
  const determinant = s2 * s4 - s3 * s3;
  if (s2 === 1 || determinant <= 1e-12 * s2 * s4) return { linear: d1 / s2, quadratic: 0 };
  const quadratic = (s2 * d2 - s3 * d1) / determinant;
  const linear = (d1 - quadratic * s3) / s2;
  if (quadratic < 0) return { linear: d1 / s2, quadratic: 0 };
  return linear < 0 ? { linear: 0, quadratic: d2 / s4 } : { linear, quadratic };
}

function resistance(
  own: Profile | undefined,
  kind: Profile | undefined,
  { at, file }: PartPlace,
  entryOrigin: Numbers<unknown>['entryOrigin'],
  ledger: Ledger,
): { readonly linear: number; readonly quadratic: number } {
  const origin = own === undefined ? entryOrigin : ledger.given([...file, 'resistance']);
  ledger.note(`${at}.linear`, origin);
  ledger.note(`${at}.quadratic`, origin);
  return fitResistance(own ?? kind ?? []);
}

/** A part's own section, else that of the nearest neighbour which has one. */
function sectionOf(own: Section | undefined, { others, index }: PartPlace): Section {
  if (own !== undefined) return own;
  const near = others
    .map((other, at) => ({ section: ownSection(other), distance: Math.abs(at - index) }))
    .filter(({ section }) => section !== undefined)
    .sort((a, b) => a.distance - b.distance)[0];
  return near?.section ?? USUAL;
}

function ownSection(part: PartSpec): Section | undefined {
  if (part.part === 'hole') return part.hole;
  if (part.part === 'flap') return undefined;
  if (part.part === 'fan' || part.part === 'duct') {
    const size = part.size?.value ?? Number(/(\d+) mm/.exec(part.kind)?.[1] ?? Number.NaN) / 1000;
    return Number.isFinite(size) ? { shape: 'round', diameter: size } : undefined;
  }
  return part.size;
}

export function areaOf(section: Section): number {
  return section.shape === 'round' ? (Math.PI / 4) * section.diameter ** 2 : section.width * section.height;
}

function sides(section: Section): { width: number; height: number } {
  return section.shape === 'round' ? { width: section.diameter, height: section.diameter } : section;
}
