// Every guideline that the air of the room is held against: value, averaging time, source, how it was known, standing.
// Living-room values come first and decide; occupational ones are for trained workers on shift and stand apart.
// Where several bodies publish values for one substance and time, the strictest of those that were read decides (at the source
// or quoted; from memory only where there is nothing else), and the others are told beside it.

import type { Limit } from '../measure.ts';

/** How the value was known when it was typed in. */
type Knowledge = 'read' | 'second-hand' | 'memory';

export interface Guideline {
  readonly id: string;
  /** Key of contaminants.ts. */
  readonly contaminant: string;
  /** 1/m³ for particles, µg/m³ for the rest. */
  readonly value: number;
  /** Averaging time, s. Long-term guidelines are held against the mean of the day, as if all days were like it. */
  readonly window: number;
  readonly over: string;
  readonly source: string;
  readonly known: Knowledge;
  readonly standing: Limit['standing'];
  /** What other bodies publish, and what kind of value this is. */
  readonly others: string;
}

const HOUR = 3600;
const DAY = 86400;
const PER_CM3 = 1e6;

export const guidelines: readonly Guideline[] = [
  {
    id: 'room-particles-24h',
    contaminant: 'particles',
    value: 1e4 * PER_CM3,
    window: DAY,
    over: '24 h mean',
    source: 'WHO global air quality guidelines (2021), good-practice statement: high above 10 000 /cm³ over 24 h',
    known: 'memory',
    standing: 'living room',
    others: 'it tells sources apart and is no health limit; below 1000 /cm³ is called low; counts from 10 nm up',
  },
  {
    id: 'room-particles-1h',
    contaminant: 'particles',
    value: 2e4 * PER_CM3,
    window: HOUR,
    over: '1 h mean',
    source: 'WHO global air quality guidelines (2021), good-practice statement: high above 20 000 /cm³ over 1 h',
    known: 'second-hand',
    standing: 'living room',
    others: 'it tells sources apart and is no health limit; a busy street or a frying pan reaches it',
  },
  {
    id: 'room-pm25-24h',
    contaminant: 'pm25',
    value: 15,
    window: DAY,
    over: '24 h mean',
    source: 'WHO global air quality guidelines (2021)',
    known: 'second-hand',
    standing: 'living room',
    others: 'WHO 5 µg/m³ over a year, which outdoor air alone often exceeds; US EPA 35 µg/m³ over 24 h',
  },
  {
    id: 'room-styrene-long',
    contaminant: 'styrene',
    value: 30,
    window: DAY,
    over: 'long term, held against the mean of the day',
    source: 'German indoor guide value I (precaution), Bundesgesundheitsblatt 41 (1998) 392-398',
    known: 'second-hand',
    standing: 'living room',
    others:
      'guide value II (act) 300; WHO Europe 260 over a week; ATSDR 850 and US EPA 1000 µg/m³ chronic: published values span a factor of 30',
  },
  {
    id: 'room-caprolactam-8h',
    contaminant: 'caprolactam',
    value: 7,
    window: 8 * HOUR,
    over: '8 h mean',
    source: 'OEHHA reference exposure level (2013)',
    known: 'read',
    standing: 'living room',
    others: 'OEHHA 2.2 µg/m³ chronic; EU-LCI 300 µg/m³: published values span a factor of 100',
  },
  {
    id: 'room-caprolactam-1h',
    contaminant: 'caprolactam',
    value: 50,
    window: HOUR,
    over: '1 h mean',
    source: 'OEHHA reference exposure level (2013)',
    known: 'read',
    standing: 'living room',
    others: 'the only short-term value found',
  },
  {
    id: 'room-caprolactam-long',
    contaminant: 'caprolactam',
    value: 2.2,
    window: DAY,
    over: 'long term, held against the mean of the day',
    source: 'OEHHA reference exposure level (2013), chronic',
    known: 'read',
    standing: 'living room',
    others: 'EU-LCI 300 µg/m³: published values span a factor of 100',
  },
  {
    id: 'room-formaldehyde-30min',
    contaminant: 'formaldehyde',
    value: 100,
    window: HOUR / 2,
    over: '30 min mean',
    source: 'WHO Europe, indoor air quality: selected pollutants (2010)',
    known: 'second-hand',
    standing: 'living room',
    others: 'Health Canada 123 µg/m³ over 1 h; OEHHA 55 µg/m³ over 1 h',
  },
  {
    id: 'room-formaldehyde-8h',
    contaminant: 'formaldehyde',
    value: 50,
    window: 8 * HOUR,
    over: '8 h mean',
    source: 'Health Canada, residential indoor air quality guideline',
    known: 'read',
    standing: 'living room',
    others: 'OEHHA 9 µg/m³ over 8 h and chronic, below what furniture alone gives many rooms',
  },
  {
    id: 'room-acetaldehyde-24h',
    contaminant: 'acetaldehyde',
    value: 280,
    window: DAY,
    over: '24 h mean',
    source: 'Health Canada, residential indoor air quality guideline',
    known: 'read',
    standing: 'living room',
    others: 'OEHHA 140 µg/m³ chronic, 300 over 8 h',
  },
  {
    id: 'room-acetaldehyde-1h',
    contaminant: 'acetaldehyde',
    value: 1420,
    window: HOUR,
    over: '1 h mean',
    source: 'Health Canada, residential indoor air quality guideline',
    known: 'read',
    standing: 'living room',
    others: 'OEHHA 470 µg/m³ over 1 h',
  },
  {
    id: 'room-ethylbenzene-long',
    contaminant: 'ethylbenzene',
    value: 200,
    window: DAY,
    over: 'long term, held against the mean of the day',
    source: 'German indoor guide value I',
    known: 'memory',
    standing: 'living room',
    others: 'guide value II (act) 2000 µg/m³',
  },
  {
    id: 'room-tvoc-long',
    contaminant: 'tvoc',
    value: 300,
    window: DAY,
    over: 'long term, held against the mean of the day',
    source: 'hygiene level 1 of the German Environment Agency (Seifert 1999; 2007)',
    known: 'second-hand',
    standing: 'living room',
    others: 'level 2 to 1000, level 3 to 3000 µg/m³; a sum says nothing about what it is made of',
  },
  {
    id: 'shift-particles',
    contaminant: 'particles',
    value: 2e4 * PER_CM3,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'BSI PD 6699-2 (2007) benchmark for nanoparticles, quoted by DGUV-IFA; not health based',
    known: 'read',
    standing: 'occupational',
    others: 'nano reference values (SER 2012) 20 000 and 40 000 /cm³',
  },
  {
    id: 'shift-styrene',
    contaminant: 'styrene',
    value: 85_200,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'ACGIH threshold limit value of 1996, 20 ppm, as OSHA lists it',
    known: 'read',
    standing: 'occupational',
    others: 'NIOSH 50 ppm; OSHA 100 ppm; from memory ACGIH 10 ppm (2020)',
  },
  {
    id: 'shift-caprolactam',
    contaminant: 'caprolactam',
    value: 1000,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'NIOSH recommended exposure limit for vapour, 0.22 ppm',
    known: 'read',
    standing: 'occupational',
    others: 'EU 10 mg/m³; ACGIH 5 mg/m³',
  },
  {
    id: 'shift-formaldehyde',
    contaminant: 'formaldehyde',
    value: 20,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'NIOSH recommended exposure limit, 0.016 ppm',
    known: 'second-hand',
    standing: 'occupational',
    others: 'OSHA 0.75 ppm; EU 0.3 ppm',
  },
  {
    id: 'shift-acetaldehyde',
    contaminant: 'acetaldehyde',
    value: 360_000,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'OSHA permissible exposure limit, 200 ppm',
    known: 'memory',
    standing: 'occupational',
    others: 'ACGIH ceiling 25 ppm',
  },
  {
    id: 'shift-ethylbenzene',
    contaminant: 'ethylbenzene',
    value: 434_000,
    window: 8 * HOUR,
    over: '8 h shift',
    source: 'OSHA and NIOSH limit, 100 ppm',
    known: 'memory',
    standing: 'occupational',
    others: 'ACGIH 20 ppm',
  },
];

const KNOWN: Readonly<Record<Knowledge, string>> = {
  read: 'read at the source',
  'second-hand': 'read in a text that quotes it',
  memory: 'from memory',
};

export function limitOf({ id, value, over, source, known, standing }: Guideline): Limit {
  return { id, kind: 'at-most', value, source: `${source}; ${over}; ${KNOWN[known]}`, standing };
}

/** Share of what a job gives off while nothing draws it away, over job and the hours after it. */
export const unguardedLimit: Limit = {
  id: 'unguarded-release',
  kind: 'at-most',
  value: 0.1,
  source: 'judgement, no published source: the start of a job gives off most',
  standing: 'trade',
};
