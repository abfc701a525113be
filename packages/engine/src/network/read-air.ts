// Air paths, exchanges and air change, as a network file writes them.

import type { Node } from 'yaml';
import { fileKeys } from './file-keys.ts';
import { openMap } from './file-map.ts';
import { mustExist, ownName, referred, referredList } from './file-names.ts';
import { NOT_NEGATIVE, nameOf, POSITIVE, type Reading, readEntries, readNumber, SHARE } from './file-value.ts';
import type { AirChange, AirPath, Exchange } from './network.ts';
import { readFanParts } from './read-fan.ts';
import { mustDiffer } from './read-heat.ts';
import { whenAt } from './read-when.ts';

const types = ['orifice', 'crack', 'fixed_flow', 'tall_opening', 'fan_path'] as const;
type PathType = (typeof types)[number];

/** Below this the law runs linearly through zero where a file gives no other pressure, Pa. */
const LINEAR_BELOW = 1e-3;

const { orifice, crack, fixedFlow, tallOpening, fanPath } = fileKeys;
const allKeys = { ...fileKeys.path, ...orifice, ...crack, ...fixedFlow, ...tallOpening, ...fanPath };
const lawKeys: Readonly<Record<PathType, Partial<typeof allKeys>>> = {
  orifice: { ...fileKeys.path, ...orifice },
  crack: { ...fileKeys.path, ...crack },
  fixed_flow: { ...fileKeys.path, ...fixedFlow },
  tall_opening: { ...fileKeys.path, ...tallOpening },
  fan_path: { ...fileKeys.path, ...fanPath },
};

/** A path, or the name of an orifice without area, which is no path at all. */
export function readPath(reading: Reading, node: Node): AirPath | { readonly absent: string } {
  const type = pathType(reading, node);
  const keys = (type === undefined ? allKeys : lawKeys[type]) as typeof allKeys;
  const map = openMap(reading, node, type === undefined ? 'a path' : `a path of type ${type}`, keys);
  const name = ownName(reading, 'path', map);
  const from = referred(reading, map, 'from', ['zone']);
  const to = referred(reading, map, 'to', ['zone']);
  mustDiffer(reading, map.at('to') ?? node, from, to);
  const filterEfficiency = readShares(reading, map.at('filterEfficiency'), 'filter_eff');
  const path = { name, from, to, z: map.number('z', {}, 0), open: whenAt(reading, map, 'open'), filterEfficiency };
  const linearBelow = (): number => map.number('linearBelow', POSITIVE, LINEAR_BELOW);
  const dischargeCoefficient = (): number => map.number('dischargeCoefficient', POSITIVE);
  switch (type) {
    case undefined:
      return { absent: name };
    case 'orifice': {
      const area = map.number('area', NOT_NEGATIVE);
      const count = map.number('count', { least: 0, whole: true }, 1);
      const orifice = {
        ...path,
        type,
        dischargeCoefficient: dischargeCoefficient(),
        area,
        count,
        linearBelow: linearBelow(),
      };
      return area === 0 || count === 0 ? { absent: name } : orifice;
    }
    case 'crack': {
      const coefficient = map.number('coefficient', NOT_NEGATIVE);
      const crack = {
        ...path,
        type,
        coefficient,
        exponent: map.number('exponent', { least: 0.5, most: 1 }),
        linearBelow: linearBelow(),
      };
      return coefficient === 0 ? { absent: name } : crack;
    }
    case 'fixed_flow':
      return { ...path, type: 'fixed-flow', flow: map.number('flow') };
    case 'tall_opening':
      return {
        ...path,
        type: 'tall-opening',
        dischargeCoefficient: dischargeCoefficient(),
        width: map.number('width', POSITIVE),
        height: map.number('height', POSITIVE),
        linearBelow: linearBelow(),
      };
    case 'fan_path':
      return { ...path, type: 'fan-path', ...readFanParts(reading, map, name) };
  }
}

/** The type, looked at before the other keys are, because it says which keys there may be. */
function pathType(reading: Reading, node: Node): PathType | undefined {
  const quiet: Reading = { ...reading, complaints: [] };
  const type = openMap(quiet, node, 'a path', { type: fileKeys.path.type }).choice('type', types);
  const complaints = quiet.complaints.filter(({ code }) => code !== 'key-unknown');
  reading.complaints.push(...complaints);
  return complaints.length === 0 ? type : undefined;
}

/** Shares by contaminant. */
export function readShares(reading: Reading, node: Node | undefined, what: string): Readonly<Record<string, number>> {
  if (node === undefined) return {};
  return Object.fromEntries(
    readEntries(reading, node, what).map(({ key, value }) => {
      mustExist(reading, key, nameOf(key), ['contaminant']);
      return [nameOf(key), readNumber(reading, value, nameOf(key), SHARE)];
    }),
  );
}

export function readExchange(reading: Reading, node: Node, index: number): Exchange {
  const map = openMap(reading, node, 'an exchange', fileKeys.exchange);
  const name = ownName(reading, 'exchange', map, `exchange.${index + 1}`);
  const a = referred(reading, map, 'a', ['zone']);
  const b = referred(reading, map, 'b', ['zone']);
  mustDiffer(reading, map.at('b') ?? node, a, b);
  const active = whenAt(reading, map, 'active');
  const kind = map.choice('law', ['constant', 'vertical_opening', 'horizontal_opening', 'plume'], 'constant');
  const law = (): Exchange['law'] => {
    if (kind === 'constant') return { kind, flow: map.number('flow', NOT_NEGATIVE) };
    if (kind === 'vertical_opening') {
      const size = { width: map.number('width', NOT_NEGATIVE), height: map.number('height', NOT_NEGATIVE) };
      return { kind: 'vertical-opening', dischargeCoefficient: map.number('dischargeCoefficient', POSITIVE), ...size };
    }
    if (kind === 'horizontal_opening') {
      const hole = {
        area: map.number('area', POSITIVE),
        round: map.flag('round', true),
        coefficient: map.number('coefficient', NOT_NEGATIVE, 0.1),
      };
      return {
        kind: 'horizontal-opening',
        ...hole,
        ...(map.has('path') ? { path: referred(reading, map, 'path', ['path']) } : {}),
      };
    }
    const sources = map.at('sources');
    return {
      kind,
      coefficient: map.number('coefficient', NOT_NEGATIVE),
      sources: sources === undefined ? [] : referredList(reading, sources, 'sources', ['surface']),
    };
  };
  return { name, a, b, active, law: law() };
}

export function readAirChange(reading: Reading, node: Node): AirChange {
  const map = openMap(reading, node, 'an air change', fileKeys.airChange);
  const zone = referred(reading, map, 'zone', ['zone']);
  const other = referred(reading, map, 'with', ['zone']);
  mustDiffer(reading, map.at('with') ?? node, zone, other);
  return { zone, with: other, perSecond: map.number('perSecond', NOT_NEGATIVE) };
}
