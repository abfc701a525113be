// A limit that the person has set in the cabinet file takes the place of the one the trade would use.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Limit } from './measure.ts';

export function limitFor({ limits }: Cabinet, limit: Limit): Limit {
  const own = limits[limit.id];
  if (own === undefined) return limit;
  return {
    ...limit,
    value: own,
    standing: 'own',
    source: `limits.${limit.id} of the cabinet file, in place of ${limit.source}`,
  };
}

/** A limit that a trade sets. */
export function tradeLimit(cabinet: Cabinet, id: string, kind: Limit['kind'], value: number, source: string): Limit {
  return limitFor(cabinet, { id, kind, value, source, standing: 'trade' });
}

/** A limit that exists only if the person has set it. */
export function ownLimit({ limits }: Cabinet, id: string, kind: Limit['kind']): Limit | undefined {
  const value = limits[id];
  return value === undefined
    ? undefined
    : { id, kind, value, source: `limits.${id} of the cabinet file`, standing: 'own' };
}
