// From zod's issues to complaints with a place in the file, and to what can still be read beside them.

import { ZodLazy, ZodOptional, ZodRecord, type z } from 'zod';
import { type Complaint, quoted } from './complaint.ts';
import { nearest } from './nearest.ts';
import { type Fault, faultOf, oneOf, type Schema } from './shape.ts';
import type { FilePath, SourceTree } from './source-tree.ts';

/** A complaint that still knows what it is about. */
export interface Located {
  readonly path: FilePath;
  readonly complaint: Complaint;
}

type Issue = z.core.$ZodIssue;

export interface ShapeReading {
  /** What could be read; whatever was wrong is left out. */
  readonly spec: Readonly<Record<string, unknown>>;
  readonly complaints: readonly Located[];
}

/** One section of the file: its value with everything wrong taken out, and what was wrong, by path from the file's top. */
interface SectionReading {
  readonly value: unknown;
  readonly issues: readonly Issue[];
}

/** Passes of "read, take out what is wrong"; each pass goes one level up at least. */
const PASSES = 12;

/** Sections that were read before: an edited file shares all but what its edits touch. */
const sectionsKnown = new WeakMap<object, Map<string, SectionReading>>();

/** `called`: what the file is, for messages. */
export function readShape(
  sections: Readonly<Record<string, Schema<unknown>>>,
  tree: SourceTree,
  called: string = 'a cabinet file',
): ShapeReading {
  const keys = Object.keys(sections);
  const strange = Object.keys(tree.plain).filter((key) => !keys.includes(key));
  const complaints = strange.map(
    (key): Located => ({ path: [key], complaint: unknownKey(key, [], { ...NO_FAULT, keys }, tree, called) }),
  );
  const spec: Record<string, unknown> = {};
  for (const key of keys) {
    const { value, issues } = readSection(key, sections[key]!, tree.plain[key]);
    if (value !== undefined) spec[key] = value;
    complaints.push(...issues.flatMap((issue) => complaintsOf(issue, tree)));
  }
  return { spec, complaints };
}

const NO_FAULT: Fault = { code: '', what: '', allowed: '', mend: '' };

function readSection(key: string, schema: Schema<unknown>, plain: unknown): SectionReading {
  if (typeof plain !== 'object' || plain === null) return readSectionAnew(key, schema, plain);
  const known = sectionsKnown.get(plain) ?? new Map<string, SectionReading>();
  const reading = known.get(key) ?? readSectionAnew(key, schema, plain);
  known.set(key, reading);
  sectionsKnown.set(plain, known);
  return reading;
}

function readSectionAnew(key: string, schema: Schema<unknown>, plain: unknown): SectionReading {
  const byEntries = readEntries(schema, plain);
  if (byEntries !== undefined) return { value: byEntries, issues: [] };
  const first = schema.safeParse(plain);
  if (first.success) return { value: first.data, issues: [] };
  const issues = flat(first.error.issues, [key]);
  if (plain === undefined) return { value: undefined, issues };
  const rest = { [key]: JSON.parse(JSON.stringify(plain)) as unknown };
  let wrong = issues;
  for (let pass = 0; pass < PASSES; pass++) {
    for (const issue of wrong) takeOut(rest, issue);
    if (rest[key] === undefined) break;
    const again = schema.safeParse(rest[key]);
    if (again.success) return { value: again.data, issues };
    wrong = flat(again.error.issues, [key]);
  }
  return { value: undefined, issues };
}

/** Entries of maps that were read before, by the schema of their map and what is written there: options read the same ones again and again. */
const entriesKnown = new WeakMap<Schema<unknown>, Map<string, unknown>>();
/** More different entries of one map than are worth keeping; a search writes thousands. */
const MOST_ENTRIES = 1000;

/** A map whose entries are read each for itself, those only that have not been read before; nothing when one has a fault. */
function readEntries(schema: Schema<unknown>, plain: unknown): Readonly<Record<string, unknown>> | undefined {
  if (!isRecord(schema) || typeof plain !== 'object' || plain === null || Array.isArray(plain)) return undefined;
  const known = entriesKnown.get(schema) ?? new Map<string, unknown>();
  if (known.size > MOST_ENTRIES) known.clear();
  entriesKnown.set(schema, known);
  const entries: [string, unknown][] = [];
  for (const [id, entry] of Object.entries(plain)) {
    const written = JSON.stringify([id, entry]);
    let value = known.get(written);
    if (value === undefined) {
      const answer = schema.safeParse({ [id]: entry });
      if (!answer.success) return undefined;
      value = (answer.data as Readonly<Record<string, unknown>>)[id];
      // Numbers that are none are written alike.
      if (!written.includes('null')) known.set(written, value);
    }
    entries.push([id, value]);
  }
  return Object.fromEntries(entries);
}

/** Whether it is a map of entries that know nothing of each other. */
function isRecord(schema: Schema<unknown>): boolean {
  // To unwrap what is built late would build it once more.
  if (schema instanceof ZodLazy) return isRecord(schema._zod.innerType as Schema<unknown>);
  if (schema instanceof ZodOptional) return isRecord(schema.unwrap() as Schema<unknown>);
  return schema instanceof ZodRecord;
}

/** Issues of the branch that was meant, in place of "none of the branches fits". */
function flat(issues: readonly Issue[], before: FilePath = []): Issue[] {
  return issues.flatMap((issue) => {
    const path = [...before, ...(issue.path as (string | number)[])];
    const { branch } = faultOf(issue.message);
    const meant = issue.code === 'invalid_union' && branch !== undefined ? issue.errors[branch] : undefined;
    return meant === undefined ? [{ ...issue, path }] : flat(meant, path);
  });
}

function complaintsOf(issue: Issue, tree: SourceTree): Located[] {
  const path = issue.path as FilePath;
  const fault = faultOf(issue.message);
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => ({ path: [...path, key], complaint: unknownKey(key, path, fault, tree) }));
  }
  if (fault.code === 'key-missing') return [{ path, complaint: missingKey(path, fault, tree) }];
  const where =
    fault.inside !== undefined
      ? tree.keySpan([...path, fault.inside])
      : fault.onKey === true
        ? tree.keySpan(path)
        : tree.valueSpan(path, fault.at, fault.length);
  const { code, what, allowed } = fault;
  return [{ path, complaint: { code, what, where, allowed, mend: mendWord(fault, valueAt(tree.plain, path)) } }];
}

function unknownKey(
  key: string,
  parent: FilePath,
  { keys = [] }: Fault,
  tree: SourceTree,
  called: string = '',
): Complaint {
  const guess = nearest(key, keys);
  return {
    code: 'key-unknown',
    what: `${quoted(key)} is no key of ${parent.length === 0 ? called : quoted(parent.join('.'))}`,
    where: tree.keySpan([...parent, key]),
    allowed: oneOf(keys),
    mend:
      guess === undefined
        ? 'take it out, or begin it with _ to keep it for yourself'
        : `did you mean ${quoted(guess)}?`,
  };
}

function missingKey(path: FilePath, { allowed }: Fault, tree: SourceTree): Complaint {
  const parent = path.slice(0, -1);
  const key = String(path.at(-1));
  return {
    code: 'key-missing',
    what: `there is no ${quoted(key)} in ${parent.length === 0 ? 'the file' : quoted(parent.join('.'))}`,
    where: tree.keySpan(parent),
    allowed,
    mend: /^\w+: \d$/.test(allowed)
      ? `write ${allowed} in the first line`
      : `add ${key}: and ${allowed.startsWith('a map') ? 'what belongs into it' : 'its value'}`,
  };
}

/** A near word is a better advice than a list. */
function mendWord({ mend, keys = [] }: Fault, value: unknown): string {
  const candidates =
    typeof value === 'string' ? [value] : typeof value === 'object' && value !== null ? Object.keys(value) : [];
  for (const word of candidates) {
    const guess = nearest(word, keys);
    if (guess !== undefined) return `did you mean ${quoted(guess)}?`;
  }
  return mend;
}

function valueAt(plain: unknown, path: FilePath): unknown {
  let value = plain;
  for (const segment of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = (value as Record<string | number, unknown>)[segment];
  }
  return value;
}

/** Takes the faulty value away; a list goes as a whole, so that its other items keep their places. */
function takeOut(plain: Record<string, unknown>, issue: Issue): void {
  const path = issue.path as FilePath;
  const targets = issue.code === 'unrecognized_keys' ? issue.keys.map((key) => [...path, key]) : [path];
  for (const target of targets) {
    const list = target.findIndex((segment) => typeof segment === 'number');
    let cut = list >= 0 ? target.slice(0, list) : target;
    if (valueAt(plain, cut) === undefined) cut = cut.slice(0, -1);
    const parent = valueAt(plain, cut.slice(0, -1));
    if (cut.length > 0 && typeof parent === 'object' && parent !== null) {
      delete (parent as Record<string | number, unknown>)[cut.at(-1)!];
    }
  }
}
