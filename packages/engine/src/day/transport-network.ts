// Contaminants in typed arrays: what never changes during a day. Zones have places: those whose concentrations are solved come
// first, in elimination order, then those that are held. The value of contaminant k at a place lies in cell place·count + k: what all
// contaminants do alike runs over neighbours in memory.

import type { CarbonBed, Network } from '../network/network.ts';
import type { AirNetwork } from './air-network.ts';
import { type CarbonLaw, carbonLaw } from './carbon-law.ts';
import type { HeatNetwork } from './heat-network.ts';
import { entryAt, type Pattern, patternOf } from './sparse-lu.ts';
import { indexOfName } from './when.ts';

export interface TransportNetwork {
  readonly count: number;
  readonly zones: number;
  readonly cells: number;
  /** Place of each zone; the first `solved` places are solved. */
  readonly placeOf: Int32Array;
  readonly solved: number;
  readonly referenceDensity: number;
  readonly scale: Float64Array;
  readonly initial: Float64Array;
  /** m³ by cell; 1 where concentrations are held, and for the carbon loads that follow. */
  readonly volume: Float64Array;
  /** V λ, m³/s, by cell. */
  readonly deposition: Float64Array;
  /** V K, by cell. */
  readonly coagulation: Float64Array;
  /** 1 - filter efficiency: p·count + k; p = paths, 1, is for air that passes no filter. */
  readonly paths: number;
  readonly pass: Float64Array;
  /** `pass` times 1 - efficiency of the path's carbon. */
  readonly through: Float64Array;
  readonly pattern: Pattern;
  /** Values of each contaminant's matrix; value `at` of contaminant k lies in at·count + k. */
  readonly valueCount: number;
  /** Pairs of a solved place with a held one. */
  readonly boundary: readonly { readonly row: number; readonly place: number; readonly position: number }[];
  readonly pathAt: PlacePairs;
  readonly exchangeAt: PlacePairs;
  readonly changeAt: PlacePairs;
  /** Ways for contaminants: all that joins the same two places behind the same filter. */
  readonly ducts: PlacePairs & { readonly filter: Int32Array };
  /** The first ones are those of the air network. */
  readonly airDucts: number;
  /** Duct of each exchange and air change: its number, or -1 - number when it runs the other way. */
  readonly exchangeDuct: Int32Array;
  readonly changeDuct: Int32Array;
  readonly recirculationPlace: Int32Array;
  readonly recirculationFlow: Float64Array;
  /** r·count + k. */
  readonly recirculationEfficiency: Float64Array;
  readonly carbon: readonly CarbonLoad[];
}

/** Places a and b, and the matrix positions (a, b) and (b, a). */
export interface PlacePairs {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly ab: Int32Array;
  readonly ba: Int32Array;
}

/** One vapour on one bed. */
export interface CarbonLoad {
  readonly name: string;
  readonly contaminant: number;
  /** Where the bed sits: a path or a recirculation, the other one is -1. */
  readonly path: number;
  readonly recirculation: number;
  readonly efficiency: number;
  /** kg/kg of load per unit·m³ caught. */
  readonly perUnit: number;
  /** Slot of the temperature that the carbon has. */
  readonly slot: number;
  readonly start: number;
  readonly law: CarbonLaw;
}

export function compileTransport(network: Network, air: AirNetwork, heat: HeatNetwork): TransportNetwork {
  const { contaminants, zones, recirculations } = network;
  const count = contaminants.length;
  const zoneNames = zones.map(({ name }) => name);
  const zone = (name: string): number => indexOfName(zoneNames, name, 'zone');
  const held = Uint8Array.from(zones, ({ name, concentrations }) =>
    concentrations === 'fixed' || contaminants.some(({ outside }) => outside?.[name] !== undefined) ? 1 : 0,
  );
  const pairs = {
    path: network.paths.map((_, p) => [air.from[p]!, air.to[p]!] as const),
    exchange: network.exchanges.map(({ a, b }) => [zone(a), zone(b)] as const),
    change: network.airChanges.map((change) => [zone(change.zone), zone(change.with)] as const),
  };
  const { placeOf, solved, pattern } = placeZones(held, [...pairs.path, ...pairs.exchange, ...pairs.change]);
  const places = (list: readonly (readonly [number, number])[]): [number, number][] =>
    list.map(([a, b]) => [placeOf[a]!, placeOf[b]!]);
  const [path, exchange, change] = [places(pairs.path), places(pairs.exchange), places(pairs.change)];
  const boundary = boundaryPairs([...path, ...exchange, ...change], solved, pattern.length);
  const unused = pattern.length + boundary.length;
  const position = (row: number, column: number): number => {
    if (row >= solved) return unused;
    if (column < solved) return entryAt(pattern, row, column);
    return boundary.find((known) => known.row === row && known.place === column)!.position;
  };
  const at = (list: readonly (readonly [number, number])[]): PlacePairs => ({
    count: list.length,
    a: Int32Array.from(list, ([a]) => a),
    b: Int32Array.from(list, ([, b]) => b),
    ab: Int32Array.from(list, ([a, b]) => position(a, b)),
    ba: Int32Array.from(list, ([a, b]) => position(b, a)),
  });
  const ducts = [...air.ducts.filter].map((filter, d) => ({
    a: placeOf[air.ducts.a[d]!]!,
    b: placeOf[air.ducts.b[d]!]!,
    filter,
  }));
  const ductOf = (a: number, b: number, filter: number): number => {
    const alike = ducts.findIndex((d) => d.filter === filter && ((d.a === a && d.b === b) || (d.a === b && d.b === a)));
    if (alike < 0) return ducts.push({ a, b, filter }) - 1;
    return ducts[alike]!.a === a ? alike : -1 - alike;
  };
  const zoneAt = new Int32Array(zones.length);
  placeOf.forEach((place, z) => {
    zoneAt[place] = z;
  });
  const byCell = (value: (k: number, z: number) => number): Float64Array =>
    Float64Array.from({ length: count * zones.length }, (_, cell) =>
      value(cell % count, zoneAt[Math.floor(cell / count)]!),
    );
  const ofSolved = (value: (k: number, z: number) => number): Float64Array =>
    byCell((k, z) => (held[z] === 1 ? 0 : zones[z]!.volume * value(k, z)));
  if (count > 0) requireVolumes(network, held);
  const carbon = carbonLoads(network, heat);
  const pass = Float64Array.from({ length: count * (network.paths.length + 1) }, (_, i) => {
    const one = network.paths[Math.floor(i / count)];
    return one === undefined ? 1 : 1 - (one.filterEfficiency[contaminants[i % count]!.name] ?? 0);
  });
  const through = pass.slice();
  for (const { path: p, contaminant: k, efficiency } of carbon) {
    if (p >= 0) through[p * count + k] = through[p * count + k]! * (1 - efficiency);
  }
  const plain = network.paths.length;
  const exchangeDuct = Int32Array.from(exchange, ([a, b]) => ductOf(a, b, plain));
  const changeDuct = Int32Array.from(change, ([a, b]) => ductOf(a, b, plain));
  const deposition = ofSolved((k, z) => contaminants[k]!.deposition[zoneNames[z]!] ?? 0);
  const recirculationEfficiency = Float64Array.from({ length: count * recirculations.length }, (_, i) => {
    const { efficiency } = recirculations[Math.floor(i / count)]!;
    return efficiency[contaminants[i % count]!.name] ?? 0;
  });
  return {
    count,
    zones: zones.length,
    cells: count * zones.length,
    placeOf,
    solved,
    referenceDensity: network.constants.referenceDensity,
    scale: Float64Array.from(contaminants, ({ scale }) => scale),
    initial: byCell((k, z) => contaminants[k]!.initial[zoneNames[z]!] ?? 0),
    volume: Float64Array.of(...byCell((_, z) => (held[z] === 1 ? 1 : zones[z]!.volume)), ...carbon.map(() => 1)),
    deposition,
    coagulation: ofSolved((k) => contaminants[k]!.coagulation ?? 0),
    paths: network.paths.length,
    pass,
    through,
    pattern,
    valueCount: unused + 1,
    boundary,
    pathAt: at(path),
    exchangeAt: at(exchange),
    changeAt: at(change),
    ducts: { ...at(ducts.map(({ a, b }) => [a, b])), filter: Int32Array.from(ducts, ({ filter }) => filter) },
    airDucts: air.ducts.count,
    exchangeDuct,
    changeDuct,
    recirculationPlace: Int32Array.from(recirculations, (one) => placeOf[zone(one.zone)]!),
    recirculationFlow: Float64Array.from(recirculations, ({ flow }) => flow),
    recirculationEfficiency,
    carbon,
  };
}

/** Solved zones first, in elimination order. */
function placeZones(
  held: Uint8Array,
  pairs: readonly (readonly [number, number])[],
): { placeOf: Int32Array; solved: number; pattern: Pattern } {
  const unknown = new Int32Array(held.length).fill(-1);
  let solved = 0;
  for (let z = 0; z < held.length; z += 1) if (held[z] === 0) unknown[z] = solved++;
  const pattern = patternOf(
    solved,
    pairs.map(([a, b]) => [unknown[a]!, unknown[b]!] as const).filter(([a, b]) => a >= 0 && b >= 0),
  );
  let next = solved;
  return { placeOf: unknown.map((u) => (u < 0 ? next++ : pattern.rowOf[u]!)), solved, pattern };
}

function boundaryPairs(
  pairs: readonly (readonly [number, number])[],
  solved: number,
  first: number,
): { row: number; place: number; position: number }[] {
  const boundary: { row: number; place: number; position: number }[] = [];
  for (const [a, b] of pairs) {
    const [row, place] = a < b ? [a, b] : [b, a];
    if (row >= solved || place < solved) continue;
    if (boundary.some((known) => known.row === row && known.place === place)) continue;
    boundary.push({ row, place, position: first + boundary.length });
  }
  return boundary;
}

function requireVolumes(network: Network, held: Uint8Array): void {
  network.zones.forEach(({ name, volume }, z) => {
    if (held[z] === 0 && !(volume > 0))
      throw new Error(`The volume of zone "${name}" is ${volume}; it must be above 0`);
  });
}

function carbonLoads(network: Network, heat: HeatNetwork): CarbonLoad[] {
  const names = network.contaminants.map(({ name }) => name);
  const taken = new Set<string>();
  return network.carbonBeds.flatMap((bed: CarbonBed) =>
    bed.vapours.map((vapour) => {
      const path = network.paths.findIndex(({ name }) => name === bed.in);
      const recirculation = path >= 0 ? -1 : network.recirculations.findIndex(({ name }) => name === bed.in);
      if (path < 0 && recirculation < 0)
        throw new Error(`The carbon bed "${bed.name}" sits in "${bed.in}", which is nowhere`);
      const key = `${bed.in}/${vapour.contaminant}`;
      if (taken.has(key)) throw new Error(`Two carbon beds in "${bed.in}" catch ${vapour.contaminant}`);
      taken.add(key);
      return {
        name: `${bed.name}/${vapour.contaminant}`,
        contaminant: indexOfName(names, vapour.contaminant, 'contaminant'),
        path,
        recirculation,
        efficiency: vapour.efficiency,
        perUnit: vapour.kilogramsPerUnit / bed.mass,
        slot: heat.layout.slotOf[heat.layout.pointOf(bed.at)]!,
        start: vapour.load,
        law: carbonLaw(vapour.vapour, vapour.kilogramsPerUnit),
      };
    }),
  );
}
