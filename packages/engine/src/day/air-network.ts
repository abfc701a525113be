// The air network in typed arrays: what never changes during a day (AirNetwork) and what does (AirState).
// Pressure differences of a path are taken at its own height; every zone is a hydrostatic column of its own density.

import type { AirPath, Fan, FanPath, Network } from '../network/network.ts';
import { type FanCurveSum, lossFactor, newFanCurveSum } from './fan-curve.ts';
import { type Pattern, patternOf } from './sparse-lu.ts';
import { indexOfName } from './when.ts';

export const ORIFICE = 0;
export const CRACK = 1;
export const FIXED = 2;
export const TALL = 3;
export const FAN = 4;
/** A path of resistances alone, whose linear part rules near zero: linear Q + quadratic Q|Q|. */
export const GAP = 5;
/** Drive below which a path without linear resistance is bent to a straight line, Pa. */
export const FAN_BEND = 1e-5;

/** Below this a bend at zero is too sharp to compute with, Pa. */
const SMALLEST_BEND = 1e-7;
/** A shut flap without a leak still leaks through a pinhole, so that no zone is sealed by rounding, m². */
const SMALLEST_LEAK = 1e-8;
/** Discharge coefficient of a shut flap's leak: a sharp-edged gap. Common practice, no source. */
const LEAK_DISCHARGE = 0.6;

export interface AirNetwork {
  readonly gravity: number;
  readonly gasDensity: number; // p/R of the ideal gas, 0 when the density is constant
  readonly constantDensity: number;
  readonly referenceDensity: number;
  readonly fanDensityScaling: boolean;
  readonly zoneCount: number;
  readonly pathCount: number;
  readonly fixedPressure: Uint8Array;
  readonly zoneHeight: Float64Array;
  readonly kind: Uint8Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** Height of the path above the reference height of either zone, m. */
  readonly leverFrom: Float64Array;
  readonly leverTo: Float64Array;
  /** Orifice: count Cd A √2. Crack: c. Fixed flow: kg/s. Tall opening: Cd width √2. */
  readonly coefficient: Float64Array;
  /** Crack: (n - 1)/2. Tall opening: its height. */
  readonly extra: Float64Array;
  /** dp_lin². */
  readonly bend: Float64Array;
  /** Fan path's own parts: dp = linear Q + quadratic Q|Q| + loss rho Q|Q|. */
  readonly linear: Float64Array;
  readonly quadratic: Float64Array;
  readonly loss: Float64Array;
  /** Flap: opens above `flapAt` Pa (-1: no flap); shut it resists flapLoss rho Q|Q|. */
  readonly flapAt: Float64Array;
  readonly flapLoss: Float64Array;
  /** All that joins the same two zones behind the same filter. */
  readonly ducts: Ducts;
  /** Equations of the solved pressures, and the row of each zone; -1 where the pressure is fixed. */
  readonly pattern: Pattern;
  readonly rowOf: Int32Array;
  /** Duct of each path, and 1 where they run the same way, -1 where they do not. */
  readonly ductOf: Int32Array;
  readonly ductSign: Float64Array;
  /** Paths duct by duct: neighbours in this order share their zones. */
  readonly order: Int32Array;
  readonly fans: readonly (readonly Fan[])[];
  readonly fanPaths: Int32Array;
  /** Fans of path p are fanStart[p] … fanStart[p + 1] - 1. */
  readonly fanStart: Int32Array;
}

export interface Ducts {
  readonly count: number;
  readonly a: Int32Array;
  readonly b: Int32Array;
  /** Path whose filter the air passes, or the number of paths where there is none. */
  readonly filter: Int32Array;
}

/** Matrix positions (a,a), (b,b), (a,b), (b,a) of each duct. */
export interface DuctPlaces {
  readonly aa: Int32Array;
  readonly bb: Int32Array;
  readonly ab: Int32Array;
  readonly ba: Int32Array;
}

export interface AirState {
  readonly open: Uint8Array;
  /** The open paths that pressures drive; then the open fixed flows. */
  readonly openList: Int32Array;
  openCount: number;
  fixedCount: number;
  readonly pressure: Float64Array;
  readonly density: Float64Array;
  readonly rootDensity: Float64Array;
  /** Hydrostatic part of the pressure difference, Pa. */
  readonly head: Float64Array;
  /** kg/s, + from `from` to `to`; net through tall openings. */
  readonly flow: Float64Array;
  /** kg/s against the net flow of tall openings. */
  readonly counter: Float64Array;
  /** kg/s through each duct, from a to b and from b to a. */
  readonly along: Float64Array;
  readonly against: Float64Array;
  /** d flow / d pressure difference. */
  readonly slope: Float64Array;
  /** Curves of the running fans, by path. */
  readonly curves: readonly FanCurveSum[];
  /** Share of full speed, by fan. */
  readonly speed: Float64Array;
  /** m³/s of fan paths and gaps. */
  readonly volume: Float64Array;
  /** The same at the last accepted state: names the branch of a curve with a dip. */
  readonly branchFlow: Float64Array;
  /** A flow on the branch that is tried while pressures are sought; and whether the solution lies beyond it (-1, 0, 1). */
  readonly trialFlow: Float64Array;
  readonly beyond: Int8Array;
  /** Row of the unknown pressure of each zone; the number of rows for zones whose pressure is known. */
  readonly unknownOf: Int32Array;
  unknowns: number;
  readonly residual: Float64Array;
  /** Values by `pattern`, then one for what nobody needs; what it is before anything is added; and where each duct's values lie. */
  readonly matrix: Float64Array;
  readonly blank: Float64Array;
  readonly ductAt: DuctPlaces;
  readonly step: Float64Array;
  readonly startPressure: Float64Array;
  /** Heads and densities of the last solution; with its factored matrix they tell where the next one will be. */
  readonly keptHead: Float64Array;
  readonly keptDensity: Float64Array;
  /** By zone: change of the density since then, as a share. */
  readonly denser: Float64Array;
  predictable: boolean;
  factored: boolean;
  /**
   * Net flow, as a share of the largest path flow, from which one linear correction ends the search: the flows then balance to
   * rounding and obey their laws to about the square of this share.
   */
  nearly: number;
  /** Names of paths whose fixed flow found no way out. */
  heldBack: readonly number[];
  /** Newton rounds so far. */
  rounds: number;
}

export function compileAir(network: Network): AirNetwork {
  const { constants, density, paths, zones } = network;
  const zoneNames = zones.map(({ name }) => name);
  const count = paths.length;
  const fans = paths.map((path) => (path.type === 'fan-path' ? path.fans : []));
  const fanStart = new Int32Array(count + 1);
  fans.forEach((list, p) => {
    fanStart[p + 1] = fanStart[p]! + list.length;
  });
  const numbers = (value: (path: AirPath) => number): Float64Array => Float64Array.from(paths, value);
  const from = Int32Array.from(paths, (path) => indexOfName(zoneNames, path.from, 'zone'));
  const to = Int32Array.from(paths, (path) => indexOfName(zoneNames, path.to, 'zone'));
  const ofFanPath = (value: (path: FanPath) => number): Float64Array =>
    numbers((path) => (path.type === 'fan-path' ? value(path) : 0));
  const { ducts, ductOf, ductSign } = gatherDucts(network, from, to);
  const kind = Uint8Array.from(paths, kindOf);
  const fixedPressure = Uint8Array.from(zones, ({ pressure }) => (pressure.kind === 'fixed' ? 1 : 0));
  return {
    gravity: constants.gravity,
    gasDensity: density.model === 'ideal-gas' ? constants.atmosphere / constants.gasConstant : 0,
    constantDensity: density.model === 'constant' ? density.value : 0,
    referenceDensity: constants.referenceDensity,
    fanDensityScaling: network.fanDensityScaling,
    zoneCount: zones.length,
    pathCount: count,
    fixedPressure,
    zoneHeight: Float64Array.from(zones, ({ zRef }) => zRef),
    kind,
    from,
    to,
    leverFrom: Float64Array.from(paths, (path, p) => path.z - zones[from[p]!]!.zRef),
    leverTo: Float64Array.from(paths, (path, p) => path.z - zones[to[p]!]!.zRef),
    coefficient: numbers(coefficientOf),
    extra: numbers((path) =>
      path.type === 'crack' ? 0.5 * (path.exponent - 1) : path.type === 'tall-opening' ? path.height : 0,
    ),
    bend: numbers((path) => ('linearBelow' in path ? Math.max(path.linearBelow, SMALLEST_BEND) ** 2 : 0)),
    linear: ofFanPath((path) => path.resistances.reduce((sum, part) => sum + part.linear, 0)),
    quadratic: ofFanPath((path) => path.resistances.reduce((sum, part) => sum + part.quadratic, 0)),
    loss: ofFanPath((path) => lossFactor(path.minor)),
    flapAt: numbers((path) => (path.type === 'fan-path' && path.flap !== undefined ? path.flap.opensAt : -1)),
    flapLoss: ofFanPath(({ flap }) =>
      flap === undefined ? 0 : 1 / (2 * (LEAK_DISCHARGE * Math.max(flap.leakArea, SMALLEST_LEAK)) ** 2),
    ),
    ducts,
    ...equationsOf(fixedPressure, ducts),
    ductOf,
    ductSign,
    order: Int32Array.from(paths.keys()).sort((p, q) => ductOf[p]! - ductOf[q]! || kind[p]! - kind[q]! || p - q),
    fans,
    fanPaths: Int32Array.from([...paths.keys()].filter((p) => fans[p]!.length > 0)),
    fanStart,
  };
}

function gatherDucts(
  { paths, carbonBeds }: Network,
  from: Int32Array,
  to: Int32Array,
): { readonly ducts: Ducts; readonly ductOf: Int32Array; readonly ductSign: Float64Array } {
  const list: { readonly a: number; readonly b: number; readonly filter: number }[] = [];
  const known = new Map<string, number>();
  const filtering = new Set(carbonBeds.map((bed) => bed.in));
  const ductOf = Int32Array.from(paths, ({ name, filterEfficiency }, p) => {
    const filter = Object.keys(filterEfficiency).length > 0 || filtering.has(name) ? p : paths.length;
    const [a, b] = from[p]! < to[p]! ? [from[p]!, to[p]!] : [to[p]!, from[p]!];
    const key = `${a} ${b} ${filter}`;
    const duct = known.get(key) ?? list.push({ a, b, filter }) - 1;
    known.set(key, duct);
    return duct;
  });
  return {
    ducts: {
      count: list.length,
      a: Int32Array.from(list, ({ a }) => a),
      b: Int32Array.from(list, ({ b }) => b),
      filter: Int32Array.from(list, ({ filter }) => filter),
    },
    ductOf,
    ductSign: Float64Array.from(ductOf, (duct, p) => (list[duct]!.a === from[p] ? 1 : -1)),
  };
}

function equationsOf(
  fixedPressure: Uint8Array,
  { a, b }: Ducts,
): { readonly pattern: Pattern; readonly rowOf: Int32Array } {
  let solved = 0;
  const number = Int32Array.from(fixedPressure, (fixed) => (fixed === 1 ? -1 : solved++));
  const pairs = [...a].map((zone, d) => [number[zone]!, number[b[d]!]!] as const);
  const pattern = patternOf(
    solved,
    pairs.filter(([one, other]) => one >= 0 && other >= 0),
  );
  return { pattern, rowOf: number.map((u) => (u < 0 ? -1 : pattern.rowOf[u]!)) };
}

function kindOf(path: AirPath): number {
  if (path.type === 'orifice') return ORIFICE;
  if (path.type === 'crack') return CRACK;
  if (path.type === 'fixed-flow') return FIXED;
  if (path.type === 'tall-opening') return TALL;
  return isGap(path) ? GAP : FAN;
}

function isGap({ fans, flap, minor, resistances }: FanPath): boolean {
  const linear = resistances.reduce((sum, part) => sum + part.linear, 0);
  const quadratic = resistances.reduce((sum, part) => sum + part.quadratic, 0);
  const plain = fans.length === 0 && flap === undefined && minor.length === 0;
  return plain && linear > 0 && linear * linear >= 400 * quadratic * FAN_BEND;
}

function coefficientOf(path: AirPath): number {
  if (path.type === 'orifice') return path.count * path.dischargeCoefficient * path.area * Math.SQRT2;
  if (path.type === 'crack') return path.coefficient;
  if (path.type === 'fixed-flow') return path.flow;
  return path.type === 'tall-opening' ? path.dischargeCoefficient * path.width * Math.SQRT2 : 0;
}

/** A fresh state: everything shut, pressures at rest under the first zone of fixed pressure. */
export function newAirState(air: AirNetwork, network: Network): AirState {
  const { zoneCount, pathCount, pattern } = air;
  const places = (): Int32Array => new Int32Array(air.ducts.count);
  const anchor = network.zones.find(({ pressure }) => pressure.kind === 'fixed');
  const rest = anchor?.pressure.kind === 'fixed' ? anchor.pressure.value : 0;
  const weight = air.referenceDensity * air.gravity;
  return {
    open: new Uint8Array(pathCount),
    openList: new Int32Array(pathCount),
    openCount: 0,
    fixedCount: 0,
    pressure: Float64Array.from(network.zones, ({ pressure, zRef }) =>
      pressure.kind === 'fixed' ? pressure.value : rest - weight * (zRef - (anchor?.zRef ?? 0)),
    ),
    density: new Float64Array(zoneCount),
    rootDensity: new Float64Array(zoneCount),
    head: new Float64Array(pathCount),
    flow: new Float64Array(pathCount),
    counter: new Float64Array(pathCount),
    along: new Float64Array(air.ducts.count),
    against: new Float64Array(air.ducts.count),
    slope: new Float64Array(pathCount),
    curves: air.fans.map(newFanCurveSum),
    speed: new Float64Array(air.fanStart[pathCount]!),
    volume: new Float64Array(pathCount),
    branchFlow: new Float64Array(pathCount).fill(Number.POSITIVE_INFINITY),
    trialFlow: new Float64Array(pathCount),
    beyond: new Int8Array(pathCount),
    unknownOf: new Int32Array(zoneCount),
    unknowns: 0,
    residual: new Float64Array(pattern.size + 1),
    matrix: new Float64Array(pattern.length + 1),
    blank: new Float64Array(pattern.length + 1),
    ductAt: { aa: places(), bb: places(), ab: places(), ba: places() },
    step: new Float64Array(pattern.size + 1),
    startPressure: new Float64Array(zoneCount),
    keptHead: new Float64Array(pathCount),
    keptDensity: new Float64Array(zoneCount),
    denser: new Float64Array(zoneCount),
    predictable: false,
    factored: false,
    nearly: 1e-5,
    heldBack: [],
    rounds: 0,
  };
}
