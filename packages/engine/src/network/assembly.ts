// The network that one cabinet becomes on one of its days, with the names by which its parts are found again in the record.

import type { Network } from './network.ts';

export interface BayPlaces {
  /** Zones from low to high; one or two. */
  readonly zones: readonly string[];
  /** Height of the border between two zones above the cabinet's inside floor, m; the bay's top when it has one zone. */
  readonly split: number;
  /** Air volume of each zone, m³. */
  readonly volumes: readonly number[];
}

export interface SurfacePlace {
  /** Node whose temperature the surface has. */
  readonly node: string;
  /** Zone of the air it looks at. */
  readonly zone: string;
  readonly bay: string;
  /** `faces.back`, `doors.front`, `partitions.0`. */
  readonly part: string;
  readonly area: number;
}

export interface MachinePlaces {
  /** Zone of the air around the bed: the bay's low or high zone, or the machine's own chamber. */
  readonly printAir: string;
  /** Zones of the air around the frame and, when inside, the electronics. */
  readonly frameAir: string;
  readonly electronicsAir: string;
  readonly bed: string;
  readonly frame: string;
  /** Name of the convection link at the bed's top (its surface node): the heat that drives the plume. */
  readonly chamber?: string;
}

export interface PathPlaces {
  /** Air path of the network, or recirculation when the path turns a bay's own air round. */
  readonly kind: 'path' | 'recirculation';
  readonly name: string;
  /** Paths of the network that it became: more than one for a hole across the border of low and high air. None when turned round. */
  readonly pieces?: readonly string[];
  readonly fans: readonly string[];
  /** Recirculations run at their own operating point, m³/s. */
  readonly flow?: number;
  /** Efficiency of all its stages together, by contaminant, as built (with seat bypass). */
  readonly efficiency: Readonly<Record<string, number>>;
}

export interface LeakPlace {
  readonly name: string;
  readonly bay: string;
  /** `doors.front` or `faces.back`. */
  readonly part: string;
  readonly z: number;
}

/** How one number of the network came from numbers of the cabinet. */
export interface Derivation {
  /** What was derived: `leak of doors.front`. */
  readonly what: string;
  readonly text: string;
  readonly value: number;
  /** Unit kind of engine/units. */
  readonly unit: string;
  readonly source: string;
  /** Paths into the cabinet. */
  readonly inputs: readonly string[];
}

export interface Assembly {
  readonly network: Network;
  readonly day: string;
  readonly room: 'room';
  readonly outdoors: 'outdoors';
  readonly bays: Readonly<Record<string, BayPlaces>>;
  readonly machines: Readonly<Record<string, MachinePlaces>>;
  readonly paths: Readonly<Record<string, PathPlaces>>;
  readonly leaks: readonly LeakPlace[];
  readonly surfaces: readonly SurfacePlace[];
  readonly derivations: readonly Derivation[];
  /** Registered overrides that this day used, by their paths in `cabinet.overrides`. */
  readonly overridesUsed: readonly string[];
}
