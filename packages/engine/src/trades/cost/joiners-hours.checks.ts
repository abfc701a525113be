// Hours and prices of a cabinet, against what joiners say of whole jobs.

import type { OutsideCheck } from '@stillair/physics';
import { joinersHours } from './joiners-hours.ts';
import { priceAt } from './price-at.ts';

const TRADE = 'common practice of joiners';
const PRACTICE = 'common practice, no source';

export const checks: readonly OutsideCheck[] = [
  {
    what: 'hours of three bays in single skin, 10 to 18',
    formula: 'joinersHours',
    source: TRADE,
    known: PRACTICE,
    expected: 14,
    unit: 'h',
    tolerance: 4,
    got: () => joinersHours({ parts: 9, joints: 12, doors: 3, shelves: 2 }),
  },
  {
    what: 'hours of three bays in double skin, 18 to 30',
    formula: 'joinersHours',
    source: `${TRADE}, double skin`,
    known: PRACTICE,
    expected: 24,
    unit: 'h',
    tolerance: 6,
    got: () => joinersHours({ parts: 30, joints: 32, doors: 3, shelves: 4 }),
  },
  {
    what: 'four sheets at 95',
    formula: 'priceAt',
    source: 'arithmetic of a bill',
    known: 'independent',
    expected: 380,
    unit: 'money',
    tolerance: 1e-9,
    got: () => 4 * priceAt(70, 120, 0.5),
  },
];
