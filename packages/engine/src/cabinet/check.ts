// What a check of the file's meaning works with: what could be read, the ids that stand in the text, and a way to complain.

import type { Complaint } from './complaint.ts';
import { quoted } from './complaint.ts';
import { fileKeys } from './file-schema.ts';
import type { JobFiles } from './job-file.ts';
import { nearest } from './nearest.ts';
import { oneOf } from './shape.ts';
import type { Located } from './shape-complaints.ts';
import type { FilePath, SourceTree } from './source-tree.ts';
import type { FileSpec } from './spec.ts';

/** Parts of the file that could be read; what was wrong has been complained about already. */
export type ReadSpec = Partial<FileSpec>;

export interface Check {
  readonly spec: ReadSpec;
  readonly tree: SourceTree;
  readonly found: Located[];
  /** Job files of the queue that have been read. */
  readonly files: JobFiles;
  /** Ids of a section as they stand in the text, faulty entries too. */
  ids(section: string): readonly string[];
  say(
    path: FilePath,
    fault: Omit<Complaint, 'where'>,
    place?: { readonly at?: number; readonly length?: number; readonly key?: boolean },
  ): void;
}

export function createCheck(spec: ReadSpec, tree: SourceTree, files: JobFiles = {}): Check {
  const found: Located[] = [];
  const sections = new Set(fileKeys());
  const strange = Object.keys(tree.plain).filter((key) => !sections.has(key));
  /** Keys that are no sections but were probably meant to be this one: what they hold is not missing. */
  const misspelt = (section: string): string[] => strange.filter((key) => nearest(key, sections) === section);
  return {
    spec,
    tree,
    found,
    files,
    ids: (section) => [...keysOf(tree.plain[section]), ...misspelt(section).flatMap((key) => keysOf(tree.plain[key]))],
    say: (path, fault, { at, length, key = false } = {}) => {
      const where = key ? tree.keySpan(path) : tree.valueSpan(path, at, length);
      found.push({ path, complaint: { ...fault, where } });
    },
  };
}

export function keysOf(map: unknown): readonly string[] {
  return typeof map === 'object' && map !== null && !Array.isArray(map) ? Object.keys(map) : [];
}

/** Complains unless `wanted` is one of the words that are known there. */
export function mustBeKnown(
  check: Check,
  path: FilePath,
  what: string,
  wanted: string,
  known: readonly string[],
  place?: { at?: number; length?: number },
): boolean {
  if (known.includes(wanted)) return true;
  const guess = nearest(wanted, known);
  check.say(
    path,
    {
      code: `${what.replaceAll(' ', '-')}-unknown`,
      what: `there is no ${what} ${quoted(wanted)}`,
      allowed: knownOnes(what, wanted, known),
      mend:
        guess === undefined
          ? known.length === 0
            ? `add the ${what} first`
            : 'name one of these'
          : `did you mean ${quoted(guess)}?`,
    },
    place,
  );
  return false;
}

/** Lists longer than this are told by what comes nearest in them. */
const SHORT = 12;
const LONG = 40;

/** What is known there, for the line "allowed". */
export function knownOnes(what: string, wanted: string, known: readonly string[]): string {
  const all = [...new Set(known)];
  if (all.length === 0) return `${article(what)} ${what}, but there is none`;
  if (all.length <= SHORT) return oneOf(all);
  const near: string[] = [];
  for (let i = 0; i < 4; i++) {
    const next = nearest(
      wanted,
      all.filter((word) => !near.includes(word)),
    );
    if (next !== undefined) near.push(next);
  }
  if (near.length > 0) return `${article(what)} ${what} that is known here, such as ${oneOf(near)}`;
  return all.length <= LONG ? oneOf(all) : `${all.slice(0, LONG).join(', ')}, and ${all.length - LONG} more`;
}

function article(what: string): string {
  return /^[aeiou]/.test(what) ? 'an' : 'a';
}
