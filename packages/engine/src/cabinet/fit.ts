// What fit is asked of: how each machine moves, how each door hangs, how true the carcass is.
// Plain data, metres.

import type { Size } from './cabinet.ts';

export type SpoolPlace = 'top' | 'left' | 'right' | 'back' | 'away';

/** What of a machine moves, hangs or sticks out, beside the frame that stands still. */
export interface Motion {
  /** The frame alone, its feet on the floor of the bay. */
  readonly frame: Size;
  /** Whole way of a bed that moves in depth; 0 when it stands still in plan. */
  readonly bedTravel: number;
  /** Middle of that way behind the middle of the frame; below 0 in front of it. */
  readonly bedOffset: number;
  /** Knob or clip before the plate's front edge. */
  readonly clipFront: number;
  /** Cable, strain relief and its bend behind the plate's rear edge. */
  readonly cableRear: number;
  /** How far carriage, motor or cable loop reach beyond the frame. */
  readonly carriageLeft: number;
  readonly carriageRight: number;
  /** Highest arch of guide tube and cable above the frame. */
  readonly tubeArch: number;
  readonly spool: SpoolPlace;
  /** The largest spool. */
  readonly spoolSize: { readonly diameter: number; readonly width: number };
  /** Axle and holder: lowest edge of the spool above the frame, or its distance from the frame at a side. */
  readonly spoolLift: number;
  /** Mains plug and the bend of its cord behind the frame. */
  readonly plug: number;
  /** The upper part comes off for service and leaves this height; 0 when it does not. */
  readonly withoutTop: number;
  /** Height of an own lid above the frame when it stands open; 0 when there is none. */
  readonly lid: number;
  /** The file says where the machine stands; else fit puts it where its motion has equal room on both sides. */
  readonly placed: boolean;
}

export type Hinge = 'left' | 'right' | 'top' | 'bottom' | 'slides' | 'lifts off';

export interface DoorHang {
  readonly hinge: Hinge;
  /** What hinge and open leaf take of the clear width. */
  readonly takes: number;
  /** How far leaf, stop or handle stand into the bay when it is shut. */
  readonly standsIn: number;
  /** What a rail, plinth or stop takes of the opening's height. */
  readonly lip: number;
  /** Free floor before the cabinet, when the file says it. */
  readonly before?: number;
}

export interface Fit {
  /** How much smaller than written the inside is, m; below 0 larger. Nominal 0, its spread is that of boards and saws. */
  readonly tolerance: number;
  readonly machines: Readonly<Record<string, Motion>>;
  readonly doors: Readonly<Record<string, DoorHang>>;
}
