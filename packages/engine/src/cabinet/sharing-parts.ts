// Cabinets that are read one after another made to share the parts in which they are alike, so that what rests on these is found again.

import type { Cabinet } from './cabinet.ts';

/** So many forms of one part are kept, the last used first: a search comes back to the few that its choices can make of it. */
const MOST = 24;

export function sharingParts(): (cabinet: Cabinet) => Cabinet {
  const known = new Map<string, unknown[]>();
  const shared = (part: string, value: unknown): unknown => {
    const forms = known.get(part) ?? [];
    known.set(part, forms);
    const at = forms.findIndex((form) => alike(form, value));
    const found: unknown = at < 0 ? value : forms.splice(at, 1)[0];
    forms.unshift(found);
    if (forms.length > MOST) forms.pop();
    return found;
  };
  return (cabinet) => {
    const parts = Object.entries(cabinet).map(([part, value]) => [part, shared(part, value)]);
    return Object.fromEntries(parts) as unknown as Cabinet;
  };
}

/** Plain data of the same content. */
function alike(a: unknown, b: unknown): boolean {
  if (a === b) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  const keys = Object.keys(a);
  if (keys.length !== Object.keys(b).length) return false;
  for (const key of keys) if (!alike(a[key as keyof typeof a], b[key as keyof typeof b])) return false;
  return true;
}
