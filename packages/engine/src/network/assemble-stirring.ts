// Fans that stir a bay's air: whatever lies along that air gives it, or takes from it, more heat than natural convection does.

import { stirredSpeed, streamFilm } from '@stillair/physics';
import type { Bay, Cabinet, CabinetPath, Day } from '../cabinet/cabinet.ts';
import type { BayPlaces, MachinePlaces } from './assembly.ts';
import type { Draft } from './draft.ts';
import { printingOf } from './machine-faults.ts';
import type { Convection, Fan } from './network.ts';
import { outletArea } from './section-area.ts';

/** What a machine's fans for parts and board do to the films around it, W/(m²K): from memory; all fans are said to add 2 to 5. */
const MACHINE_FANS = 1.5;
/** Air along a bay's boards is about this warm, K. */
const BAY_AIR = 305;

/** Something that moves the air of zones while it runs. */
interface Stirrer {
  readonly zones: readonly string[];
  readonly active: Fan['control'];
  readonly fan?: string;
  /** W/(m²K) along a surface of this length, m. */
  readonly film: (length: number) => number;
}

/** To be called when all convections are there. Beds are left out: their own film is three times a board's and hardly rises. */
export function assembleStirring(
  draft: Draft,
  cabinet: Cabinet,
  day: Day,
  bays: Readonly<Record<string, BayPlaces>>,
  machines: Readonly<Record<string, MachinePlaces>>,
): void {
  const printing = new Set(draft.schedule.map(({ machine }) => machine));
  const stirrers = [
    ...draft.jets.map(({ bay, speed, active, fan }) => ({
      zones: bays[bay]!.zones,
      active,
      ...(fan === undefined ? {} : { fan }),
      film: (length: number) => streamFilm(speed, length, BAY_AIR),
    })),
    ...Object.entries(machines)
      .filter(([id]) => printing.has(id))
      .map(([id, { chamber }]) => ({
        zones: chamber === undefined ? bays[cabinet.machines[id]!.bay]!.zones : [chamber],
        active: printingOf(id, day),
        film: () => MACHINE_FANS,
      })),
  ];
  const beds = new Set(Object.values(machines).map(({ bed }) => bed));
  draft.convections.splice(
    0,
    Infinity,
    ...draft.convections.map((link) => (beds.has(link.surface) ? link : stirred(link, stirrers))),
  );
}

function stirred(link: Convection, stirrers: readonly Stirrer[]): Convection {
  const length = link.faces === 'vertical' ? link.length : Math.sqrt(link.area);
  const forced = stirrers
    .filter(({ zones }) => zones.includes(link.air))
    .map(({ active, fan, film }) => ({
      film: link.factor * film(length),
      active,
      ...(fan === undefined ? {} : { fan }),
    }));
  return { ...link, forced: [...link.forced, ...forced] };
}

/** Speed of the air along a bay's boards, m/s, while a fan's path blows into it at a flow, m³/s. */
export function speedAlongBoards({ parts, place }: CabinetPath, flow: number, bay: Bay, depth: number): number {
  const outlet = parts.map(outletArea).findLast((area) => area !== undefined);
  if (outlet === undefined) return 0;
  const [width, height] = [bay.x[1] - bay.x[0], bay.z[1] - bay.z[0]];
  const across = {
    front: width * height,
    back: width * height,
    left: depth * height,
    right: depth * height,
    top: width * depth,
    bottom: width * depth,
  }[place.face];
  return stirredSpeed(flow, flow / outlet, across);
}
