// Where machines stand in their bay: where the file says, else side by side with equal room on all sides.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import { machineParts, movedTo, type Part, reachOf, type Side } from './machine-solids.ts';
import { machinesIn } from './plant.ts';

/** Air between anything hot or moving and whatever stands still, m. */
export const MACHINE_GAP = 0.02;
/** Above the highest point that moves, m. */
export const GAP_ABOVE = 0.05;
/** A plug and its cord have their room in their own length. */
export const PLUG_GAP = 0;

export interface StandingMachine {
  readonly id: string;
  readonly parts: readonly Part[];
  /** Middle of the frame from the left front corner of the bay. */
  readonly at: readonly [number, number];
  readonly placed: boolean;
}

/** Clear inside of a bay: width, from the shut door to the back, height; less what the carcass is smaller than written. */
export interface ClearBay {
  readonly width: number;
  /** Where the shut door or what stands in from it ends. */
  readonly front: number;
  readonly back: number;
  readonly height: number;
}

export function clearBay(cabinet: Cabinet, bay: string): ClearBay {
  const { x, z } = cabinet.bays[bay]!;
  const { tolerance, doors } = cabinet.fit;
  const fronts = Object.entries(cabinet.doors).filter(([, door]) => door.face === 'front' && door.bays.includes(bay));
  return {
    width: x[1] - x[0] - tolerance,
    front: Math.max(0, ...fronts.map(([id]) => doors[id]?.standsIn ?? 0)),
    back: cabinet.inside.depth - tolerance,
    height: z[1] - z[0] - tolerance,
  };
}

/** Air that a part wants on one side. */
function airOf({ limits }: Cabinet, { air }: Part, side: Side): number {
  if (air === 'plug' || air === 'lid') return limits['plug-gap'] ?? PLUG_GAP;
  return air === 'arch' && side === 'top' ? (limits['gap-above'] ?? GAP_ABOVE) : (limits['machine-gap'] ?? MACHINE_GAP);
}

/** How much room the parts want on one side of the middle of the frame, their air included. */
export function wanted(cabinet: Cabinet, parts: readonly Part[], side: Side): number {
  return parts.reduce((most, part) => Math.max(most, reachOf(part, side) + airOf(cabinet, part, side)), -Infinity);
}

/** What makes a part come nearest to its limit on one side, and how near. */
export function spareOf(cabinet: Cabinet, part: Part, side: Side, gap: number): number {
  return gap - airOf(cabinet, part, side);
}

/** Several questions are asked of the same machines of one cabinet. */
export const standingIn: (cabinet: Cabinet, bay: string) => readonly StandingMachine[] =
  restingOnParts(machinesStanding);

function machinesStanding(cabinet: Cabinet, bay: string): readonly StandingMachine[] {
  const ids = machinesIn(cabinet, bay);
  const clear = clearBay(cabinet, bay);
  const all = ids.map((id) => {
    const parts = machineParts(cabinet, id);
    const want = (side: Side): number => wanted(cabinet, parts, side);
    return {
      id,
      parts,
      placed: cabinet.fit.machines[id]!.placed,
      at: cabinet.machines[id]!.at,
      left: want('left'),
      right: want('right'),
      front: want('front'),
      back: want('back'),
    };
  });
  const free = all.filter(({ placed }) => !placed);
  const spare = (clear.width - free.reduce((sum, { left, right }) => sum + left + right, 0)) / (free.length + 1);
  let from = 0;
  return all.map(({ id, parts, placed, at, left, right, front, back }) => {
    if (placed) return { id, parts, placed, at };
    const x = from + spare + left;
    from = x + right;
    return { id, parts, placed, at: [x, (clear.front + front + clear.back - back) / 2] as const };
  });
}

/** Everything of every machine of a bay, where it is in each of its positions. */
export function sweptMachines(cabinet: Cabinet, bay: string): { readonly machine: string; readonly part: Part }[] {
  return standingIn(cabinet, bay).flatMap(({ id, parts, at }) =>
    parts.map((part) => ({ machine: id, part: movedTo(part, at) })),
  );
}
