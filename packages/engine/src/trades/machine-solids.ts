// A machine as solids: its frame, and everything that moves, hangs or sticks out, each in its commanded position.
// Metres, from the middle of the frame on the floor of the bay: x to the right, y to the back, z up.

import { bedReach, type Solid } from '@stillair/physics';
import type { Cabinet, Machine } from '../cabinet/cabinet.ts';
import type { Motion } from '../cabinet/fit.ts';

export interface Part extends Solid {
  /** `bed`, `spool` … */
  readonly what: string;
  /** The commanded position in which it is there. */
  readonly when: string;
  /** Which limits hold around and above it. */
  readonly air: 'moving' | 'arch' | 'plug' | 'lid';
  /** Paths of the inputs behind it. */
  readonly inputs: readonly string[];
}

export type Side = 'left' | 'right' | 'front' | 'back' | 'top';

/** Below a bed's top hangs its plate with springs or carriage; on it stand clips. */
const BED_BELOW = 0.03;
const BED_ABOVE = 0.02;
/** Half the depth of carriage and arch. */
const CARRIAGE_HALF = 0.05;
const ARCH_HALF = 0.1;
const PLUG_HALF = 0.02;
const PLUG_FROM = 0.05;
const PLUG_TO = 0.12;

/** Height of slab and foam below a machine. */
export function stackHeight({ standsOn }: Machine): number {
  return (standsOn?.slab?.thickness ?? 0) + (standsOn?.foam?.thickness ?? 0);
}

export function machineParts(cabinet: Cabinet, id: string): readonly Part[] {
  const machine = cabinet.machines[id]!;
  const motion = cabinet.fit.machines[id]!;
  const floor = stackHeight(machine);
  const { width, depth, height } = motion.frame;
  const input = (...names: string[]): readonly string[] => names.map((name) => `fit.machines.${id}.${name}`);
  const box = (
    what: string,
    when: string,
    air: Part['air'],
    inputs: readonly string[],
    x: readonly [number, number],
    y: readonly [number, number],
    z: readonly [number, number],
    round?: 0 | 1 | 2,
  ): Part => ({
    what,
    when,
    air,
    inputs,
    from: [x[0], y[0], z[0]],
    to: [x[1], y[1], z[1]],
    ...(round === undefined ? {} : { round }),
  });
  const top = floor + height;
  const across = [-width / 2, width / 2] as const;
  const parts: Part[] = [
    box('frame', 'always', 'moving', input('frame'), across, [-depth / 2, depth / 2], [floor, top]),
    box(
      'arch of tube and cable',
      'the head below its anchor, at the top',
      'arch',
      input('frame', 'tubeArch'),
      [-width / 4, width / 4],
      [-ARCH_HALF, ARCH_HALF],
      [top, top + motion.tubeArch],
    ),
    box(
      'plug and cord',
      'always',
      'plug',
      input('frame', 'plug'),
      [-PLUG_HALF, PLUG_HALF],
      [depth / 2, depth / 2 + motion.plug],
      [floor + PLUG_FROM, floor + PLUG_TO],
    ),
  ];
  parts.push(...bedParts(machine, motion, box, input));
  for (const [side, reach, name] of [
    [-1, motion.carriageLeft, 'carriageLeft'],
    [1, motion.carriageRight, 'carriageRight'],
  ] as const) {
    if (!(reach > 0)) continue;
    const x = side < 0 ? ([-width / 2 - reach, -width / 2] as const) : ([width / 2, width / 2 + reach] as const);
    const when = `the carriage at its ${side < 0 ? 'left' : 'right'} end`;
    parts.push(box('carriage', when, 'moving', input('frame', name), x, [-CARRIAGE_HALF, CARRIAGE_HALF], [floor, top]));
  }
  if (motion.lid > 0)
    parts.push(
      box('lid', 'open', 'lid', input('frame', 'lid'), across, [-depth / 2, depth / 2], [top, top + motion.lid]),
    );
  const spool = spoolPart(motion, floor, box, input);
  return spool === undefined ? parts : [...parts, spool];
}

type MakeBox = (
  what: string,
  when: string,
  air: Part['air'],
  inputs: readonly string[],
  x: readonly [number, number],
  y: readonly [number, number],
  z: readonly [number, number],
  round?: 0 | 1 | 2,
) => Part;
type Inputs = (...names: string[]) => readonly string[];

/** The bed at both ends of its way; one that stands still lies inside the frame. */
function bedParts({ bed }: Machine, motion: Motion, box: MakeBox, input: Inputs): Part[] {
  if (!(motion.bedTravel > 0)) return [];
  const { bedTravel: travel, bedOffset: offset, clipFront: clip, cableRear: cable } = motion;
  const reach = bedReach({ plate: bed.depth, travel, offset, clip, cable });
  const whole = bed.depth + clip + cable;
  const z = [bed.height - BED_BELOW, bed.height + BED_ABOVE] as const;
  const x = [-bed.width / 2, bed.width / 2] as const;
  return [
    box(
      'bed',
      'the bed fully forward',
      'moving',
      input('bedTravel', 'bedOffset', 'clipFront'),
      x,
      [-reach.front, whole - reach.front],
      z,
    ),
    box(
      'bed with its cable',
      'the bed fully back',
      'moving',
      input('bedTravel', 'bedOffset', 'cableRear'),
      x,
      [reach.rear - whole, reach.rear],
      z,
    ),
  ];
}

/** The spool where it hangs, at its largest; none when it hangs elsewhere. */
export function spoolPart(motion: Motion, floor: number, box: MakeBox, input: Inputs): Part | undefined {
  const { frame, spool, spoolLift: lift } = motion;
  const { diameter, width } = motion.spoolSize;
  const half = diameter / 2;
  const top = floor + frame.height;
  const make = (
    when: string,
    x: readonly [number, number],
    y: readonly [number, number],
    z: readonly [number, number],
    round: 0 | 1,
  ): Part => box('spool', when, 'moving', input('frame', 'spool', 'spoolSize', 'spoolLift'), x, y, z, round);
  switch (spool) {
    case 'top':
      return make('full, on its axle', [-width / 2, width / 2], [-half, half], [top + lift, top + lift + diameter], 0);
    case 'left':
    case 'right': {
      const near = frame.width / 2 + lift;
      const x = spool === 'left' ? ([-near - width, -near] as const) : ([near, near + width] as const);
      return make(`full, on the ${spool}`, x, [-half, half], [top - diameter, top], 0);
    }
    case 'back':
      return make(
        'full, at the back',
        [-half, half],
        [frame.depth / 2 + lift, frame.depth / 2 + lift + width],
        [top - diameter, top],
        1,
      );
    default:
      return undefined;
  }
}

/** How far a part reaches to one side of the middle of the frame (top: above the floor of the bay). */
export function reachOf(part: Part, side: Side): number {
  switch (side) {
    case 'left':
      return -part.from[0];
    case 'right':
      return part.to[0];
    case 'front':
      return -part.from[1];
    case 'back':
      return part.to[1];
    default:
      return part.to[2];
  }
}

export function movedTo<P extends Solid>(part: P, [x, y]: readonly [number, number]): P {
  const [fx, fy, fz] = part.from;
  const [tx, ty, tz] = part.to;
  return { ...part, from: [fx + x, fy + y, fz], to: [tx + x, ty + y, tz] };
}
