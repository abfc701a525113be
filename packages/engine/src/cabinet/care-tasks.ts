// What wants care, with its interval and its words: the file's own interval, else what is common practice.

import type { Assumption } from './assumption.ts';
import type { CarePractice, CareTask } from './care.ts';
import { type CaredFor, type CarePart, carePartsOf } from './care-parts.ts';
import { type Practice, practices } from './care-practice.ts';
import type { Origins } from './origin.ts';

/** In the order of the cabinet. What the file says is never done is left out. */
export function careTasksOf(cabinet: CaredFor, origins: Origins = new Map()): CareTask[] {
  return carePartsOf(cabinet).flatMap((part): CareTask[] => {
    const { action, practice, kind, counts, about } = part;
    const own = cabinet.care[part.part]?.[action];
    if (own !== undefined && Object.keys(own).length === 0) return [];
    const usual = withPrinting(practice, practices[practice], cabinet, origins);
    return [
      {
        id: `${part.part} ${action}`,
        part: part.part,
        action,
        says: SAYS[practice](part),
        counts,
        kind,
        ...(about === undefined ? {} : { about }),
        ...(own === undefined ? usual : { interval: own, source: 'the cabinet file', own: true }),
      },
    ];
  });
}

/** Hours of printing from `costs:`, so that what is paid for and what is asked for are one. */
function withPrinting(practice: CarePractice, usual: Practice, { costs }: CaredFor, origins: Origins): Practice {
  const name = practice === 'filterChange' ? 'filterLife' : practice === 'carbonChange' ? 'carbonLife' : undefined;
  if (name === undefined) return usual;
  const { p10 = costs[name], p90 = costs[name] } = origins.get(`costs.${name}`)?.spread ?? {};
  const printing: Assumption = { value: costs[name], low: p10, high: p90, shape: 'log-normal', why: `costs.${name}` };
  return { ...usual, interval: { ...usual.interval, printing } };
}

const change = ({ part }: CarePart): string => `change the ${part}`;

const SAYS: Readonly<Record<CarePractice, (part: CarePart) => string>> = {
  filterChange: change,
  filterCheck: ({ part }) => `look at the ${part} and read its pressure loss`,
  carbonChange: change,
  fanCheck: ({ part }) => `look at the ${part}: dust, noise, play`,
  fanChange: change,
  fanAlways: change,
  sealCheck: ({ name }) => `check the seal of ${name}`,
  belts: ({ name }) => `check belts and fan intakes of ${name}`,
  terminals: ({ name }) => `check terminals, bed cables and screws of ${name}`,
  guides: ({ name }) => `lubricate the guides of ${name}`,
  'tube end': ({ name }) => `check the end of the tube of ${name}`,
  'hot end': ({ name }) => `clean the hot end of ${name}`,
  'bed cable': ({ name }) => `change the cable to the moving bed of ${name}`,
  desiccantDry: ({ name }) => `dry or change the desiccant of ${name}`,
  detectorTest: ({ name }) => `test the detector ${name}`,
  detectorChange: ({ name }) => `change the smoke detector ${name}`,
  chainTest: ({ name, what = '' }) => `trip ${name} (${what})`,
  linkCheck: ({ name }) => `look at the thermal link ${name}`,
  extinguisherCheck: () => 'have the extinguisher checked',
  sensorCheck: ({ name }) => `compare the sensor ${name}`,
  bayClean: ({ name }) => `clean ${name}`,
};
