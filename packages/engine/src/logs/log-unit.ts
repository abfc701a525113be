// Units in the headers of logs: `Temp top (°C)`, `room [°F]`, `power / W`.

import type { LogKind } from './log.ts';

export interface LogUnit {
  readonly kind: LogKind;
  /** value · scale + shift is SI. */
  readonly scale: number;
  readonly shift: number;
  readonly text: string;
}

const CELSIUS: LogUnit = { kind: 'temperature', scale: 1, shift: 273.15, text: '°C' };
const FAHRENHEIT: LogUnit = { kind: 'temperature', scale: 5 / 9, shift: 459.67 / 1.8, text: '°F' };
const KELVIN: LogUnit = { kind: 'temperature', scale: 1, shift: 0, text: 'K' };
const PERCENT: LogUnit = { kind: 'humidity', scale: 0.01, shift: 0, text: '%' };
const WATT: LogUnit = { kind: 'power', scale: 1, shift: 0, text: 'W' };
const KILOWATT: LogUnit = { kind: 'power', scale: 1000, shift: 0, text: 'kW' };
/** Vapours and dust are kept in µg/m³ and particles in 1/m³, as everywhere here. */
const MICROGRAM: LogUnit = { kind: 'concentration', scale: 1, shift: 0, text: 'µg/m³' };
const MILLIGRAM: LogUnit = { kind: 'concentration', scale: 1000, shift: 0, text: 'mg/m³' };
const PER_CM3: LogUnit = { kind: 'concentration', scale: 1e6, shift: 0, text: '/cm³' };
const PER_M3: LogUnit = { kind: 'concentration', scale: 1, shift: 0, text: '/m³' };

export const units: { readonly celsius: LogUnit; readonly fahrenheit: LogUnit; readonly kelvin: LogUnit } = {
  celsius: CELSIUS,
  fahrenheit: FAHRENHEIT,
  kelvin: KELVIN,
};

const table: Readonly<Record<string, LogUnit>> = {
  '°c': CELSIUS,
  ºc: CELSIUS,
  degc: CELSIUS,
  c: CELSIUS,
  celsius: CELSIUS,
  '°f': FAHRENHEIT,
  ºf: FAHRENHEIT,
  degf: FAHRENHEIT,
  f: FAHRENHEIT,
  fahrenheit: FAHRENHEIT,
  k: KELVIN,
  kelvin: KELVIN,
  '%': PERCENT,
  '%rh': PERCENT,
  rh: PERCENT,
  '%r.h.': PERCENT,
  w: WATT,
  watt: WATT,
  watts: WATT,
  kw: KILOWATT,
  'ug/m3': MICROGRAM,
  'mg/m3': MILLIGRAM,
  '/cm3': PER_CM3,
  '1/cm3': PER_CM3,
  '#/cm3': PER_CM3,
  '/m3': PER_M3,
  '1/m3': PER_M3,
};

export function unitNamed(text: string): LogUnit | undefined {
  return table[text.toLowerCase().replaceAll(/\s/g, '').replaceAll(/[µμ]/g, 'u').replaceAll('³', '3')];
}

/** A header in its name and its unit; without a unit, what its words speak of, and none. */
export function splitHeader(header: string): {
  readonly name: string;
  readonly unit?: LogUnit;
  readonly strange?: string;
} {
  const bracketed = /^(.*?)\s*[([]([^()[\]]*)[)\]]\s*$/.exec(header);
  if (bracketed !== null) {
    const unit = unitNamed(bracketed[2]!);
    if (unit !== undefined) return { name: bracketed[1]!.trim(), unit };
    return { name: bracketed[1]!.trim(), strange: bracketed[2]!.trim() };
  }
  const tail = /^(.*?)(?:\s*[/,]\s*|\s+in\s+|\s+|_)(\S+)$/.exec(header);
  // One letter behind a name is part of the name, unless a stroke says otherwise: `bay c`.
  const unit = tail === null || /[^/\s]\s+[a-z]$|_[a-z]$/i.test(header) ? undefined : unitNamed(tail[2]!);
  return tail !== null && unit !== undefined ? { name: tail[1]!.trim(), unit } : { name: header.trim() };
}

/** What a name without a unit speaks of, and the unit it is taken to have. */
export function unitGuessed(name: string): LogUnit {
  const text = name.toLowerCase();
  if (/humid|(^|[^a-z])rh([^a-z]|$)/.test(text)) return PERCENT;
  if (/power|watt/.test(text)) return WATT;
  if (/particle/.test(text)) return PER_CM3;
  if (/pm ?2\.5|tvoc|voc|styrene|formaldehyde/.test(text)) return MICROGRAM;
  return CELSIUS;
}
