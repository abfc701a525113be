// Finding one's way among the parts of a cabinet: which path is an exhaust, which serves a bay, what stands in it.

import type { Cabinet, CabinetPath, PathPart } from '../cabinet/cabinet.ts';

export type FanPart = Extract<PathPart, { part: 'fan' }>;

export const OUTSIDE: readonly string[] = ['room', 'outdoors'];

export function fansIn({ parts }: CabinetPath): FanPart[] {
  return parts.filter((part): part is FanPart => part.part === 'fan');
}

export function hasFilter({ parts }: CabinetPath): boolean {
  return parts.some(({ part }) => part === 'filter' || part === 'carbon');
}

export function hasMuffler({ parts }: CabinetPath): boolean {
  return parts.some((part) => part.part === 'loss' && part.muffler !== undefined);
}

export function turnsAirRound({ from, to }: CabinetPath): boolean {
  return from === to;
}

/** Ids of paths that lead out of the cabinet with a fan. */
export function exhaustsOf({ paths }: Cabinet): string[] {
  return idsWhere(
    paths,
    (path) => OUTSIDE.includes(path.to) && !OUTSIDE.includes(path.from) && fansIn(path).length > 0,
  );
}

/** Ids of paths that lead into the cabinet, with or without a fan. */
export function intakesOf({ paths }: Cabinet): string[] {
  return idsWhere(paths, (path) => OUTSIDE.includes(path.from) && !OUTSIDE.includes(path.to));
}

/** Bays that air can pass to and from this one inside the cabinet, itself first. */
export function connectedBays({ paths }: Cabinet, bay: string): string[] {
  const reached = [bay];
  for (const here of reached) {
    for (const { from, to } of Object.values(paths)) {
      for (const next of from === here ? [to] : to === here ? [from] : [])
        if (!reached.includes(next) && !OUTSIDE.includes(next)) reached.push(next);
    }
  }
  return reached;
}

/** The bay of an end of a path: itself, or that of the machine whose chamber it is. */
export function bayOfEnd({ machines, bays }: Cabinet, end: string): string | undefined {
  return Object.hasOwn(bays, end) ? end : machines[end.replace(/\.chamber$/, '')]?.bay;
}

export function machinesIn({ machines }: Cabinet, bay: string): string[] {
  return Object.keys(machines).filter((id) => machines[id]!.bay === bay);
}

function idsWhere(paths: Cabinet['paths'], is: (path: CabinetPath) => boolean): string[] {
  return Object.keys(paths).filter((id) => is(paths[id]!));
}
