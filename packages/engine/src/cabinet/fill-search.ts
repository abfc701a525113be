// What a search may change, with its values written out.

import { kindsOf } from './catalogue.ts';
import { freeValues, inOrder, type SearchPlan } from './search-spec.ts';
import type { FileSpec } from './spec.ts';

export function fillSearch({ search, parts }: FileSpec): SearchPlan | undefined {
  if (search === undefined) return undefined;
  const free = Object.entries(search.free ?? {}).flatMap(([path, written]) => {
    const values = freeValues(written, (group) => kindsOf(parts, group));
    return 'key' in values ? [] : [[path, { values, ordered: inOrder(values) }] as const];
  });
  return { free: Object.fromEntries(free), options: search.options ?? [] };
}
