// Which material a job prints. A job file does not say: a person does, or the one whose usual set-points lie nearest is taken.

import { catalogueData } from '../cabinet/catalogue.data.ts';
import { isFault, parseQuantity } from '../units/quantity.ts';
import type { JobSummary } from './job.ts';

/** Of a material only what tells it apart and weighs it: K, K, kg/m³. */
export interface MaterialFacts {
  readonly nozzle: number;
  readonly bed: number;
  readonly density: number;
}

export interface JobMaterial {
  readonly name: string;
  readonly density: number;
  /** `nearest`: taken for it by its set-points. */
  readonly how: 'given' | 'nearest';
}

/** Set-points farther from all usual ones than this together, K, say nothing. */
const FARTHEST = 40;

/** The materials of the catalogue, for a job without a cabinet. */
export function catalogueMaterials(): Readonly<Record<string, MaterialFacts>> {
  const entries = catalogueData['materials'] ?? {};
  return Object.fromEntries(
    Object.entries(entries).map(([name, entry]) => {
      const { nozzle, bed, density } = entry as Readonly<Record<string, string>>;
      return [
        name,
        {
          nozzle: numberOf('temperature', nozzle!),
          bed: numberOf('temperature', bed!),
          density: numberOf('density', density!),
        },
      ];
    }),
  );
}

function numberOf(kind: 'temperature' | 'density', text: string): number {
  const quantity = parseQuantity(kind, text);
  if (isFault(quantity)) throw new Error(`the catalogue's "${text}" is no ${kind}`); // its own test would have said so
  return quantity.value;
}

/** The material by its name, else the nearest by what the job holds longest; none when nothing is near. */
export function materialOf(
  named: string | undefined,
  { nozzle, bed }: JobSummary['held'],
  materials: Readonly<Record<string, MaterialFacts>>,
): JobMaterial | undefined {
  if (named !== undefined) {
    const found = Object.hasOwn(materials, named) ? materials[named] : undefined;
    return found === undefined ? undefined : { name: named, density: found.density, how: 'given' };
  }
  if (nozzle === undefined) return undefined;
  let best: JobMaterial | undefined;
  let least = FARTHEST;
  for (const [name, facts] of Object.entries(materials)) {
    const away = Math.abs(facts.nozzle - nozzle) + (bed === undefined ? 0 : Math.abs(facts.bed - bed));
    if (away >= least) continue;
    least = away;
    best = { name, density: facts.density, how: 'nearest' };
  }
  return best;
}
