// Cables: radius of their bends, fill of their channels, and what bulky adapters leave of a strip.

import { cableBend, channelFill } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { CableRun, FittingPart } from '../../cabinet/fittings.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { set } from '../remedy-edits.ts';
import { bendLimit, fillLimit, socketsLimit } from './limits.ts';

export function cables(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.fittings).flatMap(([id, fitting]) => [
    ...Object.entries(fitting.cables).map(([name, cable]) => bend(cabinet, `${id}.${name}`, cable, name)),
    ...(fitting.what === 'cable channel' ? [fill(cabinet, id, fitting)] : []),
    ...(fitting.what === 'strip' ? [sockets(cabinet, id, fitting)] : []),
  ]);
}

function bend(cabinet: Cabinet, part: string, cable: CableRun, name: string): Measure {
  const id = part.slice(0, -name.length - 1);
  const path = `fittings.${id}.cables.${name}`;
  const shared = {
    trade: 'fittings',
    quantity: 'cable-bend',
    part,
    title: 'inner radius of the cable’s tightest bend',
    unit: 'length',
    better: 'higher',
    cause: causes.cableBent,
    weight: cable.moved ? 0.5 : 0.4,
  } as const;
  if (cable.bend === undefined)
    return { ...shared, missing: `give ${path}.bend, the inner radius of its tightest bend`, steps: [], remedies: [] };
  return {
    ...shared,
    value: cable.bend,
    limit: bendLimit(cabinet, cable),
    get steps(): readonly Step[] {
      return [
        { text: 'over its sheath', value: cable.diameter, unit: 'length', inputs: [`${path}.diameter`] },
        {
          text: cable.moved ? 'it moves: 7.5 diameters' : 'it is laid once: 4 diameters',
          value: cableBend(cable.diameter, cable.moved),
          unit: 'length',
          source: 'data sheet of a PVC cable to EN 50525-2-51',
        },
        { text: 'its tightest bend', value: cable.bend!, unit: 'length', inputs: [`${path}.bend`] },
      ];
    },
    get remedies(): readonly Remedy[] {
      const wide = `${Math.ceil(1000 * cableBend(cable.diameter, cable.moved))} mm`;
      return cable.bend! >= cableBend(cable.diameter, cable.moved)
        ? []
        : [
            {
              says: `bends of ${wide} or more for ${name} of ${id}`,
              edits: [set(['fittings', id, 'cables', name, 'bend'], wide)],
            },
          ];
    },
  };
}

function fill(cabinet: Cabinet, id: string, { size, cables: inside }: FittingPart): Measure {
  const shared = {
    trade: 'fittings',
    quantity: 'channel-fill',
    part: id,
    title: 'share of the channel that its cables take',
    unit: 'share',
    better: 'lower',
    cause: causes.channelFull,
    weight: 0.4,
    remedies: [],
  } as const;
  if (size === undefined)
    return { ...shared, missing: `give fittings.${id}.size, its section and its length`, steps: [] };
  // The longest of three lengths is the channel's own; the two others are its section.
  const [a, b] = [size.width, size.depth, size.height].sort((one, other) => one - other);
  const diameters = Object.values(inside).flatMap(({ diameter, count }) => Array<number>(count).fill(diameter));
  return {
    ...shared,
    value: channelFill(diameters, a! * b!),
    limit: fillLimit(cabinet),
    get steps(): readonly Step[] {
      return [
        { text: 'section of the channel', value: a! * b!, unit: 'area', inputs: [`fittings.${id}`] },
        ...Object.entries(inside).map(([name, { diameter, count }]) => ({
          text: `${count} of ${name}, each over its sheath`,
          value: diameter,
          unit: 'length',
          inputs: [`fittings.${id}.cables.${name}.diameter`],
        })),
      ];
    },
  };
}

function sockets(cabinet: Cabinet, id: string, { sockets: count, pitch }: FittingPart): Measure {
  const shared = {
    trade: 'fittings',
    quantity: 'sockets-left',
    part: id,
    title: 'sockets that adapters leave free on the strip',
    unit: 'number',
    better: 'higher',
    cause: causes.adaptersWide,
    weight: 0.4,
    remedies: [],
  } as const;
  if (count === undefined || pitch === undefined)
    return {
      ...shared,
      missing: `give fittings.${id}.${count === undefined ? 'sockets, how many it has' : 'pitch, the distance of its sockets'}`,
      steps: [],
    };
  const adapters = Object.entries(cabinet.fittings).filter(([, { what, on }]) => what === 'adapter' && on === id);
  const taken = adapters.map(([name, { size }]) => ({
    name,
    // It may lie either way round, but not on edge: the shorter side of its footprint lies along the strip.
    sockets: size === undefined ? 1 : Math.max(1, Math.ceil(Math.min(size.width, size.depth) / pitch - 1e-9)),
    known: size !== undefined,
  }));
  return {
    ...shared,
    value: count - taken.reduce((sum, one) => sum + one.sockets, 0),
    limit: socketsLimit(cabinet),
    get steps(): readonly Step[] {
      return [
        { text: 'sockets of the strip', value: count, unit: 'number', inputs: [`fittings.${id}`] },
        ...taken.map(({ name, sockets: its, known }) => ({
          text: `${name} takes${known ? '' : ', its size not given, at least'}`,
          value: its,
          unit: 'number',
          inputs: [`fittings.${name}`],
        })),
      ];
    },
  };
}
