// stillair parts [WORD...]: what the catalogue holds, as it may be written in a cabinet file.

import { catalogueData, nearest } from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { hanging } from '../text.ts';

export interface PartsOptions {
  readonly json?: boolean;
}

interface Part {
  readonly group: string;
  readonly kind: string;
  readonly entry: unknown;
}

/** So many parts or fewer are told in full; more only by name. */
const IN_FULL = 4;

export async function parts(words: readonly string[], options: PartsOptions, io: Io): Promise<ExitCode> {
  const all = Object.entries(catalogueData).flatMap(([group, entries]) =>
    Object.entries(entries).map(([kind, entry]): Part => ({ group, kind, entry })),
  );
  const found = all.filter((part) => words.every((word) => hasWord(namesOf(part).join(' '), word)));
  if (found.length === 0) {
    const vocabulary = new Set(all.flatMap(namesOf).flatMap((name) => name.split(' ')));
    const near = words.map((word) => nearest(word, vocabulary) ?? word).join(' ');
    const advice = near === words.join(' ') ? 'stillair parts lists them all' : `did you mean ${near}?`;
    io.err(`stillair parts: no part has the words "${words.join(' ')}"; ${advice}`);
    return 2;
  }
  if (options.json) io.out(JSON.stringify({ version: 1, parts: found }, null, 2));
  else io.out(found.length <= IN_FULL ? inFull(found, io) : byName(found, io));
  return 0;
}

/** Group, kind, and what it is where the group holds several things: bend, grille, lamp. */
function namesOf({ group, kind, entry }: Part): string[] {
  const { what } = entry as { readonly what?: unknown };
  return [group, kind, ...(typeof what === 'string' ? [what] : [])];
}

function hasWord(text: string, word: string): boolean {
  return text.toLowerCase().includes(word.toLowerCase());
}

function byName(found: readonly Part[], io: Io): string {
  const ink = inkFor(io);
  const groups = [...new Set(found.map(({ group }) => group))];
  const lists = groups.map((group) => {
    const kinds = found.filter((part) => part.group === group).map(({ kind }) => kind);
    return `${ink.strong(group)}\n${hanging('  ', kinds.join(' · '), io.columns)}`;
  });
  const hint = 'One in full: stillair parts and words of its name. All are generic; prices are invented, but typical.';
  const more = ink.faint(hanging('', hint, io.columns));
  return [...lists, more].join('\n\n');
}

/** As it would stand under `parts:` in a cabinet file. */
function inFull(found: readonly Part[], io: Io): string {
  const ink = inkFor(io);
  return found
    .map(
      ({ group, kind, entry }) =>
        `${ink.faint(`${group}:`)}\n  ${ink.strong(kind)}:\n${lines(entry, '    ', io.columns)}`,
    )
    .join('\n\n');
}

function lines(entry: unknown, indent: string, width: number): string {
  return Object.entries(entry as Readonly<Record<string, unknown>>)
    .map(([key, value]) => {
      if (typeof value !== 'object' || value === null) return hanging(`${indent}${key}: `, String(value), width);
      const pairs = Object.entries(value).map(([inner, each]) => `${inner}: ${each}`);
      const flat = Object.values(value).every((each) => typeof each !== 'object');
      if (flat && !Array.isArray(value)) return hanging(`${indent}${key}: `, `{ ${pairs.join(', ')} }`, width);
      if (flat) return hanging(`${indent}${key}: `, `[${Object.values(value).join(', ')}]`, width);
      return `${indent}${key}:\n${lines(value, `${indent}  `, width)}`;
    })
    .join('\n');
}
