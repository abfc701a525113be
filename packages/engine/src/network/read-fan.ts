// What stands in series in a fan path: fans, filters, resistances, a flap.

import type { Node } from 'yaml';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { define, PLACES, referred } from './file-names.ts';
import {
  complain,
  isListNode,
  isMapNode,
  NOT_NEGATIVE,
  POSITIVE,
  type Reading,
  readList,
  readNumber,
  SHARE,
  scalarOf,
} from './file-value.ts';
import type { Fan, FanCurve, FanPath, MinorLoss } from './network.ts';
import { readPair, readWhen, whenAt } from './read-when.ts';

type Resistance = FanPath['resistances'][number];
type Parts = Pick<FanPath, 'fans' | 'resistances' | 'minor' | 'flap'>;

/**
 * Parts keep the names of the file: `filter` for a filter without one, `a_lin` and `b_quad` for the two terms of a resistance
 * without one, `K.1` for a loss without one.
 */
export function readFanParts(reading: Reading, map: FileMap<keyof typeof fileKeys.fanPath>, path: string): Parts {
  const fanNodes = map.list('fans', 'single');
  const fans = fanNodes.map((node, i) => readFan(reading, node, fanNodes.length === 1 ? path : `${path}.${i + 1}`));
  const filters = map.list('filters', 'single').map((node) => readResistance(reading, node, 'filter'));
  const resistances = map.list('resistance', 'single').map((node) => readResistance(reading, node, undefined));
  const all = [...filters, ...resistances];
  const flap = map.at('flap');
  return {
    fans,
    resistances: withOwnNames(all.flatMap(({ parts }) => parts)),
    minor: withOwnNames(
      all.flatMap(({ minor }) => minor).map((loss, i) => ({ ...loss, name: loss.name ?? `K.${i + 1}` })),
    ),
    ...(flap === undefined ? {} : { flap: readFlap(reading, flap) }),
  };
}

function readFlap(reading: Reading, node: Node): NonNullable<FanPath['flap']> {
  const map = openMap(reading, node, 'a flap', fileKeys.flap);
  return { opensAt: map.number('opensAt', NOT_NEGATIVE), leakArea: map.number('leakArea', NOT_NEGATIVE, 0) };
}

function readFan(reading: Reading, node: Node, otherwise: string): Fan {
  const map = openMap(reading, node, 'a fan', fileKeys.fan);
  const name = map.text('name', otherwise);
  define(reading, 'fan', map.at('name') ?? node, name);
  const curve = map.at('curve');
  if (curve === undefined) map.text('curve');
  const rest = map.at('stopped');
  const stopped = rest === undefined ? { parts: [], minor: [] } : readResistance(reading, rest, 'stopped');
  const speed = map.at('speed');
  return {
    name,
    curve: curve === undefined ? { kind: 'poly', p0: 0, a: 0, b: 0 } : readCurve(reading, curve),
    control: whenAt(reading, map, 'control'),
    stopped: {
      linear: stopped.parts.reduce((sum, { linear }) => sum + linear, 0),
      quadratic: stopped.parts.reduce((sum, { quadratic }) => sum + quadratic, 0),
      minor: stopped.minor,
    },
    ...(speed === undefined ? {} : { speed: readSpeed(reading, speed) }),
  };
}

function readCurve(reading: Reading, node: Node): FanCurve {
  const map = openMap(reading, node, 'a fan curve', fileKeys.curve);
  const points = map.at('points');
  if (points !== undefined) return { kind: 'points', points: readPoints(reading, points) };
  const poly = map.at('poly');
  if (poly === undefined) {
    const allowed = 'poly: {p0, a, b} or points: [[m3/s, Pa], ...]';
    if (isMapNode(reading, node))
      complain(reading, node, 'key-missing', 'a fan curve has no poly and no points', allowed, 'add one of the two');
    return { kind: 'poly', p0: 0, a: 0, b: 0 };
  }
  if (isListNode(reading, poly)) {
    const [p0 = 0, a = 0, b = 0] = readList(reading, poly, 'poly').map((item) => readNumber(reading, item, 'poly', {}));
    return { kind: 'poly', p0, a, b };
  }
  const terms = openMap(reading, poly, 'poly', fileKeys.poly);
  return { kind: 'poly', p0: terms.number('p0'), a: terms.number('a', {}, 0), b: terms.number('b', {}, 0) };
}

function readPoints(reading: Reading, node: Node): readonly (readonly [number, number])[] {
  let last = Number.NEGATIVE_INFINITY;
  const points = readList(reading, node, 'points').map((item) => {
    const point = readPair(reading, item, 'a point of the fan curve', {});
    if (point[0] <= last) {
      complain(
        reading,
        item,
        'flows-not-rising',
        `the flow ${point[0]} follows ${last}`,
        'flows that rise from point to point',
        'put the points in order',
      );
    }
    last = point[0];
    return point;
  });
  if (points.length < 2) {
    complain(
      reading,
      node,
      'list-short',
      `the curve has ${points.length} points`,
      'at least two points',
      'add the point at zero flow and the one at zero pressure',
    );
  }
  return points;
}

function readSpeed(reading: Reading, node: Node): NonNullable<Fan['speed']> {
  if (!isMapNode(reading, node)) return readNumber(reading, node, 'speed', SHARE);
  const map = openMap(reading, node, 'a speed', fileKeys.speedStages);
  const proportional = map.at('proportional');
  if (proportional !== undefined) {
    const law = openMap(reading, proportional, 'a proportional speed', fileKeys.proportional);
    const from = law.number('from', NOT_NEGATIVE);
    const to = law.number('to', NOT_NEGATIVE);
    if (to <= from) {
      complain(
        reading,
        law.at('to')!,
        'bounds-swapped',
        'the speed ends where it begins, or before',
        'from_C below to_C',
        'swap the two',
      );
    }
    const sensor = referred(reading, law, 'sensor', [...PLACES, 'sensor']);
    return { proportional: { sensor, from, to, low: law.number('low', SHARE), high: law.number('high', SHARE) } };
  }
  const stages = map.list('stages').map((item) => {
    const stage = openMap(reading, item, 'a stage', fileKeys.stage);
    const when = stage.at('when');
    if (when === undefined) stage.text('when');
    return {
      when: when === undefined ? ('always' as const) : readWhen(reading, when),
      speed: stage.number('speed', SHARE),
    };
  });
  if (stages.length === 0) {
    complain(
      reading,
      node,
      'list-empty',
      'a speed has no stages and is not proportional',
      'a number from 0 to 1, stages: [...] or proportional: {...}',
      'add a stage',
    );
  }
  return { stages };
}

/** dp = a Q + b Q|Q| and the losses beside it; `own` names it when the file does not. */
function readResistance(
  reading: Reading,
  node: Node,
  own: string | undefined,
): { readonly parts: readonly Resistance[]; readonly minor: readonly MinorLoss[] } {
  const losses = openMap({ ...reading, complaints: [] }, node, 'a resistance', { minor: fileKeys.resistance.minor }).at(
    'minor',
  );
  if (losses !== undefined && typeof scalarOf(reading, losses) === 'number') {
    return { parts: [], minor: [readMinor(reading, node)] };
  }
  const map = openMap(reading, node, 'a resistance', fileKeys.resistance);
  const linear = map.number('linear', NOT_NEGATIVE, 0);
  const quadratic = map.number('quadratic', NOT_NEGATIVE, 0);
  const minor = map.list('minor', 'single').map((item) => readMinor(reading, item));
  const name = map.has('name') ? map.text('name') : own;
  if (name !== undefined) return { parts: [{ name, linear, quadratic }], minor };
  const terms = [
    { name: 'a_lin', linear, quadratic: 0 },
    { name: 'b_quad', linear: 0, quadratic },
  ];
  return { parts: terms.filter((term) => term.linear !== 0 || term.quadratic !== 0), minor };
}

function readMinor(reading: Reading, node: Node): MinorLoss {
  const map = openMap(reading, node, 'a loss', fileKeys.minor);
  const loss = { loss: map.number('loss', NOT_NEGATIVE), area: map.number('area', POSITIVE) };
  return map.has('name') ? { name: map.text('name'), ...loss } : loss;
}

/** The second of two equal names becomes `name.2`, so that an answer can list both. */
function withOwnNames<Part extends { readonly name?: string }>(parts: readonly Part[]): readonly Part[] {
  const seen = new Map<string, number>();
  return parts.map((part) => {
    const name = part.name ?? '';
    const count = (seen.get(name) ?? 0) + 1;
    seen.set(name, count);
    return count === 1 ? part : { ...part, name: `${name}.${count}` };
  });
}
