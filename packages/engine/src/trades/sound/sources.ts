// What makes noise, how loud it is by octaves, and where its sound begins: in a bay, or straight in the room.

import { aLevel, fanOctaves, octaveBands, powerFromPressure } from '@stillair/physics';
import type { Cabinet, CabinetPath } from '../../cabinet/cabinet.ts';
import { restingOnParts } from '../../cabinet/resting-on-parts.ts';
import type { Octaves } from '../../cabinet/sound.ts';
import { bayOfEnd, type FanPart, OUTSIDE } from '../plant.ts';
import { mouthOf, type Point } from './boxes.ts';
import { partsLoss, pathArea } from './parts.ts';

/** Where a share of a source's sound begins. */
export type Start =
  | { readonly bay: string; readonly share: Octaves }
  | { readonly path: string; readonly at: Point; readonly cornered: boolean; readonly share: Octaves };

export interface Source {
  /** `machine` prints or rests; `fan` goes with its speed. */
  readonly kind: 'machine' | 'fan';
  /** Machine, or path of the fan. */
  readonly id: string;
  /** Which of a path's fans. */
  readonly index: number;
  readonly words: string;
  readonly input: string;
  /** Sound power by octave, W over the reference, as powers: full speed, or printing. */
  readonly power: Octaves;
  /** What of it is left while the machine rests; 0 for fans. */
  readonly idle: number;
  readonly starts: readonly Start[];
}

/** Flow coefficient V/(n D³) of usual small fans at free delivery: what their turns follow from. From memory. */
const FLOW_COEFFICIENT = { axial: 0.68, blower: 0.35 } as const;

export const whole: Octaves = octaveBands.map(() => 1);
const asPower = (level: number): number => 10 ** (level / 10);

export const sourcesOf: (cabinet: Cabinet) => readonly Source[] = restingOnParts((cabinet) => [
  ...machinesOf(cabinet),
  ...fansOf(cabinet),
]);

/** Octave powers of a shape with a given A-weighted level. */
function powersOf(shape: Octaves, levelDbA: number): Octaves {
  const gain = levelDbA - aLevel(shape);
  return shape.map((one) => asPower(one + gain));
}

function machinesOf({ sound, machines }: Cabinet): Source[] {
  return Object.entries(machines).map(([id, { bay, kind }]) => {
    const { printingDbA, idleDbA, octavesDb } = sound.machines[id]!;
    return {
      kind: 'machine',
      id,
      index: 0,
      words: `${id} (${kind})`,
      input: `sound.machines.${id}.printingDbA`,
      power: powersOf(octavesDb, powerFromPressure(printingDbA, 1, 2)),
      idle: asPower(idleDbA - printingDbA),
      starts: [{ bay, share: whole }],
    };
  });
}

function fansOf(cabinet: Cabinet): Source[] {
  return Object.entries(cabinet.paths).flatMap(([id, path]) =>
    path.parts.flatMap((part, at) =>
      part.part === 'fan'
        ? [
            fanSource(
              cabinet,
              id,
              path,
              part,
              at,
              path.parts.slice(0, at).filter(({ part: other }) => other === 'fan').length,
            ),
          ]
        : [],
    ),
  );
}

function fanSource(cabinet: Cabinet, id: string, path: CabinetPath, fan: FanPart, at: number, index: number): Source {
  const shape = fanOctaves(fan.kind.includes('blower') ? 'blower' : 'axial', turnsOf(fan));
  const power = powerFromPressure(fan.noiseDbA, 1, 1) + cabinet.sound.doubt.builtInDb;
  return {
    kind: 'fan',
    id,
    index,
    words: `${fan.kind} in ${id}`,
    input: `paths.${id}.parts.${at}.noiseDbA`,
    power: powersOf(shape, power),
    idle: 0,
    starts: startsOf(cabinet, id, path, at),
  };
}

/** Revolutions a minute at full speed. */
export function turnsOf({ kind, curve, diameter }: FanPart): number {
  const free = curve.at(-1)?.[0] ?? 0;
  const coefficient = FLOW_COEFFICIENT[kind.includes('blower') ? 'blower' : 'axial'];
  return free > 0 ? (60 * free) / (coefficient * diameter ** 3) : 1500;
}

/** Half of a fan's sound goes either way along its path. */
function startsOf(cabinet: Cabinet, id: string, path: CabinetPath, at: number): Start[] {
  if (path.from === path.to) {
    const bay = bayOfEnd(cabinet, path.from);
    return bay === undefined ? [] : [{ bay, share: whole }];
  }
  const area = pathArea(path);
  return (
    [
      [path.to, path.parts.slice(at + 1)],
      [path.from, path.parts.slice(0, at)],
    ] as const
  ).flatMap(([end, parts]): Start[] => {
    const share = partsLoss(parts, area).map((loss) => 0.5 * asPower(-loss));
    const bay = bayOfEnd(cabinet, end);
    if (bay !== undefined) return [{ bay, share }];
    const cornered = cabinet.faces[path.place.face].against !== 'room';
    return OUTSIDE.includes(end) && end !== 'room' ? [] : [{ path: id, at: mouthOf(cabinet, path), cornered, share }];
  });
}
