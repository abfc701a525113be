// Where a column of a log, or a dial, hangs in the cabinet: found by the words of its name.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { contaminants } from '../cabinet/contaminants.ts';
import type { LogKind } from './log.ts';

export interface Place {
  readonly what: 'sensor' | 'bay' | 'room' | 'outdoors' | 'machine' | 'cabinet';
  /** Id of the sensor, bay or machine; empty for the others. */
  readonly id: string;
  /** Of a concentration. */
  readonly contaminant?: string;
}

export type Places = Pick<Cabinet, 'sensors' | 'bays' | 'machines'>;

const ROOM = new Set(['room', 'ambient']);
const OUTDOORS = new Set(['outdoors', 'outdoor', 'outside']);
const WHOLE = new Set(['cabinet', 'total', 'plug', 'all', 'mains']);

/** The place that a name speaks of: an id of the file all of whose words it has, the longest first. */
export function placeOf(name: string, kind: LogKind, places: Places): Place | undefined {
  const words = new Set(wordsOf(name));
  const named = (ids: Readonly<Record<string, unknown>>): string | undefined =>
    Object.keys(ids)
      .filter((id) => id === name.trim() || wordsOf(id).every((word) => words.has(word)))
      .sort((a, b) => b.length - a.length)[0];
  const has = (some: ReadonlySet<string>): boolean => [...words].some((word) => some.has(word));
  if (kind === 'power') {
    const machine = named(places.machines);
    if (machine !== undefined) return { what: 'machine', id: machine };
    return has(WHOLE) ? { what: 'cabinet', id: '' } : undefined;
  }
  const contaminant = kind === 'concentration' ? contaminantOf(name) : undefined;
  if (kind === 'concentration' && contaminant === undefined) return undefined;
  const carried = contaminant === undefined ? {} : { contaminant };
  const sensor = named(places.sensors);
  if (sensor !== undefined) return { what: 'sensor', id: sensor, ...carried };
  const bay = named(places.bays);
  if (bay !== undefined) return { what: 'bay', id: bay, ...carried };
  if (has(ROOM)) return { what: 'room', id: '', ...carried };
  return has(OUTDOORS) ? { what: 'outdoors', id: '', ...carried } : undefined;
}

function contaminantOf(name: string): string | undefined {
  const text = name.toLowerCase().replaceAll(/[\s_-]/g, '');
  return contaminants.find((each) => text.includes(each.toLowerCase()));
}

export function wordsOf(name: string): string[] {
  return name
    .replaceAll(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '');
}

/** A place in words: `sensor top`, `bay upper`, `the room`. */
export function placeText({ what, id, contaminant }: Place): string {
  const carried = contaminant === undefined ? '' : `${contaminant} at `;
  if (what === 'room') return `${carried}the room`;
  if (what === 'outdoors') return `${carried}outdoors`;
  if (what === 'cabinet') return 'the whole cabinet';
  return `${carried}${what} ${id}`;
}

/** Names that a column may be given, for those who have to choose one. */
export function knownPlaces({ sensors, bays, machines }: Places, kind: LogKind): string[] {
  if (kind === 'power') return [...Object.keys(machines), 'cabinet'];
  return [...Object.keys(sensors), ...Object.keys(bays), 'room', 'outdoors'];
}
