// What a board lets through and swallows, octave by octave: measured rows where there are any, else the model.

import { panelOctaves } from '@stillair/physics';
import type { Build, Layer } from '../../cabinet/cabinet.ts';
import { absorptionOf } from '../../cabinet/fill-sound.ts';
import type { CabinetSound, Octaves } from '../../cabinet/sound.ts';

/** A row of another thickness counts up to this ratio, by the law of mass. */
const NEAR = 1.7;
/** Lighter boards fill or line, and hold no sound back but by their mass, kg/m³. */
const POROUS = 200;
/** Octaves of 63 and 125 Hz have a doubt of their own. */
const LOW_BANDS = 2;

export interface BoardLoss {
  readonly loss: Octaves;
  /** Where it is from, in words. */
  readonly from: string;
}

/** Several leaves count as one of their whole mass: light ones gain nothing from the air between them. */
export function boardLoss({ layers }: Pick<Build, 'layers'>, sound: CabinetSound): BoardLoss {
  const mass = layers.reduce((sum, { thickness, density }) => sum + thickness * density, 0);
  const leaf = heaviest(layers.filter(({ density }) => density > POROUS)) ?? heaviest(layers)!;
  const { transmission, coincidence, damping } = sound.boards[leaf.material]!;
  const row = [...transmission].sort((a, b) => ratio(a.thickness, leaf) - ratio(b.thickness, leaf))[0];
  const near = row !== undefined && ratio(row.thickness, leaf) <= NEAR;
  const gain = near ? 20 * Math.log10(mass / (row.thickness * leaf.density)) : 0;
  const octaves = near
    ? row.octavesDb.map((one) => one + gain)
    : panelOctaves({
        surfaceMass: mass,
        criticalFrequency: leaf.density > POROUS ? coincidence / leaf.thickness : TOO_HIGH,
        damping,
      });
  const { panelsDb, lowBandsDb } = sound.doubt;
  return {
    loss: octaves.map((one, band) => Math.max(one + (band < LOW_BANDS ? lowBandsDb : panelsDb), 0)),
    from: near ? 'a measured row of its board, by the law of mass' : 'the law of mass with its dip (Sharp)',
  };
}

/** Critical frequency of what does not bend, Hz. */
const TOO_HIGH = 1e5;

function heaviest(layers: readonly Layer[]): Layer | undefined {
  return [...layers].sort((a, b) => b.thickness * b.density - a.thickness * a.density)[0];
}

function ratio(thickness: number, layer: Layer): number {
  return Math.exp(Math.abs(Math.log(thickness / layer.thickness)));
}

/** Absorption of the side that a bay sees: the innermost layer, or for the far side of a shelf the outermost. */
export function boardAbsorption(
  { layers }: Pick<Build, 'layers'>,
  side: 'inside' | 'outside',
  sound: CabinetSound,
): Octaves {
  const layer = layers.at(side === 'inside' ? 0 : -1)!;
  return absorptionOf(layer, sound.boards[layer.material]!.absorption);
}
