// The boards of a cabinet with the area that each has: faces without their doors, doors, and boards between bays.

import type { Build, Cabinet } from '../cabinet/cabinet.ts';
import { type Piece, piecesOf } from '../cabinet/geometry.ts';

export interface BoardArea {
  /** `faces.back`, `doors.front`, `partitions.0`. */
  readonly path: string;
  readonly build: Build;
  readonly area: number;
}

export function boardAreas(cabinet: Cabinet): readonly BoardArea[] {
  const { faces, doors, partitions } = cabinet;
  const pieces = piecesOf(cabinet);
  const areaOf = (is: (piece: Piece) => boolean): number =>
    pieces.reduce((sum, piece) => (is(piece) ? sum + piece.area : sum), 0);
  const covers = ({ face, bay }: Piece): boolean =>
    Object.values(doors).some((door) => door.face === face && door.bays.includes(bay));
  return [
    ...Object.entries(faces).map(([name, { build }]) => ({
      path: `faces.${name}`,
      build,
      area: areaOf((piece) => piece.face === name && piece.behind.kind === 'outside' && !covers(piece)),
    })),
    ...Object.entries(doors).map(([id, { build, face, bays: opened }]) => ({
      path: `doors.${id}`,
      build,
      area: areaOf((piece) => piece.face === face && opened.includes(piece.bay)),
    })),
    ...partitions.map(({ build, bays: [one, other] }, index) => ({
      path: `partitions.${index}`,
      build,
      area: areaOf(({ bay, behind }) => bay === one && behind.kind === 'bay' && behind.bay === other),
    })),
  ].filter(({ area }) => area > 0);
}
