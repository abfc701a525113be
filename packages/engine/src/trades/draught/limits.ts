// The limit that the draught trade holds against each print.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { limitFor } from '../person-limit.ts';
import type { Print } from '../prints.ts';

/** Air speed at the part, any moment while it is printed, of the material's own. */
export function draughtLimit(cabinet: Cabinet, { job, material }: Print): Limit {
  return limitFor(cabinet, {
    id: 'print-draught',
    kind: 'at-most',
    value: material.draughtLimit,
    source: `${job.material}: trade practice near the speed at which a draught begins to cool a part more than its own warmth does (Richardson number 1), from memory; overrule it under materials`,
    standing: 'trade',
  });
}
