// One choice of a search: values of one path, the value as it stands among them.

import type { Edit } from '../../cabinet/cabinet.ts';
import { splitPath } from '../../cabinet/edit-path.ts';
import { inOrder } from '../../cabinet/search-spec.ts';

export interface ChoiceValue {
  readonly says: string;
  /** None for the value as it stands. */
  readonly edits: readonly Edit[];
}

export interface SearchChoice {
  /** Path of the value, or `option` and the option's id. */
  readonly id: string;
  readonly values: readonly ChoiceValue[];
  /** Number of the value as it stands. */
  readonly base: number;
  readonly ordered: boolean;
  /** Nobody said that it is free: it was taken to be. */
  readonly assumed: boolean;
}

/** What stands in the file at a path; undefined when nothing does. */
export function valueIn(plain: unknown, path: string): unknown {
  return (splitPath(path) ?? []).reduce<unknown>(
    (at, segment) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[segment] : undefined),
    plain,
  );
}

/** The value as it stands is one of the values; in order when all are. */
export function freeChoice(
  plain: unknown,
  path: string,
  values: readonly unknown[],
  ordered: boolean,
  assumed: boolean = false,
): SearchChoice {
  const standing = valueIn(plain, path) ?? leftOut(path);
  const same = (value: unknown): boolean => JSON.stringify(value) === JSON.stringify(standing);
  const others = values.filter((value) => !same(value));
  const place = ordered && standing !== undefined ? placeIn(others, standing) : undefined;
  const at = place ?? 0;
  const all = [...others.slice(0, at), standing, ...others.slice(at)];
  return {
    id: path,
    values: all.map(
      (value, number): ChoiceValue =>
        number === at
          ? { says: standing === undefined ? 'as it stands' : saysOf(standing), edits: [] }
          : { says: saysOf(value), edits: [{ set: { [path]: value } }] },
    ),
    base: at,
    ordered: ordered && place !== undefined,
    assumed,
  };
}

/** What stands for a key that is left out, where it is one plain value that a search is likely to try. */
function leftOut(path: string): unknown {
  if (/\.parts\.\d+\.speed$/.test(path)) return '100 %';
  if (/^air\.[^.]+\.blows$/.test(path)) return 'in';
  return /^air\.[^.]+\.count$/.test(path) ? 1 : undefined;
}

/** Where a value belongs among values in order; undefined when it cannot be compared. */
function placeIn(values: readonly unknown[], standing: unknown): number | undefined {
  for (let at = 0; at <= values.length; at += 1)
    if (inOrder([...values.slice(0, at), standing, ...values.slice(at)])) return at;
  return undefined;
}

export function saysOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : JSON.stringify(value);
}
