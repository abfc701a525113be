// Brackets printed lying on their side, so that the layers run along the load: for lamps, and arms for cameras.

import type { CameraArm } from '../../cabinet/fittings.ts';
import type { Lamp } from '../../cabinet/light.ts';
import { mm } from './ends.ts';
import { WOOD_SCREW } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { bore, cut, type Flat, outlineArea, placed, prism, type Shape } from './shape.ts';

/** Of a lamp bracket: both legs, their thickness, its width and the gusset. */
const LEG = 32;
const THICK = 4;
const WIDTH = 20;
const GUSSET = 12;
/** Slots for cable ties in the leg under the lamp. */
const TIE = [2.4, 6] as const;
/** A strip is held at least this often, mm. */
const HELD_EVERY = 400;

/** A hole through what lies between two heights of y, across the bracket's width at z. */
function across(outline: readonly Flat[], from: number, to: number, x: number, z: number): Shape {
  return placed(prism(outline, from, to), [x, 0, z], [-90, 0, 0]);
}

/** Of a right angle with a gusset: along x the leg on the wall, along y the other. */
function angle(leg: number, arm: number, thick: number, gusset: number): Flat[] {
  return [
    [0, 0],
    [leg, 0],
    [leg, thick],
    [thick + gusset, thick],
    [thick, thick + gusset],
    [thick, arm],
    [0, arm],
  ];
}

export function lampBracket(id: string, lamp: Lamp): PrintedPart {
  const { shape } = lamp;
  const length = shape.kind === 'strip' ? mm(shape.length) : 0;
  const count =
    shape.kind === 'panel' ? 4 : shape.kind === 'point' ? 1 : Math.max(2, Math.ceil(length / HELD_EVERY) + 1);
  const outline = angle(LEG, LEG, THICK, GUSSET);
  const screw = bore(WOOD_SCREW / 2, [0, 0], 24);
  const screws = [21, 27].map((x, at) => across(screw, 0, THICK, x, at === 0 ? 6 : 14));
  const tie = (z: number): Shape => ({
    kind: 'prism',
    outline: [
      [0, 20],
      [THICK, 20],
      [THICK, 20 + TIE[1]],
      [0, 20 + TIE[1]],
    ],
    from: z,
    to: z + TIE[0],
  });
  const volume = outlineArea(outline) * WIDTH - 2 * outlineArea(screw) * THICK - 2 * THICK * TIE[0] * TIE[1];
  return {
    id: `${id}-bracket`,
    title: `bracket of the lamp ${id}`,
    count,
    shape: cut(prism(outline, 0, WIDTH), ...screws, tie(4), tie(WIDTH - 4 - TIE[0])),
    size: [LEG, LEG, WIDTH],
    volume,
    thinnest: 2,
    why: 'holds the lamp off the board, so that its heat goes into the air',
    sizedFrom: [
      shape.kind === 'strip'
        ? `lamp ${id}: a strip of ${length} mm, held at both ends and every ${HELD_EVERY} mm`
        : `lamp ${id}: a ${shape.kind}`,
    ],
    lies: 'on its side, without support: the layers run along both legs',
    check: [
      `its middle goes to ${lamp.at.map((value) => mm(value)).join(', ')} mm in ${lamp.bay}: right, back, up`,
      'a lamp that is heavier than 300 g wants screws of its own: its mass is not in the file',
    ],
    bay: lamp.bay,
  };
}

/** The foot of an arm. */
const FOOT = 40;
const ARM_GUSSET = 15;
/** Clearance for the camera screw of 1/4 inch (ISO 1222, from memory). */
const CAMERA_SCREW = 6.6;

export function cameraArm(id: string, arm: CameraArm, bay: string | undefined): PrintedPart {
  const [length, width, thick] = [mm(arm.length), mm(arm.width), mm(arm.thickness)];
  const outline = angle(FOOT, length, thick, Math.min(ARM_GUSSET, FOOT - thick - 12));
  const screw = bore(WOOD_SCREW / 2, [0, 0], 24);
  const middle = width / 2;
  const hole = bore(CAMERA_SCREW / 2, [0, 0], 24);
  const wide = width >= CAMERA_SCREW + 6;
  const screws = [thick + 20, FOOT - 5].map((x) => across(screw, 0, thick, x, middle));
  // Through the arm, near its free end: along x.
  const lens = placed(prism(hole, 0, thick), [0, length - 8, middle], [0, 90, 0]);
  return {
    id: `${id}-arm`,
    title: `camera arm ${id}`,
    count: 1,
    shape: cut(prism(outline, 0, width), ...screws, ...(wide ? [lens] : [])),
    size: [FOOT, length, width],
    volume: outlineArea(outline) * width - thick * (2 * outlineArea(screw) + (wide ? outlineArea(hole) : 0)),
    thinnest: 2,
    why: 'the arm of the file: its length, width and thickness decide how much the picture swings',
    sizedFrom: [`fittings.${id}.arm: ${length} mm x ${width} mm x ${thick} mm`],
    lies: 'on its side, without support: the layers run along the arm',
    check: wide
      ? ['a camera screw of 1/4 inch, or a tie']
      : [`an arm of ${width} mm is too narrow for a camera screw: tie the camera on`],
    ...(bay === undefined ? {} : { bay }),
  };
}
