// Changes that the filament trade proposes, as edits of the file. Every key that it writes is named here.

import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import type { SpoolPart } from '../../cabinet/filament.ts';
import { OUTSIDE } from '../../cabinet/power.ts';
import type { Remedy } from '../measure.ts';
import { set, type Value } from '../remedy-edits.ts';

const rounded = (value: number, digits = 3): number => Number(value.toPrecision(digits));

/** A spool with all that is known of it: the file may not have it at all. */
function spoolText({ machine, material, mass, empty, where, holder, path, temperature, humidity }: SpoolPart): Value {
  return {
    machine,
    // A machine that prints a material in its own way has it under a name of its own.
    material: material.endsWith(` on ${machine}`) ? material.slice(0, -` on ${machine}`.length) : material,
    mass: `${rounded(mass * 1000)} g`,
    empty: `${rounded(empty * 1000)} g`,
    where,
    holder,
    path: {
      bends: `${rounded((path.bends * 180) / Math.PI)} deg`,
      guide: path.guide,
      ...(path.guide === 'open' ? {} : { friction: rounded(path.friction) }),
      radius: `${rounded(path.radius * 1000)} mm`,
      unwinding: `${rounded(path.unwinding)} N`,
    },
    ...(temperature === undefined ? {} : { temperature: `${rounded(temperature - 273.15)} °C` }),
    ...(humidity === undefined ? {} : { humidity: `${rounded(100 * humidity)} %` }),
  };
}

const withSpool = (id: string, spool: SpoolPart): Edit => set(['spools', id], spoolText(spool));

/** Friction of a clean tube: as the table of defaults has it. */
const TUBE = 0.15;

/** Ball bearings, a tube in place of printed guides, half the bends: all of it first, as a path that jams seldom does so for one reason. */
export function easierPath({ spools }: Cabinet, id: string): Remedy[] {
  const spool = spools[id]!;
  const changes: readonly (readonly [says: string, of: (from: SpoolPart) => SpoolPart])[] = [
    ...(spool.holder === 'bearing'
      ? []
      : [['ball bearings (608)', (from: SpoolPart) => ({ ...from, holder: 'bearing' as const })] as const]),
    ...(spool.path.guide === 'printed'
      ? [
          [
            'a tube',
            (from: SpoolPart) => ({ ...from, path: { ...from.path, guide: 'tube' as const, friction: TUBE } }),
          ] as const,
        ]
      : []),
    ...(spool.path.bends > Math.PI / 4
      ? [
          [
            'half the bends',
            (from: SpoolPart) => ({ ...from, path: { ...from.path, bends: from.path.bends / 2 } }),
          ] as const,
        ]
      : []),
  ];
  const single = changes.map(([says, of]) => ({ says: `${says} for ${id}`, edits: [withSpool(id, of(spool))] }));
  if (changes.length < 2) return single;
  const all = changes.reduce((from, [, of]) => of(from), spool);
  return [{ says: `${changes.map(([says]) => says).join(', ')} for ${id}`, edits: [withSpool(id, all)] }, ...single];
}

export function widerBend({ spools }: Cabinet, id: string): Remedy[] {
  const spool = spools[id]!;
  if (spool.path.radius >= 0.1) return [];
  return [
    {
      says: `bends of 100 mm radius for ${id}`,
      edits: [withSpool(id, { ...spool, path: { ...spool.path, radius: 0.1 } })],
    },
  ];
}

export function shorterGap(machine: string, gap: number, longest: number): Remedy[] {
  const millimetres = Math.max(0.5, Math.floor(1400 * longest) / 2);
  if (millimetres >= gap * 1000) return [];
  return [
    {
      says: `guide the filament down to ${millimetres} mm below the wheels of ${machine}`,
      edits: [set(['machines', machine, 'drive', 'gap'], `${millimetres} mm`)],
    },
  ];
}

export function spoolOutside({ spools }: Cabinet, id: string): Remedy[] {
  const spool = spools[id]!;
  if (spool.where === OUTSIDE || spool.temperature !== undefined) return [];
  return [{ says: `hang ${id} outside the cabinet`, edits: [withSpool(id, { ...spool, where: OUTSIDE })] }];
}

/** A dry box outside at the humidity that boxes for thirsty filament aim at. */
export function drierSpool({ spools, materials }: Cabinet, id: string): Remedy[] {
  const spool = spools[id]!;
  const share = Math.min(0.15, materials[spool.material]!.humidityLimit);
  return [
    {
      says: `keep ${id} in a dry box at ${Math.round(100 * share)} %`,
      edits: [withSpool(id, { ...spool, where: OUTSIDE, humidity: share })],
    },
  ];
}

export function fullerSpool({ spools }: Cabinet, id: string, used: number): Remedy[] {
  const mass = [1, 2, 3, 5].find((size) => size > used);
  if (mass === undefined || mass <= spools[id]!.mass) return [];
  return [
    { says: `begin with a spool of ${mass} kg`, edits: [withSpool(id, { ...spools[id]!, mass, empty: 0.22 * mass })] },
  ];
}
