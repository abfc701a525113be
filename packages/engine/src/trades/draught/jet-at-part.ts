// The speed that a jet has where it reaches a part, per metre a second in its opening.

import {
  ROUND_JET_DECAY,
  roundJetCore,
  roundJetVelocity,
  SLOT_JET_DECAY,
  slotJetVelocity,
  WALL_JET_FACTOR,
} from '@stillair/physics';
import { alongAndBeside, type Opening, type Target } from './openings.ts';

/** Distance from the axis at which a round jet has half its axis speed, per metre of its length; 0.085 to 0.10 (Rajaratnam 1976, from memory). */
const ROUND_SPREAD = 0.094;
/** The same for a slot's jet. */
const SLOT_SPREAD = 0.11;

export interface JetReach {
  /** Speed at the part over that in the opening, 0 to 1. */
  readonly share: number;
  /** The part lies within the core: the jet has not slowed at all. */
  readonly inCore: boolean;
  /** From the opening to the part, along and beside the jet, m. */
  readonly along: number;
  readonly beside: number;
  /** The bed lies between opening and part. */
  readonly shielded: boolean;
}

/** A jet straight into the bay, or along the wall in which it enters; `away` reaches nothing. */
export function jetAtPart(opening: Opening, blows: 'in' | 'wall' | 'away', target: Target): JetReach {
  const straight = alongAndBeside(target, opening);
  const shielded = blows === 'in' && liesUnder(opening, target.bed);
  const none = { share: 0, inCore: false, along: straight?.along ?? 0, beside: straight?.beside ?? 0, shielded };
  if (blows === 'away' || straight === undefined || shielded) return none;
  // Along a wall the jet runs in the wall's plane: what was beside is along it, and the distance from the wall lies beside.
  const { along, beside } = blows === 'in' ? straight : { along: straight.beside, beside: straight.along };
  const wall = blows === 'wall' ? WALL_JET_FACTOR : 1;
  const diameter = Math.sqrt((4 * opening.area) / Math.PI);
  const [axis, half, inCore] =
    opening.slot === undefined
      ? [
          roundJetVelocity(1, diameter, along, wall * ROUND_JET_DECAY.central),
          Math.max(diameter / 2, ROUND_SPREAD * along),
          along <= roundJetCore(diameter, wall * ROUND_JET_DECAY.central),
        ]
      : [
          slotJetVelocity(1, opening.slot, along, wall * SLOT_JET_DECAY.central),
          Math.max(opening.slot / 2, SLOT_SPREAD * along),
          false,
        ];
  const share = axis * Math.exp(-Math.LN2 * (beside / half) ** 2);
  return { share, inCore: inCore && beside <= half, along, beside, shielded };
}

/** A jet that comes up from below a bed. */
function liesUnder({ place, inward }: Opening, { low, high }: Target['bed']): boolean {
  return inward[2] > 0 && [0, 1].every((axis) => place[axis]! >= low[axis]! && place[axis]! <= high[axis]!);
}
