// Concentration over a loaded carbon bed, in the contaminant's own unit.
// The isotherm is C* = C_s(T) exp(-√(ln(full/load)/k)/T), with the saturation C_s over full carbon. A day asks for it thousands of
// times, so `full` and k are read off the physics once, and ln C_s lies in a table.

import { carbonEquilibrium, type SolventName, solvents } from '@stillair/physics';

/** Units/m³ in equilibrium with a load of kg/kg at a temperature, K. */
export type CarbonLaw = (load: number, temperature: number) => number;

/** More than any carbon holds: there the isotherm is at saturation. */
const OVERFULL = 1e6;
/** Nodes of the table, K. */
const COLDEST = 243.15;
const SPACING = 2;
const NODES = 101;
const REFERENCE = 298.15;

/** The law of one vapour. A load that rounding took below zero counts as none. */
export function carbonLaw(vapour: string, kilogramsPerUnit: number): CarbonLaw {
  if (!isSolvent(vapour)) throw new Error(`There is no isotherm of the vapour "${vapour}"`);
  const { table, full, steepness } = isothermOf(vapour);
  const units = 1 / kilogramsPerUnit;
  return (load, temperature) => {
    if (!(load > 0)) return 0;
    const at = (temperature - COLDEST) / SPACING;
    const node = Math.floor(at);
    if (!(node >= 1 && node < NODES - 2)) return units * carbonEquilibrium(solvents[vapour], load, temperature);
    const excess = Math.log(full / load);
    const depth = excess > 0 ? Math.sqrt(excess * steepness) / temperature : 0;
    return units * Math.exp(cubicAt(table, node, at - node) - depth);
  };
}

interface Isotherm {
  /** ln C_s, kg/m³, by node. */
  readonly table: Float64Array;
  /** kg/kg */
  readonly full: number;
  /** 1/k, K² */
  readonly steepness: number;
}

/** Isotherms already read off. A memo of at most as many as there are vapours; it changes no result. */
const known = new Map<SolventName, Isotherm>();

function isothermOf(vapour: SolventName): Isotherm {
  const kept = known.get(vapour);
  if (kept !== undefined) return kept;
  const saturation = (kelvin: number): number => Math.log(carbonEquilibrium(solvents[vapour], OVERFULL, kelvin));
  // -ln(C*/C_s) squared is a straight line in ln(load); two loads tell it.
  const squareAt = (load: number): number =>
    ((Math.log(carbonEquilibrium(solvents[vapour], load, REFERENCE)) - saturation(REFERENCE)) * REFERENCE) ** 2;
  const [low, high] = [1e-6, 1e-3];
  const steepness = (squareAt(low) - squareAt(high)) / Math.log(high / low);
  const isotherm = {
    table: Float64Array.from({ length: NODES }, (_, node) => saturation(COLDEST + node * SPACING)),
    full: low * Math.exp(squareAt(low) / steepness),
    steepness,
  };
  known.set(vapour, isotherm);
  return isotherm;
}

/** Cubic through the nodes around; ln C_s is so smooth that four of them give eight digits. */
function cubicAt(table: Float64Array, node: number, share: number): number {
  const before = table[node - 1]!;
  const from = table[node]!;
  const to = table[node + 1]!;
  const after = table[node + 2]!;
  const rest = 1 - share;
  const outer = (share * rest) / 6;
  return (
    from * rest + to * share - outer * ((1 + rest) * (before - 2 * from + to) + (1 + share) * (from - 2 * to + after))
  );
}

function isSolvent(name: string): name is SolventName {
  return Object.hasOwn(solvents, name);
}
