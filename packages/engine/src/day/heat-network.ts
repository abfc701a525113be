// The heat links of a network in typed arrays, with the positions that each link has in the heat matrix.
// Everything speaks in slots (layout.ts). Nothing here changes during a day.

import type { Orientation } from '@stillair/physics';
import type { Convection, Network } from '../network/network.ts';
import type { AirNetwork } from './air-network.ts';
import { type FilmTable, filmTable } from './film-table.ts';
import { type Layout, layOut, pointsOf } from './layout.ts';
import { gridWall } from './wall-grid.ts';
import { indexOfName } from './when.ts';

/** Film temperature of convection where nothing better is known: a warm bay, K. */
const USUAL_FILM = 308.15;
/** What a bay warms by while a bed is hot, for the film temperature at the bed, K. Common practice, no source. */
const BAY_RISE = 15;

/** Pairs of slots with the matrix positions (a,a), (b,b), (a,b), (b,a). */
export interface Pairs {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly aa: Int32Array;
  readonly bb: Int32Array;
  readonly ab: Int32Array;
  readonly ba: Int32Array;
}

export interface HeatNetwork {
  readonly layout: Layout;
  /** J/K by slot; 0 for stars, 1 for fixed zones and sensors. */
  readonly capacity: Float64Array;
  readonly zoneSlot: Int32Array;
  readonly heatCapacity: number;
  readonly referenceDensity: number;
  readonly gravity: number;
  readonly conduction: Pairs;
  readonly conductance: Float64Array;
  readonly radiation: Pairs;
  /** area · emissivity · factor · σ. */
  readonly radiance: Float64Array;
  readonly stars: readonly Star[];
  /** Off-diagonal matrix positions and columns of each machine's bed, for holding it; empty without a bed. */
  readonly bedRows: readonly { readonly row: number; readonly positions: Int32Array; readonly columns: Int32Array }[];
  /** Surface and air; heat lands in `landing` (the air itself, or another zone). */
  readonly convection: Pairs;
  readonly landing: Int32Array;
  readonly landingSurface: Int32Array;
  readonly landingAir: Int32Array;
  readonly film: readonly FilmTable[];
  readonly filmFactor: Float64Array;
  readonly filmArea: Float64Array;
  /** Slots of the zones of the air's ducts. */
  readonly carried: Pairs;
  readonly exchange: Pairs;
  readonly exchangeLaws: readonly ExchangeLaw[];
  /** Zone and the zone its air is changed with. */
  readonly change: Pairs;
  /** kg/s each way. */
  readonly changeFlow: Float64Array;
  /** Paths at the zone of each air change: sign +1 where the path leaves it. */
  readonly changePaths: readonly (readonly { readonly path: number; readonly sign: number }[])[];
}

export interface Star {
  readonly slot: number;
  readonly members: Int32Array;
  readonly weights: Float64Array;
  readonly total: number;
  /** Positions (member, member), (member, star), (star, member), (star, star). */
  readonly mm: Int32Array;
  readonly ms: Int32Array;
  readonly sm: Int32Array;
  readonly ss: number;
}

export type ExchangeLaw =
  | { readonly kind: 'constant'; readonly flow: number }
  /** Q = factor √(|ΔT|/Tmean). */
  | { readonly kind: 'vertical-opening'; readonly factor: number }
  /** Q = factor √(Δρ/ρ) while a is warmer, less the share of the flooding pressure that `path` puts on the hole. */
  | {
      readonly kind: 'horizontal-opening';
      readonly factor: number;
      /** Flooding pressure = flooding · Δρ. */
      readonly flooding: number;
      readonly path: number;
      /** Pressure on the hole = loss m²/ρ. */
      readonly loss: number;
    }
  | { readonly kind: 'plume'; readonly coefficient: number; readonly convections: readonly number[] };

export function compileHeat(network: Network, air: AirNetwork): HeatNetwork {
  const walls = network.walls.map(gridWall);
  const conductions = [...network.conductances, ...walls.flatMap(({ links }) => links)];
  const zoneNames = network.zones.map(({ name }) => name);
  const zonePairs = <Link>(
    links: readonly Link[],
    ends: (link: Link) => readonly [string, string],
  ): [number, number][] =>
    links.map((link) => {
      const [a, b] = ends(link);
      return [indexOfName(zoneNames, a, 'zone'), indexOfName(zoneNames, b, 'zone')];
    });
  const ductPairs = [...air.ducts.a].map((a, d) => [a, air.ducts.b[d]!] as const);
  const changePairs = zonePairs(network.airChanges, (change) => [change.zone, change.with]);

  const points = pointsOf(network);
  const at = points.pointOf;
  const conductionPairs = conductions.map(({ a, b }) => [at(a), at(b)] as const);
  const radiationPairs = network.radiation.map(({ a, b }) => [at(a), at(b)] as const);
  const convectionPairs = network.convections.map(({ surface, air: zone }) => [at(surface), at(zone)] as const);
  const landings = network.convections.map((link) => at(link.heatTo ?? link.air));
  const exchangePairs = network.exchanges.map(({ a, b }) => [at(a), at(b)] as const);
  const starMembers = network.stars.map(({ members }) => members.map(({ node }) => at(node)));

  const layout = layOut(network, points, [
    ...conductionPairs,
    ...radiationPairs,
    ...convectionPairs,
    ...convectionPairs.flatMap(([surface, zone], i) => [
      [surface, landings[i]!] as const,
      [zone, landings[i]!] as const,
    ]),
    ...ductPairs,
    ...exchangePairs,
    ...changePairs,
    ...starMembers.flatMap((members, star) => members.map((member) => [member, points.names.length + star] as const)),
  ]);
  const { slotOf, position } = layout;
  const pairs = (list: readonly (readonly [number, number])[]): Pairs => slotPairs(layout, list);
  const { a: convectionSurface, b: convectionAir, ...rest } = pairs(convectionPairs);
  const landing = Int32Array.from(landings, (point) => slotOf[point]!);
  return {
    layout,
    capacity: capacities(
      network,
      layout,
      walls.flatMap(({ capacities: values }) => values),
    ),
    zoneSlot: slotOf.slice(0, network.zones.length),
    heatCapacity: network.constants.heatCapacity,
    referenceDensity: network.constants.referenceDensity,
    gravity: network.constants.gravity,
    conduction: pairs(conductionPairs),
    conductance: Float64Array.from(conductions, ({ conductance }) => conductance),
    radiation: pairs(radiationPairs),
    radiance: Float64Array.from(
      network.radiation,
      ({ area, emissivity, factor }) => area * emissivity * factor * network.constants.stefanBoltzmann,
    ),
    stars: network.stars.map((star, index) => {
      const members = Int32Array.from(starMembers[index]!, (member) => slotOf[member]!);
      const slot = slotOf[layout.names.length + index]!;
      const weights = Float64Array.from(star.members, ({ weight }) => weight * network.constants.stefanBoltzmann);
      return {
        slot,
        members,
        weights,
        total: weights.reduce((sum, weight) => sum + weight, 0),
        mm: members.map((member) => position(member, member)),
        ms: members.map((member) => position(member, slot)),
        sm: members.map((member) => position(slot, member)),
        ss: position(slot, slot),
      };
    }),
    bedRows: network.machines.map(({ bed }) => bedRow(layout, bed === undefined ? -1 : slotOf[at(bed.node)]!)),
    convection: { a: convectionSurface, b: convectionAir, ...rest },
    landing,
    landingSurface: landing.map((slot, i) => position(slot, convectionSurface[i]!)),
    landingAir: landing.map((slot, i) => position(slot, convectionAir[i]!)),
    film: network.convections.map((link) =>
      filmTable(orientationOf(link), link.length, filmTemperature(network, link)),
    ),
    filmFactor: Float64Array.from(network.convections, ({ factor }) => factor),
    filmArea: Float64Array.from(network.convections, ({ area }) => area),
    carried: pairs(ductPairs),
    exchange: pairs(exchangePairs),
    exchangeLaws: network.exchanges.map((exchange) => exchangeLaw(network, exchange)),
    change: pairs(changePairs),
    changeFlow: Float64Array.from(network.airChanges, ({ zone, perSecond }) => {
      const { volume } = network.zones[indexOfName(zoneNames, zone, 'zone')]!;
      return network.constants.referenceDensity * volume * perSecond;
    }),
    changePaths: changePairs.map(([zone]) =>
      network.paths.flatMap((_, path) => {
        const sign = (air.from[path] === zone ? 1 : 0) - (air.to[path] === zone ? 1 : 0);
        return sign === 0 ? [] : [{ path, sign }];
      }),
    ),
  };
}

function slotPairs({ slotOf, position }: Layout, list: readonly (readonly [number, number])[]): Pairs {
  const a = Int32Array.from(list, ([one]) => slotOf[one]!);
  const b = Int32Array.from(list, ([, other]) => slotOf[other]!);
  return {
    count: list.length,
    a,
    b,
    aa: a.map((slot) => position(slot, slot)),
    bb: b.map((slot) => position(slot, slot)),
    ab: a.map((slot, i) => position(slot, b[i]!)),
    ba: b.map((slot, i) => position(slot, a[i]!)),
  };
}

function bedRow({ pattern, boundary }: Layout, row: number): HeatNetwork['bedRows'][number] {
  const { size, start, column } = pattern;
  const positions: number[] = [];
  const columns: number[] = [];
  for (let k = 0; k < size && row >= 0; k += 1) {
    for (let e = start[k]!; e < start[k + 1]!; e += 1) {
      if (k === row) {
        positions.push(size + e);
        columns.push(column[e]!);
      } else if (column[e] === row) {
        positions.push(size + column.length + e);
        columns.push(k);
      }
    }
  }
  for (const border of boundary) {
    if (border.row !== row) continue;
    positions.push(border.position);
    columns.push(border.slot);
  }
  return { row, positions: Int32Array.from(positions), columns: Int32Array.from(columns) };
}

function capacities(network: Network, layout: Layout, wallCapacities: readonly number[]): Float64Array {
  const capacity = new Float64Array(layout.slots);
  capacity.fill(1, layout.firstFixed);
  const set = (point: number, value: number): void => {
    if (!(value > 0)) throw new Error(`The heat capacity of "${layout.names[point]}" is ${value}; it must be above 0`);
    capacity[layout.slotOf[point]!] = value;
  };
  network.zones.forEach(({ temperature }, z) => {
    if (temperature.kind === 'free') set(z, temperature.heatCapacity);
  });
  const solids = [...network.nodes.map(({ heatCapacity }) => heatCapacity), ...wallCapacities];
  solids.forEach((value, i) => {
    set(network.zones.length + i, value);
  });
  return capacity;
}

function orientationOf({ faces }: Convection): Orientation {
  if (faces === 'vertical') return 'vertical';
  return faces === 'up' ? 'faces-up' : 'faces-down';
}

/** Properties of air are taken once: half-way to the hottest set-point for beds, those of a warm bay elsewhere. */
function filmTemperature(network: Network, { surface, air }: Convection): number {
  const sets = network.machines
    .filter(({ bed }) => bed?.node === surface)
    .flatMap(({ modes }) => modes.flatMap(({ bedSet }) => bedSet ?? []));
  const zone = network.zones.find(({ name }) => name === air);
  if (sets.length === 0 || zone === undefined) return USUAL_FILM;
  const start = zone.temperature.kind === 'free' ? zone.temperature.initial : zone.temperature.profile[0]![1];
  return 0.5 * (Math.max(...sets) + start + BAY_RISE);
}

/** Cooper 1989 as in NIST SP 1026 (read): C_s of the flooding pressure. */
const FLOODING_SHAPE = { round: 0.754, square: 0.942 };
/** Discharge of a hole in a level shelf; NIST SP 1026 (read). */
const LEVEL_DISCHARGE = 0.68;

function exchangeLaw(network: Network, { law }: Network['exchanges'][number]): ExchangeLaw {
  const { gravity } = network.constants;
  switch (law.kind) {
    case 'constant':
      return law;
    case 'vertical-opening':
      return {
        kind: 'vertical-opening',
        factor: (law.dischargeCoefficient / 3) * law.width * law.height * Math.sqrt(gravity * law.height),
      };
    case 'horizontal-opening': {
      const { area } = law;
      const diameter = Math.sqrt((4 * area) / Math.PI);
      const shape = law.round ? FLOODING_SHAPE.round : FLOODING_SHAPE.square;
      return {
        kind: 'horizontal-opening',
        factor: law.coefficient * Math.sqrt(gravity * area ** 2.5),
        flooding: (shape ** 2 * gravity * diameter ** 5) / (2 * area ** 2),
        path:
          law.path === undefined
            ? -1
            : indexOfName(
                network.paths.map(({ name }) => name),
                law.path,
                'path',
              ),
        loss: 1 / (2 * (LEVEL_DISCHARGE * area) ** 2),
      };
    }
    case 'plume':
      return {
        kind: 'plume',
        coefficient: law.coefficient,
        convections: network.convections.flatMap(({ surface }, i) => (law.sources.includes(surface) ? [i] : [])),
      };
  }
}
