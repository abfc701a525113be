// Ways for air: seals and joints that leak at several heights, doors that open, holes, and paths with fans, filters and ducts.

import {
  airViscosity,
  gapResistance,
  leakageAreaLaw,
  REFERENCE_DENSITY,
  type Resistance,
  seatBypass,
  seatedEfficiency,
} from '@stillair/physics';
import type { Cabinet, CabinetPath, PathPart } from '../cabinet/cabinet.ts';
import { DISCHARGE, LINEAR_BELOW, zoneAt } from './assemble-bays.ts';
import { assembleControl, type ControlContext } from './assemble-controls.ts';
import { OUTDOORS, ROOM, windyZone } from './assemble-room.ts';
import { speedAlongBoards } from './assemble-stirring.ts';
import type { BayPlaces, PathPlaces } from './assembly.ts';
import { ductResistance } from './duct-resistance.ts';
import { holeExchange } from './hole-exchange.ts';
import { holePieces } from './hole-pieces.ts';
import type { AirPath, Fan, FanPath, MinorLoss } from './network.ts';
import { sectionArea } from './section-area.ts';
import { seriesFlow } from './series-flow.ts';

/** Heights at which a seal or joint leaks, as shares of its height: four strips, each at its middle. */
const STRIPS = [0.125, 0.375, 0.625, 0.875] as const;
/** Air in a gap is about this warm, K: viscosity varies 5 % over the range that matters. */
const GAP_AIR = 300;
/** Rotor at rest: an orifice of this discharge coefficient on the fan's circle; 0.3 to 0.5 from memory. */
const STOPPED_ROTOR = 0.4;

/** Cracks of door seals (to the room) and of the carcass' joints, per bay. */
export function assembleLeaks({ draft, cabinet, bays }: ControlContext): void {
  for (const [id, bay] of Object.entries(cabinet.bays)) {
    const [bottom, top] = bay.z;
    const [width, height] = [bay.x[1] - bay.x[0], top - bottom];
    const measured = cabinet.overrides[`bays.${id}.leakage`];
    if (measured !== undefined) {
      measuredLeak(draft, bays, id, measured, bay.z);
      continue;
    }
    for (const [doorId, door] of Object.entries(cabinet.doors)) {
      if (!door.bays.includes(id)) continue;
      const part = `doors.${doorId}`;
      const gap = { width: door.sealGap, depth: door.sealDepth, bends: 0 };
      const others = door.bays.filter((other) => other !== id).map((other) => cabinet.bays[other]!);
      const edge = (at: number, side: 0 | 1, axis: 'x' | 'z') =>
        !others.some((other) => Math.abs(other[axis][side === 0 ? 1 : 0] - at) < 0.08);
      const sides = Number(edge(bay.x[0], 0, 'x')) + Number(edge(bay.x[1], 1, 'x'));
      for (const share of STRIPS)
        leak(draft, cabinet, bays, id, part, bottom + share * height, {
          ...gap,
          length: (sides * height) / STRIPS.length,
        });
      if (edge(bottom, 0, 'z')) leak(draft, cabinet, bays, id, part, bottom, { ...gap, length: width });
      if (edge(top, 1, 'z')) leak(draft, cabinet, bays, id, part, top, { ...gap, length: width });
    }
    const joints = {
      width: cabinet.jointGap,
      depth: 0.018,
      bends: 1,
      length: (4 * (width + height + cabinet.inside.depth)) / STRIPS.length,
    };
    for (const share of STRIPS) leak(draft, cabinet, bays, id, 'joints', bottom + share * height, joints);
  }
}

/** A leakage area that somebody measured stands for all gaps of its bay, spread over the bay's height. */
function measuredLeak(
  draft: ControlContext['draft'],
  bays: Readonly<Record<string, BayPlaces>>,
  bay: string,
  area: number,
  [bottom, top]: readonly [number, number],
): void {
  draft.overridesUsed.push(`bays.${bay}.leakage`);
  if (!(area > 0)) return;
  for (const share of STRIPS) {
    const z = bottom + share * (top - bottom);
    const name = leakName(bay, 'gaps', z);
    draft.paths.push({
      type: 'crack',
      name,
      from: zoneAt(bays, bay, z),
      to: ROOM,
      z,
      open: 'always',
      filterEfficiency: {},
      ...leakageAreaLaw(area / STRIPS.length, REFERENCE_DENSITY),
      linearBelow: LINEAR_BELOW,
    });
    draft.leaks.push({ name, bay, part: 'gaps', z });
  }
}

function leakName(bay: string, part: string, z: number): string {
  return `leak of ${bay} at ${part}, ${Math.round(z * 1000)} mm`;
}

function leak(
  draft: ControlContext['draft'],
  cabinet: Cabinet,
  bays: Readonly<Record<string, BayPlaces>>,
  bay: string,
  part: string,
  z: number,
  gap: { length: number; width: number; depth: number; bends: number },
): void {
  if (!(gap.length > 0 && gap.width > 0)) return;
  const width = gap.width * cabinet.factors.leakage;
  const { linear, quadratic } = gapResistance({ ...gap, width }, REFERENCE_DENSITY, airViscosity(GAP_AIR));
  const name = leakName(bay, part, z);
  draft.paths.push({
    type: 'fan-path',
    name,
    from: zoneAt(bays, bay, z),
    to: ROOM,
    z,
    open: 'always',
    filterEfficiency: {},
    fans: [],
    resistances: [{ name: 'gap', linear, quadratic }],
    minor: [],
  });
  draft.leaks.push({ name, bay, part, z });
}

/** An open door is a tall opening of each bay behind it. */
export function assembleDoors({ draft, cabinet, day, bays }: ControlContext): void {
  for (const [doorId, door] of Object.entries(cabinet.doors)) {
    const windows = day.doorOpenings
      .filter(({ door: of }) => of === doorId)
      .map(({ start, duration }) => [start, Math.min(start + duration, day.length)] as const);
    if (windows.length === 0) continue;
    for (const id of door.bays) {
      const bay = cabinet.bays[id]!;
      const places = bays[id]!;
      const borders = places.zones.length === 2 ? [bay.z[0], places.split, bay.z[1]] : [bay.z[0], bay.z[1]];
      for (const [index, zone] of places.zones.entries()) {
        const [from, to] = [borders[index]!, borders[index + 1]!];
        draft.paths.push({
          type: 'tall-opening',
          name: `open ${doorId} at ${zone}`,
          from: zone,
          to: ROOM,
          z: from,
          open: { windows },
          filterEfficiency: {},
          dischargeCoefficient: DISCHARGE,
          width: bay.x[1] - bay.x[0],
          height: to - from,
          linearBelow: LINEAR_BELOW,
        });
      }
    }
  }
}

export function assemblePaths(context: ControlContext): Record<string, PathPlaces> {
  return Object.fromEntries(
    Object.entries(context.cabinet.paths).map(([id, path]) => [id, assemblePath(context, id, path)]),
  );
}

function assemblePath(context: ControlContext, id: string, path: CabinetPath): PathPlaces {
  const { draft, bays } = context;
  const fans = path.parts.flatMap((part, index) =>
    part.part === 'fan' ? [assembleFan(context, id, part, index)] : [],
  );
  const series = { ...resistancesOf(path), fans };
  const turned = path.from === path.to;
  const flow = turned ? seriesFlow(series) : seriesFlow(series) / 2;
  const efficiency = efficiencyOf(path, flow);
  // A motor sits in the air that it moves: its heat goes where that air goes. Power falls with the cube of the speed.
  const heat = (zone: string) => {
    for (const [index, part] of path.parts.entries()) {
      if (part.part !== 'fan') continue;
      const fan = fans.find(({ name }) => name === fanName(id, path, index))!;
      const watts = part.watts * part.speed ** 3;
      draft.heatSources.push({ name: `motor of ${fan.name}`, node: zone, watts, active: fan.control });
    }
  };
  const [first] = fans;
  const bay = context.cabinet.bays[path.to];
  if (first !== undefined && bay !== undefined) {
    const speed = speedAlongBoards(path, flow, bay, context.cabinet.inside.depth);
    draft.jets.push({ bay: path.to, speed, active: first.control, ...(turned ? {} : { fan: first.name }) });
  }
  const carbon = (at: string) => {
    for (const [index, part] of path.parts.entries()) {
      if (part.part === 'carbon') draft.carbonBeds.push(carbonBed(id, index, part, at));
    }
  };

  if (turned) {
    const zone = zoneAt(bays, path.from, path.place.z);
    const control = fans[0]?.control ?? 'always';
    draft.recirculations.push({ name: id, zone, flow, efficiency, active: control });
    stir(draft, bays[path.from], id, flow, control);
    heat(zone);
    carbon(zone);
    return {
      kind: 'recirculation',
      name: id,
      fans: fans.map(({ name }) => name),
      flow,
      efficiency: withCarbon(path, efficiency),
    };
  }

  const pieces = holePieces(
    path,
    [path.from, path.to].flatMap((end) => (bays[end]?.zones.length === 2 ? bays[end] : [])),
  );
  const names = pieces.map((_, index) => (index === 0 ? id : `${id} ${index + 1}`));
  const [from, to] = [endOf(context, id, path, path.from), endOf(context, id, path, path.to)];
  const zonesAt = (z: number) => ({
    from: path.from === OUTDOORS ? from : zoneAt(bays, path.from, z),
    to: path.to === OUTDOORS ? to : zoneAt(bays, path.to, z),
  });
  for (const [index, { z, share }] of pieces.entries()) {
    const base = { name: names[index]!, ...zonesAt(z), z, open: 'always' as const, filterEfficiency: efficiency };
    draft.paths.push(simpleHole(path, base, share) ?? { ...base, type: 'fan-path', ...series });
    bothWays(context, path, base, share);
  }
  if (path.to !== OUTDOORS) heat(to);
  carbon(bays[path.from] !== undefined ? from : to);
  return {
    kind: 'path',
    name: id,
    pieces: names,
    fans: fans.map(({ name }) => name),
    efficiency: withCarbon(path, efficiency),
  };
}

/** A hole between two bays lets air pass both ways beside its net flow. */
function bothWays(
  { draft, cabinet }: ControlContext,
  path: CabinetPath,
  { name, from, to }: Pick<AirPath, 'name' | 'from' | 'to'>,
  share: number,
): void {
  const [fromBay, toBay] = [cabinet.bays[path.from], cabinet.bays[path.to]];
  if (fromBay === undefined || toBay === undefined) return;
  const ends = [
    { bay: fromBay, zone: from },
    { bay: toBay, zone: to },
  ] as const;
  const exchange = holeExchange(name, path, ends, share);
  if (exchange !== undefined) draft.exchanges.push(exchange);
}

/** Zone of one end; an end outdoors feels the wind. */
function endOf({ draft, cabinet, bays }: ControlContext, id: string, path: CabinetPath, place: string): string {
  if (place !== OUTDOORS) return zoneAt(bays, place, path.place.z);
  const wind = 0.5 * REFERENCE_DENSITY * cabinet.outdoors.windSpeed ** 2 * path.windCoefficient;
  return windyZone(draft, id, wind);
}

/** A hole with nothing in it is an orifice. */
function simpleHole(
  path: CabinetPath,
  base: Pick<AirPath, 'name' | 'from' | 'to' | 'z' | 'open' | 'filterEfficiency'>,
  share: number,
): AirPath | undefined {
  const [only, ...rest] = path.parts;
  if (only?.part !== 'hole' || rest.length > 0) return undefined;
  return {
    ...base,
    type: 'orifice',
    dischargeCoefficient: only.dischargeCoefficient,
    area: share * sectionArea(only.section),
    count: only.count,
    linearBelow: LINEAR_BELOW,
  };
}

/** Everything but the fans, in series. A path without any hole still has to get in and out: 1.5 velocity heads at its narrowest. */
function resistancesOf({ parts }: CabinetPath): Pick<FanPath, 'resistances' | 'minor' | 'flap'> {
  const resistances: { name: string; linear: number; quadratic: number }[] = [];
  const minor: MinorLoss[] = [];
  let flap: FanPath['flap'];
  for (const [index, part] of parts.entries()) {
    const name = parts.filter((other) => other.part === part.part).length > 1 ? `${part.part} ${index + 1}` : part.part;
    switch (part.part) {
      case 'hole': {
        const area = sectionArea(part.section) * part.count;
        minor.push({ name, loss: 1 / part.dischargeCoefficient ** 2, area });
        break;
      }
      case 'loss':
        minor.push({ name: part.what, loss: part.loss, area: part.area });
        break;
      case 'duct':
        resistances.push({ name, ...ductResistance(part.diameter, part.length, part.flexible) });
        break;
      case 'filter':
        resistances.push({ name, ...loaded(part) });
        break;
      case 'carbon':
        resistances.push({ name, linear: part.linear, quadratic: part.quadratic });
        break;
      case 'flap':
        flap = { opensAt: part.opensAt, leakArea: part.leakArea };
        break;
      case 'fan':
        break;
    }
  }
  if (!parts.some(({ part }) => part === 'hole')) {
    const areas = parts.flatMap((part) =>
      part.part === 'fan' || part.part === 'duct'
        ? [(Math.PI / 4) * part.diameter ** 2]
        : part.part === 'filter'
          ? [part.faceArea]
          : [],
    );
    if (areas.length > 0) minor.push({ name: 'way in and out', loss: 1.5, area: Math.min(...areas) });
  }
  return { resistances, minor, ...(flap === undefined ? {} : { flap }) };
}

function fanName(id: string, path: CabinetPath, index: number): string {
  return path.parts.filter(({ part }) => part === 'fan').length > 1 ? `${id}.fan ${index + 1}` : `${id}.fan`;
}

function assembleFan(
  context: ControlContext,
  id: string,
  part: Extract<PathPart, { part: 'fan' }>,
  index: number,
): Fan {
  const name = fanName(id, context.cabinet.paths[id]!, index);
  const { control, speed } = assembleControl(context, name, part.control);
  const flow = context.cabinet.factors.fanFlow;
  return {
    name,
    // The file's steady speed scales the curve itself (affinity laws), so that a control's own speed acts on top of it.
    curve: {
      kind: 'points',
      points: part.curve.map(([q, p]) => [q * part.speed * flow, p * part.speed ** 2] as const),
    },
    control,
    stopped: {
      linear: 0,
      quadratic: 0,
      minor: [{ loss: 1 / STOPPED_ROTOR ** 2, area: (Math.PI / 4) * part.diameter ** 2 }],
    },
    ...(speed === undefined ? {} : { speed }),
  };
}

/** Share removed by the filters of a path at a flow, seat bypass included; carbon is a bed of its own and not counted here. */
function efficiencyOf({ parts }: CabinetPath, flow: number): Record<string, number> {
  const passes: Record<string, number> = {};
  for (const part of parts) {
    if (part.part !== 'filter') continue;
    const bypass = seatShare(part, flow);
    for (const [contaminant, efficiency] of Object.entries(part.efficiency))
      passes[contaminant] = (passes[contaminant] ?? 1) * (1 - seatedEfficiency(efficiency, bypass));
  }
  return Object.fromEntries(Object.entries(passes).map(([contaminant, pass]) => [contaminant, 1 - pass]));
}

/** Loading raises the loss of the medium as dp = dp_clean · 2^M (M the share of its dust capacity that is used). */
function loaded({ linear, quadratic, loading }: Extract<PathPart, { part: 'filter' }>): Resistance {
  const dust = 2 ** loading;
  return { linear: linear * dust, quadratic: quadratic * dust };
}

/** Share of the flow that goes round a filter through the gap in its seat. */
function seatShare(part: Extract<PathPart, { part: 'filter' }>, flow: number): number {
  if (!(part.seatGap > 0 && part.seatLength > 0 && flow > 0)) return 0;
  const gap = { length: part.seatLength, width: part.seatGap, depth: part.seatDepth, bends: 0 };
  return seatBypass(loaded(part), gap, flow, REFERENCE_DENSITY, airViscosity(GAP_AIR)).share;
}

function withCarbon({ parts }: CabinetPath, efficiency: Readonly<Record<string, number>>): Record<string, number> {
  const passes = new Map(Object.entries(efficiency).map(([contaminant, share]) => [contaminant, 1 - share]));
  for (const part of parts) {
    if (part.part !== 'carbon') continue;
    for (const [vapour, share] of Object.entries(part.efficiency))
      passes.set(vapour, (passes.get(vapour) ?? 1) * (1 - share));
  }
  return Object.fromEntries([...passes].map(([contaminant, pass]) => [contaminant, 1 - pass]));
}

/** Vapours of the isotherm table that stand for what filaments give off; total vapours behave about as toluene (judgement). */
const STANDS_FOR: Readonly<Record<string, string>> = {
  styrene: 'styrene',
  ethylbenzene: 'ethylbenzene',
  TVOC: 'toluene',
};

function carbonBed(id: string, index: number, part: Extract<PathPart, { part: 'carbon' }>, at: string) {
  return {
    name: `${id}.carbon${index === 0 ? '' : ` ${index + 1}`}`,
    in: id,
    at,
    mass: part.mass,
    vapours: Object.entries(part.efficiency).map(([contaminant, efficiency]) => ({
      contaminant,
      efficiency,
      vapour: STANDS_FOR[contaminant] ?? 'styrene',
      kilogramsPerUnit: 1e-9,
      load: part.load,
    })),
  };
}

/** A fan that turns a bay's air round also mixes its low and high air: a jet entrains about twice its own flow nearby. */
function stir(
  draft: ControlContext['draft'],
  bay: BayPlaces | undefined,
  id: string,
  flow: number,
  active: Fan['control'],
): void {
  if (bay === undefined || bay.zones.length < 2) return;
  draft.exchanges.push({
    name: `stirring by ${id}`,
    a: bay.zones[0]!,
    b: bay.zones[1]!,
    active,
    law: { kind: 'constant', flow: 2 * flow },
  });
}
