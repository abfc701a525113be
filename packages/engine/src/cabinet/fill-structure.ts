// How it is held together and how it stands: what boards bear, how shelves rest, hinges, feet, strap.

import type { Bay, Cabinet, Door, Size } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { noted } from './fill-room.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, Given } from './spec.ts';
import type { BoardStrength, CabinetFeet, Hinges, Joint, Lipping, ShelfHold, Structure } from './structure.ts';
import type { HingeHolesSpec, LippingSpec, ShelfHoldSpec } from './structure-spec.ts';

type Carcass = Pick<Cabinet, 'inside' | 'bays' | 'doors' | 'faces' | 'partitions'>;

export function fillStructure(spec: FileSpec, carcass: Carcass, ledger: Ledger): Structure {
  const { partitions, faces, doors, bays, inside } = carcass;
  return {
    boards: fillBoards(spec, carcass, ledger),
    shelves: Object.fromEntries(
      partitions.map(({ id }) => [
        id,
        fillHold(`structure.shelves.${id}`, ['shelves', id], spec.shelves?.[id] ?? {}, ledger),
      ]),
    ),
    bottom: fillHold('structure.bottom', ['cabinet', 'bottom'], spec.cabinet.bottom ?? {}, ledger),
    hinges: Object.fromEntries(
      Object.entries(doors).map(([id, door]) => [id, fillHinges(id, door, bays, inside, spec, ledger)]),
    ),
    feet: fillFeet(spec, faces.bottom.gap, ledger),
    wallStrap: noted(
      ledger,
      'structure.wallStrap',
      spec.cabinet['wall-strap'],
      ['cabinet', 'wall-strap'],
      false,
      'nobody has said that it is held to the wall',
    ),
  };
}

/** Boards that carry: those of level partitions and of the bottom. Each is one input, wherever it is used. */
function fillBoards(
  { parts }: FileSpec,
  { partitions, faces }: Carcass,
  ledger: Ledger,
): Readonly<Record<string, BoardStrength>> {
  const names = new Set(
    [...partitions.map(({ build }) => build), faces.bottom.build].flatMap(({ layers }) =>
      layers.map(({ material }) => material),
    ),
  );
  return Object.fromEntries(
    [...names].flatMap((name) => {
      const { kind, spec: entry, own, source } = findPart(parts, 'boards', name)!;
      if (entry.bending === undefined) return [];
      const at = `structure.boards.${name}`;
      const number = (path: string, key: string, quantity: Given, fallback: Fallback): number => {
        const candidate: Candidate = own
          ? { quantity, file: ['parts', 'boards', kind, key] }
          : { quantity, part: `boards.${kind}`, source };
        return ledger.number(`${at}.${path}`, [candidate], fallback);
      };
      const along = entry.bending.value;
      const veneer =
        entry.veneer && number('veneer', 'veneer', entry.veneer, { value: entry.veneer.value, how: 'given' });
      return [
        [
          name,
          {
            along: number('along', 'bending', entry.bending, { value: along, how: 'given' }),
            across: number('across', 'bending-across', entry['bending-across'], {
              value: along,
              how: 'as along the grain: the board has none, or it is not said',
            }),
            ...(veneer === undefined ? {} : { veneer }),
            stress: number('stress', 'bending-stress', entry['bending-stress'], defaults.boardStress),
            creep: number('creep', 'sag-growth', entry['sag-growth'], defaults.sagGrowth),
          } satisfies BoardStrength,
        ] as const,
      ];
    }),
  );
}

/** How far joints hold the ends of a shelf: those not named let them turn. */
const fixity: Readonly<Partial<Record<Joint, keyof typeof defaults>>> = {
  housing: 'housingFixity',
  glued: 'gluedFixity',
};

function fillHold(at: string, file: FilePath, spec: ShelfHoldSpec, ledger: Ledger): ShelfHold {
  const joint = noted(
    ledger,
    `${at}.joint`,
    spec.joint,
    [...file, 'joint'],
    'cleats' as Joint,
    'a shelf that lies on cleats, from memory',
  );
  const held = fixity[joint];
  const plain = (path: string, quantity: Given, keys: string[], value: number, how: string): number =>
    ledger.number(`${at}.${path}`, [{ quantity, file: [...file, ...keys] }], { value, how });
  const { lipping, pins } = spec;
  return {
    joint,
    endFixity: ledger.number(
      `${at}.endFixity`,
      [],
      held === undefined ? { value: 0, how: 'its ends turn freely' } : defaults[held],
    ),
    grain: noted(
      ledger,
      `${at}.grain`,
      spec.grain,
      [...file, 'grain'],
      'along',
      'boards are cut with the grain along the span',
    ),
    ...(lipping === undefined ? {} : { lipping: fillLipping(at, lipping, [...file, 'lipping'], ledger) }),
    pins: {
      count: noted(ledger, `${at}.pins.count`, pins?.count, [...file, 'pins', 'count'], 4, 'one at each corner'),
      diameter: plain('pins.diameter', pins?.size, ['pins', 'size'], 0.005, 'usual shelf pins, from memory'),
      depth: plain('pins.depth', pins?.depth, ['pins', 'depth'], 0.01, 'usual shelf pins, from memory'),
    },
    posts: noted(ledger, `${at}.posts`, spec.posts, [...file, 'posts'], 0, 'none is given'),
    load: plain('load', spec.load, ['load'], 0, 'nothing else is said to lie on it'),
    pullsOut: plain('pullsOut', spec['pulls-out'], ['pulls-out'], 0, 'it does not pull out'),
  };
}

function fillLipping(at: string, spec: LippingSpec, file: FilePath, ledger: Ledger): Lipping {
  const [height, breadth] = spec.size;
  ledger.note(`${at}.lipping`, ledger.given(file));
  return {
    height: height!,
    breadth: breadth!,
    edges: spec.edges === 'front and back' ? 2 : 1,
    stiffness: ledger.number(
      `${at}.lipping.stiffness`,
      [{ quantity: spec.stiffness, file: [...file, 'stiffness'] }],
      defaults.lippingStiffness,
    ),
  };
}

function fillHinges(
  id: string,
  door: Door,
  bays: Readonly<Record<string, Bay>>,
  inside: Size,
  { cabinet }: FileSpec,
  ledger: Ledger,
): Hinges {
  const at = `structure.hinges.${id}`;
  const own = id === 'door' && cabinet.doors?.[id] === undefined;
  const file: FilePath = own ? ['cabinet', 'door', 'hinges'] : ['cabinet', 'doors', id, 'hinges'];
  const spec = (own ? cabinet.door : cabinet.doors?.[id])?.hinges ?? {};
  const ranges = door.bays.map((bay) => bays[bay]!.z);
  const height =
    door.face === 'top' || door.face === 'bottom'
      ? inside.width
      : Math.max(...ranges.map(([, top]) => top)) - Math.min(...ranges.map(([bottom]) => bottom));
  return {
    count: noted(
      ledger,
      `${at}.count`,
      spec.count,
      [...file, 'count'],
      height <= 0.9 ? 2 : height <= 1.6 ? 3 : 4,
      'by height: two to 0.9 m, three to 1.6 m, four above; common practice',
    ),
    spacing: ledger.number(`${at}.spacing`, [{ quantity: spec.spacing, file: [...file, 'spacing'] }], {
      value: 0.75 * height,
      how: 'three quarters of the leaf',
    }),
    carries: ledger.number(
      `${at}.carries`,
      [{ quantity: spec.carries, file: [...file, 'carries'] }],
      defaults.hingeCarries,
    ),
    ...(spec.holes === undefined
      ? {}
      : { holes: fillHingeHoles(`${at}.holes`, spec.holes, [...file, 'holes'], ledger) }),
  };
}

function fillHingeHoles(
  at: string,
  { 'from-edge': fromEdge, apart, diameter }: HingeHolesSpec,
  file: FilePath,
  ledger: Ledger,
): NonNullable<Hinges['holes']> {
  ledger.note(at, ledger.given(file));
  return { fromEdge: fromEdge.value, apart: apart.value, diameter: diameter.value };
}

/** Feet are put no further apart than this where nobody says how many there are, m. */
const FEET_APART = 0.7;

function fillFeet({ cabinet: { feet, inside } }: FileSpec, gap: number, ledger: Ledger): CabinetFeet {
  const at = 'structure.feet';
  const file: FilePath = ['cabinet', 'feet'];
  const stands = feet !== undefined || gap > 0;
  const count = noted(
    ledger,
    `${at}.count`,
    feet?.count,
    [...file, 'count'],
    stands ? 2 * (Math.ceil(inside[0]! / FEET_APART) + 1) : 0,
    stands ? 'at the corners, and so many between that none are more than 0.7 m apart' : 'its bottom lies on the floor',
  );
  return {
    count,
    size: ledger.number(`${at}.size`, [{ quantity: feet?.size, file: [...file, 'size'] }], {
      value: 0.04,
      how: 'usual furniture feet, from memory',
    }),
    height: ledger.number(`${at}.height`, [{ quantity: feet?.height, file: [...file, 'height'] }], {
      value: gap,
      how: 'the gap below the bottom',
    }),
    inset: ledger.number(
      `${at}.inset`,
      [{ quantity: feet?.inset, file: [...file, 'inset'] }],
      stands ? defaults.feetInset : { value: 0, how: 'its bottom lies on the floor' },
    ),
  };
}
