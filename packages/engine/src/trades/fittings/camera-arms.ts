// Arms that hold cameras: does the machine's shaking swing the picture?

import {
  armFollows,
  armFrequency,
  armStiffness,
  type PrintedMaterial,
  printedMaterials,
  swingBlur,
} from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { CameraArm } from '../../cabinet/fittings.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { millimetres, set } from '../remedy-edits.ts';
import { standingIn } from '../standing-machines.ts';
import { blurLimit } from './limits.ts';

/** Damping ratio of a printed arm in its clamp. From memory. */
const DAMPING = 0.03;

/** What is known of a filament as a printed part; a name of one's own is not. */
export function printedOf(material: string): PrintedMaterial | undefined {
  return Object.hasOwn(printedMaterials, material)
    ? printedMaterials[material as keyof typeof printedMaterials]
    : undefined;
}

export function cameraArms(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.fittings).flatMap(([id, { what, arm: told, material, holds }]): Measure[] => {
    const arm = told === undefined || holds === undefined ? told : withCamera(cabinet, told, holds);
    if (arm === undefined && what !== 'camera mount') return [];
    const printed = material === undefined ? undefined : printedOf(material);
    const shared = {
      trade: 'fittings',
      quantity: 'camera-blur',
      part: id,
      title: 'pixels by which the arm’s swinging blurs the picture',
      unit: 'number',
      better: 'lower',
      cause: causes.armSwings,
      weight: 0.3,
    } as const;
    const wants =
      arm === undefined
        ? `arm, with its length, width and thickness`
        : material === undefined
          ? 'material, of which it is printed'
          : 'material as one of the catalogue: its stiffness is not known';
    if (arm === undefined || printed === undefined)
      return [{ ...shared, missing: `give fittings.${id}.${wants}`, steps: [], remedies: [] }];
    const { frequency, follows, blur, stiffness } = swing(arm, printed, cabinet.materials[material!]!.density);
    return [
      {
        ...shared,
        value: blur,
        limit: blurLimit(cabinet),
        get steps(): readonly Step[] {
          const input = (...names: (keyof CameraArm)[]): readonly string[] =>
            names.map((name) => `fittings.${id}.arm.${name}`);
          return [
            {
              text: `stiffness of the arm at its end, of ${material}, in N/m`,
              value: stiffness,
              unit: 'number',
              formula: 'k = E b t³/(4 L³)',
              source: 'Roark, table 8.1',
              inputs: input('length', 'width', 'thickness'),
            },
            {
              text: 'it swings at, 1/s',
              value: frequency,
              unit: 'number',
              formula: 'sqrt(k/(m + 33/140 m_arm))/(2 pi)',
              inputs: input('load'),
            },
            { text: 'the machine shakes it at, 1/s', value: arm.frequency, unit: 'number', inputs: input('frequency') },
            { text: 'half the way of its clamp', value: arm.shake, unit: 'length', inputs: input('shake') },
            {
              text: 'its end moves against the clamp, as a multiple of that',
              value: follows,
              unit: 'number',
              formula: 'r²/sqrt((1 - r²)² + (2 z r)²)',
              source: 'W. T. Thomson, Theory of Vibration, ch. 3',
            },
            {
              text: 'shift and tilt of the picture, in pixels, when the exposure is longer than half a swing',
              value: blur,
              unit: 'number',
              formula: '2 a (1 + 1.5 D/L) N/w',
              inputs: input('distance', 'sees', 'pixels'),
            },
          ];
        },
        get remedies(): readonly Remedy[] {
          const to = (name: string, metres: number): Remedy['edits'] => [
            set(['fittings', id, 'arm', name], millimetres(metres)),
          ];
          return [
            { says: `make the arm of ${id} half as long`, edits: to('length', arm.length / 2) },
            { says: `make the arm of ${id} twice as thick`, edits: to('thickness', 2 * arm.thickness) },
          ];
        },
      },
    ];
  });
}

/** Distance, width seen and pixels as those of the camera that the arm holds; what it does not say stays as the arm has it. */
export function withCamera(cabinet: Cabinet, arm: CameraArm, id: string): CameraArm {
  const { at, bay, looksAt, view, pixels } = cabinet.cameras[id]!;
  const machine = standingIn(cabinet, bay).find((standing) => standing.id === looksAt);
  const across = { ...arm, pixels: pixels[0] };
  if (at === undefined || machine === undefined) return across;
  const { height } = cabinet.machines[looksAt]!.bed;
  const distance = Math.hypot(at[0] - machine.at[0], at[1] - machine.at[1], at[2] - height);
  return { ...across, distance, sees: 2 * distance * Math.tan(view[0] / 2) };
}

export function swing(
  arm: CameraArm,
  { modulus }: PrintedMaterial,
  density: number,
): { readonly stiffness: number; readonly frequency: number; readonly follows: number; readonly blur: number } {
  const { length, width, thickness, load, shake, distance, sees, pixels } = arm;
  const stiffness = armStiffness(modulus, width, thickness, length);
  const frequency = armFrequency(stiffness, load, density * length * width * thickness);
  const follows = armFollows(arm.frequency / frequency, DAMPING);
  return { stiffness, frequency, follows, blur: swingBlur(shake * follows, length, distance, sees, pixels) };
}
