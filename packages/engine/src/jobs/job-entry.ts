// What a job file comes to as a job of a cabinet file: `jobs:` of a day takes it as it stands.

import { formatNumber } from '../units/format.ts';

export interface JobEntry {
  readonly name: string;
  readonly machine?: string;
  readonly material?: string;
  /** Nobody said so: its set-points are nearest. */
  readonly materialTaken?: true;
  /** From the start of its heating to its end, s. */
  readonly for: number;
  /** K */
  readonly nozzle?: number;
  readonly bed?: number;
  /** kg */
  readonly mass?: number;
  /** m */
  readonly partSize?: number;
}

const CELSIUS = 273.15;
/** A time that somebody has to change. */
const START = '9:00';

/**
 * Its keys as an edit of a cabinet file takes them, in the order of the file. When it starts nobody but the person knows; the
 * material is absent when neither they nor the set-points say it, and the file cannot do without.
 */
export function entryKeys(entry: JobEntry): Readonly<Record<string, string>> {
  const { machine, material, nozzle, bed, mass, partSize } = entry;
  return {
    ...(machine === undefined ? {} : { machine }),
    ...(material === undefined ? {} : { material }),
    start: START,
    for: durationText(entry.for),
    ...(nozzle === undefined ? {} : { nozzle: degrees(nozzle) }),
    ...(bed === undefined ? {} : { bed: degrees(bed) }),
    ...(mass === undefined ? {} : { mass: `${formatNumber(mass * 1000, 2)} g` }),
    ...(partSize === undefined ? {} : { 'part-size': `${formatNumber(partSize * 1000, 1)} mm` }),
  };
}

/** Lines of YAML. What is not known is left out, and said in a comment when the file cannot do without. */
export function entryText(entry: JobEntry): string {
  const { name, material, materialTaken } = entry;
  const said: Readonly<Record<string, string>> = {
    start: ' # when its heating begins: say when',
    ...(materialTaken ? { material: ' # taken by its set-points: say if it is another' } : {}),
  };
  const names = ['machine', 'material'];
  const lines = Object.entries(entryKeys(entry)).map(
    ([key, value]) => `${key}: ${names.includes(key) ? inYaml(value) : value}${said[key] ?? ''}`,
  );
  const machineLines = 'machine' in entry ? 1 : 0;
  if (material === undefined) lines.splice(machineLines, 0, '# material: say which');
  return ['jobs:', `  ${inYaml(name)}:`, ...lines.map((line) => `    ${line}`)].join('\n');
}

/** A name of a job from that of its file: its folder and ending left out, and what no id may hold. */
export function entryName(file: string): string {
  const base = file.split(/[/\\]/).at(-1) ?? file;
  const plain = base.replace(/\.[^.]*$/, '').replaceAll(/[^\p{L}\p{N} _-]+/gu, '-');
  const name = plain.replaceAll(/^[-_ ]+|[- ]+$/g, '').slice(0, 60);
  return name === '' ? 'job' : name;
}

/** To the minute, or to the second where it is short; in no unit that would lose more. */
export function durationText(seconds: number): string {
  if (seconds < 600) return `${Math.max(1, Math.round(seconds))} s`;
  const minutes = Math.round(seconds / 60);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  return [hours > 0 ? `${hours} h` : '', rest > 0 ? `${rest} min` : ''].filter((part) => part !== '').join(' ');
}

function degrees(kelvin: number): string {
  return `${Math.round((kelvin - CELSIUS) * 10) / 10} °C`;
}

/** Plain where YAML reads it back as the same text. */
function inYaml(text: string): string {
  const plain = /^[\p{L}][\p{L}\p{N} _.-]*$/u.test(text) && !/^(true|false|yes|no|on|off|null|y|n)$/i.test(text);
  return plain && !text.endsWith(' ') ? text : JSON.stringify(text);
}
