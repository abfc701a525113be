// Boards of the carcass, skin by skin, as a box shell that is filled exactly.

import { shellPanels } from '@stillair/physics';
import type { Cabinet, FaceName } from '../cabinet/cabinet.ts';
import type { BoardPart, Cut } from './board-part.ts';
import { extent, type Place, type Triple } from './place.ts';
import { type Skin, STILL_AIR, skinsOf } from './skins.ts';

/** How each face is drawn: datum at its lower front corner, from the side on which it is worked. */
const faceViews: Readonly<Record<FaceName, Pick<BoardPart, 'axes' | 'seen' | 'mirrored'>>> = {
  left: { axes: { u: 'y', v: 'z', t: 'x' }, seen: 'seen from inside, front edge at the left', mirrored: false },
  right: { axes: { u: 'y', v: 'z', t: 'x' }, seen: 'seen from inside, front edge at the right', mirrored: true },
  back: { axes: { u: 'x', v: 'z', t: 'y' }, seen: 'seen from inside', mirrored: false },
  front: { axes: { u: 'x', v: 'z', t: 'y' }, seen: 'seen from the front', mirrored: false },
  bottom: { axes: { u: 'x', v: 'y', t: 'z' }, seen: 'seen from above, front edge below', mirrored: false },
  top: { axes: { u: 'x', v: 'y', t: 'z' }, seen: 'seen from inside, front edge below', mirrored: true },
};

export type Unmarked = Omit<BoardPart, 'mark'>;

export function carcassBoards(cabinet: Cabinet): readonly Unmarked[] {
  const skins = skinsOf(cabinet);
  const rebated = cabinet.joinery.corners === 'rebate';
  return skins.flatMap((skin, at) =>
    shellPanels(cabinet.inside, skin).flatMap(({ face, from, to }): Unmarked[] => {
      const { layer, thickness } = skin[face];
      if (layer === undefined || layer.material === STILL_AIR) return [];
      const place = rebated ? intoRebates(face, { from, to }, skin, cabinet) : { from, to };
      const view = faceViews[face];
      return [
        {
          name: nameOf(face, skins, at),
          of: `faces.${face}`,
          board: layer.material,
          nominal: layer.thickness,
          thickness,
          place,
          ...view,
          u: extent(view.axes.u, place),
          v: extent(view.axes.v, place),
          grain: grainOf(cabinet, layer.material, face === 'top' || face === 'bottom' ? 'u' : 'v'),
          cuts: rebated ? rebatesOf(face, skin, cabinet, place) : [],
          edges: '',
          kind: 'carcass',
        },
      ];
    }),
  );
}

/** Only boards that come in sheets, and are not said to be turned, have a grain to follow. */
export function grainOf({ costs }: Cabinet, board: string, way: 'u' | 'v'): BoardPart['grain'] {
  return costs.sheets[board] === undefined || costs.turned ? 'none' : way;
}

function nameOf(face: FaceName, skins: readonly Skin[], at: number): string {
  const sides = face === 'left' || face === 'right' ? `${face} side` : face;
  const boards = skins.filter((skin) => {
    const { layer } = skin[face];
    return layer !== undefined && layer.material !== STILL_AIR;
  });
  if (boards.length < 2) return sides;
  const { layer } = skins[at]![face];
  if (layer?.lining) return `${sides}, lining`;
  const own = boards.filter((skin) => !skin[face].layer?.lining);
  if (own.length < 2) return sides;
  if (own.length === 2) return `${sides}, ${skins[at] === own[0] ? 'inner' : 'outer'} skin`;
  return `${sides}, skin ${own.indexOf(skins[at]!) + 1}`;
}

/** Half the board: common practice. */
const rebateDepth = (thickness: number): number => thickness / 2;

/** Sides reach into the rebates of top and bottom, of boards that can be worked. */
function intoRebates(face: FaceName, place: Place, skin: Skin, cabinet: Cabinet): Place {
  if (face !== 'left' && face !== 'right') return place;
  if (!isWorked(cabinet, skin, face)) return place;
  const into = (other: 'top' | 'bottom'): number =>
    isWorked(cabinet, skin, other) ? rebateDepth(skin[other].thickness) : 0;
  const [x0, y0, z0] = place.from;
  const [x1, y1, z1] = place.to;
  const from: Triple = [x0, y0, z0 - into('bottom')];
  return { from, to: [x1, y1, z1 + into('top')] };
}

function rebatesOf(face: FaceName, skin: Skin, cabinet: Cabinet, place: Place): readonly Cut[] {
  if ((face !== 'top' && face !== 'bottom') || !isWorked(cabinet, skin, face)) return [];
  const [width, depth] = [extent('x', place), extent('y', place)];
  return (['left', 'right'] as const).flatMap((side): Cut[] => {
    if (!isWorked(cabinet, skin, side)) return [];
    const { thickness } = skin[side];
    const from = side === 'left' ? 0 : width - thickness;
    return [
      {
        purpose: 'rebate',
        shape: { kind: 'rectangle', from: [from, 0], to: [from + thickness, depth] },
        depth: rebateDepth(skin[face].thickness),
        side: 'seen',
        what: `for the ${side} side`,
      },
    ];
  });
}

/** A board that a saw or router works: it comes in sheets, or is as heavy as wood. */
function isWorked(cabinet: Cabinet, skin: Skin, face: FaceName): boolean {
  const { layer } = skin[face];
  return layer !== undefined && isWood(cabinet, layer);
}

const WOOD = { lightest: 280, heaviest: 1000, thinnest: 0.009 };

/** Boards that take a groove or a screw: sheets of the density of wood, 9 mm or thicker. */
export function isWood(
  { costs }: Cabinet,
  { material, density, thickness }: { readonly material: string; readonly density: number; readonly thickness: number },
): boolean {
  return (
    costs.sheets[material] !== undefined &&
    density >= WOOD.lightest &&
    density <= WOOD.heaviest &&
    thickness >= WOOD.thinnest
  );
}
