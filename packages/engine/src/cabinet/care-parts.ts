// Everything in a cabinet that wants care: what it is called and what is done to it. How often, and the words for it, stand elsewhere:
// whoever only reads a file needs neither.

import type { Cabinet } from './cabinet.ts';
import type { CareAction, CareCount, CareKind, CarePractice } from './care.ts';

export type CaredFor = Pick<
  Cabinet,
  'paths' | 'doors' | 'machines' | 'spools' | 'protection' | 'sensors' | 'bays' | 'costs' | 'care'
>;

export interface CarePart {
  /** `filter exhaust` */
  readonly part: string;
  readonly action: CareAction;
  readonly kind: CareKind;
  /** Which practice says how often. */
  readonly practice: CarePractice;
  /** Id of the thing in the file, and what it is where that has a word of its own. */
  readonly name: string;
  readonly what?: string;
  readonly counts: CareCount;
  /** As findings name it; absent where none is about it. */
  readonly about?: string;
}

const MACHINE: readonly (readonly [CarePractice, CareAction])[] = [
  ['belts', 'check'],
  ['terminals', 'check'],
  ['guides', 'lubricate'],
  ['tube end', 'check'],
  ['hot end', 'clean'],
  ['bed cable', 'change'],
];

/** In the order of the cabinet. */
export function carePartsOf(cabinet: CaredFor): CarePart[] {
  const { doors, machines, spools, protection, sensors, bays } = cabinet;
  const { chain = {}, detectors = {}, extinguisher } = protection;
  const found: CarePart[] = ofPaths(cabinet);
  const put = (
    kind: CareKind,
    [practice, action]: readonly [CarePractice, CareAction],
    part: string,
    name: string,
    more: Partial<CarePart> = {},
  ): void => void found.push({ part, action, kind, practice, name, counts: {}, ...more });
  for (const id of Object.keys(doors)) put('seal', ['sealCheck', 'check'], `seal ${id}`, id, { about: `doors.${id}` });
  for (const [machine, { style }] of Object.entries(machines))
    for (const task of MACHINE)
      if (task[0] !== 'bed cable' || style === 'moving-bed')
        put('machine', task, `${task[0]} ${machine}`, machine, { counts: { machine } });
  // A spool with a humidity of its own is kept in a box that something dries.
  for (const [id, { humidity }] of Object.entries(spools))
    if (humidity !== undefined)
      put('desiccant', ['desiccantDry', 'dry'], `desiccant ${id}`, id, { about: `spools.${id}` });
  for (const [id, { what }] of Object.entries(detectors)) {
    const about = `protection.detectors.${id}`;
    put('detector', ['detectorTest', 'test'], `detector ${id}`, id, { about });
    if (what === 'smoke') put('detector', ['detectorChange', 'change'], `detector ${id}`, id, { about });
  }
  for (const [id, { what }] of Object.entries(chain))
    put('chain', what === 'thermal link' ? ['linkCheck', 'check'] : ['chainTest', 'test'], `chain ${id}`, id, {
      what,
      about: `protection.chain.${id}`,
    });
  if (extinguisher !== undefined)
    put('extinguisher', ['extinguisherCheck', 'check'], 'extinguisher', '', { about: 'protection.extinguisher' });
  for (const id of Object.keys(sensors))
    put('sensor', ['sensorCheck', 'check'], `sensor ${id}`, id, { about: `sensors.${id}` });
  for (const id of Object.keys(bays)) put('bay', ['bayClean', 'clean'], `bay ${id}`, id);
  return found;
}

function ofPaths({ paths }: CaredFor): CarePart[] {
  return Object.entries(paths).flatMap(([id, { parts }]) =>
    parts.flatMap((part, at): CarePart[] => {
      const { part: kind } = part;
      if (kind !== 'filter' && kind !== 'carbon' && kind !== 'fan') return [];
      const several = parts.filter((other) => other.part === kind);
      const name = several.length > 1 ? `${kind} ${id} ${several.indexOf(part) + 1}` : `${kind} ${id}`;
      const own = (practice: CarePractice, action: CareAction): CarePart => ({
        part: name,
        action,
        kind,
        practice,
        name,
        counts: { path: id },
        about: `air.${id}.${at}`,
      });
      if (kind === 'filter') return [own('filterChange', 'change'), own('filterCheck', 'check')];
      if (kind === 'carbon') return [own('carbonChange', 'change')];
      if (part.part !== 'fan' || part.control.kind === 'never') return [];
      const bearing = part.control.kind === 'always' ? 'fanAlways' : 'fanChange';
      return [own('fanCheck', 'check'), own(bearing, 'change')];
    }),
  );
}
