// What the parts of an air path take off the sound that goes through it.

import { endReflection, expansionBoxLoss, linedDuctLoss, octaveBands, plenumLoss } from '@stillair/physics';
import type { CabinetPath, PathPart } from '../../cabinet/cabinet.ts';
import type { Muffler, Octaves } from '../../cabinet/sound.ts';
import { outletArea } from '../../network/section-area.ts';

/** Between the way in and the way out of a baffle box, rad: they are not opposite one another. */
const BAFFLED = Math.PI / 6;

/** The narrowest place of a path, m². */
export function pathArea({ parts }: Pick<CabinetPath, 'parts'>): number {
  return Math.min(...parts.map((part) => outletArea(part) ?? Number.POSITIVE_INFINITY));
}

/** Loss of some parts of a path in the order of the sound, with the open end of a duct behind them, dB. */
export function partsLoss(parts: readonly PathPart[], area: number): Octaves {
  const ducted = parts.some((part) => part.part === 'duct' || (part.part === 'loss' && part.muffler !== undefined));
  return octaveBands.map((frequency, band) =>
    parts.reduce(
      (sum, part) =>
        sum + (part.part === 'loss' && part.muffler !== undefined ? mufflerLoss(part.muffler, part.area, band) : 0),
      ducted ? endReflection(2 * Math.sqrt(area / Math.PI), frequency) : 0,
    ),
  );
}

function mufflerLoss(muffler: Muffler, area: number, band: number): number {
  const frequency = octaveBands[band]!;
  const diameter = 2 * Math.sqrt(area / Math.PI);
  switch (muffler.how) {
    case 'measured':
      return Math.max(muffler.octavesDb[band]!, 0);
    case 'lined duct':
      return linedDuctLoss(muffler.absorption[band]!, Math.PI * diameter, area, muffler.length, frequency);
    case 'lined box': {
      const [length, width, height] = muffler.size as [number, number, number];
      return plenumLoss({
        outlet: area,
        distance: length / Math.cos(BAFFLED),
        angle: BAFFLED,
        surface: 2 * (length * width + width * height + height * length),
        absorption: Math.min(Math.max(muffler.absorption[band]!, 0.02), 1),
      });
    }
    case 'expansion box': {
      const [length, width, height] = muffler.size as [number, number, number];
      return expansionBoxLoss(Math.max((width * height) / area, 1), length, frequency);
    }
  }
}
