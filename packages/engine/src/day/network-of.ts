// Small networks in a few words, for tests and checks: whatever is not given is empty or usual.

import {
  AIR_HEAT_CAPACITY,
  ATMOSPHERE,
  GAS_CONSTANT_AIR,
  GRAVITY,
  ICE_POINT,
  REFERENCE_DENSITY,
  STEFAN_BOLTZMANN,
} from '@stillair/physics';
import type { Fan, FanCurve, FanPath, Network, Orifice, SolidNode, Zone } from '../network/network.ts';

export function networkOf(parts: Partial<Network>): Network {
  return {
    title: 'test',
    duration: 3600,
    density: { model: 'ideal-gas' },
    fanDensityScaling: false,
    constants: {
      gravity: GRAVITY,
      atmosphere: ATMOSPHERE,
      gasConstant: GAS_CONSTANT_AIR,
      heatCapacity: AIR_HEAT_CAPACITY,
      referenceDensity: REFERENCE_DENSITY,
      stefanBoltzmann: STEFAN_BOLTZMANN,
    },
    zones: [],
    nodes: [],
    conductances: [],
    walls: [],
    convections: [],
    radiation: [],
    stars: [],
    heatSources: [],
    paths: [],
    exchanges: [],
    airChanges: [],
    machines: [],
    schedule: [],
    sensors: [],
    thermostats: [],
    contaminants: [],
    recirculations: [],
    carbonBeds: [],
    emissions: [],
    breaks: [],
    ...parts,
  };
}

/** A zone held at a temperature (°C) and pressure (0 Pa). */
export function heldZone(name: string, celsius: number, parts: Partial<Zone> = {}): Zone {
  return {
    name,
    temperature: { kind: 'fixed', profile: [[0, celsius + ICE_POINT]] },
    pressure: { kind: 'fixed', value: 0 },
    zRef: 0,
    volume: 1,
    concentrations: 'fixed',
    ...parts,
  };
}

/** A zone whose temperature and pressure are solved. */
export function freeZone(name: string, celsius: number, heatCapacity: number, parts: Partial<Zone> = {}): Zone {
  return {
    ...heldZone(name, celsius),
    temperature: { kind: 'free', initial: celsius + ICE_POINT, heatCapacity },
    pressure: { kind: 'solved' },
    ...parts,
  };
}

export function solid(name: string, celsius: number, heatCapacity: number): SolidNode {
  return { name, heatCapacity, initial: celsius + ICE_POINT };
}

export function orifice(
  name: string,
  from: string,
  to: string,
  z: number,
  area: number,
  parts: Partial<Orifice> = {},
): Orifice {
  return {
    type: 'orifice',
    name,
    from,
    to,
    z,
    open: 'always',
    filterEfficiency: {},
    dischargeCoefficient: 0.61,
    area,
    count: 1,
    linearBelow: 0.002,
    ...parts,
  };
}

export function fanOf(name: string, curve: FanCurve, parts: Partial<Fan> = {}): Fan {
  return { name, curve, control: 'always', stopped: { linear: 0, quadratic: 0, minor: [] }, ...parts };
}

/** A path with fans at z = 0. */
export function fanPath(
  name: string,
  from: string,
  to: string,
  fans: readonly Fan[],
  parts: Partial<FanPath> = {},
): FanPath {
  return {
    type: 'fan-path',
    name,
    from,
    to,
    z: 0,
    open: 'always',
    filterEfficiency: {},
    fans,
    resistances: [],
    minor: [],
    ...parts,
  };
}
