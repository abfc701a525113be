// Every heavy thing of the cabinet with its place: what decides whether it tips, and what the floor bears.

import type { Cabinet, FaceName } from '../../cabinet/cabinet.ts';
import { arealMass, carrierOf, carriers, looseMass, slabMass } from '../standing-on.ts';
import { leafOf } from './leaf.ts';

/** A mass with its centre: y from the inside front to the back, z above the floor, m; how far it comes forward when all is open. */
export interface Weight {
  readonly what: string;
  readonly mass: number;
  readonly y: number;
  readonly z: number;
  readonly forward: number;
}

export interface Body {
  readonly weights: readonly Weight[];
  /** Outer front and back, y; outer height above the floor. */
  readonly front: number;
  readonly back: number;
  readonly height: number;
  /** The lines about which it tips, y. */
  readonly frontFeet: number;
  readonly backFeet: number;
  /** y of whatever opens or pulls out furthest. */
  readonly furthest: number;
}

const thickness = ({ faces }: Cabinet, face: FaceName): number =>
  faces[face].build.layers.reduce((sum, layer) => sum + layer.thickness, 0);

export function bodyOf(cabinet: Cabinet): Body {
  const { inside, faces, doors, structure } = cabinet;
  const { feet } = structure;
  const [front, back] = [-thickness(cabinet, 'front'), inside.depth + thickness(cabinet, 'back')];
  const floor = thickness(cabinet, 'bottom') + feet.height;
  const leaves = Object.keys(doors).map((id) => ({ id, face: doors[id]!.face, ...leafOf(cabinet, id) }));
  const areas: Readonly<Record<FaceName, number>> = {
    front: inside.width * inside.height,
    back: inside.width * inside.height,
    left: inside.depth * inside.height,
    right: inside.depth * inside.height,
    top: inside.width * inside.depth,
    bottom: inside.width * inside.depth,
  };
  const places: Readonly<Record<FaceName, readonly [number, number]>> = {
    front: [front / 2, inside.height / 2],
    back: [(inside.depth + back) / 2, inside.height / 2],
    left: [inside.depth / 2, inside.height / 2],
    right: [inside.depth / 2, inside.height / 2],
    top: [inside.depth / 2, inside.height],
    bottom: [inside.depth / 2, 0],
  };
  const boards = (Object.keys(areas) as FaceName[]).map((face): Weight => {
    const opened = leaves.filter((leaf) => leaf.face === face).reduce((sum, leaf) => sum + leaf.width * leaf.height, 0);
    const [y, z] = places[face];
    return {
      what: face,
      mass: Math.max(0, areas[face] - opened) * arealMass(faces[face].build),
      y,
      z: z + floor,
      forward: 0,
    };
  });
  const hung = leaves.map(({ id, face, mass, width, height, hinge }): Weight => {
    const { bays } = doors[id]!;
    const z = bays.reduce((sum, bay) => sum + (cabinet.bays[bay]!.z[0] + cabinet.bays[bay]!.z[1]) / 2, 0) / bays.length;
    const swings = face === 'front' && hinge !== 'slides' && hinge !== 'lifts off';
    const reach = hinge === 'left' || hinge === 'right' ? width : height;
    return { what: id, mass, y: places[face][0], z: z + floor, forward: swings ? reach / 2 : 0 };
  });
  const inner = innerWeights(cabinet, floor);
  const furthest = Math.min(
    front,
    ...leaves
      .filter(({ face, hinge }) => face === 'front' && hinge !== 'slides' && hinge !== 'lifts off')
      .map(({ hinge, width, height }) => front - (hinge === 'left' || hinge === 'right' ? width : height)),
    ...Object.values(structure.shelves).map(({ pullsOut }) => (pullsOut > 0 ? -pullsOut : front)),
  );
  return {
    weights: [...boards, ...hung, ...inner].filter(({ mass }) => mass > 0),
    front,
    back,
    height: floor + inside.height + thickness(cabinet, 'top'),
    frontFeet: front + feet.inset,
    backFeet: back - feet.inset,
    furthest,
  };
}

/** Shelves, machines with their slabs, and what else lies on shelves; what stands on one that pulls out comes with it. */
function innerWeights(cabinet: Cabinet, floor: number): Weight[] {
  const { bays, inside, machines, partitions, structure } = cabinet;
  const all = carriers(cabinet);
  const shelves = partitions.flatMap(({ id, bays: [a, b], build }): Weight[] => {
    const [one, other] = [bays[a]!, bays[b]!];
    const shared = (axis: 'x' | 'z'): number =>
      Math.min(one[axis][1], other[axis][1]) - Math.max(one[axis][0], other[axis][0]);
    const level = shared('z') < shared('x');
    const { pullsOut = 0, load = 0 } = structure.shelves[id] ?? {};
    const z = level
      ? Math.max(one.z[0], other.z[0])
      : (Math.max(one.z[0], other.z[0]) + Math.min(one.z[1], other.z[1])) / 2;
    const mass = Math.max(shared('x'), shared('z'), 0) * inside.depth * arealMass(build);
    return [{ what: id, mass: mass + load, y: inside.depth / 2, z: z + floor, forward: level ? pullsOut : 0 }];
  });
  const standing = Object.entries(machines).flatMap(([id, machine]): Weight[] => {
    const base = bays[machine.bay]!.z[0] + floor;
    const slab = machine.standsOn?.slab?.thickness ?? 0;
    const below = (machine.standsOn?.foam?.thickness ?? 0) + slab;
    const y = machine.at[1];
    const forward = carrierOf(cabinet, machine, all)?.hold.pullsOut ?? 0;
    return [
      // The middle of a machine's weight is taken a little below its half height: plates and supplies are low.
      { what: id, mass: machine.mass, y, z: base + below + 0.4 * machine.size.height, forward },
      { what: `slab of ${id}`, mass: slabMass(machine), y, z: base + below - slab / 2, forward },
    ];
  });
  const loose = Object.entries(bays).map(
    ([id, { z }]): Weight => ({
      what: `what lies in ${id}`,
      mass: looseMass(cabinet, id),
      y: inside.depth / 2,
      z: z[0] + floor,
      forward: 0,
    }),
  );
  return [...shelves, ...standing, ...loose];
}

export const totalMass = ({ weights }: Body): number => weights.reduce((sum, { mass }) => sum + mass, 0);

/** Centre of all masses as it stands shut. */
export function centreOf(body: Body): { readonly y: number; readonly z: number } {
  const total = totalMass(body);
  const mean = (axis: 'y' | 'z'): number =>
    body.weights.reduce((sum, weight) => sum + weight.mass * weight[axis], 0) / total;
  return { y: mean('y'), z: mean('z') };
}
