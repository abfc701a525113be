// What can be taken out of a cabinet, and the edits that take it out, with whatever names it elsewhere in the file. Protection is never
// taken out, nor what the cabinet is for: machines, spools, cameras, doors, shelves.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import { hasMuffler } from '../trades/plant.ts';
import { partPath } from '../trades/remedy-edits.ts';
import { controlledIn, sensorOf } from './fault-controls.ts';

type Segments = readonly (string | number)[];

export interface PareablePart {
  /** `air.exhaust.parts.1`, stable while the file is. */
  readonly id: string;
  readonly says: string;
  /** Findings about these are not asked: they go with the part. */
  readonly own: string;
  readonly removes?: Segments;
  readonly sets?: { readonly path: Segments; readonly value: string };
  /** Air path or source of heat that is no more: whatever feeds it no longer does. */
  readonly gone?: string;
}

export function pareableParts(cabinet: Cabinet): PareablePart[] {
  return [...airParts(cabinet), ...openings(cabinet), ...heatParts(cabinet), ...restingParts(cabinet)];
}

function airParts({ paths }: Cabinet): PareablePart[] {
  return Object.entries(paths).flatMap(([id, path]) =>
    path.parts.flatMap((part, at): PareablePart[] => {
      const muffler = part.part === 'loss' && hasMuffler({ ...path, parts: [part] });
      if (path.parts.length < 2 || (!['fan', 'filter', 'carbon', 'flap'].includes(part.part) && !muffler)) return [];
      const removes = partPath(id, path, at);
      const kind = 'kind' in part ? `${part.kind}, ` : '';
      return [
        {
          id: joinPath(removes),
          says: `${muffler ? 'muffler' : part.part} of ${id} (${kind}the rest of the path stays)`.replace(
            ', the',
            '; the',
          ),
          own: id,
          removes,
        },
      ];
    }),
  );
}

/** Whole ways for air, and holes in shelves. */
function openings({ paths, partitions }: Cabinet): PareablePart[] {
  return Object.entries(paths).flatMap(([id, { from, to, parts }]): PareablePart[] => {
    const what = parts.length === 1 && parts[0]!.part === 'hole' ? 'hole' : 'air path with all its parts';
    const shelf = partitions.find(({ bays }) => bays.includes(from) && bays.includes(to) && from !== to);
    const inAir: PareablePart = { id: `air.${id}`, says: `${id}: ${what}`, own: id, removes: ['air', id], gone: id };
    if (shelf === undefined) return [inAir];
    return [inAir, { ...inAir, id: `shelves.${shelf.id}.holes.${id}`, removes: ['shelves', shelf.id, 'holes', id] }];
  });
}

function heatParts({ heats }: Cabinet): PareablePart[] {
  return Object.entries(heats).map(([id, { what }]) => ({
    id: `heats.${id}`,
    says: `${what} ${id}`,
    own: id,
    removes: ['heats', id],
    gone: id,
  }));
}

/** Slabs and foam below machines, a lining, sensors that nothing asks. */
function restingParts(cabinet: Cabinet): PareablePart[] {
  const asked = new Set(controlledIn(cabinet).flatMap(({ control }) => sensorOf(control) ?? []));
  const lined = Object.values(cabinet.faces).some(({ build }) => build.layers.some(({ lining }) => lining === true));
  return [
    ...Object.keys(cabinet.machines).flatMap((id): PareablePart[] => {
      const { standsOn } = cabinet.machines[id]!;
      const stands = standsOn !== undefined && ('slab' in standsOn || 'foam' in standsOn);
      return stands
        ? [
            {
              id: `machines.${id}.stands-on`,
              says: `what ${id} stands on, slab and foam`,
              own: '',
              sets: { path: ['machines', id, 'stands-on'], value: 'board' },
            },
          ]
        : [];
    }),
    ...(lined ? [{ id: 'cabinet.lining', says: 'lining of the inside', own: '', removes: ['cabinet', 'lining'] }] : []),
    ...Object.keys(cabinet.sensors)
      .filter((id) => !asked.has(id))
      .map((id) => ({
        id: `sensors.${id}`,
        says: `sensor ${id}, which switches nothing`,
        own: id,
        removes: ['sensors', id],
      })),
  ];
}

/** Ways to write that these parts are gone, the fullest first: what the file does not say itself cannot be edited. */
export function editsWithout(cabinet: Cabinet, parts: readonly PareablePart[]): Edit[][] {
  const whole = parts.flatMap(({ removes }) => (removes === undefined ? [] : [removes]));
  // What goes with its whole path is not taken out of it first; in a list the last goes first, so that places stay right.
  const removes = whole
    .filter(
      (path) =>
        !whole.some(
          (other) => other !== path && other.length < path.length && other.every((segment, at) => path[at] === segment),
        ),
    )
    .sort((a, b) => (a.length === b.length && typeof a.at(-1) === 'number' ? Number(b.at(-1)) - Number(a.at(-1)) : 0));
  const sets = Object.fromEntries(
    parts.flatMap(({ sets: put }) => (put === undefined ? [] : [[joinPath(put.path), put.value] as const])),
  );
  const plain: Edit[] = [
    ...(Object.keys(sets).length > 0 ? [{ set: sets }] : []),
    ...(removes.length > 0 ? [{ remove: removes.map(joinPath) }] : []),
  ];
  const unplugged = unplug(cabinet, new Set(parts.flatMap(({ gone }) => gone ?? [])));
  return unplugged.length === 0 ? [plain] : [[...unplugged, ...plain], plain];
}

/** Strips, supplies and wires that no longer feed what is gone; those that then feed nothing go too. */
function unplug({ power: { strips, supplies, wires } }: Cabinet, gone: ReadonlySet<string>): Edit[] {
  const idle = new Set(
    Object.entries(supplies)
      .filter(([, { feeds }]) => feeds.length > 0 && feeds.every((id) => gone.has(id)))
      .map(([id]) => id),
  );
  const left = (feeds: readonly string[]): string[] => feeds.filter((id) => !gone.has(id) && !idle.has(id));
  const set: Record<string, readonly string[]> = {};
  const remove: string[] = [];
  const groups: Readonly<Record<string, Readonly<Record<string, { readonly feeds: readonly string[] }>>>> = {
    strips,
    supplies,
    wires,
  };
  for (const [group, users] of Object.entries(groups))
    for (const [id, { feeds }] of Object.entries(users)) {
      const rest = left(feeds);
      if (rest.length === feeds.length) continue;
      if (rest.length === 0 && group !== 'strips') remove.push(joinPath(['power', group, id]));
      else set[joinPath(['power', group, id, 'feeds'])] = rest;
    }
  return [...(Object.keys(set).length > 0 ? [{ set }] : []), ...(remove.length > 0 ? [{ remove }] : [])];
}
