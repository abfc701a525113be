// How long between two times of care where the file says nothing. Most of it is common practice without a source, and says so.

import { type Assumption, decades } from './assumption.ts';
import type { CareInterval, CarePractice } from './care.ts';

export interface Practice {
  readonly interval: CareInterval;
  readonly source: string;
}

const HOUR = 3600;
const PRACTICE = 'common practice, no source';

const printing = (hours: number): Assumption => exactly(hours * HOUR, PRACTICE);
const months = (number: number, why: string = PRACTICE): Assumption => exactly(number, why);

function exactly(value: number, why: string): Assumption {
  return { value, low: value, high: value, shape: 'log-normal', why };
}

const every = (interval: CareInterval, source: string = PRACTICE): Practice => ({ interval, source });

export const practices: Readonly<Record<CarePractice, Practice>> = {
  // Machines, by hours of their own printing.
  belts: every({ printing: printing(50) }),
  terminals: every(
    { printing: printing(100) },
    `${PRACTICE}: terminals of bed and mains, cables and screws; a loose one chars`,
  ),
  guides: every({ printing: printing(250) }),
  'tube end': every({ printing: printing(250) }),
  'hot end': every({ printing: printing(500) }),
  'bed cable': every({ printing: printing(1000) }, `${PRACTICE}: cables that move with a bed tire and may arc`),
  filterChange: every({ months: months(12) }, `${PRACTICE}: at twice its clean pressure loss, or after 12 months`),
  filterCheck: every({ printing: printing(500) }),
  carbonChange: every(
    { months: decades(4.5, 3, 6, PRACTICE) },
    `${PRACTICE}: by hours and load, 3 to 6 months or 200 to 500 hours of printing; its pressure loss says nothing`,
  ),
  fanCheck: every({ printing: printing(1000) }),
  fanChange: every(
    { printing: decades(30_000 * HOUR, 15_000 * HOUR, 60_000 * HOUR, 'bearings, from memory') },
    'plain bearings 30 000 h at 40 °C, ball bearings 60 000 h, half of it for each 10 to 15 K more; from memory',
  ),
  /** The same, of a fan that never rests: months of the calendar. */
  fanAlways: every(
    { months: decades(41, 20.5, 82, 'bearings, from memory') },
    'plain bearings 30 000 h at 40 °C, ball bearings 60 000 h, half of it for each 10 to 15 K more; from memory',
  ),
  sealCheck: every({ months: months(12) }),
  detectorTest: every({ months: months(1) }, `${PRACTICE}: press, or blow smoke at it, and write it down`),
  detectorChange: every(
    { months: months(120, 'from memory') },
    'ten years from its making, domestic smoke alarms; from memory',
  ),
  chainTest: every({ months: months(1) }, `${PRACTICE}: trip it and see that everything it cuts is dead`),
  linkCheck: every({ months: months(12) }, `${PRACTICE}: a link trips once; look at its clamp and its mark`),
  extinguisherCheck: every(
    { months: months(12) },
    `${PRACTICE}; how often and by whom it is serviced is a matter of local rules`,
  ),
  sensorCheck: every({ months: months(12) }, `${PRACTICE}: beside a good thermometer`),
  bayClean: every({ months: months(3) }),
  desiccantDry: every(
    { days: decades(30, 24, 38, 'silica gel at 10 to 20 % humidity, from memory') },
    '100 g of silica gel in a box of 20 l that is not tight, 24 to 38 days; gel from memory, the rest reckoned',
  ),
};
