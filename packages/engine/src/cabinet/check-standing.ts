// Do machines stand on something that is there: foams that are known, pads that are cut from foam.

import { kindsOf } from './catalogue.ts';
import { type Check, keysOf, mustBeKnown } from './check.ts';
import type { FilePath } from './source-tree.ts';

export function checkStanding(check: Check): void {
  const known = kindsOf(check.spec.parts, 'foams');
  for (const [id, { 'stands-on': stands }] of Object.entries(check.spec.machines ?? {})) {
    if (stands === undefined) continue;
    const path: FilePath = ['machines', id, 'stands-on'];
    const written = keysOf(
      (check.tree.plain['machines'] as Record<string, Record<string, unknown>>)[id]?.['stands-on'],
    );
    const { foam } = stands;
    if (foam !== undefined)
      mustBeKnown(check, [...path, 'foam'], 'foam', foam.foam, known, { at: 0, length: foam.length });
    for (const [key, needs] of [
      ['pads', 'foam'],
      ['pad-size', 'pads'],
      ['slabs', 'slab'],
      ['slab-density', 'slab'],
    ] as const) {
      if (stands[key] === undefined || written.includes(needs)) continue;
      check.say(
        [...path, key],
        {
          code: 'stands-on-wrong',
          what: `"${key}" says nothing without "${needs}"`,
          allowed: `${key}: beside ${needs}:`,
          mend: `give ${needs}: too, or leave ${key}: out`,
        },
        { key: true },
      );
    }
  }
}
