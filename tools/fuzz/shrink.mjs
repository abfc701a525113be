// Takes out of a failing file whatever can go while it still fails in the same way.

import { parse, stringify } from 'yaml';
import { tryText } from './try-cabinet.mjs';

/** The smallest text found in which `tryText` still has a fault of the same kind, within `trials` tries. */
export function smallest(text, options, trials = 1500) {
  const kind = kindOf(tryText(text, options).faults);
  if (kind === undefined) return text;
  let best = parse(text);
  let left = trials;
  for (let shrunk = true; shrunk && left > 0; ) {
    shrunk = false;
    for (const path of pathsIn(best)) {
      if (left <= 0) break;
      if (valueAt(best, path) === undefined) continue;
      const tried = without(best, path);
      left -= 1;
      if (kindOf(tryText(stringify(tried), options).faults) !== kind) continue;
      best = tried;
      shrunk = true;
    }
  }
  return stringify(best);
}

/** Numbers and names do not make another kind of fault. */
function kindOf(faults) {
  return faults[0]?.replaceAll(/[\d.e+-]+/g, '#').slice(0, 60);
}

/** Every place in the file, the outer ones first. */
function pathsIn(value, path = []) {
  if (typeof value !== 'object' || value === null) return [];
  const keys = Object.keys(value);
  return [...keys.map((key) => [...path, key]), ...keys.flatMap((key) => pathsIn(value[key], [...path, key]))];
}

function valueAt(value, path) {
  return path.reduce((inner, key) => inner?.[key], value);
}

function without(value, [key, ...rest]) {
  if (Array.isArray(value)) {
    return rest.length === 0
      ? value.filter((_, index) => index !== Number(key))
      : value.map((item, index) => (index === Number(key) ? without(item, rest) : item));
  }
  if (rest.length > 0) return { ...value, [key]: without(value[key], rest) };
  return Object.fromEntries(Object.entries(value).filter(([other]) => other !== key));
}
