// The skins of the carcass: the layers of its faces put side by side from the inside outwards, so that boards of one skin meet at
// their corners. Linings are a skin of their own: a face without one has nothing there.

import type { Cabinet, FaceName, Layer } from '../cabinet/cabinet.ts';
import { measuredName } from '../cabinet/joinery.ts';

export interface SkinLayer {
  readonly offset: number;
  readonly thickness: number;
  readonly layer?: Layer;
}

export type Skin = Readonly<Record<FaceName, SkinLayer>>;

const faceOrder: readonly FaceName[] = ['top', 'bottom', 'left', 'right', 'back', 'front'];

/** What is between layers and is no board. */
export const STILL_AIR = 'still air';

/** True thickness of a layer, where somebody measured it. */
export function trueThickness({ joinery }: Cabinet, { material, thickness }: Layer): number {
  return joinery.measured[measuredName(material, thickness)] ?? thickness;
}

/** Faces that doors cover all over have no board of their own. */
export function isCovered({ doors, bays }: Cabinet, face: FaceName): boolean {
  return Object.keys(bays).every((bay) =>
    Object.values(doors).some((door) => door.face === face && door.bays.includes(bay)),
  );
}

export function skinsOf(cabinet: Cabinet): readonly Skin[] {
  const lined = faceOrder.some((face) => cabinet.faces[face].build.layers[0]?.lining);
  const layersOf = (face: FaceName): readonly (Layer | undefined)[] => {
    if (isCovered(cabinet, face)) return [];
    const { layers } = cabinet.faces[face].build;
    return lined && !layers[0]?.lining ? [undefined, ...layers] : layers;
  };
  const stacks = faceOrder.map((face) => {
    let offset = 0;
    return layersOf(face).map((layer): SkinLayer => {
      const thickness = layer === undefined ? 0 : trueThickness(cabinet, layer);
      const at = offset;
      offset += thickness;
      return layer === undefined ? { offset: at, thickness } : { offset: at, thickness, layer };
    });
  });
  const count = Math.max(0, ...stacks.map(({ length }) => length));
  return Array.from({ length: count }, (_, at) => {
    const faces = faceOrder.map((face, index) => {
      const stack = stacks[index]!;
      const last = stack.at(-1);
      const beyond = last === undefined ? 0 : last.offset + last.thickness;
      return [face, stack[at] ?? { offset: beyond, thickness: 0 }] as const;
    });
    return Object.fromEntries(faces) as unknown as Skin;
  });
}

/** From the inside to the outside of a face. */
export function wallThickness(cabinet: Cabinet, face: FaceName): number {
  return cabinet.faces[face].build.layers.reduce((sum, layer) => sum + trueThickness(cabinet, layer), 0);
}
