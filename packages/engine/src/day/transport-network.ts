// Contaminants in typed arrays: what never changes during a day. Values by contaminant k and zone z lie at k·zones + z.

import type { CarbonBed, Network } from '../network/network.ts';
import type { AirNetwork } from './air-network.ts';
import { type CarbonLaw, carbonLaw } from './carbon-law.ts';
import type { HeatNetwork } from './heat-network.ts';
import { analysePattern, entryAt, type Pattern } from './sparse-lu.ts';
import { indexOfName } from './when.ts';

export interface TransportNetwork {
  readonly count: number;
  readonly zones: number;
  readonly referenceDensity: number;
  /** 1 where the zone's concentrations are solved. */
  readonly free: Uint8Array;
  /** m³; 1 where concentrations are held. */
  readonly volume: Float64Array;
  readonly scale: Float64Array;
  readonly initial: Float64Array;
  /** V λ, m³/s, by contaminant and zone. */
  readonly deposition: Float64Array;
  /** V K, by contaminant and zone. */
  readonly coagulation: Float64Array;
  /** 1 - efficiency, by contaminant and path: k·paths + p. */
  readonly paths: number;
  readonly pass: Float64Array;
  readonly pattern: Pattern;
  readonly valueCount: number;
  readonly rowOf: Int32Array;
  readonly boundary: readonly { readonly row: number; readonly zone: number; readonly position: number }[];
  readonly position: (row: number, column: number) => number;
  readonly pathAt: ZonePairs;
  readonly exchangeAt: ZonePairs;
  readonly changeAt: ZonePairs;
  readonly diagonal: Int32Array;
  readonly recirculationZone: Int32Array;
  readonly recirculationFlow: Float64Array;
  /** By contaminant and recirculation. */
  readonly recirculationEfficiency: Float64Array;
  readonly carbon: readonly CarbonLoad[];
  /** Index into `carbon` by contaminant and path, -1 for none; the same for recirculations. */
  readonly carbonOnPath: Int32Array;
  readonly carbonOnRecirculation: Int32Array;
}

export interface ZonePairs {
  readonly a: Int32Array;
  readonly b: Int32Array;
  readonly aa: Int32Array;
  readonly bb: Int32Array;
  readonly ab: Int32Array;
  readonly ba: Int32Array;
}

/** One vapour on one bed. */
export interface CarbonLoad {
  readonly name: string;
  readonly contaminant: number;
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
  const zoneNames = zones.map(({ name }) => name);
  const zone = (name: string): number => indexOfName(zoneNames, name, 'zone');
  const held = (z: number): boolean =>
    zones[z]!.concentrations === 'fixed' || contaminants.some(({ outside }) => outside?.[zoneNames[z]!] !== undefined);
  const free = Uint8Array.from(zones, (_, z) => (held(z) ? 0 : 1));
  const unknown = new Int32Array(zones.length).fill(-1);
  let size = 0;
  for (let z = 0; z < zones.length; z += 1) if (free[z] === 1) unknown[z] = size++;

  const pathPairs = network.paths.map((_, p) => [air.from[p]!, air.to[p]!] as const);
  const exchangePairs = network.exchanges.map(({ a, b }) => [zone(a), zone(b)] as const);
  const changePairs = network.airChanges.map((change) => [zone(change.zone), zone(change.with)] as const);
  const all = [...pathPairs, ...exchangePairs, ...changePairs];
  const pattern = analysePattern(
    size,
    all.map(([a, b]) => [unknown[a]!, unknown[b]!] as const).filter(([a, b]) => a >= 0 && b >= 0),
  );
  const rowOf = unknown.map((u) => (u < 0 ? -1 : pattern.rowOf[u]!));
  const boundary: { row: number; zone: number; position: number }[] = [];
  for (const [a, b] of all) {
    for (const [row, outer] of [
      [a, b],
      [b, a],
    ] as const) {
      if (rowOf[row]! < 0 || rowOf[outer]! >= 0) continue;
      if (boundary.some((known) => known.row === rowOf[row] && known.zone === outer)) continue;
      boundary.push({ row: rowOf[row]!, zone: outer, position: pattern.length + boundary.length });
    }
  }
  const unused = pattern.length + boundary.length;
  const position = (row: number, column: number): number => {
    if (rowOf[row]! < 0) return unused;
    if (rowOf[column]! >= 0) return entryAt(pattern, rowOf[row]!, rowOf[column]!);
    return boundary.find((known) => known.row === rowOf[row] && known.zone === column)?.position ?? unused;
  };
  const at = (list: readonly (readonly [number, number])[]): ZonePairs => ({
    a: Int32Array.from(list, ([a]) => a),
    b: Int32Array.from(list, ([, b]) => b),
    aa: Int32Array.from(list, ([a]) => position(a, a)),
    bb: Int32Array.from(list, ([, b]) => position(b, b)),
    ab: Int32Array.from(list, ([a, b]) => position(a, b)),
    ba: Int32Array.from(list, ([a, b]) => position(b, a)),
  });
  const volume = Float64Array.from(zones, (one, z) => (free[z] === 1 ? one.volume : 1));
  if (contaminants.length > 0) requireVolumes(network, free);
  const byZone = (value: (k: number, z: number) => number): Float64Array =>
    Float64Array.from({ length: contaminants.length * zones.length }, (_, i) =>
      value(Math.floor(i / zones.length), i % zones.length),
    );
  const carbon = carbonLoads(network, heat);
  const place = (names: readonly string[]): Int32Array => {
    const table = new Int32Array(contaminants.length * names.length).fill(-1);
    carbon.forEach(({ contaminant, bed }, index) => {
      const where = names.indexOf(bed.in);
      if (where < 0) return;
      const cell = contaminant * names.length + where;
      if (table[cell] !== -1) throw new Error(`Two carbon beds catch one vapour in "${bed.in}"`);
      table[cell] = index;
    });
    return table;
  };
  return {
    count: contaminants.length,
    zones: zones.length,
    referenceDensity: network.constants.referenceDensity,
    free,
    volume,
    scale: Float64Array.from(contaminants, ({ scale }) => scale),
    initial: byZone((k, z) => contaminants[k]!.initial[zoneNames[z]!] ?? 0),
    deposition: byZone((k, z) => (free[z] === 1 ? volume[z]! * (contaminants[k]!.deposition[zoneNames[z]!] ?? 0) : 0)),
    coagulation: byZone((k, z) => (free[z] === 1 ? volume[z]! * (contaminants[k]!.coagulation ?? 0) : 0)),
    paths: network.paths.length,
    pass: Float64Array.from({ length: contaminants.length * network.paths.length }, (_, i) => {
      const path = network.paths[i % network.paths.length]!;
      return 1 - (path.filterEfficiency[contaminants[Math.floor(i / network.paths.length)]!.name] ?? 0);
    }),
    pattern,
    valueCount: unused + 1,
    rowOf,
    boundary,
    position,
    pathAt: at(pathPairs),
    exchangeAt: at(exchangePairs),
    changeAt: at(changePairs),
    diagonal: Int32Array.from(zones, (_, z) => position(z, z)),
    recirculationZone: Int32Array.from(recirculations, (one) => zone(one.zone)),
    recirculationFlow: Float64Array.from(recirculations, ({ flow }) => flow),
    recirculationEfficiency: Float64Array.from({ length: contaminants.length * recirculations.length }, (_, i) => {
      const name = contaminants[Math.floor(i / recirculations.length)]!.name;
      return recirculations[i % recirculations.length]!.efficiency[name] ?? 0;
    }),
    carbon,
    carbonOnPath: place(network.paths.map(({ name }) => name)),
    carbonOnRecirculation: place(recirculations.map(({ name }) => name)),
  };
}

function requireVolumes(network: Network, free: Uint8Array): void {
  network.zones.forEach(({ name, volume }, z) => {
    if (free[z] === 1 && !(volume > 0))
      throw new Error(`The volume of zone "${name}" is ${volume}; it must be above 0`);
  });
}

function carbonLoads(network: Network, heat: HeatNetwork): (CarbonLoad & { readonly bed: CarbonBed })[] {
  const names = network.contaminants.map(({ name }) => name);
  return network.carbonBeds.flatMap((bed) =>
    bed.vapours.map((vapour) => ({
      bed,
      name: `${bed.name}/${vapour.contaminant}`,
      contaminant: indexOfName(names, vapour.contaminant, 'contaminant'),
      efficiency: vapour.efficiency,
      perUnit: vapour.kilogramsPerUnit / bed.mass,
      slot: heat.layout.slotOf[heat.layout.pointOf(bed.at)]!,
      start: vapour.load,
      law: carbonLaw(vapour.vapour, vapour.kilogramsPerUnit),
    })),
  );
}
