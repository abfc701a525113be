// Amounts of money: where each lies between its ends, and how it is said.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { PriceRange } from '../../cabinet/costs.ts';
import { priceAt } from './price-at.ts';

export function middleOf({ costs }: Cabinet, { low, high }: PriceRange): number {
  return priceAt(low, high, costs.pricePosition);
}

/** Where prices come from, for steps. */
export const INVENTED =
  'catalogue prices are invented, typical, in EUR, and never a quote; the file’s own under prices: go first';

/** `parts of the cabinet, EUR` */
export const inMoney = (title: string, { currency }: Cabinet): string => `${title}, ${currency}`;
