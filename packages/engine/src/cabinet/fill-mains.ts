// How a machine meets the mains, and the wheels that drive its filament: the file, else its kind, else what is usual.

import { defaults } from './defaults.ts';
import type { Drive } from './filament.ts';
import type { Fallback } from './ledger.ts';
import type { Mains } from './power.ts';
import type { Given, MachineKindSpec } from './spec.ts';

const FILAMENT = 0.00175;
/** What a drive pulls off a spool without trouble, N: common practice plans 2 to 3 N. */
const PULL = 3;

/** Reads a number of the machine, else of its kind. */
type ReadNumber = (
  path: string,
  read: (machine: MachineKindSpec) => Given,
  fallback: Fallback,
  ...keys: string[]
) => number;
type ReadWord = <T>(path: string, read: (machine: MachineKindSpec) => T | undefined, keys: string[], otherwise: T) => T;

export function fillMains(number: ReadNumber, said: ReadWord): Mains {
  return {
    powerFactor: number(
      'mains.powerFactor',
      ({ mains }) => mains?.['power-factor'],
      defaults.powerFactor,
      'mains',
      'power-factor',
    ),
    inrush: number('mains.inrush', ({ mains }) => mains?.inrush, defaults.inrush, 'mains', 'inrush'),
    leakage: number('mains.leakage', ({ mains }) => mains?.leakage, defaults.earthLeakage, 'mains', 'leakage'),
    plug: said('mains.plug', ({ mains }) => mains?.plug, ['mains', 'plug'], 'plain'),
  };
}

export function fillDrive(number: ReadNumber): Drive {
  const of = (key: keyof Drive, fallback: Fallback): number =>
    number(`drive.${key}`, ({ drive }) => drive?.[key], fallback, 'drive', key);
  return {
    pull: of('pull', { value: PULL, how: 'common practice plans a pull of at most 2 to 3 N; no source' }),
    push: of('push', defaults.drivePush),
    gap: of('gap', defaults.driveGap),
    filament: of('filament', { value: FILAMENT, how: 'usual diameter' }),
  };
}
