// Sensors that read wrong, seen from what they switch: a sensor of the file is edited itself; where a control asks a bay's air
// without naming a sensor, its temperatures are moved the other way, which is the same.

import type { Cabinet, Control, Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import { partPath } from '../trades/remedy-edits.ts';

type Value = string | readonly Value[] | { readonly [key: string]: Value };

interface Controlled {
  readonly path: readonly (string | number)[];
  readonly control: Control;
}

/** Everything that is switched, with its place in the file. */
export function controlledIn({ paths, heats }: Cabinet): Controlled[] {
  return [
    ...Object.entries(paths).flatMap(([id, path]) =>
      path.parts.flatMap((part, at): Controlled[] =>
        part.part === 'fan' ? [{ path: [...partPath(id, path, at), 'control'], control: part.control }] : [],
      ),
    ),
    ...Object.entries(heats).map(([id, { control }]) => ({ path: ['heats', id, 'control'], control })),
  ];
}

export function sensorOf(control: Control): string | undefined {
  return 'sensor' in control ? control.sensor : undefined;
}

/** Every control that asks `sensor`, as if it read `wrong` K too much. */
export function misread(cabinet: Cabinet, sensor: string, wrong: number): Edit {
  const asking = controlledIn(cabinet).filter(({ control }) => sensorOf(control) === sensor);
  return { set: Object.fromEntries(asking.map(({ path, control }) => [joinPath(path), shifted(control, -wrong)])) };
}

const celsius = (kelvin: number): string => `${Math.round(100 * (kelvin - 273.15)) / 100} °C`;
const percent = (share: number): string => `${Math.round(1000 * share) / 10} %`;

function shifted(control: Control, by: number): Value {
  switch (control.kind) {
    case 'thermostat':
      return { thermostat: control.sensor, on: celsius(control.on + by), off: celsius(control.off + by) };
    case 'proportional':
      return {
        proportional: control.sensor,
        from: celsius(control.from + by),
        to: celsius(control.to + by),
        low: percent(control.low),
        high: percent(control.high),
      };
    case 'stages':
      return {
        stages: control.sensor,
        steps: control.stages.map(({ on, off, speed }) => ({
          on: celsius(on + by),
          off: celsius(off + by),
          speed: percent(speed),
        })),
      };
    default:
      throw new RangeError(`misread: a control of kind ${control.kind} asks no sensor`);
  }
}
