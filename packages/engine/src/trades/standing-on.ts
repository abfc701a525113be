// What a machine stands on: the shelf below it, the carcass' bottom on its feet, or the floor. How heavy things are, and how
// stiff the board is. Structure and vibration ask the same.

import {
  type BeamLoad,
  bendingSection,
  GRAVITY,
  plywoodStiffness,
  type SectionPart,
  simpleBeam,
} from '@stillair/physics';
import type { Build, Cabinet, Machine } from '../cabinet/cabinet.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import type { BoardStrength, ShelfHold } from '../cabinet/structure.ts';

/** A level board that carries. */
export interface Carrier {
  /** Id of the shelf, or `bottom`. */
  readonly id: string;
  /** Path of its build in the cabinet. */
  readonly path: string;
  readonly build: Build;
  readonly hold: ShelfHold;
  /** From its left support to its right one, in the cabinet, m. */
  readonly x: readonly [number, number];
  readonly depth: number;
  /** Bays above it. */
  readonly bays: readonly string[];
  /** The whole of it lies on the floor: nothing sags. */
  readonly onFloor: boolean;
}

/** Bays whose borders are nearer than this share a board, m. */
const BOARD = 0.08;
const HAIR = 1e-6;

/** Every level board, from the bottom up: every machine asks for it. */
export const carriers: (cabinet: Cabinet) => readonly Carrier[] = restingOnParts(findCarriers);

function findCarriers(cabinet: Cabinet): readonly Carrier[] {
  const { bays, inside, partitions, structure } = cabinet;
  const level = partitions.flatMap(({ id, bays: [a, b], build }, index): Carrier[] => {
    const [lower, upper] = bays[a]!.z[0] < bays[b]!.z[0] ? [a, b] : [b, a];
    const [below, above] = [bays[lower]!, bays[upper]!];
    const x = [Math.max(below.x[0], above.x[0]), Math.min(below.x[1], above.x[1])] as const;
    if (above.z[0] < below.z[1] - HAIR || x[1] - x[0] < HAIR) return [];
    const hold = structure.shelves[id];
    if (hold === undefined) return [];
    return [
      { id, path: `partitions.${index}.build`, build, hold, x, depth: inside.depth, bays: [upper], onFloor: false },
    ];
  });
  return [...bottomsOf(cabinet), ...level];
}

/** The carcass' bottom: on the floor as a whole, or in pieces from foot to foot. */
function bottomsOf({ bays, faces, inside, structure }: Cabinet): Carrier[] {
  const { feet, bottom } = structure;
  const standing = Object.keys(bays).filter((bay) => bays[bay]!.z[0] < BOARD);
  const common = {
    path: 'faces.bottom.build',
    build: faces.bottom.build,
    hold: bottom,
    depth: inside.depth,
    bays: standing,
    onFloor: feet.count === 0,
  };
  if (feet.count === 0) return [{ id: 'bottom', x: [0, inside.width], ...common }];
  const pieces = Math.max(1, Math.ceil(feet.count / 2) - 1);
  const length = (inside.width - 2 * feet.inset) / pieces;
  return Array.from({ length: pieces }, (_, at) => ({
    id: pieces === 1 ? 'bottom' : `bottom-${at + 1}`,
    x: [feet.inset + at * length, feet.inset + (at + 1) * length] as const,
    ...common,
  }));
}

/** Where the middle of a machine is, from the left of the cabinet, m. */
export function machineX({ bays }: Cabinet, { bay, at }: Machine): number {
  return bays[bay]!.x[0] + at[0];
}

/** The board that a machine stands on; undefined when the file has none below its bay. */
export function carrierOf(cabinet: Cabinet, machine: Machine, all: readonly Carrier[]): Carrier | undefined {
  const middle = machineX(cabinet, machine);
  const outside = ({ x: [from, to] }: Carrier): number => Math.max(from - middle, middle - to, 0);
  return all.filter(({ bays }) => bays.includes(machine.bay)).sort((a, b) => outside(a) - outside(b))[0];
}

export function slabMass({ standsOn }: Machine): number {
  const slab = standsOn?.slab;
  return slab === undefined ? 0 : slab.width * slab.depth * slab.thickness * slab.density;
}

/** kg/m² of a build-up. */
export function arealMass({ layers }: Build): number {
  return layers.reduce((sum, { density, thickness }) => sum + density * thickness, 0);
}

/** Tools, bins and the like in a bay with a known mass, kg; brackets and mounts hang on walls. */
export function looseMass({ fittings }: Cabinet, bay: string): number {
  return Object.values(fittings)
    .filter(({ what, where }) => where === bay && (what === 'tools' || what === 'bin' || what === 'other'))
    .reduce((sum, { mass = 0, load = 0 }) => sum + mass + load, 0);
}

/** How stiff a board is across its span, with its strip; `part` is the layer that bears most. */
export interface Stiffness {
  /** E I, N·m². */
  readonly bending: number;
  /** The stiffest layer, and the share of a moment that it and its strip take. */
  readonly material: string;
  readonly part: SectionPart;
  readonly section: readonly SectionPart[];
  readonly share: number;
  /** Stress that it may bear for years, Pa, and how its sag grows. */
  readonly stress: number;
  readonly growth: number;
}

const reckoned = new WeakMap<Carrier, Stiffness | undefined>();

/**
 * Layers bend each by itself (nobody has said that they are glued), a strip together with the stiffest. Undefined when none is known
 * to be stiff, or when it is a thin sheet of which nobody says how its edges are folded.
 */
export function stiffnessOf(cabinet: Cabinet, carrier: Carrier): Stiffness | undefined {
  if (reckoned.has(carrier)) return reckoned.get(carrier);
  const found = findStiffness(cabinet, carrier);
  reckoned.set(carrier, found);
  return found;
}

/** A sheet thinner than this carries by its folded edges, m. */
export const THIN = 0.0025;

function findStiffness({ structure }: Cabinet, { build, hold, depth }: Carrier): Stiffness | undefined {
  const stiff = build.layers.flatMap(({ material, thickness }) => {
    const board = structure.boards[material];
    if (board === undefined) return [];
    const part = { breadth: depth, bottom: 0, top: thickness, stiffness: modulusOf(board, thickness, hold.grain) };
    return [{ material, board, part, alone: bendingSection([part]).stiffness }];
  });
  const main = [...stiff].sort((a, b) => b.alone - a.alone)[0];
  const { lipping } = hold;
  if (main === undefined || (main.part.top < THIN && lipping === undefined)) return undefined;
  const section = [
    main.part,
    ...(lipping === undefined
      ? []
      : [{ breadth: lipping.breadth * lipping.edges, bottom: -lipping.height, top: 0, stiffness: lipping.stiffness }]),
  ];
  const together = bendingSection(section).stiffness;
  const bending = stiff.reduce((sum, { alone }) => sum + alone, together - main.alone);
  return {
    bending,
    material: main.material,
    part: main.part,
    section,
    share: together / bending,
    stress: main.board.stress,
    growth: main.board.creep,
  };
}

function modulusOf({ along, across, veneer }: BoardStrength, thickness: number, grain: 'along' | 'across'): number {
  if (veneer === undefined) return grain === 'along' ? along : across;
  return plywoodStiffness(thickness, veneer, along)[grain];
}

/** Spans between posts, m, from the left support: one when there is none. */
export function spansOf({ hold, x }: Carrier): readonly (readonly [number, number])[] {
  const count = hold.posts + 1;
  const length = (x[1] - x[0]) / count;
  return Array.from({ length: count }, (_, at) => [at * length, (at + 1) * length] as const);
}

/** Give of a board under a force where the machine stands, m/N. */
export function giveAt(cabinet: Cabinet, carrier: Carrier, machine: Machine): number | undefined {
  if (carrier.onFloor) return 0;
  const stiffness = stiffnessOf(cabinet, carrier);
  if (stiffness === undefined) return undefined;
  const place = machineX(cabinet, machine) - carrier.x[0];
  const spans = spansOf(carrier);
  const [from, to] = spans.find(([, end]) => place <= end) ?? spans.at(-1)!;
  const at = Math.min(Math.max(place, from + 0.02 * (to - from)), to - 0.02 * (to - from)) - from;
  return simpleBeam(to - from, stiffness.bending, [{ force: 1, at }]).sag * (1 - FIXED * carrier.hold.endFixity);
}

/** Of the sag, what ends held fast take away: four fifths under a spread load, three quarters under one in the middle. */
export const FIXED = 0.75;

/** Where a machine presses its board: along its feet, its pads, or over its slab or sheet. From the board's left support, N. */
export function pressesOn(cabinet: Cabinet, carrier: Carrier, machine: Machine): readonly BeamLoad[] {
  const force = GRAVITY * (machine.mass + slabMass(machine));
  const middle = machineX(cabinet, machine) - carrier.x[0];
  const end = carrier.x[1] - carrier.x[0];
  const within = (place: number): number => Math.min(Math.max(place, 0), end);
  const { slab, foam } = machine.standsOn ?? {};
  const lines = (distance: number): readonly BeamLoad[] =>
    [-1, 1].map((side) => ({ force: force / 2, at: within(middle + (side * distance) / 2) }));
  const width = slab?.width ?? machine.feet.width;
  if (foam !== undefined && foam.pads > 0) return lines(Math.max(width - foam.width, foam.width));
  if (slab === undefined && foam === undefined) return lines(machine.feet.width);
  const [from, to] = [within(middle - width / 2), within(middle + width / 2)];
  return from < to ? [{ force, from, to }] : [{ force, at: from }];
}
