// Contaminants, where they come from and what takes them out, as a network file writes them.

import type { Node } from 'yaml';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { mustExist, ownName, PLACES, referred } from './file-names.ts';
import {
  NOT_NEGATIVE,
  nameOf,
  POSITIVE,
  type Reading,
  readEntries,
  readNumber,
  SHARE,
  scalarOf,
  toSi,
} from './file-value.ts';
import type { CarbonBed, Contaminant, Emission, EmissionCourse, Recirculation } from './network.ts';
import { readShares } from './read-air.ts';
import { readProfile, whenAt } from './read-when.ts';

export function readContaminant(reading: Reading, node: Node): Contaminant {
  const map = openMap(reading, node, 'a contaminant', fileKeys.contaminant);
  const deposition = map.at('deposition');
  const perSecond = map.scaleOf('deposition');
  const outside = map.at('outside');
  return {
    name: ownName(reading, 'contaminant', map),
    unit: map.text('unit', '1'),
    scale: map.number('scale', POSITIVE, 1),
    initial: byZone(reading, map.at('initial'), 'initial', 1),
    deposition: byZone(reading, deposition, 'deposition', perSecond),
    ...(map.has('coagulation') ? { coagulation: map.number('coagulation', NOT_NEGATIVE) } : {}),
    ...(outside === undefined ? {} : { outside: readOutside(reading, outside) }),
  };
}

/** Values by zone; a single number holds for all zones. */
function byZone(
  reading: Reading,
  node: Node | undefined,
  what: string,
  scale: number,
): Readonly<Record<string, number>> {
  if (node === undefined) return {};
  if (typeof scalarOf(reading, node) === 'number') {
    const value = toSi(readNumber(reading, node, what, NOT_NEGATIVE), scale);
    return Object.fromEntries([...(reading.names.get('zone')?.keys() ?? [])].map((zone) => [zone, value]));
  }
  return Object.fromEntries(
    readEntries(reading, node, what).map(({ key, value }) => {
      mustExist(reading, key, nameOf(key), ['zone']);
      return [nameOf(key), toSi(readNumber(reading, value, nameOf(key), NOT_NEGATIVE), scale)];
    }),
  );
}

function readOutside(reading: Reading, node: Node): NonNullable<Contaminant['outside']> {
  return Object.fromEntries(
    readEntries(reading, node, 'outside').map(({ key, value }) => {
      mustExist(reading, key, nameOf(key), ['zone']);
      return [nameOf(key), readProfile(reading, value, nameOf(key), NOT_NEGATIVE)];
    }),
  );
}

export function readRecirculation(reading: Reading, node: Node, index: number): Recirculation {
  const map = openMap(reading, node, 'a recirculation', fileKeys.recirculation);
  return {
    name: ownName(reading, 'recirculation', map, `recirculation.${index + 1}`),
    zone: referred(reading, map, 'zone', ['zone']),
    flow: map.number('flow', NOT_NEGATIVE),
    efficiency: readShares(reading, map.at('efficiency'), 'eff'),
    active: whenAt(reading, map, 'active'),
  };
}

export function readCarbonBed(reading: Reading, node: Node): CarbonBed {
  const map = openMap(reading, node, 'a carbon bed', fileKeys.carbonBed);
  const vapours = map.list('vapours', 'single').map((item) => {
    const vapour = openMap(reading, item, 'a vapour', fileKeys.carbonVapour);
    return {
      contaminant: referred(reading, vapour, 'contaminant', ['contaminant']),
      efficiency: vapour.number('efficiency', SHARE),
      vapour: vapour.text('vapour'),
      kilogramsPerUnit: vapour.number('kilogramsPerUnit', POSITIVE),
      load: vapour.number('load', NOT_NEGATIVE, 0),
    };
  });
  return {
    name: ownName(reading, 'carbon bed', map),
    in: referred(reading, map, 'in', ['path', 'recirculation']),
    at: referred(reading, map, 'at', PLACES),
    mass: map.number('mass', POSITIVE),
    vapours,
  };
}

export function readEmission(reading: Reading, node: Node): Emission {
  const map = openMap(reading, node, 'an emission', fileKeys.emission);
  return {
    contaminant: referred(reading, map, 'contaminant', ['contaminant']),
    zone: referred(reading, map, 'zone', ['zone']),
    rate: map.number('rate', NOT_NEGATIVE),
    active: whenAt(reading, map, 'active'),
    ...readCourse(reading, map),
  };
}

/** The burst at an emission's start and the tail after its end. */
export function readCourse(reading: Reading, map: FileMap<'burst' | 'tail'>): EmissionCourse {
  const burst = map.at('burst');
  const tail = map.at('tail');
  const start = burst === undefined ? undefined : openMap(reading, burst, 'a burst', fileKeys.burst);
  const end = tail === undefined ? undefined : openMap(reading, tail, 'a tail', fileKeys.tail);
  return {
    ...(start === undefined
      ? {}
      : { burst: { ratio: start.number('ratio', NOT_NEGATIVE), time: start.number('time', POSITIVE) } }),
    ...(end === undefined
      ? {}
      : { tail: { share: end.number('share', NOT_NEGATIVE), time: end.number('time', POSITIVE) } }),
  };
}
