// A box in which air is led to and fro past lined walls: for a hole through which too much noise comes out. A tray and its lid.

import { EXIT_LOSS, entranceLoss, mitreLoss } from '@stillair/physics';
import type { CabinetPath, Section } from '../../cabinet/cabinet.ts';
import { areaOf } from '../../cabinet/fill-part.ts';
import { sectionWords } from './ends.ts';
import { insertPart } from './path-edit.ts';
import { WALL } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { cut, type Flat, joined, plate, prism, type Shape } from './shape.ts';

/** Times that the air goes along the box. */
const PASSES = 3;
/** Lining on one side of each pass, mm. */
const LINING = 10;
/** Clear length of a pass over its width. */
const LENGTH = 2.5;
/** Clear height of a pass over its width. */
const HEIGHT = 2;

export function labyrinth(id: string, path: CabinetPath, hole: Section, bay: string | undefined): PrintedPart[] {
  const area = areaOf(hole) * 1e6;
  // No pass is narrower than the hole.
  const gap = Math.ceil(Math.sqrt(area / HEIGHT));
  const height = Math.ceil(area / gap);
  const lane = gap + LINING;
  const length = Math.ceil(LENGTH * gap) + gap;
  const [outerX, outerY] = [length + 2 * WALL, PASSES * lane + (PASSES + 1) * WALL];
  const floor = WALL;
  const top = floor + height;
  const box = (x: number, y: number, width: number, depth: number, from: number, to: number): Shape =>
    prism(plate(width, depth, [x + width / 2 - outerX / 2, y + depth / 2 - outerY / 2]), from, to);
  const inside = box(WALL, WALL, length, outerY - 2 * WALL, floor, top);
  const baffles = Array.from({ length: PASSES - 1 }, (_, at) => {
    const y = WALL + (at + 1) * lane + at * WALL;
    // Each leaves a way as wide as a pass at one end, in turn.
    return box(at % 2 === 0 ? WALL : WALL + gap, y, length - gap, WALL, floor, top);
  });
  // The air comes in through the short side at one end of the first pass, and leaves at the other end of the last.
  const mouths = [box(0, WALL + LINING, WALL, gap, floor, top), outMouth()];
  function outMouth(): Shape {
    const y = WALL + (PASSES - 1) * (lane + WALL) + LINING;
    return box(PASSES % 2 === 0 ? 0 : outerX - WALL, y, WALL, gap, floor, top);
  }
  const outline: readonly Flat[] = plate(outerX, outerY);
  const volume =
    outerX * outerY * top -
    length * (outerY - 2 * WALL) * height +
    (PASSES - 1) * (length - gap) * WALL * height -
    2 * WALL * gap * height;
  const factor = entranceLoss(0) + 2 * (PASSES - 1) * mitreLoss(Math.PI / 2) + EXIT_LOSS;
  const shared = {
    count: 1,
    thinnest: WALL,
    sizedFrom: [
      `hole of ${id}: ${sectionWords(hole)}, ${Math.round(area / 100)} cm²`,
      `${PASSES} passes of ${gap} mm x ${height} mm beside ${LINING} mm of lining`,
    ],
    lies: 'flat, without support',
    ...(bay === undefined ? {} : { bay }),
  };
  return [
    {
      ...shared,
      id: `${id}-labyrinth`,
      title: `labyrinth muffler of ${id}`,
      shape: joined(cut(prism(outline, 0, top), inside, ...mouths), ...baffles),
      size: [outerX, outerY, top],
      volume,
      why: 'noise that leaves through the hole meets lined walls on its way; offered because a sound finding does not hold',
      check: [
        `line one side of each pass with ${LINING} mm of foam that does not burn easily: linings are fuel`,
        'take it into the file (the edit above) and compute again before printing it',
      ],
      loss: {
        factor,
        area: (gap * height) / 1e6,
        formula: 'sharp entrance, four mitred right angles, exit',
        source: 'Rennels & Hudson (2012), ch. 9 and 15, from memory',
        edits: [
          insertPart(id, path, path.parts[0]?.part === 'hole' ? 1 : 0, {
            muffler: 'lined box',
            box: `${outerX.toFixed(0)} mm x ${outerY.toFixed(0)} mm x ${top.toFixed(0)} mm`,
            'lined-with': `melamine foam ${LINING} mm`,
            loss: Math.round(100 * factor) / 100,
            size: `${gap} mm x ${height} mm`,
          }),
        ],
      },
    },
    {
      ...shared,
      id: `${id}-labyrinth-lid`,
      title: 'lid of that muffler',
      shape: prism(outline, 0, WALL),
      size: [outerX, outerY, WALL],
      volume: outerX * outerY * WALL,
      why: 'closes the tray: glue it all round',
      check: [],
    },
  ];
}
