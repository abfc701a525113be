// When the protection of the file acts on a day as it was run: what feels heat, by the air where it sits. Nothing here follows
// what a trip then changes: the run goes on as if nothing had acted, and what comes after the trip is what it keeps away.

import { heatDetectors, LINK_TOLERANCE } from '@stillair/physics';
import type { ChainDevice, Protection } from '../cabinet/protection.ts';
import { temperatureOf } from '../trades/air-ways.ts';
import { firstReaching } from '../trades/course.ts';
import type { DayRun } from '../trades/measure.ts';
import type { FaultKind } from './fault.ts';

const CELSIUS = 273.15;

export interface Trip {
  /** Id in `protection:`. */
  readonly device: string;
  readonly what: string;
  /** It opens the circuit, or it only makes itself heard. */
  readonly does: 'cuts' | 'tells';
  /** Between the earliest and the latest, s: devices scatter. The latest is absent when it may not act at all. */
  readonly earliest: number;
  readonly latest?: number;
}

/** What acts by heat on this day, each once. */
export function tripsOn(run: DayRun): Trip[] {
  const { chain = {}, detectors = {} } = run.cabinet.protection;
  const relay = Object.values(chain).some(({ what }) => what === 'heat relay');
  return [
    ...Object.entries(chain).flatMap(([id, device]) => ofDevice(run, id, device)),
    ...Object.entries(detectors).flatMap(([id, { what, where, heatClass }]) => {
      if (what !== 'heat' || heatClass === undefined || run.assembly.bays[where] === undefined) return [];
      const { answersFrom, answersTo } = heatDetectors[heatClass];
      const does = relay ? 'cuts' : 'tells';
      return trip(run, where, CELSIUS + answersFrom, CELSIUS + answersTo, {
        device: id,
        what: `heat detector ${heatClass}`,
        does,
      });
    }),
  ];
}

function ofDevice(run: DayRun, device: string, { what, opensAt, bay: named }: ChainDevice): Trip[] {
  const bays = Object.keys(run.cabinet.bays);
  const bay = named ?? (bays.length === 1 ? bays[0] : undefined);
  if (opensAt === undefined || bay === undefined) return [];
  const scatter = what === 'thermal link' ? LINK_TOLERANCE : 0;
  return trip(run, bay, opensAt - scatter, opensAt, { device, what, does: 'cuts' });
}

function trip(
  run: DayRun,
  bay: string,
  from: number,
  to: number,
  known: Pick<Trip, 'device' | 'what' | 'does'>,
): Trip[] {
  const top = temperatureOf(run, run.assembly.bays[bay]!.zones.at(-1)!);
  const earliest = firstReaching(top, from, 'below');
  const latest = firstReaching(top, to, 'below');
  return earliest === undefined ? [] : [{ ...known, earliest, ...(latest === undefined ? {} : { latest }) }];
}

/** What acts without any heat: the switch on a door that stands open. */
export function tripsAtOnce({ chain = {} }: Protection, kind: FaultKind): Trip[] {
  if (kind !== 'door ajar' && kind !== 'door left open') return [];
  return Object.entries(chain).flatMap(([device, { what }]) =>
    what === 'door switch' ? [{ device, what, does: 'cuts' as const, earliest: 0, latest: 0 }] : [],
  );
}
