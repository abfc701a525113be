// Does the camera see the whole print? Its view cone against the bed and the height of what is printed on it.

import { placeInPicture, type Vector } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Camera } from '../../cabinet/light.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { widerView } from './edits.ts';
import { seenLimit } from './limits.ts';
import { lensOf, litPrint } from './lit.ts';
import type { Spot } from './space.ts';

/** Places along each side of the bed, and from its top to that of the part. */
const GRID = 5;
const LEVELS = 2;

export function coverage(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.cameras).flatMap(([id, camera]) =>
    cabinet.machines[camera.looksAt] === undefined ? [] : [seen(cabinet, id, camera)],
  );
}

function seen(cabinet: Cabinet, id: string, camera: Camera): Measure {
  const common = {
    trade: 'light',
    quantity: 'print-seen',
    part: id,
    title: 'share of the print that the camera sees',
    unit: 'share',
    limit: seenLimit(cabinet),
    cause: causes.cameraPlace,
    weight: 0.3,
    better: 'higher' as const,
  };
  if (camera.at === undefined) {
    const missing = `where the camera hangs is not known: give cameras.${id}.at, such as [60 mm, 40 mm, 700 mm]`;
    return { ...common, missing, steps: [], remedies: [] };
  }
  const lit = litPrint(cabinet, camera.looksAt);
  const { spot } = lit;
  const lens = lensOf(camera, lit);
  const share = shareSeen(camera, lens, spot);
  return {
    ...common,
    value: share,
    compared: true,
    get steps(): readonly Step[] {
      const middle: Vector = [spot.x, spot.y, spot.z + spot.partSize / 2];
      return [
        {
          text: 'from the lens to the middle of the print',
          value: Math.hypot(lens[0] - middle[0], lens[1] - middle[1], lens[2] - middle[2]),
          unit: 'length',
          inputs: [`cameras.${id}.at`],
        },
        { text: 'angle across', value: camera.view[0], unit: 'angle', inputs: [`cameras.${id}.view`] },
        { text: 'angle up', value: camera.view[1], unit: 'angle' },
        {
          text: `of ${GRID * GRID * LEVELS} places over the bed, up to the height of the largest part, so many lie in the picture`,
          value: share,
          unit: 'share',
          formula: 'pinhole, held level and aimed at the middle of the print',
          source:
            'a bed that travels, and what frame and nozzle hide, are left out: from behind or beside the frame more is hidden',
          inputs: [`machines.${camera.looksAt}.bed.size`],
        },
      ];
    },
    get remedies(): readonly Remedy[] {
      return widerView(cabinet, id, camera);
    },
  };
}

export function shareSeen({ view }: Camera, at: Vector, spot: Spot): number {
  const towards: Vector = [spot.x, spot.y, spot.z + spot.partSize / 2];
  if (Math.hypot(at[0] - towards[0], at[1] - towards[1], at[2] - towards[2]) < 1e-6) return 0;
  const step = (i: number, length: number): number => (i / (GRID - 1) - 0.5) * length;
  let inside = 0;
  for (let level = 0; level < LEVELS; level += 1)
    for (let i = 0; i < GRID; i += 1)
      for (let j = 0; j < GRID; j += 1) {
        const place: Vector = [
          spot.x + step(i, spot.width),
          spot.y + step(j, spot.depth),
          spot.z + (level / (LEVELS - 1)) * spot.partSize,
        ];
        const { across, up, depth } = placeInPicture({ at, towards, angles: view }, place);
        if (depth > 0 && Math.abs(across) <= 1 && Math.abs(up) <= 1) inside += 1;
      }
  return inside / (GRID * GRID * LEVELS);
}
