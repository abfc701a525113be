// What a search may change is tried when the file is read, as options are: a path that leads nowhere and a value that cannot stand
// there are told at once, at their own place.

import { kindsOf } from './catalogue.ts';
import { keysOf, type ReadSpec } from './check.ts';
import type { WrittenEdits } from './check-options.ts';
import { type Complaint, quoted } from './complaint.ts';
import { nearest } from './nearest.ts';
import { type FreeSpec, freeValues } from './search-spec.ts';
import { oneOf } from './shape.ts';
import type { Located } from './shape-complaints.ts';
import type { FilePath, SourceTree } from './source-tree.ts';

/** Options that are not there, ranges that are none, words that no kind of the catalogue has. */
export function checkSearch({ search, options = {}, parts }: ReadSpec, tree: SourceTree): readonly Located[] {
  if (search === undefined) return [];
  const say = (path: FilePath, fault: Omit<Complaint, 'where'>): Located => ({
    path,
    complaint: { ...fault, where: tree.valueSpan(path) },
  });
  const ids = Object.keys(options);
  const strange = (search.options ?? []).flatMap((id, at): Located[] => {
    if (ids.includes(id)) return [];
    const guess = nearest(id, ids);
    const fault = {
      code: 'option-unknown',
      what: `there is no option ${quoted(id)}`,
      allowed: ids.length === 0 ? 'an option, but there is none' : oneOf(ids),
      mend: guess === undefined ? 'name one of the options of the file' : `did you mean ${quoted(guess)}?`,
    };
    return [say(['search', 'options', at], fault)];
  });
  const faulty = Object.entries(search.free ?? {}).flatMap(([path, free]): Located[] => {
    const values = freeValues(free, (group) => kindsOf(parts, group));
    if ('key' in values) {
      const { key, what, allowed } = values;
      return [
        say(['search', 'free', path, key], { code: 'range-wrong', what, allowed, mend: 'write all three alike' }),
      ];
    }
    if (values.length > 0) return [];
    const fault = {
      code: 'kind-unknown',
      what: 'no kind has all these words in its name',
      allowed: 'words of names that `stillair parts` lists',
      mend: 'write fewer words',
    };
    return [say(['search', 'free', path, 'named'], fault)];
  });
  return [...strange, ...faulty];
}

/** Each value as an edit; of ranges the ends, of the catalogue the first kind. */
export function writtenValues({ search, parts }: ReadSpec, tree: SourceTree): readonly WrittenEdits[] {
  const plain = (tree.plain['search'] as { readonly free?: Readonly<Record<string, unknown>> } | undefined)?.free;
  return Object.entries(search?.free ?? {}).flatMap(([path, free]) => {
    const values = freeValues(free, (group) => kindsOf(parts, group));
    if ('key' in values || !keysOf(plain).includes(path)) return [];
    return tried(free, values).map(({ value, place }): WrittenEdits => {
      const at: FilePath = ['search', 'free', path, ...place];
      return {
        says: `with ${shown(value)} for ${path}`,
        path: ['search', 'free', path],
        edits: [{ set: { [path]: value } }],
        placeOf: () => tree.valueSpan(at),
      };
    });
  });
}

function tried(free: FreeSpec, values: readonly unknown[]): { readonly value: unknown; readonly place: FilePath }[] {
  if (Array.isArray(free)) return values.map((value, at) => ({ value, place: [at] }));
  if ('catalogue' in free) return values.slice(0, 1).map((value) => ({ value, place: ['catalogue'] }));
  return [
    { value: values[0], place: ['from'] },
    ...(values.length > 1 ? [{ value: values.at(-1), place: ['to'] }] : []),
  ];
}

function shown(value: unknown): string {
  return quoted(typeof value === 'string' ? value : JSON.stringify(value));
}
