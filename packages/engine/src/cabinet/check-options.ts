// Options are edits of the file: each is tried when the file is read, so that every fault is told at once, at its own line.

import type { Edit } from './cabinet.ts';
import { keysOf } from './check.ts';
import type { Span } from './complaint.ts';
import { applyChanges, type Change } from './edit-document.ts';
import { changesOf } from './edits.ts';
import type { Located } from './shape-complaints.ts';
import { type FilePath, type SourceTree, sourceTree } from './source-tree.ts';
import type { YamlDocument } from './yaml-document.ts';

/** Edits that the file speaks of without doing them: an option, or a value that a search may try. */
export interface WrittenEdits {
  /** How a complaint begins: `with option "quiet"`. */
  readonly says: string;
  readonly path: FilePath;
  readonly edits: readonly Edit[];
  readonly placeOf: (edit: number, kind: Change['kind'], path: string) => Span;
}

/** Sections that speak of edits: what is wrong in them has been told once. */
const SPEAKING: readonly unknown[] = ['options', 'search'];

/** Complaints that edits would cause and that the file has not without them; each points at the change. */
export function checkEdits(
  source: YamlDocument,
  written: readonly WrittenEdits[],
  known: readonly Located[],
  understand: (tree: SourceTree) => readonly Located[],
): readonly Located[] {
  const before = new Set(known.map(keyOfComplaint));
  return written.flatMap(({ says, path, edits, placeOf }) => {
    const changes = changesOf(edits, placeOf);
    const edited = applyChanges(source, changes);
    if (edited.complaints.length > 0) return edited.complaints.map((complaint) => ({ path, complaint }));
    const tree = sourceTree(edited.document, edited.inserted);
    const caused = understand(tree).filter(
      (located) => !SPEAKING.includes(located.path[0]) && !before.has(keyOfComplaint(located)),
    );
    return caused.map(({ complaint }) => {
      const own = changes.some(
        ({ where }) => where.line === complaint.where.line && where.column === complaint.where.column,
      );
      const where = own ? complaint.where : (changes.at(-1)?.where ?? complaint.where);
      return { path, complaint: { ...complaint, what: `${says}, ${complaint.what}`, where } };
    });
  });
}

/** Where the edits of an option stand, if these edits are those of an option of the file. */
export function placeOfOption(tree: SourceTree, edits: readonly Edit[]): WrittenEdits['placeOf'] | undefined {
  const wanted = JSON.stringify(edits);
  return writtenOptions(tree).find((option) => JSON.stringify(option.edits) === wanted)?.placeOf;
}

function keyOfComplaint({ path, complaint: { code, what } }: Located): string {
  return JSON.stringify([path, code, what]);
}

/** Options whose shape is right; the others have been complained about. */
export function writtenOptions(tree: SourceTree): WrittenEdits[] {
  const options = tree.plain['options'];
  return keysOf(options).flatMap((id) => {
    const written = (options as Record<string, unknown>)[id];
    const listed = Array.isArray(written)
      ? written
      : keysOf(written).includes('edits')
        ? (written as { edits: unknown }).edits
        : [written];
    if (!Array.isArray(listed) || !listed.every(isEdit)) return [];
    const before: FilePath = Array.isArray(written)
      ? ['options', id]
      : keysOf(written).includes('edits')
        ? ['options', id, 'edits']
        : ['options', id];
    const single = !Array.isArray(written) && !keysOf(written).includes('edits');
    const placeOf = (edit: number, kind: Change['kind'], path: string): Span => {
      const at: FilePath = single ? [...before, kind] : [...before, edit, kind];
      if (kind !== 'remove') return tree.keySpan([...at, path]);
      const index = (listed[edit] as Edit).remove?.indexOf(path) ?? 0;
      return tree.valueSpan([...at, index]);
    };
    return [{ says: `with option "${id}"`, path: ['options', id], edits: listed, placeOf }];
  });
}

function isEdit(value: unknown): value is Edit {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return false;
  const { set, add, remove, ...rest } = value as Record<string, unknown>;
  const isMap = (map: unknown): boolean =>
    map === undefined || (typeof map === 'object' && map !== null && !Array.isArray(map));
  const isList = remove === undefined || (Array.isArray(remove) && remove.every((path) => typeof path === 'string'));
  return isMap(set) && isMap(add) && isList && Object.keys(rest).length === 0;
}
