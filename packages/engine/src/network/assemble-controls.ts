// What switches fans, lamps and heaters: every control of the file becomes windows, thermostats or stages of the network.

import type { Cabinet, Control, Day, SensorPart } from '../cabinet/cabinet.ts';
import { zoneAt } from './assemble-bays.ts';
import type { BayPlaces } from './assembly.ts';
import type { Draft } from './draft.ts';
import type { Fan, When } from './network.ts';
import { mergeWindows, repeatWindows } from './repeat-daily.ts';

export interface Switching {
  readonly control: When;
  readonly speed?: Fan['speed'];
}

export interface ControlContext {
  readonly draft: Draft;
  readonly cabinet: Cabinet;
  readonly day: Day;
  readonly bays: Readonly<Record<string, BayPlaces>>;
}

const NEVER: When = { windows: [] };

export function assembleSensors({ draft, cabinet, bays }: ControlContext): void {
  for (const [name, sensor] of Object.entries(cabinet.sensors)) {
    draft.sensors.push({ name, at: sensorZone(cabinet, bays, sensor), lag: sensor.lag, offset: sensor.offset });
  }
}

export function sensorZone(
  cabinet: Cabinet,
  bays: Readonly<Record<string, BayPlaces>>,
  { bay, height }: SensorPart,
): string {
  return zoneAt(bays, bay, (cabinet.bays[bay]?.z[0] ?? 0) + height);
}

/** `owner` names the thermostats that a control needs, so that events can be told apart. Nothing runs while there is no power. */
export function assembleControl(context: ControlContext, owner: string, control: Control): Switching {
  const switching = assembleWanted(context, owner, control);
  const { powerCut, length } = context.day;
  return powerCut === undefined
    ? switching
    : { ...switching, control: withoutPower(switching.control, powerCut, length) };
}

/** The same but for the hours of a power cut. Hours stay hours: a heater that holds its air asks for them. */
function withoutPower(when: When, [start, end]: readonly [number, number], length: number): When {
  if (when === 'always') return { windows: [[0, start] as const, [end, length] as const].filter(([a, b]) => b > a) };
  if ('windows' in when) {
    const cut = when.windows.flatMap(([a, b]) => [[a, Math.min(b, start)] as const, [Math.max(a, end), b] as const]);
    return { windows: cut.filter(([a, b]) => b > a) };
  }
  return { allOf: [when, { not: { windows: [[start, end]] } }] };
}

function assembleWanted(context: ControlContext, owner: string, control: Control): Switching {
  const { draft, day } = context;
  switch (control.kind) {
    case 'always':
      return { control: 'always' };
    case 'never':
      return { control: NEVER };
    case 'timer':
      return { control: { windows: repeatWindows(control.windows, day.length) } };
    case 'job':
      return { control: { windows: jobWindows(day, control.machines, control.lead, control.runOn) } };
    case 'thermostat':
      draft.thermostats.push({
        name: owner,
        sensor: sensorName(context, control.sensor),
        on: control.on,
        off: control.off,
        sense: 'above',
        initial: false,
      });
      return { control: { thermostat: owner } };
    case 'air-quality': {
      const place = context.bays[control.place]?.zones.at(-1) ?? control.place;
      draft.thermostats.push({
        name: owner,
        sensor: { contaminant: control.contaminant, zone: place },
        on: control.on,
        off: control.off,
        sense: 'above',
        initial: false,
      });
      return { control: { thermostat: owner } };
    }
    case 'proportional':
      return {
        control: 'always',
        speed: {
          proportional: {
            sensor: sensorName(context, control.sensor),
            from: control.from,
            to: control.to,
            low: control.low,
            high: control.high,
          },
        },
      };
    case 'stages': {
      const stages = control.stages.map(({ on, off, speed }, index) => {
        const name = `${owner} stage ${index + 1}`;
        draft.thermostats.push({
          name,
          sensor: sensorName(context, control.sensor),
          on,
          off,
          sense: 'above',
          initial: false,
        });
        return { when: { thermostat: name } as When, speed };
      });
      return { control: { anyOf: stages.map(({ when }) => when) }, speed: { stages } };
    }
  }
}

/** On while any of the machines has a job, from `lead` before to `runOn` after. */
export function jobWindows(
  day: Day,
  machines: readonly string[],
  lead: number,
  runOn: number,
): (readonly [number, number])[] {
  const jobs = Object.values(day.jobs).filter(({ machine }) => machines.includes(machine));
  return mergeWindows(
    jobs.map(
      ({ start, duration }) => [Math.max(start - lead, 0), Math.min(start + duration + runOn, day.length)] as const,
    ),
  );
}

/** A control may name a sensor, or a bay: then the air at its top, without lag or offset. */
function sensorName({ cabinet, bays }: ControlContext, wanted: string): string {
  if (cabinet.sensors[wanted] !== undefined) return wanted;
  return bays[wanted]?.zones.at(-1) ?? wanted;
}
