// Do fittings lie where there is a place, and sit on what there is?

import { kindsOf } from './catalogue.ts';
import { type Check, mustBeKnown } from './check.ts';
import { bayIds } from './check-carcass.ts';
import type { FilePath } from './source-tree.ts';

export function checkFittings(check: Check): void {
  const { fittings = {}, parts } = check.spec;
  const places = [...bayIds(check), 'room'];
  const materials = [...check.ids('materials'), ...kindsOf(parts, 'materials')];
  const strips = Object.entries(fittings).flatMap(([id, { what }]) => (what === 'strip' ? [id] : []));
  for (const [id, { where, material, on, holds }] of Object.entries(fittings)) {
    const path: FilePath = ['fittings', id];
    if (where !== undefined) mustBeKnown(check, [...path, 'where'], 'place', where, places);
    if (material !== undefined) mustBeKnown(check, [...path, 'material'], 'material', material, materials);
    if (on !== undefined) mustBeKnown(check, [...path, 'on'], 'strip', on, strips);
    if (holds !== undefined) mustBeKnown(check, [...path, 'holds'], 'camera', holds, check.ids('cameras'));
  }
}
