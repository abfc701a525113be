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

/** A face of a skin: how far from the inside it begins, and how thick it is; 0 where this skin has no board there. */
export interface SkinFace {
  /** m, 0 or more. */
  readonly offset: number;
  /** m, 0 or more. */
  readonly thickness: number;
}

export type ShellFace = Panel['face'] | 'front';

/** A board by the corners of its box, m: x to the right, y to the back, z upwards, from the inside lower left front corner. */
export interface ShellPanel {
  readonly face: ShellFace;
  readonly from: readonly [number, number, number];
  readonly to: readonly [number, number, number];
}

/**
 * The boards of one skin whose faces differ in offset and thickness, as boxes. Tops and bottoms run over the sides, back and
 * front overlay all; together they fill the space between two boxes exactly, so that no corner is missing or counted twice.
 *
 *     sum of volumes = (W + l + r)(D + f + b)(H + u + d) at the outer side, less the same at the inner side
 *
 * | symbol           | meaning                                              | unit |
 * | ---------------- | ---------------------------------------------------- | ---- |
 * | W, D, H          | inside width, depth, height                          | m    |
 * | l, r, f, b, u, d | offsets of left, right, front, back, top and bottom, | m    |
 * |                  | with the thickness added for the outer side          |      |
 *
 * @param inside - Sizes above 0.
 * @param skin - Offset and thickness of each face.
 * @returns Boards of the faces whose thickness is above 0.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: butt joints; rebates and housings add to it. Source: geometry, the convention above. Checked: exact.
 *
 * @example The sides of 18 mm between a top of 20 mm and a bottom of 22 mm are as high as the inside
 * ```ts
 * const face = (thickness) => ({ offset: 0, thickness });
 * const skin = { top: face(0.02), bottom: face(0.022), left: face(0.018), right: face(0.018), back: face(0.006), front: face(0) };
 * shellPanels({ width: 0.6, depth: 0.5, height: 0.7 }, skin).find((panel) => panel.face === 'left').to[2]; // => 0.7
 * shellPanels({ width: 0.6, depth: 0.5, height: 0.7 }, skin).find((panel) => panel.face === 'top').to[0]; // => 0.618
 * ```
 */
export function shellPanels(inside: BoxSize, skin: Readonly<Record<ShellFace, SkinFace>>): readonly ShellPanel[] {
  const { width, depth, height } = inside;
  mustBePositive('shellPanels', 'width', width);
  mustBePositive('shellPanels', 'depth', depth);
  mustBePositive('shellPanels', 'height', height);
  for (const [face, { offset, thickness }] of Object.entries(skin)) {
    mustNotBeNegative('shellPanels', `offset of ${face}`, offset);
    mustNotBeNegative('shellPanels', `thickness of ${face}`, thickness);
  }
  const { left, right, front, back, top, bottom } = skin;
  const outer = ({ offset, thickness }: SkinFace): number => offset + thickness;
  const [x0, x1] = [-left.offset, width + right.offset];
  const [y0, y1] = [-front.offset, depth + back.offset];
  const [z0, z1] = [-bottom.offset, height + top.offset];
  const [a0, a1] = [-outer(left), width + outer(right)];
  const [c0, c1] = [-outer(bottom), height + outer(top)];
  const panels: readonly ShellPanel[] = [
    { face: 'top', from: [a0, y0, z1], to: [a1, y1, c1] },
    { face: 'bottom', from: [a0, y0, c0], to: [a1, y1, z0] },
    { face: 'left', from: [a0, y0, z0], to: [x0, y1, z1] },
    { face: 'right', from: [x1, y0, z0], to: [a1, y1, z1] },
    { face: 'back', from: [a0, y1, c0], to: [a1, depth + outer(back), c1] },
    { face: 'front', from: [a0, -outer(front), c0], to: [a1, y0, c1] },
  ];
  return panels.filter(({ face }) => skin[face].thickness > 0);
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
