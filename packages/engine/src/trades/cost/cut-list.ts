// The boards of a cabinet as parts to be cut: skin by skin round its inside, its doors, and what divides it.

import { type Panel, type SheetCount, type SheetPart, sheetsFor, skinJoints, skinPanels } from '@stillair/physics';
import type { Build, Cabinet, FaceName } from '../../cabinet/cabinet.ts';
import { doorSize } from '../door-size.ts';

export interface CutPart extends SheetPart {
  /** `faces.back`, `doors.front`, `partitions.0`. */
  readonly of: string;
}

/** All parts of one board in one thickness. */
export interface BoardLot {
  readonly board: string;
  readonly thickness: number;
  readonly parts: readonly CutPart[];
  /** m² */
  readonly area: number;
}

export interface CutList {
  readonly lots: readonly BoardLot[];
  /** Metres of joint of boards that come in sheets. */
  readonly joints: number;
  readonly doors: number;
  readonly shelves: number;
}

/** Faces with a door all over have no board of their own. */
export function cutListOf(cabinet: Cabinet): CutList {
  const { inside, faces, doors, partitions, bays, costs } = cabinet;
  const parts: { readonly board: string; readonly thickness: number; readonly part: CutPart }[] = [];
  let joints = 0;
  const put = (board: string, thickness: number, part: CutPart): void => {
    if (board !== 'still air') parts.push({ board, thickness, part });
  };
  const layersOf = (build: Build, see: (board: string, thickness: number, offset: number) => void): void => {
    let offset = 0;
    for (const { material, thickness } of build.layers) {
      see(material, thickness, offset);
      offset += thickness;
    }
  };
  for (const name of ['top', 'bottom', 'left', 'right', 'back'] as const)
    layersOf(faces[name].build, (board, thickness, offset) => {
      const panels = skinPanels(inside, offset, thickness);
      put(board, thickness, { of: `faces.${name}`, ...withGrain(panels.find(({ face }) => face === name)!) });
      if (name === 'back' && costs.sheets[board] !== undefined) joints += skinJoints(panels);
    });
  if (!covered(cabinet, 'front'))
    layersOf(faces.front.build, (board, thickness, offset) =>
      put(board, thickness, {
        of: 'faces.front',
        length: inside.height + 2 * (offset + thickness),
        width: inside.width + 2 * (offset + thickness),
      }),
    );
  for (const [id, door] of Object.entries(doors)) {
    const { width, height } = doorSize(cabinet, door);
    layersOf(door.build, (board, thickness) => put(board, thickness, { of: `doors.${id}`, length: height, width }));
  }
  for (const [
    index,
    {
      build,
      bays: [one, other],
    },
  ] of partitions.entries()) {
    const [a, b] = [bays[one]!, bays[other]!];
    const overlap = (p: readonly [number, number], q: readonly [number, number]): number =>
      Math.min(p[1], q[1]) - Math.max(p[0], q[0]);
    const length = Math.max(overlap(a.x, b.x), overlap(a.z, b.z));
    layersOf(build, (board, thickness) => {
      put(board, thickness, { of: `partitions.${index}`, length, width: inside.depth });
      if (costs.sheets[board] !== undefined) joints += length + 2 * inside.depth;
    });
  }
  const lots = new Map<string, { board: string; thickness: number; parts: CutPart[] }>();
  for (const { board, thickness, part } of parts) {
    const key = `${board} ${thickness}`;
    const lot = lots.get(key) ?? { board, thickness, parts: [] };
    lot.parts.push(part);
    lots.set(key, lot);
  }
  return {
    lots: [...lots.values()].map((lot) => ({
      ...lot,
      area: lot.parts.reduce((sum, { length, width }) => sum + length * width, 0),
    })),
    joints,
    doors: Object.values(doors).length,
    shelves: partitions.length,
  };
}

/** Grain runs upwards on what stands, from left to right on what lies: a part's length lies along it. */
export function withGrain({ face, length, width }: Panel): SheetPart {
  return face === 'top' || face === 'bottom' ? { length, width } : { length: width, width: length };
}

/** Sheets of a lot; undefined for what is cut to size. */
export function sheetsOf({ costs }: Cabinet, { board, parts }: BoardLot): SheetCount | undefined {
  const sheet = costs.sheets[board];
  if (sheet === undefined) return undefined;
  const [length, width] = sheet;
  return sheetsFor(parts, { length, width, trim: costs.trim, kerf: costs.kerf, turned: costs.turned });
}

/** Whether doors cover all of a face. */
function covered({ doors, bays }: Cabinet, face: FaceName): boolean {
  return Object.keys(bays).every((bay) =>
    Object.values(doors).some((door) => door.face === face && door.bays.includes(bay)),
  );
}
