// What switches a thing, why so, and what to see when it works: in words, for whoever sets it.

import type { Cabinet, Control } from '../../cabinet/cabinet.ts';
import { formatClock, formatDuration, formatQuantity, type UnitSystem } from '../../units/format.ts';

export interface ControlWords {
  readonly set: string;
  readonly why: string;
  readonly see: string;
}

/** `draws`: it moves air; else it gives light or heat. */
export function controlWords(
  control: Control,
  { sensors, bays }: Cabinet,
  units: UnitSystem,
  draws: boolean,
): ControlWords {
  const degrees = (kelvin: number): string => formatQuantity('temperature', kelvin, units);
  const feels = (id: string): string => {
    const sensor = sensors[id];
    if (sensor !== undefined)
      return `sensor ${id}, ${formatQuantity('length', sensor.height, units)} above the floor of ${sensor.bay}`;
    return bays[id] === undefined ? id : `the air at the top of ${id}`;
  };
  switch (control.kind) {
    case 'always':
      return { set: 'always on', why: 'nothing switches it', see: 'it runs whenever the cabinet has power' };
    case 'never':
      return { set: 'off', why: 'the file keeps it off', see: 'it rests' };
    case 'timer':
      return {
        set: control.windows.map(([from, to]) => `${formatClock(from)} to ${formatClock(to)}`).join(', '),
        why: 'by the clock, whatever is printed',
        see: `it starts at ${formatClock(control.windows[0]?.[0] ?? 0)} by a clock that is right; set the clock again after a power cut`,
      };
    case 'job':
      return {
        set: `with the jobs of ${control.machines.join(', ')}: from ${control.lead > 0 ? `${formatDuration(control.lead)} before they start` : 'their start'} to ${formatDuration(control.runOn)} after they end`,
        why: draws
          ? 'what a job gives off is drawn away while it is given off, and what is left after it'
          : 'on only while there is something to see or to warm',
        see: `start a short job: it is on at the start, and goes off ${formatDuration(control.runOn)} after the end`,
      };
    case 'thermostat':
      return {
        set: `on at ${degrees(control.on)}, off at ${degrees(control.off)}; ${feels(control.sensor)}`,
        why: `${formatQuantity('temperature-difference', control.on - control.off, units)} between the two keep it from switching too often`,
        see: 'warm the sensor with the hand or a hair drier: it starts near the first temperature, and stops near the second as the sensor cools',
      };
    case 'air-quality':
      return {
        set: `by ${control.contaminant} at ${control.place}: on at ${levelWords(control.contaminant, control.on, units)}, off at ${levelWords(control.contaminant, control.off, units)}`,
        why: 'it runs while the air is bad, not while it is warm',
        see: 'a wipe with alcohol held near the sensor starts it; many such sensors show a trend, no mass (common practice)',
      };
    case 'proportional':
      return {
        set: `from ${share(control.low)} at ${degrees(control.from)} to ${share(control.high)} at ${degrees(control.to)}; ${feels(control.sensor)}`,
        why: 'a fan that follows is quieter than one that starts and stops',
        see: 'warm the sensor slowly: the fan gets faster without hunting up and down',
      };
    case 'stages':
      return {
        set: `${control.stages.map(({ on, off, speed }) => `${share(speed)} on at ${degrees(on)}, off at ${degrees(off)}`).join('; ')}; ${feels(control.sensor)}`,
        why: 'no faster than is needed: noise grows by about 15 dB for twice the speed',
        see: 'warm the sensor: each stage starts at its temperature, and goes back as it cools',
      };
  }
}

const share = (value: number): string => `${Math.round(100 * value)} %`;

function levelWords(contaminant: string, value: number, units: UnitSystem): string {
  return formatQuantity(contaminant === 'particles' ? 'particle-concentration' : 'mass-concentration', value, units);
}
