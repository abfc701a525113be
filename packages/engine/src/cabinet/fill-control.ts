// When something runs, with every machine and number named.

import { windowsOfDay } from '../units/clock.ts';
import type { Control } from './cabinet.ts';
import type { Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { ControlSpec, FileSpec } from './spec.ts';

/** Always on unless the file says when. */
export function fillControl(
  at: string,
  given: ControlSpec | undefined,
  file: FilePath,
  { machines = {} }: FileSpec,
  ledger: Ledger,
): Control {
  ledger.note(
    at,
    given === undefined ? { kind: 'derived', how: 'it always runs unless said otherwise' } : ledger.given(file),
  );
  if (given === undefined) return { kind: 'always' };
  switch (given.kind) {
    case 'always':
    case 'never':
      return { kind: given.kind };
    case 'timer':
      return { kind: 'timer', windows: windowsOfDay(given.windows) };
    case 'job':
      return {
        kind: 'job',
        machines:
          given.machines === undefined || given.machines.includes('any') ? Object.keys(machines) : given.machines,
        lead: given.lead?.value ?? 0,
        runOn: given['run-on']?.value ?? 0,
      };
    case 'thermostat':
      return { kind: 'thermostat', sensor: given.sensor, on: given.on.value, off: given.off.value };
    case 'air-quality':
      return {
        kind: 'air-quality',
        contaminant: given.contaminant,
        place: given.place,
        on: given.on.value,
        off: given.off.value,
      };
    case 'proportional':
      return {
        kind: 'proportional',
        sensor: given.sensor,
        from: given.from.value,
        to: given.to.value,
        low: given.low?.value ?? 0.3,
        high: given.high?.value ?? 1,
      };
    case 'stages':
      return {
        kind: 'stages',
        sensor: given.sensor,
        stages: given.steps.map(({ on, off, speed }) => ({ on: on.value, off: off.value, speed: speed.value })),
      };
  }
}
