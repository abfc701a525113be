// Machines, their schedule, sensors and thermostats, as a network file writes them.

import { isMap, type Node } from 'yaml';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { define, mustExist, ownName, PLACES, referred } from './file-names.ts';
import {
  complain,
  isMapNode,
  NOT_NEGATIVE,
  nameOf,
  POSITIVE,
  type Reading,
  readEntries,
  readList,
  readNumber,
  readText,
  SHARE,
} from './file-value.ts';
import type { MachineMode, NetworkMachine, ScheduleEntry, Sensor, Thermostat } from './network.ts';
import { readCourse } from './read-contaminants.ts';
import { mustExistInMachine } from './read-when.ts';

const ICE_POINT = 273.15;

export function readMachine(reading: Reading, node: Node): NetworkMachine {
  const map = openMap(reading, node, 'a machine', fileKeys.machine);
  const name = ownName(reading, 'machine', map);
  const modesNode = map.at('modes');
  const modes = modesNode === undefined ? [] : readModes(reading, modesNode, name, map.has('bed'));
  const idle = modes.some((mode) => mode.name === 'idle') ? [] : [{ name: 'idle', powers: [], emissions: [] }];
  const bed = map.at('bed');
  return { name, ...(bed === undefined ? {} : { bed: readBed(reading, bed) }), modes: [...modes, ...idle] };
}

function readBed(reading: Reading, node: Node): NonNullable<NetworkMachine['bed']> {
  const map = openMap(reading, node, 'a bed', fileKeys.bed);
  const supply = map.at('supply');
  const bed = { node: referred(reading, map, 'node', PLACES), powerMax: map.number('powerMax', POSITIVE) };
  if (supply === undefined) return bed;
  const loss = openMap(reading, supply, 'a supply', fileKeys.supply);
  return { ...bed, supply: { node: referred(reading, loss, 'node', PLACES), share: loss.number('share', SHARE) } };
}

/** Modes by name, or a list of modes that have names. */
function readModes(reading: Reading, node: Node, machine: string, hasBed: boolean): readonly MachineMode[] {
  const named = isMapNode(reading, node)
    ? readEntries(reading, node, 'modes').map(({ key, value }) => ({ name: nameOf(key), key, value }))
    : readList(reading, node, 'modes').map((value) => {
        const map = openMap({ ...reading, complaints: [] }, value, 'a mode', { name: fileKeys.mode.name });
        return { name: map.text('name', ''), key: map.at('name') ?? value, value };
      });
  return named.map(({ name, key, value }) => {
    define(reading, `modes of ${machine}`, key, name);
    return readMode(reading, value, key, name, hasBed);
  });
}

function readMode(reading: Reading, node: Node, key: Node, name: string, hasBed: boolean): MachineMode {
  if (node === key) return { name, powers: [], emissions: [] };
  const map = openMap(reading, node, `the mode ${name}`, fileKeys.mode);
  const set = map.at('bedSet');
  if (set !== undefined && !hasBed) {
    complain(
      reading,
      set,
      'key-out-of-place',
      'the machine has no bed',
      'a set-point where there is a bed',
      'add bed: {node, P_max_W}',
    );
  }
  return {
    name,
    ...(set === undefined ? {} : { bedSet: map.number('bedSet', NOT_NEGATIVE) }),
    powers: readPowers(reading, map.at('powers')),
    emissions: readEmissions(reading, map.at('emissions')),
  };
}

/** A list of {node, W}, or a map from nodes to watts. */
function readPowers(reading: Reading, node: Node | undefined): MachineMode['powers'] {
  if (node === undefined) return [];
  const target = reading.document.resolve(node);
  if (isMap(target) && !target.has('node')) {
    return readEntries(reading, node, 'powers').map(({ key, value }) => {
      mustExist(reading, key, nameOf(key), PLACES);
      return { node: nameOf(key), watts: readNumber(reading, value, nameOf(key), {}) };
    });
  }
  return readList(reading, node, 'powers', 'single').map((item) => {
    const map = openMap(reading, item, 'a power', fileKeys.power);
    return { node: referred(reading, map, 'node', PLACES), watts: map.number('watts') };
  });
}

/**
 * A list of {contaminant, zone, rate}; or a map that says the same more shortly: {pn: {zone: bay, rate: 1}},
 * {zone: bay, pn: 1, voc: 2}, {bay: {pn: 1}} or {pn: {bay: 1}}.
 */
function readEmissions(reading: Reading, node: Node | undefined): MachineMode['emissions'] {
  if (node === undefined) return [];
  const target = reading.document.resolve(node);
  if (!isMap(target) || target.has('contaminant')) {
    return readList(reading, node, 'emission', 'single').map((item) => {
      const map = openMap(reading, item, 'an emission', fileKeys.modeEmission);
      return emissionOf(reading, map, referred(reading, map, 'contaminant', ['contaminant']));
    });
  }
  const entries = readEntries(reading, node, 'emission');
  const common = entries.find(({ key }) => nameOf(key) === 'zone');
  if (common !== undefined) {
    const zone = readText(reading, common.value, 'zone');
    mustExist(reading, common.value, zone, ['zone']);
    return entries.filter((entry) => entry !== common).map(({ key, value }) => rateOf(reading, key, zone, value));
  }
  return entries.flatMap(({ key, value }) => {
    const inner = reading.document.resolve(value);
    const { contaminant: _, ...keys } = fileKeys.modeEmission;
    if (!isMap(inner) || inner.has('zone') || inner.has('rate')) {
      mustExist(reading, key, nameOf(key), ['contaminant']);
      return [emissionOf(reading, openMap(reading, value, 'an emission', keys), nameOf(key))];
    }
    const isZone = reading.names.get('zone')?.has(nameOf(key)) ?? false;
    return readEntries(reading, value, nameOf(key)).map((rate) => {
      const [zone, contaminant] = isZone ? [key, rate.key] : [rate.key, key];
      mustExist(reading, zone, nameOf(zone), ['zone']);
      return rateOf(reading, contaminant, nameOf(zone), rate.value);
    });
  });
}

type ModeEmission = MachineMode['emissions'][number];

function emissionOf(
  reading: Reading,
  map: FileMap<'zone' | 'rate' | 'burst' | 'tail'>,
  contaminant: string,
): ModeEmission {
  const zone = referred(reading, map, 'zone', ['zone']);
  return { contaminant, zone, rate: map.number('rate', NOT_NEGATIVE), ...readCourse(reading, map) };
}

function rateOf(reading: Reading, contaminant: Node, zone: string, rate: Node): ModeEmission {
  mustExist(reading, contaminant, nameOf(contaminant), ['contaminant']);
  return {
    contaminant: nameOf(contaminant),
    zone,
    rate: readNumber(reading, rate, nameOf(contaminant), NOT_NEGATIVE),
  };
}

/** Entries in the order of the file; a machine has one mode at a time. */
export function readSchedule(reading: Reading, nodes: readonly Node[]): readonly ScheduleEntry[] {
  const entries = nodes.map((node) => ({ node, entry: readScheduleEntry(reading, node) }));
  const busyUntil = new Map<string, number>();
  for (const { node, entry } of [...entries].sort((a, b) => a.entry.start - b.entry.start)) {
    const { machine, start, end } = entry;
    if (start < (busyUntil.get(machine) ?? Number.NEGATIVE_INFINITY) && start < end) {
      const what = `${machine} has another mode at this time`;
      complain(
        reading,
        node,
        'schedule-overlaps',
        what,
        'one mode of a machine at a time',
        'let one end where the other starts',
      );
    }
    busyUntil.set(machine, Math.max(end, busyUntil.get(machine) ?? end));
  }
  return entries.map(({ entry }) => entry);
}

function readScheduleEntry(reading: Reading, node: Node): ScheduleEntry {
  const map = openMap(reading, node, 'an entry of the schedule', fileKeys.schedule);
  const machine = referred(reading, map, 'machine', ['machine']);
  const mode = map.text('mode');
  const modeNode = map.at('mode');
  if (modeNode !== undefined) mustExistInMachine(reading, modeNode, machine, mode);
  const start = map.number('start');
  const end = map.number('end');
  if (end < start) {
    const what = `the end ${end} s lies before the start ${start} s`;
    complain(reading, map.at('end')!, 'end-before-start', what, 'start ≤ end', 'swap the two');
  }
  return { machine, mode, start, end };
}

export function readSensor(reading: Reading, node: Node): Sensor {
  const map = openMap(reading, node, 'a sensor', fileKeys.sensor);
  return {
    name: ownName(reading, 'sensor', map),
    at: referred(reading, map, 'at', PLACES),
    lag: map.number('lag', NOT_NEGATIVE),
    offset: map.number('offset', {}, 0),
  };
}

export function readThermostat(reading: Reading, node: Node): Thermostat {
  const map = openMap(reading, node, 'a thermostat', fileKeys.thermostat);
  const name = ownName(reading, 'thermostat', map);
  const initial = map.flag('initial', false);
  const sensorNode = map.at('sensor');
  const level = sensorNode !== undefined && isMapNode(reading, sensorNode);
  const sensor = level
    ? readContaminantSensor(reading, sensorNode)
    : referred(reading, map, 'sensor', [...PLACES, 'sensor']);
  const sense = map.has('onBelow') || map.has('offAbove') ? 'below' : 'above';
  const [onKey, offKey] = sense === 'above' ? (['onAbove', 'offBelow'] as const) : (['onBelow', 'offAbove'] as const);
  for (const stray of sense === 'below' ? (['onAbove', 'offBelow'] as const) : []) {
    const strayNode = map.at(stray);
    if (strayNode === undefined) continue;
    complain(
      reading,
      strayNode,
      'key-out-of-place',
      'a thermostat switches on above or on below, not both',
      'on_above_C with off_below_C, or on_below_C with off_above_C',
      'take out one pair',
    );
  }
  // A concentration is no temperature: the shift from °C that the keys carry is taken off again.
  const shift = level ? ICE_POINT : 0;
  const bounds = level ? { least: ICE_POINT } : NOT_NEGATIVE;
  const on = map.number(onKey, bounds) - shift;
  const off = map.number(offKey, bounds) - shift;
  if (sense === 'above' ? off >= on : off <= on) {
    const rule = sense === 'above' ? 'off_below_C below on_above_C' : 'off_above_C above on_below_C';
    complain(
      reading,
      map.at(offKey)!,
      'hysteresis-none',
      `${name} would switch off where it switches on, or beyond`,
      rule,
      'move the two apart',
    );
  }
  return { name, sensor, on, off, sense, initial };
}

function readContaminantSensor(reading: Reading, node: Node): { contaminant: string; zone: string } {
  const map = openMap(reading, node, 'a sensor', fileKeys.contaminantSensor);
  return {
    contaminant: referred(reading, map, 'contaminant', ['contaminant']),
    zone: referred(reading, map, 'zone', ['zone']),
  };
}
