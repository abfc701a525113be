// The fittings of a cabinet: what the file says of each, and what is assumed of a camera's arm.

import type { Assumption } from './assumption.ts';
import { defaults } from './defaults.ts';
import type { CableRun, CameraArm, FittingPart, Fittings } from './fittings.ts';
import type { ArmSpec, CableSpec, FittingPartSpec } from './fittings-schema.ts';
import type { Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec } from './spec.ts';

export function fillFittings(spec: FileSpec, ledger: Ledger): Fittings {
  const bays = Object.keys(spec.bays ?? { inside: {} });
  return Object.fromEntries(
    Object.entries(spec.fittings ?? {}).map(([id, fitting]) => [id, fillFitting(id, fitting, bays, ledger)]),
  );
}

function fillFitting(id: string, spec: FittingPartSpec, bays: readonly string[], ledger: Ledger): FittingPart {
  const at = `fittings.${id}`;
  const file: FilePath = ['fittings', id];
  ledger.note(at, ledger.given(file));
  const number = (path: 'mass' | 'load' | 'pitch' | 'fromBed', key: 'mass' | 'load' | 'pitch' | 'from-bed') => {
    const quantity = spec[key];
    if (quantity === undefined) return {};
    return { [path]: ledger.number(`${at}.${path}`, [{ quantity, file: [...file, key] }], { value: 0, how: 'given' }) };
  };
  const { what, where, at: centre, size, material, reached, cables = {}, sockets, on, holds, arm, agent } = spec;
  return {
    what,
    where: where ?? (what === 'extinguisher' || bays.length > 1 ? 'room' : bays[0]!),
    ...(centre === undefined ? {} : { at: [centre[0]!, centre[1]!, centre[2]!] as const }),
    ...(size === undefined ? {} : { size: { width: size[0]!, depth: size[1]!, height: size[2]! } }),
    ...number('mass', 'mass'),
    ...number('load', 'load'),
    ...number('pitch', 'pitch'),
    ...number('fromBed', 'from-bed'),
    ...(material === undefined ? {} : { material }),
    reached: reached ?? (what === 'tools' || what === 'bin' || what === 'extinguisher'),
    cables: Object.fromEntries(
      Object.entries(cables).map(([name, cable]) => [
        name,
        fillCable(`${at}.cables.${name}`, cable, [...file, 'cables', name], ledger),
      ]),
    ),
    ...(sockets === undefined ? {} : { sockets }),
    ...(on === undefined ? {} : { on }),
    ...(holds === undefined ? {} : { holds }),
    ...(arm === undefined ? {} : { arm: fillArm(`${at}.arm`, arm, [...file, 'arm'], ledger) }),
    ...(agent === undefined ? {} : { agent }),
  };
}

function fillCable(at: string, spec: CableSpec, file: FilePath, ledger: Ledger): CableRun {
  const { count = 1, moved = false, bend } = spec;
  const diameter = [{ quantity: spec.diameter, file: [...file, 'diameter'] }];
  return {
    diameter: ledger.number(`${at}.diameter`, diameter, defaults.cableDiameter),
    count,
    moved,
    ...(bend === undefined
      ? {}
      : {
          bend: ledger.number(`${at}.bend`, [{ quantity: bend, file: [...file, 'bend'] }], { value: 0, how: 'given' }),
        }),
  };
}

function fillArm(at: string, spec: ArmSpec, file: FilePath, ledger: Ledger): CameraArm {
  const number = (key: keyof ArmSpec, otherwise: Assumption): number =>
    ledger.number(`${at}.${key}`, [{ quantity: spec[key], file: [...file, key] }], otherwise);
  return {
    length: number('length', defaults.armLength),
    width: number('width', defaults.armWidth),
    thickness: number('thickness', defaults.armThickness),
    load: number('load', defaults.cameraMass),
    shake: number('shake', defaults.armShake),
    frequency: ledger.number(`${at}.frequency`, [], defaults.armFrequency),
    distance: number('distance', defaults.cameraDistance),
    sees: number('sees', defaults.cameraSees),
    pixels: number('pixels', defaults.cameraPixels),
  };
}
