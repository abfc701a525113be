// Of which filament a part is printed: the first that bears the hottest air of its bay with some room to spare.

import { creepLimit, printedMaterials } from '@stillair/physics';
import type { Finding } from '../../judge/finding.ts';
import { formatQuantity } from '../../units/format.ts';

/** In the order of their glass transitions. PLA is left out: a closed cabinet in summer is too near to where it creeps. */
const CHOICES = ['PETG', 'ABS', 'ASA', 'PC'] as const;
/** Room to spare below where it creeps, K. */
const SPARE = 5;

export interface Choice {
  /** Absent where nothing is known of the air there, or nothing bears it. */
  readonly material?: (typeof CHOICES)[number];
  readonly because: string;
}

/** By the findings on what printed brackets meet in each bay: the upper end of the band of the hottest day. */
export function materialFor(bay: string | undefined, findings: readonly Finding[]): Choice {
  const temperatures = findings
    .filter(({ trade, quantity, part }) => trade === 'fittings' && quantity === 'bracket-air' && part === bay)
    .flatMap(({ value, p90 }) => p90 ?? value ?? []);
  if (bay === undefined || temperatures.length === 0)
    return { because: 'how hot the air gets there is not known: take ASA, and look after the first hot day' };
  const hottest = Math.max(...temperatures);
  const material = CHOICES.find((name) => creepLimit(printedMaterials[name].glassTransition) >= hottest + SPARE);
  const words = `air of ${bay} up to ${formatQuantity('temperature', hottest)} (90 % of the samples of its hottest day)`;
  return material === undefined
    ? { because: `${words}: no filament of the list bears it under load; take metal` }
    : {
        material,
        because: `${words}; ${material} creeps from ${formatQuantity('temperature', creepLimit(printedMaterials[material].glassTransition))}`,
      };
}
