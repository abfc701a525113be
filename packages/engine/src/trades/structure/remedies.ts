// What may mend a shelf, a door, or a cabinet that stands badly.

import type { Cabinet, Layer } from '../../cabinet/cabinet.ts';
import type { Remedy } from '../measure.ts';
import {
  millimetres,
  setBottomBoards,
  setBottomStrip,
  setDoor,
  setHinges,
  setShelf,
  shelfBoards,
  strapToWall,
} from '../remedy-edits.ts';
import type { Carrier, Stiffness } from '../standing-on.ts';

/** Thicker by this much, m: the next board but one. */
const THICKER = 0.006;

/** A strip under its front edge, a thicker board, a post in its middle. */
export function stifferBoard(cabinet: Cabinet, carrier: Carrier, { material, part }: Stiffness): Remedy[] {
  const { hold } = carrier;
  const thick = part.top - part.bottom;
  const layers = carrier.build.layers.map(
    (layer): Layer => (layer.material === material ? { ...layer, thickness: layer.thickness + THICKER } : layer),
  );
  const metal = thick < 0.004;
  const lipping = metal
    ? { size: '30 mm x 1 mm', edges: 'front and back', stiffness: '200 GPa' }
    : { size: '40 mm x 20 mm', edges: hold.lipping === undefined ? 'front' : 'front and back' };
  const strip = metal
    ? `fold the front and back edge of ${carrier.id} down by 30 mm`
    : hold.lipping === undefined
      ? `glue a strip of 40 mm x 20 mm on edge under the front of ${carrier.id}`
      : `a strip of 40 mm x 20 mm under both long edges of ${carrier.id}`;
  const partition = cabinet.partitions.find(({ id }) => id === carrier.id);
  if (partition === undefined)
    return [
      { says: strip, edits: [setBottomStrip(lipping)] },
      { says: `${material} ${millimetres(thick + THICKER)} for the bottom`, edits: [setBottomBoards(layers)] },
    ];
  return [
    ...(hold.lipping?.edges === 2 ? [] : [{ says: strip, edits: [setShelf(partition, 'lipping', lipping)] }]),
    ...(metal
      ? []
      : [
          {
            says: `${material} ${millimetres(thick + THICKER)} for ${carrier.id}`,
            edits: [setShelf(partition, 'made-of', shelfBoards(layers))],
          },
        ]),
    {
      says: `a post or upright board below the middle of ${carrier.id}`,
      edits: [setShelf(partition, 'posts', hold.posts === 0 ? 1 : hold.posts + 1)],
    },
  ];
}

export function cleats({ partitions }: Cabinet, { id }: Carrier): Remedy[] {
  const partition = partitions.find((one) => one.id === id);
  return partition === undefined
    ? []
    : [{ says: `cleats below ${id} in place of pins`, edits: [setShelf(partition, 'joint', 'cleats')] }];
}

/** One hinge more; a leaf of plastic in place of one of glass. */
export function lighterDoor({ doors, structure }: Cabinet, id: string): Remedy[] {
  const { build } = doors[id]!;
  const light = build.layers.map(
    (layer): Layer => (layer.material.includes('glass') ? { ...layer, material: 'polycarbonate' } : layer),
  );
  const { count } = structure.hinges[id]!;
  return [
    { says: `${count + 1} hinges for ${id}`, edits: [setHinges(id, count + 1)] },
    ...(light.some(({ material }, at) => material !== build.layers[at]!.material)
      ? [{ says: `polycarbonate in place of the glass of ${id}`, edits: [setDoor(id, light, [])] }]
      : []),
  ];
}

export const strapped: readonly Remedy[] = [{ says: 'strap or screw the cabinet to the wall', edits: [strapToWall()] }];
