// Concentration over a loaded carbon bed, in the contaminant's own unit.

import { carbonEquilibrium, type SolventName, solvents } from '@stillair/physics';

/** Units/m³ in equilibrium with a load of kg/kg at a temperature, K. */
export type CarbonLaw = (load: number, temperature: number) => number;

/** The law of one vapour. A load that rounding took below zero counts as none. */
export function carbonLaw(vapour: string, kilogramsPerUnit: number): CarbonLaw {
  if (!isSolvent(vapour)) throw new Error(`There is no isotherm of the vapour "${vapour}"`);
  const solvent = solvents[vapour];
  return (load, temperature) => carbonEquilibrium(solvent, Math.max(load, 0), temperature) / kilogramsPerUnit;
}

function isSolvent(name: string): name is SolventName {
  return Object.hasOwn(solvents, name);
}
