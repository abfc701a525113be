// Everything else that has a place in or at the cabinet: tools, waste, cables, adapters, printed brackets, mounts, extinguisher.
// Plain data, SI. What the file does not say is absent: the fittings trade then says which key is missing.

import type { Size } from './cabinet.ts';

export type FittingWhat =
  | 'tools'
  | 'bin'
  | 'strip'
  | 'adapter'
  | 'bracket'
  | 'cable channel'
  | 'sensor mount'
  | 'camera mount'
  | 'extinguisher'
  | 'other';

export interface CableRun {
  /** Over its sheath. */
  readonly diameter: number;
  readonly count: number;
  /** It moves while the machine works. */
  readonly moved: boolean;
  /** Tightest bend on its way, inner radius; absent when nobody measured it. */
  readonly bend?: number;
}

/** An arm clamped at one end that holds a camera at the other. */
export interface CameraArm {
  readonly length: number;
  /** Of its section: across, and in the direction in which it is shaken. */
  readonly width: number;
  readonly thickness: number;
  /** Mass of the camera, kg. */
  readonly load: number;
  /** Half the way of the machine's shaking where the arm is clamped, m, and its frequency, 1/s. */
  readonly shake: number;
  readonly frequency: number;
  /** From the lens to the print. */
  readonly distance: number;
  /** Width of what the picture shows at the print, and its pixels across. */
  readonly sees: number;
  readonly pixels: number;
}

export interface FittingPart {
  readonly what: FittingWhat;
  /** A bay, or the room. */
  readonly where: string;
  /** Its centre, from the left front lower corner of the bay. */
  readonly at?: readonly [number, number, number];
  readonly size?: Size;
  /** kg, of itself and of what hangs on it. */
  readonly mass?: number;
  readonly load?: number;
  /** What it is printed of. */
  readonly material?: string;
  /** From the nearest hot bed. */
  readonly fromBed?: number;
  /** A hand must get there: to use it, or to clean. */
  readonly reached: boolean;
  readonly cables: Readonly<Record<string, CableRun>>;
  readonly sockets?: number;
  /** Distance of sockets along the strip. */
  readonly pitch?: number;
  /** The strip that an adapter sits on. */
  readonly on?: string;
  /** The camera that a mount holds. */
  readonly holds?: string;
  readonly arm?: CameraArm;
  readonly agent?: string;
}

export type Fittings = Readonly<Record<string, FittingPart>>;
