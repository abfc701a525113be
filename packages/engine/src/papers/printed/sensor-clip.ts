// A clip that holds a sensor's probe away from the wall, whatever its thickness: it lies in a groove and is tied.

import type { SensorPart } from '../../cabinet/cabinet.ts';
import { mm } from './ends.ts';
import { PLATE, WOOD_SCREW } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { bore, cut, type Flat, joined, outlineArea, placed, plate, prism } from './shape.ts';

const FOOT = [40, 24] as const;
/** Of the probe's middle from the wall, mm: in the air, not in the film at the wall. */
const OFF_WALL = 30;
const POST = 12;
const HEAD = [18, 14, 10] as const;
/** Groove of 90 degrees: probes of 3 to 12 mm lie in it. */
const GROOVE = [12, 6] as const;
/** For a cable tie of 4 mm. */
const SLOT = [6, 2.4] as const;

export function sensorClip(id: string, sensor: SensorPart): PrintedPart {
  const screws = [-1, 1].map((sign) => bore(WOOD_SCREW / 2, [sign * 14, 0], 24));
  const foot = plate(...FOOT);
  const low = OFF_WALL - HEAD[2];
  const top = OFF_WALL;
  const groove: Flat[] = [
    [-GROOVE[0] / 2, top],
    [0, top - GROOVE[1]],
    [GROOVE[0] / 2, top],
  ];
  const head = cut(
    prism(plate(HEAD[0], HEAD[1]), low, top),
    // Drawn upright and laid along y.
    placed(prism(groove, 0, HEAD[1]), [0, HEAD[1] / 2, 0], [90, 0, 0]),
    prism(plate(HEAD[0], SLOT[0]), low, low + SLOT[1]),
  );
  const post = prism(plate(POST, POST), PLATE, low + SLOT[1]);
  const volume =
    PLATE * (outlineArea(foot) - screws.reduce((sum, hole) => sum + outlineArea(hole), 0)) +
    POST ** 2 * (low - PLATE) +
    HEAD[0] * HEAD[1] * HEAD[2] -
    (GROOVE[0] * GROOVE[1] * HEAD[1]) / 2 -
    // The post stands in the slot.
    (HEAD[0] - POST) * SLOT[0] * SLOT[1];
  return {
    id: `${id}-clip`,
    title: `clip of the sensor ${id}`,
    count: 1,
    shape: joined(cut(prism(foot, 0, PLATE), ...screws.map((hole) => prism(hole, 0, PLATE))), post, head),
    size: [FOOT[0], FOOT[1], top],
    volume,
    thinnest: SLOT[1],
    why: 'a probe that touches a wall or sees a hot bed tells their heat, not the air’s (common practice)',
    sizedFrom: [`sensor ${id}: ${mm(sensor.height)} mm above the floor of ${sensor.bay}`, 'probes of 3 to 12 mm'],
    lies: 'on its foot; the head’s ends hang 3 mm over and print without support',
    check: [
      `screw it to the wall of ${sensor.bay} with the groove ${mm(sensor.height)} mm above the floor`,
      'turn it so that no bed is seen by the probe, or shade it',
      'a cable tie of 4 mm',
    ],
    bay: sensor.bay,
  };
}
