// What of the catalogue would do as well in the place of a fan, filter or carbon: each is put in its place and every day computed again.

import type { Cabinet, CabinetPath, Edit, PathPart } from '../../cabinet/cabinet.ts';
import { findPart, kindsOf, type PartGroup } from '../../cabinet/catalogue.ts';
import { joinPath } from '../../cabinet/edit-path.ts';
import { keeps } from '../../judge/bands.ts';
import type { Finding } from '../../judge/finding.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { evaluateHere } from '../../judge/variants.ts';

export interface Alternative {
  readonly kind: string;
  readonly price?: { readonly low: number; readonly high: number };
  /** Titles of findings that hold with the part of the file and break with this one. */
  readonly breaks: readonly string[];
}

type Replaceable = Extract<PathPart, { part: 'fan' | 'filter' | 'carbon' }>;

const groups: Readonly<Record<Replaceable['part'], PartGroup>> = { fan: 'fans', filter: 'filters', carbon: 'carbons' };
/** So many others of the catalogue are tried for one part, and so many in all: each takes as long as all days of the file. */
const EACH = 2;
const IN_ALL = 8;

/** By path of the part in the cabinet; only by middle values, without a spread. */
export async function alternatives(
  source: ReadSource,
  findings: readonly Finding[],
): Promise<ReadonlyMap<string, readonly Alternative[]>> {
  const { cabinet } = source;
  const asked = Object.entries(cabinet.paths)
    .flatMap(([id, path]) =>
      path.parts.flatMap((part, at) =>
        part.part === 'fan' || part.part === 'filter' || part.part === 'carbon'
          ? nearKinds(part).map((kind) => ({
              path: `paths.${id}.parts.${at}`,
              part,
              kind,
              edit: editOf(id, path, at, part, kind),
            }))
          : [],
      ),
    )
    .slice(0, IN_ALL);
  const outcomes = await evaluateHere(source)(
    asked.map(({ edit }) => ({ edits: [edit], inputs: {} })),
    { finished: () => {}, stop: () => false },
  );
  const told = new Map<string, Alternative[]>();
  for (const [at, { path, part, kind }] of asked.entries()) {
    const { values, fault } = outcomes[at] ?? {};
    if (values === undefined || fault !== undefined) continue;
    const breaks = findings.filter(
      ({ id, value, limit }) =>
        value !== undefined &&
        limit !== undefined &&
        keeps(limit, value) &&
        values[id] !== undefined &&
        !keeps(limit, values[id]),
    );
    const price = priceIn(cabinet, groups[part.part], kind);
    told.set(path, [
      ...(told.get(path) ?? []),
      { kind, breaks: [...new Set(breaks.map(({ title }) => title))], ...(price === undefined ? {} : { price }) },
    ]);
  }
  return told;
}

function priceIn({ currency }: Cabinet, group: PartGroup, kind: string): Alternative['price'] {
  const price = findPart(undefined, group, kind)?.spec.price;
  return price === undefined || price.currency !== currency ? undefined : { low: price.low, high: price.high };
}

/** The nearest others: of the same size another strength or class, else the same of the next size. */
function nearKinds({ part, kind }: Replaceable): readonly string[] {
  const size = Number(/(\d+) mm/.exec(kind)?.[1] ?? Number.NaN);
  const family = kind.replace(/\d+ mm.*$/, '');
  return kindsOf(undefined, groups[part])
    .filter((other) => other !== kind)
    .map((other) => {
      const otherSize = Number(/(\d+) mm/.exec(other)?.[1] ?? Number.NaN);
      const alike = other.replace(/\d+ mm.*$/, '') === family;
      return { other, far: Math.abs(otherSize - size) + (alike ? 0 : 15) };
    })
    .filter(({ far }) => far <= 60)
    .sort((a, b) => a.far - b.far)
    .slice(0, EACH)
    .map(({ other }) => other);
}

function editOf(id: string, { parts }: CabinetPath, at: number, { part }: Replaceable, kind: string): Edit {
  const place = parts[0]?.part === 'hole' ? at - 1 : at;
  return { set: { [joinPath(['air', id, 'parts', place, part])]: kind } };
}
