// A network in the making: the lists that the assembling steps append to.

import {
  AIR_HEAT_CAPACITY,
  ATMOSPHERE,
  GAS_CONSTANT_AIR,
  GRAVITY,
  REFERENCE_DENSITY,
  STEFAN_BOLTZMANN,
} from '@stillair/physics';
import type { Derivation, LeakPlace, SurfacePlace } from './assembly.ts';
import type { Constants, Fan, Network } from './network.ts';

type Writable<List> = List extends readonly (infer Item)[] ? Item[] : never;

/** The lists of a network, open for writing. */
export type Lists = {
  -readonly [Key in keyof Network as Network[Key] extends readonly unknown[] ? Key : never]: Writable<Network[Key]>;
};

/** A path that a fan blows into a bay, with the speed that it keeps along the bay's boards, m/s. */
export interface Jet {
  readonly bay: string;
  readonly speed: number;
  readonly active: Fan['control'];
  /** Where the network has the fan, so that the film follows its speed. */
  readonly fan?: string;
}

export interface Draft extends Lists {
  readonly jets: Jet[];
  readonly leaks: LeakPlace[];
  readonly surfaces: SurfacePlace[];
  readonly derivations: Derivation[];
  readonly overridesUsed: string[];
  /** Members of each bay's (or chamber's) radiant enclosure, weighted when all are known. */
  readonly enclosures: Map<string, { node: string; area: number; emissivity: number }[]>;
}

/** Constants that the whole house uses. */
export const houseConstants: Constants = {
  gravity: GRAVITY,
  atmosphere: ATMOSPHERE,
  gasConstant: GAS_CONSTANT_AIR,
  heatCapacity: AIR_HEAT_CAPACITY,
  referenceDensity: REFERENCE_DENSITY,
  stefanBoltzmann: STEFAN_BOLTZMANN,
};

export function emptyDraft(): Draft {
  return {
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
    jets: [],
    leaks: [],
    surfaces: [],
    derivations: [],
    overridesUsed: [],
    enclosures: new Map(),
  };
}

export function addToEnclosure(draft: Draft, enclosure: string, node: string, area: number, emissivity: number): void {
  const members = draft.enclosures.get(enclosure) ?? [];
  if (members.length === 0) draft.enclosures.set(enclosure, members);
  members.push({ node, area, emissivity });
}
