// Machines where they stand: a bed that is a node held by a thermostat, a frame that stores heat, sources in the air they warm,
// a chamber of their own when they have one, and the jobs of the day as modes.

import { firePlume, REFERENCE_DENSITY, streamFilm, virtualOrigin } from '@stillair/physics';
import type { Bed, Cabinet, Chamber, Day, Job, Machine } from '../cabinet/cabinet.ts';
import { DISCHARGE, LINEAR_BELOW, zoneAt } from './assemble-bays.ts';
import { jobWindows } from './assemble-controls.ts';
import { holdAir } from './assemble-heater.ts';
import { ROOM } from './assemble-room.ts';
import { addSheet, levelLength } from './assemble-shell.ts';
import type { BayPlaces, MachinePlaces } from './assembly.ts';
import { addToEnclosure, type Draft } from './draft.ts';
import { jobEmissions } from './job-emissions.ts';
import { faultModes, printingOf, withStuckBed } from './machine-faults.ts';
import type { MachineMode, When } from './network.ts';

/** Conductivity of the foam under a bed, W/(m·K): EN 12524 polyethylene or polyurethane foam 0.04 to 0.05. */
const FOAM = 0.045;
/** Film under the foam to slowly moving air, W/(m²K), convection and radiation together: typical, 6 to 10. */
const UNDER_FOAM = 8;
const FRAME_EMISSIVITY = 0.9;
const EDGE_EMISSIVITY = 0.9;
/** Where the virtual origin of a bed's plume is taken: W given to the air, and K of that air. */
const PLUME_HEAT = 20;
const PLUME_AIR = 305;
/** Characteristic height of a frame's members, m: typical. */
const FRAME_LENGTH = 0.3;
/** Air temperature for which hot-end figures are stated, K. */
const HOT_END_AIR = 298.15;

export function assembleMachines(
  draft: Draft,
  cabinet: Cabinet,
  day: Day,
  bays: Readonly<Record<string, BayPlaces>>,
  start: number,
): Record<string, MachinePlaces> {
  return Object.fromEntries(
    Object.entries(cabinet.machines).map(([id, machine]) => [
      id,
      assembleMachine(draft, cabinet, day, bays, id, machine, start),
    ]),
  );
}

/** Names of a machine's parts in the network. */
export const chamberOf = (machine: string): string => `${machine}.chamber`;

function assembleMachine(
  draft: Draft,
  cabinet: Cabinet,
  day: Day,
  bays: Readonly<Record<string, BayPlaces>>,
  id: string,
  machine: Machine,
  start: number,
): MachinePlaces {
  const floor = cabinet.bays[machine.bay]!.z[0];
  const bay = bays[machine.bay]!;
  const bedZone = zoneAt(bays, machine.bay, floor + machine.bed.height);
  const top = bay.zones.at(-1)!;
  const frameAir = zoneAt(bays, machine.bay, floor + machine.size.height / 2);
  const chamber =
    machine.chamber === undefined
      ? undefined
      : addChamber(draft, cabinet, day, bays, id, machine, machine.chamber, start);
  const printAir = chamber ?? bedZone;
  const plumeAir = chamber ?? top;
  const enclosure = chamber ?? machine.bay;
  const bed = `${id}.bed`;
  const frame = `${id}.frame`;
  const jobs = Object.entries(day.jobs).filter(([, job]) => job.machine === id);
  const printing = printingOf(id, day);
  const faults = faultModes(id, machine, day, electronicsHeatOf(machine, top));

  draft.nodes.push({ name: bed, heatCapacity: machine.bed.heatCapacity, initial: start });
  addBed(draft, cabinet, id, machine.bed, printAir, plumeAir, enclosure, printing);
  if (chamber === undefined && bay.zones.length === 2 && bedZone !== top)
    addPlumes(draft, cabinet, day, machine, bay, floor, id, jobs.length > 0);

  draft.nodes.push({ name: frame, heatCapacity: machine.frameHeatCapacity, initial: start });
  // Whatever is warm inside a bay sends its own small plume up: the air around it decides its film, the top takes its heat.
  draft.convections.push({
    surface: frame,
    air: chamber ?? frameAir,
    ...(chamber === undefined && plumeAir !== frameAir ? { heatTo: plumeAir } : {}),
    area: machine.frameArea,
    faces: 'vertical',
    length: FRAME_LENGTH,
    factor: cabinet.factors.insideFilm,
    forced: [],
  });
  addToEnclosure(draft, enclosure, frame, machine.frameArea, FRAME_EMISSIVITY);

  const electronicsAir = machine.electronicsInside ? frameAir : ROOM;
  const electronicsHeat = electronicsHeatOf(machine, top);
  const supplyHeat = machine.supply.inside ? top : ROOM;
  draft.machines.push({
    name: id,
    bed: {
      node: bed,
      powerMax: machine.bed.powerMax,
      supply: { node: supplyHeat, share: 1 / machine.supply.efficiency - 1 },
    },
    modes: [
      { name: 'idle', powers: [{ node: electronicsHeat, watts: machine.standby }], emissions: [] },
      ...jobs.map(([name, job]) =>
        withStuckBed(
          jobMode(cabinet, machine, name, job, { frame, electronicsHeat, supplyHeat, plumeAir }),
          faults.stuck,
          job,
        ),
      ),
      ...faults.modes,
    ],
  });
  for (const [name, job] of jobs)
    draft.schedule.push({ machine: id, mode: name, start: job.start, end: job.start + job.duration });
  draft.schedule.push(...faults.schedule);
  return {
    printAir,
    frameAir: chamber ?? frameAir,
    electronicsAir,
    bed,
    frame,
    ...(chamber === undefined ? {} : { chamber }),
  };
}

const electronicsHeatOf = (machine: Machine, top: string): string => (machine.electronicsInside ? top : ROOM);

function jobMode(
  cabinet: Cabinet,
  machine: Machine,
  name: string,
  job: Job,
  places: { frame: string; electronicsHeat: string; supplyHeat: string; plumeAir: string },
): MachineMode {
  const hotEnd = (machine.hotEnd * (job.nozzle - HOT_END_AIR)) / (machine.hotEndAt - HOT_END_AIR);
  const drawn = hotEnd + machine.motors + machine.electronics;
  return {
    name,
    ...(job.bed > 0 ? { bedSet: job.bed } : {}),
    powers: [
      { node: places.plumeAir, watts: hotEnd },
      { node: places.frame, watts: machine.motors },
      { node: places.electronicsHeat, watts: machine.electronics },
      { node: places.supplyHeat, watts: machine.supply.idle + drawn * (1 / machine.supply.efficiency - 1) },
    ],
    emissions: jobEmissions(cabinet, job).map((emission) => ({ ...emission, zone: places.plumeAir })),
  };
}

function addBed(
  draft: Draft,
  cabinet: Cabinet,
  id: string,
  bed: Bed,
  air: string,
  plumeAir: string,
  enclosure: string,
  printing: When,
): void {
  const node = `${id}.bed`;
  const area = bed.width * bed.depth;
  const perimeter = 2 * (bed.width + bed.depth);
  const factor = cabinet.factors.bedLoss;
  const length = levelLength(bed.width, bed.depth);
  const rising = plumeAir === air ? {} : { heatTo: plumeAir };
  draft.convections.push({
    surface: node,
    air,
    area,
    faces: 'up',
    length,
    factor,
    forced: bed.motion > 0 ? [{ film: streamFilm(bed.motion, bed.depth, 330), active: printing }] : [],
    ...rising,
  });
  draft.convections.push({
    surface: node,
    air,
    area: perimeter * bed.thickness,
    faces: 'vertical',
    length: Math.max(bed.thickness, 0.005),
    factor,
    forced: [],
    ...rising,
  });
  addToEnclosure(draft, enclosure, node, area, bed.emissivityTop);
  addToEnclosure(draft, enclosure, node, perimeter * bed.thickness, EDGE_EMISSIVITY);
  if (bed.underside.kind === 'foam') {
    const conductance = (factor * area) / (bed.underside.thickness / FOAM + 1 / UNDER_FOAM);
    draft.conductances.push({ a: node, b: air, conductance });
  } else {
    draft.convections.push({ surface: node, air, area, faces: 'down', length, factor, forced: [], ...rising });
    addToEnclosure(draft, enclosure, node, area, bed.underside.emissivity);
  }
}

/**
 * Plumes lift air from the low to the high zone: the bed's by the heat it gives to the air just then, and one for motors,
 * board and supply by what they draw, since nearly all of it ends in the air.
 */
function addPlumes(
  draft: Draft,
  cabinet: Cabinet,
  day: Day,
  machine: Machine,
  bay: BayPlaces,
  floor: number,
  id: string,
  prints: boolean,
): void {
  const between = { a: bay.zones[0]!, b: bay.zones.at(-1)! };
  const diameter = Math.sqrt((4 / Math.PI) * machine.bed.width * machine.bed.depth);
  const rise = Math.max(bay.split - (floor + machine.bed.height), 0.05);
  // Heat moves as its cube root, so one watt gives the coefficient; the virtual origin hardly moves between 10 and 100 W.
  const flow = (heat: number, virtual: number) =>
    (cabinet.factors.plume * firePlume(heat, rise - virtual, PLUME_AIR).massFlow) / REFERENCE_DENSITY;
  const virtual = virtualOrigin(PLUME_HEAT, diameter, PLUME_AIR);
  draft.exchanges.push({
    ...between,
    name: `plume of ${id}`,
    active: 'always',
    law: { kind: 'plume', coefficient: flow(1, virtual), sources: [`${id}.bed`] },
  });
  const printing = printingOf(id, day);
  const drawn = machine.motors + (machine.electronicsInside ? machine.electronics : 0) + machine.supply.idle;
  if (prints && drawn > 0) {
    draft.exchanges.push({
      ...between,
      name: `plume of ${id}'s motors and board`,
      active: printing,
      law: { kind: 'constant', flow: flow(drawn, virtual) },
    });
  }
  if (machine.standby > 0 && machine.electronicsInside) {
    draft.exchanges.push({
      ...between,
      name: `plume of ${id} at rest`,
      active: { not: printing },
      law: { kind: 'constant', flow: flow(machine.standby, virtual) },
    });
  }
}

/** A machine's own room inside the bay: one zone, one sheet all round, leaks low and high, its own fan, filter, lamp, heater. */
function addChamber(
  draft: Draft,
  cabinet: Cabinet,
  day: Day,
  bays: Readonly<Record<string, BayPlaces>>,
  id: string,
  machine: Machine,
  chamber: Chamber,
  start: number,
): string {
  const name = chamberOf(id);
  const { width, depth, height } = chamber.size;
  const volume = width * depth * height;
  const floor = cabinet.bays[machine.bay]!.z[0];
  const base = floor + Math.max(machine.size.height - height, 0) / 2;
  draft.zones.push({
    name,
    temperature: { kind: 'free', initial: start, heatCapacity: 1.2 * 1006 * volume },
    pressure: { kind: 'solved' },
    zRef: base,
    volume,
    concentrations: 'free',
  });
  const area = 2 * (width * depth + width * height + depth * height);
  const outerAir = zoneAt(bays, machine.bay, floor + machine.size.height / 2);
  const between = { a: name, b: outerAir };
  const path = `machines.${id}.chamber`;
  const sheet = addSheet(draft, `${name}.walls`, between, chamber.build, area, path, cabinet, start);
  const film = { area, faces: 'vertical' as const, length: height, factor: cabinet.factors.insideFilm, forced: [] };
  draft.convections.push({ ...film, surface: sheet.inner, air: name });
  draft.convections.push({ ...film, surface: sheet.outer, air: outerAir });
  addToEnclosure(draft, name, sheet.inner, area, chamber.build.emissivityInside);
  addToEnclosure(draft, machine.bay, sheet.outer, area, chamber.build.emissivityOutside);

  for (const [where, z] of [
    ['low', base + 0.1 * height],
    ['high', base + 0.9 * height],
  ] as const) {
    draft.paths.push({
      type: 'orifice',
      name: `${name} leak ${where}`,
      from: zoneAt(bays, machine.bay, z),
      to: name,
      z,
      open: 'always',
      filterEfficiency: {},
      dischargeCoefficient: DISCHARGE,
      area: Math.max(chamber.leakArea / 2, 1e-6),
      count: 1,
      linearBelow: LINEAR_BELOW,
    });
  }
  const printing = printingOf(id, day);
  if (chamber.exhaustFlow > 0) {
    draft.paths.push({
      type: 'fixed-flow',
      name: `${name} exhaust`,
      from: name,
      to: outerAir,
      z: base + 0.9 * height,
      open: printing,
      filterEfficiency: chamber.exhaustFilter,
      flow: 1.2 * chamber.exhaustFlow,
    });
  }
  if (chamber.recirculation > 0) {
    draft.recirculations.push({
      name: `${name} filter`,
      zone: name,
      flow: chamber.recirculation,
      efficiency: chamber.recirculationFilter,
      active: printing,
    });
  }
  if (chamber.lamp > 0)
    draft.heatSources.push({ name: `${name} lamp`, node: name, watts: chamber.lamp, active: printing });
  if (chamber.heater > 0) {
    const heater = { name: `${name} heater`, zone: name, watts: chamber.heater, set: chamber.heaterSet };
    holdAir(draft, heater, jobWindows(day, [id], 0, 0));
  }
  return name;
}
