// Limits of money are the person's own: no trade says what a cabinet may cost.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Limit } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';

/** `bill`, `running-year`, `print-cost` under `limits:` of the file, in its own money. */
export function budget(cabinet: Cabinet, id: 'bill' | 'running-year' | 'print-cost'): Limit | undefined {
  return ownLimit(cabinet, id, 'at-most');
}
