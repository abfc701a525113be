// Spools and the way of the filament from them to the drive wheels. As written and as filled in.

import type { Given, Lengths } from './spec.ts';

type Maybe<T> = T | undefined;

export const holders = ['rod', 'bearing', 'rollers'] as const;
export const guides = ['tube', 'printed', 'open'] as const;

/** A plain rod through the hub, a hub on ball bearings, or rollers under the rim. */
export type Holder = (typeof holders)[number];
/** A tube of low friction, printed guides, or no guide at all. */
export type Guide = (typeof guides)[number];

export interface DriveSpec {
  readonly pull?: Given;
  readonly push?: Given;
  readonly gap?: Given;
  readonly filament?: Given;
}

export interface WaySpec {
  readonly bends?: Given;
  readonly guide?: Maybe<Guide>;
  readonly friction?: Given;
  readonly radius?: Given;
  readonly unwinding?: Given;
}

export interface SpoolSpec {
  readonly machine?: Maybe<string>;
  readonly material: string;
  readonly mass?: Given;
  readonly empty?: Given;
  readonly size?: Maybe<Lengths>;
  readonly where?: Maybe<string>;
  readonly holder?: Maybe<Holder>;
  readonly path?: Maybe<WaySpec>;
  readonly temperature?: Given;
  readonly humidity?: Given;
}

/** The wheels that pull filament off its spool and push it into the nozzle. */
export interface Drive {
  /** Pull that it bears before the filament without slipping or thinning, N. */
  readonly pull: number;
  /** Push that the nozzle asks for, N. */
  readonly push: number;
  /** Unsupported length below the wheels, m. */
  readonly gap: number;
  /** Diameter of the filament, m. */
  readonly filament: number;
}

/** The filament's way from the spool to the wheels. */
export interface Way {
  /** All bends added up, rad. */
  readonly bends: number;
  readonly guide: Guide;
  /** Of filament on guide. */
  readonly friction: number;
  /** Smallest radius of a bend, m. */
  readonly radius: number;
  /** Pull that unwinding takes on a spool that turns freely, N. */
  readonly unwinding: number;
}

export interface SpoolPart {
  readonly machine: string;
  readonly material: string;
  /** Filament on it, kg. */
  readonly mass: number;
  /** Without filament, kg. */
  readonly empty: number;
  readonly diameter: number;
  readonly width: number;
  /** A bay, outside, or a drier of `heats`. */
  readonly where: string;
  readonly holder: Holder;
  readonly path: Way;
  /** The file has it, so that it hangs there every day; what is assumed hangs there while its machine prints from it. */
  readonly written: boolean;
  /** Air around it, when it is in a drier or dry box whose air is known, K and 0…1. */
  readonly temperature?: number;
  readonly humidity?: number;
}
