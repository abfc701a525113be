// What a log may put right: factors on what correlations give, heat of machines, errors and lags of sensors, dust in filters, the room.
// Each is counted in widths: 0 is what the file says, ±1 is one standard deviation of what is known without the log.

import { assumedInputs, inputLabel } from '../../cabinet/assumed-inputs.ts';
import type { Cabinet, Edit, Factors } from '../../cabinet/cabinet.ts';
import type { Origins, Spread } from '../../cabinet/origin.ts';
import { factorNames } from '../../cabinet/overrides.ts';
import { setInputs } from '../../cabinet/set-input.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import type { KindName } from '../../units/unit-table.ts';

export interface Unknown {
  /** `leakage`, `offset.top`, `loading.exhaust`; else a path in the cabinet. */
  readonly id: string;
  readonly label: string;
  /** Multiplied (counted in logarithms) or added to. */
  readonly scale: 'factor' | 'shift';
  /** What the file says, SI. */
  readonly nominal: number;
  readonly unit: KindName;
  /** One standard deviation, in logarithms for a factor. */
  readonly width: number;
  /** Where the width comes from. */
  readonly from: 'the file' | 'usual';
  /** Least and greatest value. */
  readonly bounds: readonly [number, number];
}

/** Standard deviations between the 10th and the 90th percentile. */
const SPAN: number = 2 * normalQuantile(0.9);
/** Widths that a value may lie away from what the file says. */
const REACH = 4;

/** Widths of factors whose file gives none: from the spreads of defaults, and judgement. */
const USUAL: Readonly<Record<string, number>> = {
  leakage: 0.38,
  'wall-loss': 0.2,
  'bed-loss': 0.2,
  'fan-flow': 0.1,
  'inside-film': 0.17,
  'outside-film': 0.12,
  plume: 0.16,
  'room-heat-loss': 0.54,
  'emission-particles': 1,
  'emission-vapours': 1,
};

const FACTOR_LABELS: Readonly<Record<string, string>> = {
  'emission-particles': 'particles given off',
  'emission-vapours': 'vapours given off',
};

/** The unknown with this id, or undefined when the cabinet has none such. */
export function unknownNamed(id: string, source: ReadSource): Unknown | undefined {
  const { cabinet, origins } = source;
  const [kind = '', ...rest] = id.split('.');
  const part = rest.join('.');
  const short = kind === 'factors' ? part : id;
  if (factorNames[short] !== undefined) return factor(short, source);
  if (kind === 'offset' || kind === 'lag') {
    const sensor = cabinet.sensors[part];
    if (sensor === undefined) return undefined;
    return kind === 'offset'
      ? shift(
          id,
          `error of sensor ${part}`,
          sensor.offset,
          'temperature-difference',
          spreadAt(origins, `sensors.${part}.offset`),
          0.4,
        )
      : times(
          id,
          `lag of sensor ${part}`,
          Math.max(sensor.lag, 5),
          'duration',
          spreadAt(origins, `sensors.${part}.lag`),
          0.77,
          [1, 3600],
        );
  }
  if (kind === 'heat' && cabinet.machines[part] !== undefined) return machineHeat(id, part, source);
  if (kind === 'loading' && filterAt(cabinet, part) !== undefined) return loading(id, part, source);
  if (id === 'room-temperature') {
    const spread = spreadAt(origins, 'room.temperature.0.1');
    return shift(
      id,
      'temperature of the room',
      0,
      'temperature-difference',
      undefined,
      spread === undefined ? 1 : widthOf(spread),
    );
  }
  const input = assumedInputs(origins).find(({ path }) => path === id);
  if (input === undefined) return undefined;
  const { spread, label } = input;
  return spread.p10 > 0
    ? times(id, label, spread.p50, 'number', spread, 0.2)
    : shift(id, label, spread.p50, 'number', spread, 1);
}

function factor(name: string, { cabinet, origins }: ReadSource): Unknown {
  const key = factorNames[name]!;
  const path = `factors.${key}`;
  const label = FACTOR_LABELS[name] ?? inputLabel(path);
  return times(name, label, cabinet.factors[key], 'number', spreadAt(origins, path), USUAL[name]!);
}

function machineHeat(id: string, machine: string, { cabinet, origins }: ReadSource): Unknown {
  const { hotEnd, motors, electronics } = cabinet.machines[machine]!;
  const sum = hotEnd + motors + electronics;
  const squares = ['hotEnd', 'motors', 'electronics'].map((each) => {
    const spread = spreadAt(origins, `machines.${machine}.${each}`);
    return spread === undefined ? 0 : ((spread.p90 - spread.p10) / SPAN) ** 2;
  });
  const given = spreadAt(origins, `overrides.machines.${machine}.heat`);
  const width = Math.sqrt(squares.reduce((all, each) => all + each, 0)) / Math.max(sum, 1e-9);
  return {
    ...times(
      id,
      `heat of hot end, motors and electronics of ${machine}`,
      Math.max(sum, 1),
      'power',
      given,
      width > 0 ? width : 0.2,
    ),
    from: given !== undefined || width > 0 ? 'the file' : 'usual',
  };
}

/** Dust in a filter: nothing is known of it but that it grows. */
function loading(id: string, path: string, { cabinet, origins }: ReadSource): Unknown {
  const at = filterAt(cabinet, path)!;
  const part = cabinet.paths[path]!.parts[at]!;
  const nominal = part.part === 'filter' ? part.loading : 0;
  const spread = spreadAt(origins, `paths.${path}.parts.${at}.loading`);
  return {
    ...shift(id, `dust in the filter of ${path}, as a share of what it holds`, nominal, 'share', spread, 0.5),
    bounds: [0, 4],
  };
}

export function filterAt({ paths }: Cabinet, path: string): number | undefined {
  const at = paths[path]?.parts.findIndex(({ part }) => part === 'filter') ?? -1;
  return at < 0 ? undefined : at;
}

function times(
  id: string,
  label: string,
  nominal: number,
  unit: KindName,
  spread: Spread | undefined,
  usual: number,
  ends: readonly [number, number] = [1e-9, 1e12],
): Unknown {
  const width = spread !== undefined && spread.p10 > 0 ? Math.log(spread.p90 / spread.p10) / SPAN : usual;
  const reach = Math.exp(REACH * width);
  return {
    id,
    label,
    scale: 'factor',
    nominal,
    unit,
    width,
    from: spread === undefined ? 'usual' : 'the file',
    bounds: [Math.max(nominal / reach, ends[0]), Math.min(nominal * reach, ends[1])],
  };
}

function shift(
  id: string,
  label: string,
  nominal: number,
  unit: KindName,
  spread: Spread | undefined,
  usual: number,
): Unknown {
  const width = spread === undefined ? usual : widthOf(spread);
  return {
    id,
    label,
    scale: 'shift',
    nominal,
    unit,
    width,
    from: spread === undefined ? 'usual' : 'the file',
    bounds: [nominal - REACH * width, nominal + REACH * width],
  };
}

const widthOf = ({ p10, p90 }: Spread): number => (p90 - p10) / SPAN;

function spreadAt(origins: Origins, path: string): Spread | undefined {
  const spread = origins.get(path)?.spread;
  return spread === undefined || spread.p10 === spread.p90 ? undefined : spread;
}

/** Value of an unknown that lies `u` widths from what the file says. */
export function valueAway({ scale, nominal, width }: Unknown, u: number): number {
  return scale === 'factor' ? nominal * Math.exp(width * u) : nominal + width * u;
}

/** Widths from what the file says. */
export function widthsAway({ scale, nominal, width }: Unknown, value: number): number {
  return scale === 'factor' ? Math.log(value / nominal) / width : (value - nominal) / width;
}

/** Cabinet on a day with other values of unknowns, by their id. */
export function withValues(cabinet: Cabinet, day: string, values: Readonly<Record<string, number>>): Cabinet {
  let made = cabinet;
  const inputs: Record<string, number> = {};
  for (const [id, value] of Object.entries(values)) {
    const [kind = '', ...rest] = id.split('.');
    const part = rest.join('.');
    if (factorNames[id] !== undefined) inputs[`factors.${factorNames[id] satisfies keyof Factors}`] = value;
    else if (kind === 'offset' || kind === 'lag') inputs[`sensors.${part}.${kind}`] = value;
    else if (kind === 'heat') made = { ...made, overrides: { ...made.overrides, [`machines.${part}.heat`]: value } };
    else if (kind === 'loading') inputs[`paths.${part}.parts.${filterAt(cabinet, part)!}.loading`] = value;
    else if (id === 'room-temperature') made = warmerRoom(made, day, value);
    else inputs[id] = value;
  }
  return setInputs(made, inputs);
}

function warmerRoom(cabinet: Cabinet, day: string, by: number): Cabinet {
  const one = cabinet.days[day]!;
  const course = one.roomTemperature ?? cabinet.room.temperature;
  const roomTemperature = course.map(([time, value]) => [time, value + by] as const);
  return { ...cabinet, days: { ...cabinet.days, [day]: { ...one, roomTemperature } } };
}

/** What a log of this cabinet may put right unless somebody says otherwise, but for what it cannot show. */
export function usualUnknowns(source: ReadSource, sees: { readonly air: boolean; readonly room: boolean }): Unknown[] {
  const { cabinet, origins } = source;
  const open = (id: string, path: string): string[] => (origins.get(path)?.spread === undefined ? [] : [id]);
  const ids = [
    ...['leakage', 'bed-loss', 'fan-flow', 'inside-film', 'outside-film', 'plume'].flatMap((name) =>
      open(name, `factors.${factorNames[name]!}`),
    ),
    ...(origins.get('factors.wallLoss')?.kind === 'given' ? [] : ['wall-loss']),
    ...(sees.room ? [] : open('room-heat-loss', 'factors.roomHeatLoss')),
    ...(sees.room ? [] : ['room-temperature']),
    ...(sees.air ? ['emission-particles', 'emission-vapours'] : []),
    ...Object.keys(cabinet.machines)
      .filter((id) =>
        Object.values(cabinet.days).some(({ jobs }) => Object.values(jobs).some(({ machine }) => machine === id)),
      )
      .filter((id) => origins.get(`machines.${id}.hotEnd`)?.spread !== undefined)
      .map((id) => `heat.${id}`),
    ...Object.keys(cabinet.sensors).flatMap((id) => [
      ...open(`offset.${id}`, `sensors.${id}.offset`),
      ...open(`lag.${id}`, `sensors.${id}.lag`),
    ]),
  ];
  return ids.flatMap((id) => unknownNamed(id, source) ?? []);
}

/** Names that `--fit` may be given for this cabinet, without paths. */
export function knownUnknowns({ cabinet }: ReadSource): string[] {
  return [
    ...Object.keys(factorNames),
    'room-temperature',
    ...Object.keys(cabinet.machines).map((id) => `heat.${id}`),
    ...Object.keys(cabinet.sensors).flatMap((id) => [`offset.${id}`, `lag.${id}`]),
    ...Object.keys(cabinet.paths)
      .filter((id) => filterAt(cabinet, id) !== undefined)
      .map((id) => `loading.${id}`),
  ];
}

/** The change of the file that keeps a value with its interval; nothing for what does not last (the room of that day). */
export function editOf(
  { id }: Unknown,
  text: string,
  cabinet: Cabinet,
): { readonly edit: Edit; readonly path: string } | undefined {
  const [kind = '', ...rest] = id.split('.');
  const part = rest.join('.');
  const set = (path: string, key: string): { edit: Edit; path: string } => ({
    edit: { set: { [path]: text } },
    path: key,
  });
  if (factorNames[id] !== undefined) return set(`overrides."factors.${id}"`, `overrides.factors.${id}`);
  if (kind === 'offset' || kind === 'lag') return set(`sensors.${quotedId(part)}.${kind}`, `sensors.${part}.${kind}`);
  if (kind === 'heat') return set(`overrides."machines.${part}.heat"`, `overrides.machines.${part}.heat`);
  if (kind === 'loading') {
    const at = filterAt(cabinet, part)!;
    return set(`air.${quotedId(part)}.parts.${at}.loading`, `air.${part}.parts.${at}.loading`);
  }
  return undefined;
}

const quotedId = (id: string): string => (id.includes('.') ? `"${id}"` : id);
