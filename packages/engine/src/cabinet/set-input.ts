// One number of a cabinet replaced: for runs with other inputs.

import type { Cabinet } from './cabinet.ts';

/** Ends of nature for numbers that a spread may reach beyond, by the last name of their path. */
const ends: Readonly<Record<string, readonly [number, number]>> = {
  humidity: [0, 1],
  dischargeCoefficient: [0.05, 1],
  loading: [0, 10],
  load: [0, 1],
  seatGap: [0, 0.02],
  sealGap: [0, 0.05],
  jointGap: [0, 0.01],
  emissivityInside: [0, 1],
  emissivityOutside: [0, 1],
  efficiency: [0.05, 1],
  speed: [0, 1],
  pricePosition: [0, 1],
  failures: [0, 0.9],
  waste: [0, 2],
  weakOxygen: [0.05, 0.2],
  endFixity: [0, 1],
  damping: [0.005, 1],
  stiffening: [1, 10],
  usableStrain: [0.01, 1],
  ripple: [0, 1],
  duty: [0.01, 1],
  powerFactor: [0.05, 1],
  filament: [1e-4, 0.01],
  gap: [1e-4, 1],
  radius: [1e-3, 10],
};

/** Numbers that may be below 0. */
const signed: ReadonlySet<string> = new Set([
  'offset',
  'windCoefficient',
  'along',
  'z',
  'noiseDbA',
  'tolerance',
  'bedOffset',
  'panelsDb',
  'lowBandsDb',
]);

/**
 * A copy of the cabinet with the number at a path replaced; only what lies on the way is copied.
 * What no such number can be (a humidity above 1, a power below 0) becomes the nearest that it can be.
 *
 * @param path - As in `Origins`: `room.airChangesPerHour`, `room.temperature.0.1`.
 * @throws RangeError when no number stands there, or the value is not finite.
 */
export function setInput(cabinet: Cabinet, path: string, value: number): Cabinet {
  return setInputs(cabinet, { [path]: value });
}

/** The same for many numbers, by path: what lies on the way to several of them is copied once. */
export function setInputs(cabinet: Cabinet, inputs: Readonly<Record<string, number>>): Cabinet {
  const copies = new Set<object>();
  let made: unknown = cabinet;
  for (const [path, value] of Object.entries(inputs)) {
    if (!Number.isFinite(value)) throw new RangeError(`setInput: value is ${value}; it must be a finite number`);
    made = replaced(made, path, path, value, copies);
  }
  return made as Cabinet;
}

/** `copies`: nodes that belong to the copy alone, which may be changed. */
function replaced(node: unknown, rest: string, path: string, value: number, copies: Set<object>): unknown {
  if (rest === '') {
    if (typeof node !== 'number') throw new RangeError(`setInput: path is ${path}; a number must stand there`);
    return withinNature(path, value);
  }
  if (typeof node !== 'object' || node === null)
    throw new RangeError(`setInput: path is ${path}; a number must stand there`);
  const key = keyAt(node, rest);
  if (key === undefined) throw new RangeError(`setInput: path is ${path}; a number must stand there`);
  const below = replaced((node as Record<string, unknown>)[key], rest.slice(key.length + 1), path, value, copies);
  const own = copies.has(node) ? node : Array.isArray(node) ? [...(node as unknown[])] : { ...node };
  copies.add(own);
  (own as Record<string, unknown>)[key] = below;
  return own;
}

/** The longest key of the node that the path goes on with: ids may hold dots (`PM2.5`). */
function keyAt(node: object, rest: string): string | undefined {
  let found: string | undefined;
  for (const key of Object.keys(node)) {
    if ((rest === key || rest.startsWith(`${key}.`)) && key.length > (found?.length ?? -1)) found = key;
  }
  return found;
}

function withinNature(path: string, value: number): number {
  const segments = path.split('.');
  const name = segments.at(-1)!;
  const isShare = /\.(?:efficiency|exhaustFilter|recirculationFilter|reflectances)\./.test(path);
  const range = isShare ? ([0, 1] as const) : ends[name];
  if (range !== undefined) return Math.min(Math.max(value, range[0]), range[1]);
  return signed.has(name) || segments[0] === 'people' ? value : Math.max(value, 0);
}
