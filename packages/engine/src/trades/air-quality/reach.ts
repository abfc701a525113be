// How much of what the day's prints give off reaches the room, and by which way.

import { causes } from '../causes.ts';
import type { DayRun, Measure, Remedy, Step } from '../measure.ts';
import { hasFilter } from '../plant.ts';
import { printsOf } from '../prints.ts';
import { weightedColumn, windowWeights } from '../product-weights.ts';
import { cleanerAir } from '../remedies.ts';
import { concentrationUnit, contaminantKey, contaminantWords, familyOf } from './contaminants.ts';
import { emittedOf, type Release } from './emitted.ts';
import { intoRoom, type Ways } from './ways.ts';

export function reach(run: DayRun, releases: readonly Release[], ways: ReadonlyMap<string, Ways>): Measure[] {
  return [...ways].map(([contaminant, by]) => {
    const emitted = emittedOf(releases, contaminant);
    const share = (amount: number): number => amount / emitted;
    const told = intoRoom(by) + by.outdoors + by.caught + by.deposited;
    const step = (text: string, amount: number): Step[] =>
      Math.abs(share(amount)) < 5e-4 ? [] : [{ text, value: share(amount), unit: 'share' }];
    const boxed = Object.values(run.cabinet.paths).some((path) => hasFilter(path) || path.to === 'outdoors');
    return {
      trade: 'air-quality',
      quantity: `reaches-room-${contaminantKey(contaminant)}`,
      part: 'cabinet',
      title: `share of the ${contaminantWords(contaminant)} given off that reaches the room`,
      value: Math.max(share(intoRoom(by)), 1e-9),
      unit: 'share',
      logarithmic: true,
      get steps(): readonly Step[] {
        return [
          ...step('through the filtered exhaust', by.filteredExhaust),
          ...step('through open or unfiltered paths', by.openPaths),
          ...step('through gaps past the filter, fans running', by.leaksFansOn),
          ...step('through gaps, fans at rest: warm air rises and draws', by.leaksFansOff),
          ...step('with the door open', by.doors),
          ...step('outdoors', by.outdoors),
          ...step('caught by filters and carbon', by.caught),
          ...step('settled inside the cabinet', by.deposited),
          ...step('still in the cabinet’s air, or grown together with others', emitted - told),
          ...(boxed
            ? []
            : [{ text: 'an unfiltered box only delays: in the long run the room’s mean is that of an open machine' }]),
        ];
      },
      get remedies(): readonly Remedy[] {
        return cleanerAir(run.cabinet, familyOf(contaminant));
      },
      cause: causes.leaksOut,
      weight: 0.3,
      better: 'lower',
      compared: contaminantKey(contaminant) === 'particles' || contaminantKey(contaminant) === 'tvoc',
    } satisfies Measure;
  });
}

/** What a person breathes who puts their head into the bay: its mean while printing. */
export function bayLevels(run: DayRun, releases: readonly Release[]): Measure[] {
  const emitted = [...new Set(releases.map(({ contaminant }) => contaminant))];
  return Object.keys(run.cabinet.bays).flatMap((bay) => {
    const prints = printsOf(run).filter(({ machine }) => machine.bay === bay);
    if (prints.length === 0) return [];
    const here = new Set(prints.map(({ machineId }) => machineId));
    const own = emitted.filter((contaminant) =>
      releases.some((release) => release.contaminant === contaminant && here.has(release.machine)),
    );
    const time = prints.reduce((sum, { start, end }) => sum + end - start, 0);
    const printing = windowWeights(run.record.times, prints, run.record.concentrationSlopes === undefined);
    const { zones, volumes } = run.assembly.bays[bay]!;
    const volume = volumes.reduce((sum, each) => sum + each, 0);
    return own.map((contaminant) => {
      const table = run.record.concentrations[contaminant]!;
      const slopes = run.record.concentrationSlopes?.[contaminant];
      const amount = zones.reduce(
        (sum, zone, at) => sum + volumes[at]! * weightedColumn(printing, table, slopes, zone),
        0,
      );
      return {
        trade: 'air-quality',
        quantity: `bay-${contaminantKey(contaminant)}`,
        part: bay,
        title: `${contaminantWords(contaminant)} in the bay, mean while printing`,
        value: amount / volume / time,
        unit: concentrationUnit(contaminant),
        logarithmic: true,
        get steps(): readonly Step[] {
          return [{ text: 'printing in this bay', value: time, unit: 'duration' }];
        },
        remedies: [],
        weight: 0.1,
        better: 'lower',
      } satisfies Measure;
    });
  });
}
