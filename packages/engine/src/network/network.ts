// What a cabinet becomes before it is run: zones of air, solid nodes, heat links, air paths, machines, controls and
// contaminants, all in SI (kelvin, pascal, watt, kg/s, m³/s). A bare network file is read into the same shape.
// Laws beyond the bare file's strict subset are marked "opt-in": a network without their keys behaves as the subset says.

import type { Profile } from '../units/profile.ts';

export type { Profile } from '../units/profile.ts';

/** When something is on. Windows are half open: start ≤ t < end. */
export type When =
  | 'always'
  | { readonly windows: readonly (readonly [start: number, end: number])[] }
  | { readonly thermostat: string }
  /** In any mode but idle, or (opt-in) in one of the named modes. */
  | { readonly machine: string; readonly modes?: readonly string[] }
  /** Opt-in: combinations. */
  | { readonly anyOf: readonly When[] }
  | { readonly allOf: readonly When[] }
  | { readonly not: When };

export type DensityModel = { readonly model: 'ideal-gas' } | { readonly model: 'constant'; readonly value: number };

export interface Constants {
  readonly gravity: number;
  readonly atmosphere: number;
  readonly gasConstant: number;
  readonly heatCapacity: number;
  readonly referenceDensity: number;
  readonly stefanBoltzmann: number;
}

/** A volume of well mixed air. */
export interface Zone {
  readonly name: string;
  readonly temperature: /** A constant is a profile of one point (opt-in: more points). */
    | { readonly kind: 'fixed'; readonly profile: Profile }
    | { readonly kind: 'free'; readonly initial: number; readonly heatCapacity: number };
  /** Node pressure at `zRef`, relative to the network's datum, Pa. */
  readonly pressure: { readonly kind: 'fixed'; readonly value: number } | { readonly kind: 'solved' };
  readonly zRef: number;
  readonly volume: number;
  readonly concentrations: 'free' | 'fixed';
}

/** A lumped solid. Opt-in: heatCapacity 0 is not allowed; give surfaces a half slice of their wall instead. */
export interface SolidNode {
  readonly name: string;
  readonly heatCapacity: number;
  readonly initial: number;
}

/** Heat W = conductance·(Ta − Tb). `a` and `b` are zones or nodes. */
export interface Conductance {
  readonly a: string;
  readonly b: string;
  readonly conductance: number;
  /** Opt-in: the link exists only then (an open door, for example). */
  readonly active?: When;
}

export interface WallLayer {
  readonly thickness: number;
  readonly conductivity: number;
  readonly density: number;
  readonly heatCapacity: number;
  /** Number of equal slices. */
  readonly nodes: number;
}

/**
 * Layers from side `a` to side `b`; nodes are named NAME.1 … from side a.
 * `grid: 'middles'` (bare files): one node in the middle of each slice; film and half slice are in series to the air of a and b.
 * `grid: 'faces'` (opt-in): nodes at both surfaces and between slices (half capacities at the ends), so that NAME.1 and
 * NAME.n are surfaces on which convections and radiation act; then filmA and filmB must be absent and a, b are not linked.
 */
export interface Wall {
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly area: number;
  readonly layers: readonly WallLayer[];
  readonly filmA?: number;
  readonly filmB?: number;
  readonly grid: 'middles' | 'faces';
  readonly initial: number;
}

/** Opt-in. Convection between a surface node and air: h from natural convection by |ΔT|, raised by what stirs. */
export interface Convection {
  readonly surface: string;
  readonly air: string;
  readonly area: number;
  /** Which way the surface looks: a ceiling's inner face looks down. */
  readonly faces: 'vertical' | 'up' | 'down';
  /** Height of a vertical face, area/perimeter of a horizontal one, m. */
  readonly length: number;
  /** Calibration or spread factor on the natural part. */
  readonly factor: number;
  /** Forced parts, W/(m²K), while active; combined as (h_nat³ + Σh_forced³)^(1/3). A fan's name scales with speed^0.8. */
  readonly forced: readonly { readonly film: number; readonly active: When; readonly fan?: string }[];
  /** Heat of this link is carried by a plume and handed to this zone instead of `air` (two-zone bays). The film still feels `air`. */
  readonly heatTo?: string;
}

/** Heat from a to b = area·emissivity·factor·σ(Ta⁴ − Tb⁴). */
export interface RadiantLink {
  readonly a: string;
  readonly b: string;
  readonly area: number;
  readonly emissivity: number;
  readonly factor: number;
}

/** Opt-in. Surfaces of one enclosure meeting at a mean radiant node: heat leaving i = w_i·σ(T_i⁴ − Σw_jT_j⁴/Σw_j). */
export interface RadiantStar {
  readonly name: string;
  readonly members: readonly { readonly node: string; readonly weight: number }[];
}

export interface HeatSource {
  readonly name: string;
  readonly node: string;
  readonly watts: number;
  readonly active: When;
  /** Opt-in: multiplies `watts` by this profile of time (sun on glass, a changing room). */
  readonly profile?: Profile;
}

interface PathBase {
  readonly name: string;
  readonly from: string;
  readonly to: string;
  /** Height of the path, m. */
  readonly z: number;
  readonly open: When;
  /** Share removed by the path's filters, by contaminant; acts in both directions. */
  readonly filterEfficiency: Readonly<Record<string, number>>;
}

export interface Orifice extends PathBase {
  readonly type: 'orifice';
  readonly dischargeCoefficient: number;
  readonly area: number;
  readonly count: number;
  readonly linearBelow: number;
}

export interface Crack extends PathBase {
  readonly type: 'crack';
  /** m³/s at 1 Pa. */
  readonly coefficient: number;
  readonly exponent: number;
  readonly linearBelow: number;
}

export interface FixedFlow extends PathBase {
  readonly type: 'fixed-flow';
  /** kg/s from `from` to `to`. */
  readonly flow: number;
}

/** Opt-in. A tall opening with flow both ways around its neutral level; z is the sill, height and width its size. */
export interface TallOpening extends PathBase {
  readonly type: 'tall-opening';
  readonly dischargeCoefficient: number;
  readonly width: number;
  readonly height: number;
  readonly linearBelow: number;
}

export type FanCurve =
  /** p = p0 − aQ − bQ|Q|. */
  | { readonly kind: 'poly'; readonly p0: number; readonly a: number; readonly b: number }
  /** Straight lines through [Q m³/s, p Pa], continued with the end slopes. */
  | { readonly kind: 'points'; readonly points: readonly (readonly [flow: number, pressure: number])[] };

export interface MinorLoss {
  readonly name?: string;
  readonly loss: number;
  readonly area: number;
}

export interface Fan {
  readonly name: string;
  readonly curve: FanCurve;
  readonly control: When;
  /** Resistance that the rotor adds while the fan is off. */
  readonly stopped: { readonly linear: number; readonly quadratic: number; readonly minor: readonly MinorLoss[] };
  /**
   * Opt-in: share of full speed while on; the curve scales by the affinity laws. Stages: the largest speed among those
   * active (the fan is off when none is). Proportional: from `low` at or below `from` to `high` at or above `to`.
   */
  readonly speed?:
    | number
    | { readonly stages: readonly { readonly when: When; readonly speed: number }[] }
    | {
        readonly proportional: {
          readonly sensor: string;
          readonly from: number;
          readonly to: number;
          readonly low: number;
          readonly high: number;
        };
      };
}

/** Fan, filters and resistances in series; every part may be absent. */
export interface FanPath extends PathBase {
  readonly type: 'fan-path';
  readonly fans: readonly Fan[];
  /** dp = aQ + bQ|Q| of each named part (filter, carbon, duct). */
  readonly resistances: readonly { readonly name: string; readonly linear: number; readonly quadratic: number }[];
  readonly minor: readonly MinorLoss[];
  /** Opt-in: a back-draught flap: opens above this pressure, and leaks through this orifice when shut. */
  readonly flap?: { readonly opensAt: number; readonly leakArea: number };
}

export type AirPath = Orifice | Crack | FixedFlow | TallOpening | FanPath;

/** Two-way mixing of Q m³/s each way at the reference density. */
export interface Exchange {
  readonly name: string;
  readonly a: string;
  readonly b: string;
  readonly active: When;
  readonly law:
    | { readonly kind: 'constant'; readonly flow: number }
    | {
        readonly kind: 'vertical-opening';
        readonly dischargeCoefficient: number;
        readonly width: number;
        readonly height: number;
      }
    /** Opt-in: hole in a shelf, `a` below `b`; runs only while a is warmer and the net flow of `path` does not flood it. */
    | {
        readonly kind: 'horizontal-opening';
        readonly area: number;
        readonly round: boolean;
        /** 0.10 (Cooper 1989 as in NIST SP 1026) unless given. */
        readonly coefficient: number;
        readonly path?: string;
      }
    /** Opt-in: plumes carrying air from `a` (low) to `b` (high): Q = coefficient·Σ W/cbrt(W² + 1), W the convective heat of each source above 0. */
    | { readonly kind: 'plume'; readonly coefficient: number; readonly sources: readonly string[] }; // surfaces named in convections
}

/** Outdoor air change of a zone, with make-up for the net flow that the paths take out of it. */
export interface AirChange {
  readonly zone: string;
  readonly with: string;
  readonly perSecond: number;
}

export interface EmissionCourse {
  /** Start burst: rate·(1 + (ratio − 1)·exp(−t/time)) from the mode's start. */
  readonly burst?: { readonly ratio: number; readonly time: number };
  /** After the mode's end: rate·share·exp(−t/time). */
  readonly tail?: { readonly share: number; readonly time: number };
}

export interface MachineMode {
  readonly name: string;
  readonly bedSet?: number;
  readonly powers: readonly { readonly node: string; readonly watts: number }[];
  readonly emissions: readonly ({
    readonly contaminant: string;
    readonly zone: string;
    readonly rate: number;
  } & EmissionCourse)[];
}

export interface NetworkMachine {
  readonly name: string;
  readonly bed?: {
    /** A node, or (opt-in) a zone whose air a heater holds. */
    readonly node: string;
    readonly powerMax: number;
    /** Opt-in: the supply's loss follows the bed's power: watts into `node` = share·bed power. */
    readonly supply?: { readonly node: string; readonly share: number };
  };
  /** Names are unique; `idle` is used outside the schedule. */
  readonly modes: readonly MachineMode[];
}

export interface ScheduleEntry {
  readonly machine: string;
  readonly mode: string;
  readonly start: number;
  readonly end: number;
}

/** Opt-in. A sensor that lags behind the air or node it hangs at, first order, and reads wrong by `offset` K. */
export interface Sensor {
  readonly name: string;
  readonly at: string;
  readonly lag: number;
  readonly offset: number;
}

export interface Thermostat {
  readonly name: string;
  /** A zone, node or sensor; or (opt-in) a contaminant in a zone. */
  readonly sensor: string | { readonly contaminant: string; readonly zone: string };
  /** On at or above `on`, off at or below `off` (cooling); opt-in sense 'below' turns both round (heating). */
  readonly on: number;
  readonly off: number;
  readonly sense: 'above' | 'below';
  readonly initial: boolean;
}

export interface Contaminant {
  readonly name: string;
  readonly unit: string;
  /** Size of an interesting concentration, for error control. */
  readonly scale: number;
  readonly initial: Readonly<Record<string, number>>;
  /** First-order loss, 1/s, by zone. */
  readonly deposition: Readonly<Record<string, number>>;
  /** Opt-in: dC/dt = −K C², m³/s per unit. */
  readonly coagulation?: number;
  /** Opt-in: concentration in a zone held at a profile. */
  readonly outside?: Readonly<Record<string, Profile>>;
}

export interface Recirculation {
  readonly name: string;
  readonly zone: string;
  /** m³/s */
  readonly flow: number;
  readonly efficiency: Readonly<Record<string, number>>;
  readonly active: When;
}

/** Opt-in. Carbon that fills and gives back: out = in − efficiency·(in − C*(load, T)); load follows what it caught. */
export interface CarbonBed {
  readonly name: string;
  /** The path or recirculation in which the bed sits. */
  readonly in: string;
  /** Zone or node whose temperature the carbon has. */
  readonly at: string;
  readonly mass: number;
  readonly vapours: readonly {
    readonly contaminant: string;
    /** Fresh single-pass efficiency, 0…1. */
    readonly efficiency: number;
    /** Vapour of the physics table whose isotherm stands for it. */
    readonly vapour: string;
    /** kg of vapour per concentration unit·m³ (1e-9 for µg/m³). */
    readonly kilogramsPerUnit: number;
    /** kg/kg at the start. */
    readonly load: number;
  }[];
}

export interface Emission extends EmissionCourse {
  readonly contaminant: string;
  readonly zone: string;
  /** Units per second. */
  readonly rate: number;
  readonly active: When;
}

export interface Network {
  readonly title: string;
  /** s */
  readonly duration: number;
  readonly density: DensityModel;
  readonly fanDensityScaling: boolean;
  readonly constants: Constants;
  readonly zones: readonly Zone[];
  readonly nodes: readonly SolidNode[];
  readonly conductances: readonly Conductance[];
  readonly walls: readonly Wall[];
  readonly convections: readonly Convection[];
  readonly radiation: readonly RadiantLink[];
  readonly stars: readonly RadiantStar[];
  readonly heatSources: readonly HeatSource[];
  readonly paths: readonly AirPath[];
  readonly exchanges: readonly Exchange[];
  readonly airChanges: readonly AirChange[];
  readonly machines: readonly NetworkMachine[];
  readonly schedule: readonly ScheduleEntry[];
  readonly sensors: readonly Sensor[];
  readonly thermostats: readonly Thermostat[];
  readonly contaminants: readonly Contaminant[];
  readonly recirculations: readonly Recirculation[];
  readonly carbonBeds: readonly CarbonBed[];
  readonly emissions: readonly Emission[];
  /** Times at which something outside the network changes; the solver steps exactly onto them. */
  readonly breaks: readonly number[];
}
