// Colours of conductors by region: as the standards for each print them, from memory; the local code decides.

import type { Region } from '../../cabinet/power.ts';

export interface Colours {
  readonly phase: string;
  readonly neutral: string;
  readonly earth: string;
  readonly plus: string;
  readonly minus: string;
  readonly source: string;
}

const international = {
  phase: 'brown (or black, grey)',
  neutral: 'blue',
  earth: 'green and yellow',
} as const;

export const coloursOf: Readonly<Record<Region, Colours>> = {
  EU: { ...international, plus: 'red', minus: 'white', source: 'IEC 60445:2021, table A.1, from memory' },
  UK: { ...international, plus: 'brown', minus: 'grey', source: 'BS 7671:2018, table 51, from memory' },
  US: {
    phase: 'black (or red)',
    neutral: 'white or grey',
    earth: 'green, or bare',
    plus: 'red',
    minus: 'black',
    source: 'NEC 200.6, 250.119 from memory; direct current below 50 V: common practice, no source',
  },
  other: {
    ...international,
    plus: 'red',
    minus: 'white',
    source: 'IEC 60445:2021, table A.1, from memory; your code may say otherwise',
  },
};
