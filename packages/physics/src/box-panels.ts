// The panels of a box from its inside sizes, skin by skin: which board runs over which is agreed once, so that no corner is
// counted twice or left out. Tops and bottoms run over the sides, backs overlay all, the front is open.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

export interface BoxSize {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
}

export interface Panel {
  readonly face: 'top' | 'bottom' | 'left' | 'right' | 'back';
  /** The longer way first is not implied: length runs left to right or front to back, width upwards or to the back. */
  readonly length: number;
  readonly width: number;
}

/**
 * The five panels of one skin round a box that is open in front.
 *
 *     top, bottom: (W + 2o + 2t) × (D + o),   sides: (D + o) × (H + 2o),   back: (W + 2o + 2t) × (H + 2o + 2t)
 *
 * | symbol  | meaning                                            | unit |
 * | ------- | -------------------------------------------------- | ---- |
 * | W, D, H | inside width, depth, height                        | m    |
 * | o       | what lies inside of this skin: other skins, cavity | m    |
 * | t       | thickness of this skin                             | m    |
 *
 * @param inside - Sizes above 0.
 * @param offset - o, m, 0 or more.
 * @param thickness - t, m, above 0.
 * @returns Top, bottom, left, right, back.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: butt joints; add the depth of rebates and housings to the cut sizes. Source: geometry, the convention above. Checked: exact.
 *
 * @example The outer back of 600 by 700 by 600 mm with 12 mm boards and a cavity of 30 mm, mm²
 * ```ts
 * 1e6 * skinPanels({ width: 0.6, depth: 0.6, height: 0.7 }, 0.042, 0.012)[4].length * 0.808; // => 572064
 * ```
 */
export function skinPanels(inside: BoxSize, offset: number, thickness: number): readonly Panel[] {
  const { width, depth, height } = inside;
  mustBePositive('skinPanels', 'width', width);
  mustBePositive('skinPanels', 'depth', depth);
  mustBePositive('skinPanels', 'height', height);
  mustNotBeNegative('skinPanels', 'offset', offset);
  mustBePositive('skinPanels', 'thickness', thickness);
  const across = width + 2 * offset + 2 * thickness;
  const back = depth + offset;
  const up = height + 2 * offset;
  const level = { length: across, width: back };
  const upright = { length: back, width: up };
  return [
    { face: 'top', ...level },
    { face: 'bottom', ...level },
    { face: 'left', ...upright },
    { face: 'right', ...upright },
    { face: 'back', length: across, width: up + 2 * thickness },
  ];
}

/**
 * Metres of joint of one skin: the rim of its back, and the four edges from front to back.
 *
 * @param panels - As `skinPanels` gives them.
 * @returns m.
 *
 * @remarks Valid: the convention of `skinPanels`. Source: geometry. Checked: exact.
 *
 * @example One skin of 12 mm round 600 by 700 by 600 mm
 * ```ts
 * skinJoints(skinPanels({ width: 0.6, depth: 0.6, height: 0.7 }, 0, 0.012)); // => 5.096
 * ```
 */
export function skinJoints(panels: readonly Panel[]): number {
  const back = panels.find(({ face }) => face === 'back');
  const side = panels.find(({ face }) => face === 'left');
  if (back === undefined || side === undefined) throw new RangeError('skinJoints: panels are not those of a skin');
  return 2 * (back.length + back.width) + 4 * side.length;
}
