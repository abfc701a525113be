// What a job gives off: its material's rates, more when the nozzle is hotter, a burst of particles at the start, a tail of
// vapours after the end, and PM2.5 as the mass of the particles.

import { EMISSION_SHAPE, meanParticleMass, temperatureFactor } from '@stillair/physics';
import type { Cabinet, Job } from '../cabinet/cabinet.ts';
import type { EmissionCourse } from './network.ts';

export interface JobEmission extends EmissionCourse {
  readonly contaminant: string;
  /** Units per second, settled. */
  readonly rate: number;
}

/** One mode of 50 nm, geometric deviation 1.6, as dense as water: 1.8e-11 µg a particle (Hatch and Choate). */
const MICROGRAMS_PER_PARTICLE = meanParticleMass(50e-9, 1.6, 1000) * 1e9;

const burst = { ratio: EMISSION_SHAPE.burstRatio.central, time: EMISSION_SHAPE.burstTime.central };
const tail = { share: EMISSION_SHAPE.tailShare.central, time: EMISSION_SHAPE.tailTime.central };

/** Settled rates and courses of one job, by contaminant; the material's own PM2.5 rate stands before the derived one. */
export function jobEmissions(cabinet: Cabinet, job: Job): readonly JobEmission[] {
  const material = cabinet.materials[job.material]!;
  const hotter = temperatureFactor(job.nozzle - material.nozzle) * cabinet.factors.emissionParticles;
  const number = material.emissions['particles']?.p50 ?? 0;
  const rates = {
    ...(number > 0 ? { 'PM2.5': number * MICROGRAMS_PER_PARTICLE } : {}),
    ...Object.fromEntries(Object.entries(material.emissions).map(([contaminant, { p50 }]) => [contaminant, p50])),
  };
  return Object.entries(rates).map(([contaminant, rate]) =>
    contaminant === 'particles' || contaminant === 'PM2.5'
      ? { contaminant, rate: rate * hotter, burst }
      : { contaminant, rate: rate * cabinet.factors.emissionVapours, tail },
  );
}
