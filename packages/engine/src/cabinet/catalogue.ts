// Parts by kind: the person's own (`parts:` of the file) before the catalogue's. An entry is read when it is first used.

import { catalogueData } from './catalogue.data.ts';
import { partsSchema } from './file-schema.ts';
import type { PartsSpec } from './spec.ts';

export type PartGroup = keyof PartsSpec;

export type EntryOf<G extends PartGroup> = NonNullable<PartsSpec[G]>[string];

export interface CatalogueEntry<G extends PartGroup> {
  readonly kind: string;
  readonly spec: EntryOf<G>;
  /** Stands in the file, under `parts:`. */
  readonly own: boolean;
  readonly source: string;
}

const read = new Map<string, unknown>();

/** The entry of a kind, or undefined when there is none. */
export function findPart<G extends PartGroup>(
  own: PartsSpec | undefined,
  group: G,
  kind: string,
): CatalogueEntry<G> | undefined {
  const ownGroup = own?.[group] as Readonly<Record<string, EntryOf<G>>> | undefined;
  if (ownGroup !== undefined && Object.hasOwn(ownGroup, kind)) {
    const spec = ownGroup[kind]!;
    return { kind, spec, own: true, source: spec.source ?? 'the cabinet file' };
  }
  const entries = catalogueData[group] ?? {};
  if (!Object.hasOwn(entries, kind)) return undefined;
  const spec = readEntry(group, kind, entries[kind]) as EntryOf<G>;
  return { kind, spec, own: false, source: spec.source ?? 'catalogue' };
}

/** Every kind of a group, the person's own first. */
export function kindsOf(own: PartsSpec | undefined, group: PartGroup): readonly string[] {
  return [...new Set([...Object.keys(own?.[group] ?? {}), ...Object.keys(catalogueData[group] ?? {})])];
}

export const partGroups: readonly PartGroup[] = [
  'boards',
  'seals',
  'foams',
  'fans',
  'filters',
  'carbons',
  'ducts',
  'fittings',
  'flaps',
  'machines',
  'heats',
  'materials',
  'finishes',
  'cameras',
];

function readEntry(group: PartGroup, kind: string, written: unknown): unknown {
  const key = `${group}/${kind}`;
  const known = read.get(key);
  if (known !== undefined) return known;
  const answer = partsSchema().safeParse({ [group]: { [kind]: written } });
  if (!answer.success)
    throw new Error(`catalogue: ${group}: ${kind}: ${answer.error.issues.map(({ message }) => message).join('; ')}`);
  const entry = (answer.data[group] as Readonly<Record<string, unknown>>)[kind];
  read.set(key, entry);
  return entry;
}
