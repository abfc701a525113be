// What one print costs, piece by piece, and what a day does: the sums behind the findings about running, without their words.

import { printCost } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { within } from '../course.ts';
import { cabinetPower, powerOf } from '../draws.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import type { Print } from '../prints.ts';
import { costOf } from '../tariff.ts';
import { middleOf } from './money.ts';

/** Money, all of one print that does not fail but for `failures`, which is what those that do add to it. */
export interface PrintPieces {
  /** A kilogram of its filament. */
  readonly kilogram: number;
  /** Filament of the part itself, and what is wasted beyond it. */
  readonly filament: number;
  readonly waste: number;
  /** Electricity of its machine during the job, as simulated. */
  readonly own: number;
  /** Its share of the day's standby, fans and lamps. */
  readonly shared: number;
  readonly wear: number;
  /** The machine growing old; absent where nobody said its price. */
  readonly ageing?: number;
  readonly filters: number;
  readonly failures: number;
  readonly total: number;
}

/** Money for each second during which anything prints: particle filters and carbon by their lives. */
export function filterRate(cabinet: Cabinet): number {
  const { paths, prices, costs } = cabinet;
  return Object.entries(paths).reduce(
    (sum, [id, { parts }]) =>
      sum +
      parts.reduce((of, { part }, at) => {
        const price = prices[`paths.${id}.parts.${at}`];
        if (price === undefined || (part !== 'filter' && part !== 'carbon')) return of;
        return of + middleOf(cabinet, price) / (part === 'filter' ? costs.filterLife : costs.carbonLife);
      }, 0),
    0,
  );
}

/** Time during which at least one machine prints, s. */
export function busyTime(prints: readonly Print[]): number {
  const sorted = [...prints].sort((a, b) => a.start - b.start);
  let [sum, until] = [0, Number.NEGATIVE_INFINITY];
  for (const { start, end } of sorted) {
    sum += Math.max(end - Math.max(start, until), 0);
    until = Math.max(until, end);
  }
  return sum;
}

/** Electricity of the whole day, money. */
export function electricity(run: DayRun): number {
  return keptWith(run, 'electricity:', () => costOf(cabinetPower(run), run.cabinet.power.tariff));
}

/** Of a print's machine while it prints, money. */
function jobElectricity(run: DayRun, { part, machineId, start, end }: Print): number {
  return keptWith(run, `electricity of:${part}`, () =>
    costOf(within(powerOf(run, machineId), start, end), run.cabinet.power.tariff),
  );
}

/** Undefined when nobody said what its filament costs. */
export function piecesOf(run: DayRun, prints: readonly Print[], print: Print): PrintPieces | undefined {
  const { cabinet } = run;
  const { costs, prices } = cabinet;
  const { job, machineId, start, end } = print;
  const price = costs.filament[job.material];
  if (price === undefined) return undefined;
  const duration = end - start;
  const share = duration / prints.reduce((sum, other) => sum + other.end - other.start, 0);
  const own = jobElectricity(run, print);
  const others = Math.max(electricity(run) - prints.reduce((sum, one) => sum + jobElectricity(run, one), 0), 0);
  const filters = filterRate(cabinet) * busyTime(prints) * share;
  const machine = prices[`machines.${machineId}`];
  const ageing = machine === undefined ? undefined : (middleOf(cabinet, machine) / costs.machineLife) * duration;
  const kilogram = middleOf(cabinet, price);
  const cost = printCost({
    mass: job.mass,
    filamentPrice: kilogram,
    waste: costs.waste,
    failures: costs.failures,
    electricity: own + others * share,
    duration,
    perSecond: costs.wear + ((ageing ?? 0) + filters) / duration,
  });
  return {
    kilogram,
    filament: job.mass * kilogram,
    waste: cost.filament - job.mass * kilogram,
    own,
    shared: others * share,
    wear: costs.wear * duration,
    ...(ageing === undefined ? {} : { ageing }),
    filters,
    failures: cost.failures,
    total: cost.total,
  };
}
