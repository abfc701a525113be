// How a printed part is written into an air path of the cabinet file.

import type { CabinetPath, Edit } from '../../cabinet/cabinet.ts';
import { joinPath } from '../../cabinet/edit-path.ts';

export type PartText = Readonly<Record<string, string | number>>;

/** Parts of the file before this place of the cabinet: the path's own hole is not among them. */
const listed = ({ parts }: CabinetPath, at: number): number => (parts[0]?.part === 'hole' ? at - 1 : at);

/** Puts a part in before another. */
export function insertPart(id: string, path: CabinetPath, at: number, part: PartText): Edit {
  const place = Math.max(listed(path, at), 0);
  return listed(path, path.parts.length) === 0
    ? { set: { [joinPath(['air', id, 'parts'])]: [part] } }
    : { add: { [joinPath(['air', id, 'parts', place])]: part } };
}

export function setLoss(id: string, path: CabinetPath, at: number, loss: number): Edit {
  return { set: { [joinPath(['air', id, 'parts', listed(path, at), 'loss'])]: Math.round(1000 * loss) / 1000 } };
}
