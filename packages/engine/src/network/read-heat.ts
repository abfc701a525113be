// Zones, solids and the heat between them, as a network file writes them.

import type { Node } from 'yaml';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { define, note, ownName, PLACES, referred, SOLIDS } from './file-names.ts';
import { complain, isListNode, NOT_NEGATIVE, POSITIVE, type Reading, SHARE } from './file-value.ts';
import type {
  Conductance,
  Convection,
  HeatSource,
  RadiantLink,
  RadiantStar,
  SolidNode,
  Wall,
  WallLayer,
  Zone,
} from './network.ts';
import { readProfile, whenAt } from './read-when.ts';

const ICE_POINT = 273.15;
/** More slices than any board needs; a bound on what one line of a file can cost. */
const MAX_SLICES = 1000;

/** Start of everything that gives none, K; undefined when the file gives no start either. */
export type CommonStart = number | undefined;

export function readZone(reading: Reading, node: Node, start: CommonStart): Zone {
  const map = openMap(reading, node, 'a zone', fileKeys.zone);
  const name = ownName(reading, 'zone', map);
  const kind = map.choice('kind', ['fixed', 'free'], map.has('held') ? 'fixed' : 'free');
  const held = map.at('held');
  const fixed = kind === 'fixed';
  const temperature: Zone['temperature'] = fixed
    ? {
        kind,
        profile:
          held !== undefined && isListNode(reading, held)
            ? readProfile(reading, held, 'T_C', NOT_NEGATIVE, ICE_POINT)
            : [[0, map.number('held', NOT_NEGATIVE)]],
      }
    : {
        kind,
        initial: map.number('initial', NOT_NEGATIVE, start),
        heatCapacity: map.number('heatCapacity', POSITIVE),
      };
  const pressure = map.choice('pressure', ['fixed', 'solved'], fixed || map.has('heldPressure') ? 'fixed' : 'solved');
  const concentrations = map.choice('concentrations', ['free', 'fixed'], 'fixed');
  return {
    name,
    temperature,
    pressure: pressure === 'fixed' ? { kind: 'fixed', value: map.number('heldPressure', {}, 0) } : { kind: 'solved' },
    zRef: map.number('zRef', {}, 0),
    volume: map.number('volume', POSITIVE, concentrations === 'free' ? undefined : 1),
    concentrations,
  };
}

export function readNode(reading: Reading, node: Node, start: CommonStart): SolidNode {
  const map = openMap(reading, node, 'a node', fileKeys.node);
  return {
    name: ownName(reading, 'node', map),
    heatCapacity: map.number('heatCapacity', POSITIVE),
    initial: map.number('initial', NOT_NEGATIVE, start),
  };
}

export function readConductance(reading: Reading, node: Node): Conductance {
  const map = openMap(reading, node, 'a conductance', fileKeys.conductance);
  return {
    ...readEnds(reading, map),
    conductance: map.number('conductance', NOT_NEGATIVE),
    ...(map.has('active') ? { active: whenAt(reading, map, 'active') } : {}),
  };
}

function readEnds(reading: Reading, map: FileMap<'a' | 'b'>): { a: string; b: string } {
  const a = referred(reading, map, 'a', PLACES);
  const b = referred(reading, map, 'b', PLACES);
  mustDiffer(reading, map.at('b') ?? map.node, a, b);
  return { a, b };
}

export function mustDiffer(reading: Reading, node: Node, a: string, b: string): void {
  if (a !== b || a === '') return;
  complain(reading, node, 'ends-alike', `both ends are ${a}`, 'two different places', 'name another place at one end');
}

export function readWall(reading: Reading, node: Node, start: CommonStart): Wall {
  const map = openMap(reading, node, 'a wall', fileKeys.wall);
  const name = ownName(reading, 'wall', map);
  const grid = map.choice('grid', ['middles', 'faces'], 'middles');
  const layers = map.list('layers', 'single').map((item) => readLayer(reading, item));
  const empty = map.at('layers');
  if (layers.length === 0) {
    complain(reading, empty ?? node, 'list-empty', `${name} has no layer`, 'at least one layer', 'add layers: [...]');
  }
  const slices = layers.reduce((sum, layer) => sum + (Number.isFinite(layer.nodes) ? layer.nodes : 1), 0);
  const nodes = grid === 'faces' ? slices + 1 : slices;
  const namedAt = map.at('name') ?? node;
  for (let i = 1; i <= nodes && define(reading, 'wall node', namedAt, name === '' ? '' : `${name}.${i}`); i++);
  const { a, b } = readEnds(reading, map);
  const wall = { name, a, b, area: map.number('area', POSITIVE), layers, grid };
  const initial = map.number('initial', NOT_NEGATIVE, start);
  if (grid === 'middles') {
    return { ...wall, filmA: map.number('filmA', NOT_NEGATIVE), filmB: map.number('filmB', NOT_NEGATIVE), initial };
  }
  for (const side of ['filmA', 'filmB'] as const) {
    const film = map.at(side);
    if (film === undefined) continue;
    const what = 'a wall with nodes on its faces has no fixed film';
    complain(
      reading,
      film,
      'key-out-of-place',
      what,
      'convections to and from NAME.1 and the last node',
      'take it out',
    );
  }
  return { ...wall, initial };
}

function readLayer(reading: Reading, node: Node): WallLayer {
  const map = openMap(reading, node, 'a layer', fileKeys.layer);
  return {
    thickness: map.number('thickness', POSITIVE),
    conductivity: map.number('conductivity', POSITIVE),
    density: map.number('density', POSITIVE),
    heatCapacity: map.number('heatCapacity', POSITIVE),
    nodes: map.number('nodes', { least: 1, most: MAX_SLICES, whole: true }, 1),
  };
}

export function readConvection(reading: Reading, node: Node): Convection {
  const map = openMap(reading, node, 'a convection', fileKeys.convection);
  const surface = referred(reading, map, 'surface', SOLIDS);
  note(reading, 'surface', map.at('surface') ?? node, surface);
  const forced = map.list('forced', 'single').map((item) => {
    const film = openMap(reading, item, 'a forced film', fileKeys.forcedFilm);
    const fan = film.has('fan') ? { fan: referred(reading, film, 'fan', ['fan']) } : {};
    return { film: film.number('film', NOT_NEGATIVE), active: whenAt(reading, film, 'active'), ...fan };
  });
  return {
    surface,
    air: referred(reading, map, 'air', ['zone']),
    area: map.number('area', POSITIVE),
    faces: map.choice('faces', ['vertical', 'up', 'down']),
    length: map.number('length', POSITIVE),
    factor: map.number('factor', NOT_NEGATIVE, 1),
    forced,
    ...(map.has('heatTo') ? { heatTo: referred(reading, map, 'heatTo', ['zone']) } : {}),
  };
}

export function readRadiantLink(reading: Reading, node: Node): RadiantLink {
  const map = openMap(reading, node, 'a radiation link', fileKeys.radiation);
  return {
    ...readEnds(reading, map),
    area: map.number('area', NOT_NEGATIVE),
    emissivity: map.number('emissivity', SHARE, 1),
    factor: map.number('factor', NOT_NEGATIVE, 1),
  };
}

export function readStar(reading: Reading, node: Node): RadiantStar {
  const map = openMap(reading, node, 'a radiant star', fileKeys.star);
  const members = map.list('members').map((item) => {
    const member = openMap(reading, item, 'a member', fileKeys.starMember);
    return { node: referred(reading, member, 'node', PLACES), weight: member.number('weight', POSITIVE) };
  });
  if (members.length < 2) {
    const what = `${members.length} surfaces meet here`;
    complain(
      reading,
      map.at('members') ?? node,
      'list-short',
      what,
      'at least two members',
      'add the surfaces that see one another',
    );
  }
  return { name: ownName(reading, 'star', map), members };
}

export function readHeatSource(reading: Reading, node: Node, index: number): HeatSource {
  const map = openMap(reading, node, 'a heat source', fileKeys.heatSource);
  const profile = map.at('profile');
  return {
    name: ownName(reading, 'source', map, `source.${index + 1}`),
    node: referred(reading, map, 'node', PLACES),
    watts: map.number('watts'),
    active: whenAt(reading, map, 'active'),
    ...(profile === undefined ? {} : { profile: readProfile(reading, profile, 'profile', {}) }),
  };
}
