// The balances of a day, kept step by step when asked for.

import type { Day } from './day.ts';
import {
  bookContaminants,
  type ContaminantBook,
  contaminantSums,
  observeContaminants,
  openContaminantBook,
  storedAmount,
} from './ledger-contaminants.ts';
import { bookHeat, type HeatBook, heatSums, observeHeat, openHeatBook, storedHeat } from './ledger-heat.ts';
import type { Ledger } from './record.ts';
import type { Step } from './step.ts';

export interface Books {
  readonly heat: HeatBook;
  readonly contaminants: ContaminantBook;
  airClosure: number;
}

/** Opens the books at the day's start; the step then reports its stages to them. */
export function openBooks(day: Day, step: Step): Books {
  const books: Books = { heat: openHeatBook(day, step), contaminants: openContaminantBook(day, step), airClosure: 0 };
  step.observe = (stage, y, c, time) => {
    observeHeat(day, books.heat, stage, y, time);
    if (day.plant.transport.count > 0) observeContaminants(day, books.contaminants, stage, c, time);
  };
  return books;
}

/** Books an accepted step; the day still stands at its start, the flows are those of its end. */
export function bookStep(day: Day, step: Step, books: Books, length: number): void {
  bookHeat(day, step, books.heat, length);
  if (day.plant.transport.count > 0) bookContaminants(day, step, books.contaminants, length);
  books.airClosure = Math.max(books.airClosure, airImbalance(day));
}

/** Largest net flow of a solved zone as a share of the largest path flow. */
function airImbalance({ plant, air }: Day): number {
  const net = new Float64Array(plant.air.zoneCount);
  let largest = 0;
  for (let p = 0; p < plant.air.pathCount; p += 1) {
    const flow = air.flow[p]!;
    net[plant.air.from[p]!] = net[plant.air.from[p]!]! - flow;
    net[plant.air.to[p]!] = net[plant.air.to[p]!]! + flow;
    largest = Math.max(largest, Math.abs(flow));
  }
  let worst = 0;
  for (let z = 0; z < net.length; z += 1)
    if (plant.air.fixedPressure[z] === 0) worst = Math.max(worst, Math.abs(net[z]!));
  return largest === 0 ? 0 : worst / largest;
}

export function closeBooks(day: Day, books: Books): Ledger {
  const stored = storedHeat(day) - books.heat.start;
  const { sources, beds, conducted, carriedByAir, moved } = heatSums(books.heat, day.broughtToSet);
  const gap = stored - sources - beds + conducted + carriedByAir;
  return {
    heat: { stored, sources, beds, conducted, carriedByAir, closure: moved === 0 ? 0 : gap / moved },
    airClosure: books.airClosure,
    contaminants: day.plant.network.contaminants.map(({ name }, k) => {
      const sums = contaminantSums(books.contaminants, k);
      const kept = storedAmount(day, k) - books.contaminants.start[k]!;
      const { emitted, deposited, coagulated, filtered, toBoundary } = sums;
      const miss = kept - emitted + deposited + coagulated + filtered + toBoundary;
      return {
        contaminant: name,
        stored: kept,
        emitted,
        deposited,
        coagulated,
        filtered,
        toBoundary,
        closure: sums.moved === 0 ? 0 : miss / sums.moved,
      };
    }),
  };
}
