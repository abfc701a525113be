// When something is on: the conditions of a network, made ready to be asked after every switch, and the times they break at.

import type { When } from '../network/network.ts';

/** What conditions depend on. Thermostats and machines are asked by index. */
export interface Moment {
  time: number;
  /** 1 on, 0 off. */
  readonly thermostats: Uint8Array;
  /** Name of the mode that each machine is in. */
  readonly modes: string[];
}

export type Condition = (moment: Moment) => boolean;

export interface WhenNames {
  readonly thermostats: readonly string[];
  readonly machines: readonly string[];
}

/** Position of a name; a name that is nowhere is a fault of whoever made the network. */
export function indexOfName(names: readonly string[], name: string, kind: string): number {
  const index = names.indexOf(name);
  if (index < 0) throw new Error(`The network names the ${kind} "${name}", which it does not have`);
  return index;
}

export function compileWhen(when: When, names: WhenNames): Condition {
  if (when === 'always') return () => true;
  if ('windows' in when) {
    const { windows } = when;
    return ({ time }) => windows.some(([start, end]) => start <= time && time < end);
  }
  if ('thermostat' in when) {
    const index = indexOfName(names.thermostats, when.thermostat, 'thermostat');
    return ({ thermostats }) => thermostats[index] === 1;
  }
  if ('machine' in when) {
    const index = indexOfName(names.machines, when.machine, 'machine');
    const wanted = when.modes;
    if (wanted === undefined) return ({ modes }) => modes[index] !== 'idle';
    return ({ modes }) => wanted.includes(modes[index]!);
  }
  if ('not' in when) {
    const inner = compileWhen(when.not, names);
    return (moment) => !inner(moment);
  }
  if ('anyOf' in when) {
    const inner = when.anyOf.map((part) => compileWhen(part, names));
    return (moment) => inner.some((condition) => condition(moment));
  }
  const inner = when.allOf.map((part) => compileWhen(part, names));
  return (moment) => inner.every((condition) => condition(moment));
}

/** Adds the times at which the condition may change of itself. */
export function addBreaks(when: When, breaks: number[]): void {
  if (when === 'always') return;
  if ('windows' in when) for (const [start, end] of when.windows) breaks.push(start, end);
  else if ('not' in when) addBreaks(when.not, breaks);
  else if ('anyOf' in when) for (const part of when.anyOf) addBreaks(part, breaks);
  else if ('allOf' in when) for (const part of when.allOf) addBreaks(part, breaks);
}
