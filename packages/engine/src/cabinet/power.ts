// Electricity: where everything is plugged in, what feeds the low-voltage side, through which wires. As written and as filled in.

import type { Profile } from '../units/profile.ts';
import type { Quantity } from '../units/quantity.ts';
import type { Given } from './spec.ts';

type Maybe<T> = T | undefined;
type Named<T> = Readonly<Record<string, T>>;

export const regions = ['EU', 'UK', 'US', 'other'] as const;
export const breakerCurves = ['B', 'C', 'D'] as const;
export const plugs = ['plain', 'bulky'] as const;
export const insulations = ['PVC', 'rubber', 'XLPE', 'silicone'] as const;

/** Whose rules and usual values are taken. */
export type Region = (typeof regions)[number];
export type BreakerCurve = (typeof breakerCurves)[number];
/** A bulky plug, such as an adapter with its transformer in the plug, covers the socket beside its own. */
export type Plug = (typeof plugs)[number];
export type Insulation = (typeof insulations)[number];

/** Whatever is neither in a bay nor in a drier. */
export const OUTSIDE = 'outside';
export const WALL = 'wall';

export interface MainsSpec {
  readonly 'power-factor'?: Given;
  readonly inrush?: Given;
  readonly leakage?: Given;
  readonly plug?: Maybe<Plug>;
}

/** A cross-section, m², and the gauge that it was written as. */
export interface Conductor {
  readonly area: number;
  readonly gauge?: number;
}

export interface StripSpec {
  readonly sockets?: Maybe<number>;
  readonly rating?: Given;
  readonly where?: Maybe<string>;
  readonly from?: Maybe<string>;
  readonly feeds?: Maybe<readonly string[]>;
}

export interface SupplySpec extends MainsSpec {
  readonly voltage?: Given;
  readonly power?: Given;
  readonly efficiency?: Given;
  readonly where?: Maybe<string>;
  readonly feeds?: Maybe<readonly string[]>;
}

export interface WireSpec {
  readonly supply?: Maybe<string>;
  readonly feeds?: Maybe<readonly string[]>;
  readonly current?: Given;
  readonly section?: Maybe<Conductor>;
  readonly length?: Given;
  readonly insulation?: Maybe<Insulation>;
  readonly where?: Maybe<string>;
  readonly fuse?: Given;
  readonly 'fuse-at'?: Given;
}

export interface PowerSpec {
  readonly region?: Maybe<Region>;
  readonly voltage?: Given;
  readonly circuit?: Given;
  readonly breaker?: Maybe<BreakerCurve>;
  readonly rcd?: Given;
  readonly others?: Given;
  readonly stagger?: Given;
  readonly switched?: Maybe<'together' | 'one by one'>;
  readonly tariff?: Maybe<Quantity | Profile>;
  readonly strips?: Maybe<Named<StripSpec>>;
  readonly supplies?: Maybe<Named<SupplySpec>>;
  readonly wires?: Maybe<Named<WireSpec>>;
}

/** How a machine or a supply meets the mains. */
export interface Mains {
  /** Real over apparent power while it works, 0…1. */
  readonly powerFactor: number;
  /** Peak of the first half cycle from cold, A. */
  readonly inrush: number;
  /** Standing current to earth, A. */
  readonly leakage: number;
  readonly plug: Plug;
}

export interface Strip {
  readonly sockets: number;
  /** What is printed on it, A. */
  readonly rating: number;
  /** A bay, or outside. */
  readonly where: string;
  /** The wall, or another strip. */
  readonly from: string;
  /** Machines, sources of heat, supplies. */
  readonly feeds: readonly string[];
}

/** A plug-in or built-in supply of direct current. */
export interface Supply extends Mains {
  readonly voltage: number;
  /** Rated output, W. */
  readonly watts: number;
  readonly efficiency: number;
  readonly where: string;
  /** Air paths whose fans, and sources of heat, that it feeds. */
  readonly feeds: readonly string[];
}

export interface Wire {
  readonly supply: string;
  /** Air paths and sources of heat. */
  readonly feeds: readonly string[];
  /** Given current, A; absent: that of what it feeds. */
  readonly current?: number;
  /** m² */
  readonly section: number;
  /** American gauge, when it was given as one. */
  readonly gauge?: number;
  /** One way, m. */
  readonly length: number;
  readonly insulation: Insulation;
  readonly where: string;
  /** A; absent: not fused. */
  readonly fuse?: number;
  /** From the supply to the fuse along the wire, m. */
  readonly fuseAt: number;
}

export interface Power {
  readonly region: Region;
  readonly voltage: number;
  /** Rating of the circuit's breaker, A. */
  readonly circuit: number;
  readonly breaker: BreakerCurve;
  /** Multiple of its rating at which this very breaker's magnet acts, somewhere in the band of its curve; 0 where there are no curves. */
  readonly magnet: number;
  /** Trip current of the earth-fault device, A; 0: none. */
  readonly rcd: number;
  /** What else the circuit feeds, W. */
  readonly others: number;
  /** Time from one machine's heating to the next's, s; 0: no lock. */
  readonly stagger: number;
  readonly switched: 'together' | 'one by one';
  /** Price of a joule over the day, each from its time to the next one's. */
  readonly tariff: Profile;
  readonly strips: Named<Strip>;
  readonly supplies: Named<Supply>;
  readonly wires: Named<Wire>;
}
