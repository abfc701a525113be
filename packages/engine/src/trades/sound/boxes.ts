// The cabinet as boxes of sound: what each bay swallows, by which ways sound leaves it, how bays lead into one another.

import { octaveBands, type SoundLink, slitFriction, slitOctaves, soundInBoxes } from '@stillair/physics';
import type { Build, Cabinet, CabinetPath, FaceName } from '../../cabinet/cabinet.ts';
import { type Piece, piecesOf } from '../../cabinet/geometry.ts';
import { restingOnParts } from '../../cabinet/resting-on-parts.ts';
import type { Octaves } from '../../cabinet/sound.ts';
import { keptByKey } from '../kept.ts';
import { bayOfEnd, OUTSIDE } from '../plant.ts';
import { boardAbsorption, boardLoss } from './boards.ts';
import { partsLoss, pathArea } from './parts.ts';

/** A way by which sound leaves a bay. */
export interface WayOut {
  /** Part of the cabinet: `faces.left`, `doors.door`, `paths.intake`. */
  readonly part: string;
  readonly kind: 'board' | 'gap' | 'opening';
  readonly bay: string;
  /** tau S by octave, m². */
  readonly letThrough: Octaves;
  /** m² */
  readonly area: number;
  /** Where it sounds into the room; absent when it sounds elsewhere. */
  readonly at?: Point;
  /** Next to a wall of the room. */
  readonly cornered: boolean;
}

export type Point = readonly [number, number, number];

export interface Boxes {
  readonly bays: readonly string[];
  readonly ways: readonly WayOut[];
  /** By octave: power on each m² inside bay i for 1 W in bay j. */
  readonly inside: readonly (readonly (readonly number[])[])[];
  /** alpha S of a bay by octave, m². */
  readonly absorbed: readonly Octaves[];
}

export const boxesOf: (cabinet: Cabinet) => Boxes = restingOnParts(makeBoxes);

function makeBoxes(cabinet: Cabinet): Boxes {
  const bays = Object.keys(cabinet.bays);
  const shell = shellOf(cabinet);
  const { absorbed } = shell;
  const ways = [...shell.ways, ...openingsOut(cabinet)];
  const between = [...shell.between, ...openingsBetween(cabinet, bays)];
  const inside = octaveBands.map((_, band) =>
    soundInBoxes(
      bays.map((bay, at) => {
        const out = ways.reduce((sum, way) => sum + (way.bay === bay ? way.letThrough[band]! : 0), 0);
        return Math.max(absorbed[at]![band]! + out, 1e-9);
      }),
      between.map(({ a, b, letThrough }): SoundLink => ({ a, b, letThrough: letThrough[band]! })),
    ),
  );
  return { bays, ways, inside, absorbed };
}

/** Power that a board or an opening lets from one bay into another. */
interface Between {
  readonly a: number;
  readonly b: number;
  readonly letThrough: Octaves;
}

/** Boards, panes and the gaps round doors: what no air path changes. */
interface Shell {
  readonly absorbed: readonly Octaves[];
  readonly ways: readonly WayOut[];
  readonly between: readonly Between[];
}

const shellOf = restingOnParts((cabinet: Cabinet): Shell => {
  const bays = Object.keys(cabinet.bays);
  const pieces = piecesOf(cabinet);
  const lossOf = lossesIn(cabinet);
  return {
    absorbed: bays.map((bay) =>
      absorbedIn(
        cabinet,
        pieces.filter((piece) => piece.bay === bay),
      ),
    ),
    ways: [...boardsOut(cabinet, pieces, lossOf), ...gapsOut(cabinet, pieces)],
    between: boardsBetween(cabinet, pieces, bays, lossOf),
  };
});

/** Loss of each build once: many pieces share one. */
function lossesIn({ sound }: Cabinet): (build: Build) => Octaves {
  const known = new Map<Build, Octaves>();
  return (build) => {
    const loss = known.get(build) ?? boardLoss(build, sound).loss;
    known.set(build, loss);
    return loss;
  };
}

const through = (area: number, loss: Octaves): Octaves => loss.map((one) => area * 10 ** (-one / 10));

function partOf(cabinet: Cabinet, { face, bay }: Piece): { part: string; build: Build } {
  const door = Object.entries(cabinet.doors).find(([, { face: of, bays }]) => of === face && bays.includes(bay));
  return door === undefined
    ? { part: `faces.${face}`, build: cabinet.faces[face].build }
    : { part: `doors.${door[0]}`, build: door[1].build };
}

function shelfBetween(cabinet: Cabinet, a: string, b: string): Build {
  return (
    cabinet.partitions.find(({ bays }) => bays.includes(a) && bays.includes(b))?.build ?? cabinet.faces.bottom.build
  );
}

function absorbedIn(cabinet: Cabinet, pieces: readonly Piece[]): Octaves {
  const faces = pieces.map((piece) => {
    if (piece.behind.kind === 'outside')
      return { area: piece.area, octaves: boardAbsorption(partOf(cabinet, piece).build, 'inside', cabinet.sound) };
    const side = piece.face === 'right' || piece.face === 'top' ? 'inside' : 'outside';
    const shelf = shelfBetween(cabinet, piece.bay, piece.behind.bay);
    return { area: piece.area, octaves: boardAbsorption(shelf, side, cabinet.sound) };
  });
  return octaveBands.map((_, band) => faces.reduce((sum, { area, octaves }) => sum + area * octaves[band]!, 0));
}

/** Boards and panes; what touches the floor or a wall sounds into neither. */
function boardsOut(cabinet: Cabinet, pieces: readonly Piece[], lossOf: (build: Build) => Octaves): WayOut[] {
  return pieces
    .filter(({ behind }) => behind.kind === 'outside')
    .flatMap((piece): WayOut[] => {
      const { part, build } = partOf(cabinet, piece);
      const face = cabinet.faces[piece.face];
      if (part.startsWith('faces.') && face.against !== 'room' && face.gap <= 0) return [];
      return [
        {
          part,
          kind: 'board',
          bay: piece.bay,
          area: piece.area,
          letThrough: through(piece.area, lossOf(build)),
          at: middleOf(cabinet, piece),
          cornered: false,
        },
      ];
    });
}

/** Gaps all round the doors, shared out among the bays behind one by their areas. */
function gapsOut(cabinet: Cabinet, pieces: readonly Piece[]): WayOut[] {
  return Object.entries(cabinet.doors).flatMap(([id, { face, bays, sealGap, sealDepth }]): WayOut[] => {
    const behind = pieces.filter(
      (piece) => piece.face === face && bays.includes(piece.bay) && piece.behind.kind === 'outside',
    );
    const whole = behind.reduce((sum, { area }) => sum + area, 0);
    if (behind.length === 0 || !(sealGap > 0)) return [];
    const octaves = gapOctaves(sealGap, sealDepth);
    return behind.map((piece) => {
      const area = sealGap * outlineOf(cabinet, behind) * (piece.area / whole);
      return {
        part: `doors.${id}`,
        kind: 'gap',
        bay: piece.bay,
        area,
        letThrough: octaves.map((tau) => tau * area),
        at: middleOf(cabinet, piece),
        cornered: false,
      };
    });
  });
}

/** Widths and depths are few and the sum is long. */
const gaps = keptByKey<Octaves>();

function gapOctaves(width: number, depth: number): Octaves {
  return gaps(`${width}/${depth}`, () =>
    slitOctaves(width, depth).map(
      (tau, band) => tau * slitFriction(octaveBands[band]!, { width, depth, field: 'diffuse' }),
    ),
  );
}

/** Way round what a door covers, m. */
function outlineOf({ bays, inside }: Cabinet, pieces: readonly Piece[]): number {
  const span = (of: (bay: Cabinet['bays'][string]) => readonly [number, number]): number =>
    Math.max(...pieces.map(({ bay }) => of(bays[bay]!)[1])) - Math.min(...pieces.map(({ bay }) => of(bays[bay]!)[0]));
  const { face } = pieces[0]!;
  const [across, up] =
    face === 'front' || face === 'back'
      ? [span(({ x }) => x), span(({ z }) => z)]
      : face === 'left' || face === 'right'
        ? [inside.depth, span(({ z }) => z)]
        : [span(({ x }) => x), inside.depth];
  return 2 * (across + up);
}

function openingsOut(cabinet: Cabinet): WayOut[] {
  return Object.entries(cabinet.paths).flatMap(([id, path]): WayOut[] => {
    const [outer] = [path.from, path.to].filter((end) => OUTSIDE.includes(end));
    const bay = bayOfEnd(cabinet, path.from) ?? bayOfEnd(cabinet, path.to);
    if (outer === undefined || bay === undefined) return [];
    const area = pathArea(path);
    return [
      {
        part: `paths.${id}`,
        kind: 'opening',
        bay,
        area,
        letThrough: through(area, partsLoss(path.parts, area)),
        ...(outer === 'room' ? { at: mouthOf(cabinet, path) } : {}),
        cornered: cabinet.faces[path.place.face].against !== 'room',
      },
    ];
  });
}

function boardsBetween(
  cabinet: Cabinet,
  pieces: readonly Piece[],
  bays: readonly string[],
  lossOf: (build: Build) => Octaves,
): Between[] {
  return pieces.flatMap(({ bay, behind, face, area }) =>
    behind.kind === 'bay' && (face === 'right' || face === 'top')
      ? [
          {
            a: bays.indexOf(bay),
            b: bays.indexOf(behind.bay),
            letThrough: through(area, lossOf(shelfBetween(cabinet, bay, behind.bay))),
          },
        ]
      : [],
  );
}

function openingsBetween(cabinet: Cabinet, bays: readonly string[]): Between[] {
  return Object.values(cabinet.paths).flatMap((path) => {
    const [from, to] = [bayOfEnd(cabinet, path.from), bayOfEnd(cabinet, path.to)];
    if (from === undefined || to === undefined || from === to) return [];
    const area = pathArea(path);
    return [{ a: bays.indexOf(from), b: bays.indexOf(to), letThrough: through(area, partsLoss(path.parts, area)) }];
  });
}

/** Middle of a piece of the shell, from the inside lower left front corner. */
function middleOf({ bays, inside }: Cabinet, { bay, face, from, to }: Piece): Point {
  const { x, z } = bays[bay]!;
  const [right, up] = [(x[0] + x[1]) / 2, from === to ? (z[0] + z[1]) / 2 : (from + to) / 2];
  return onFace(face, inside, right, inside.depth / 2, up);
}

/** Where a path opens into the room. */
export function mouthOf({ inside }: Cabinet, { place: { face, along, z } }: CabinetPath): Point {
  const side = face === 'left' || face === 'right';
  return onFace(face, inside, side ? inside.width / 2 : along, side ? along : inside.depth / 2, z);
}

function onFace(face: FaceName, inside: Cabinet['inside'], x: number, y: number, z: number): Point {
  switch (face) {
    case 'front':
      return [x, 0, z];
    case 'back':
      return [x, inside.depth, z];
    case 'left':
      return [0, y, z];
    case 'right':
      return [inside.width, y, z];
    case 'top':
      return [x, y, inside.height];
    case 'bottom':
      return [x, y, 0];
  }
}
