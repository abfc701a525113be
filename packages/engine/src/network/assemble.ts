// Cabinet + day → network. Every number of the network follows from numbers of the cabinet; nothing is looked up elsewhere.

import type { Cabinet, Day, HeatPart } from '../cabinet/cabinet.ts';
import { applyOverrides } from './apply-overrides.ts';
import { assembleDoors, assembleLeaks, assemblePaths } from './assemble-air.ts';
import { assembleBays, zoneAt } from './assemble-bays.ts';
import { assembleContaminants } from './assemble-contaminants.ts';
import { assembleControl, assembleSensors, type ControlContext } from './assemble-controls.ts';
import { holdAir } from './assemble-heater.ts';
import { assembleMachines } from './assemble-machines.ts';
import { assembleRoom, OUTDOORS, ROOM } from './assemble-room.ts';
import { assembleShell } from './assemble-shell.ts';
import { assembleStirring } from './assemble-stirring.ts';
import type { Assembly, BayPlaces } from './assembly.ts';
import { type Draft, emptyDraft, houseConstants } from './draft.ts';
import { enclosureWeights } from './enclosure-weights.ts';
import type { When } from './network.ts';
import { repeatDaily } from './repeat-daily.ts';

/**
 * The network of a cabinet on one of its days.
 *
 * @param given - Resolved, in SI.
 * @param dayId - A key of `cabinet.days`.
 * @throws RangeError when the cabinet has no such day.
 */
export function assemble(given: Cabinet, dayId: string): Assembly {
  const { cabinet, used } = applyOverrides(given);
  const day = cabinet.days[dayId];
  if (day === undefined) throw new RangeError(`assemble: the cabinet has no day "${dayId}"`);
  const draft = emptyDraft();
  draft.overridesUsed.push(...used, ...standingElsewhere(cabinet, day));
  const start = (day.roomTemperature ?? cabinet.room.temperature)[0]![1];

  assembleRoom(draft, cabinet, day);
  const bays = assembleBays(draft, cabinet, start);
  const context: ControlContext = { draft, cabinet, day, bays };
  assembleShell(draft, cabinet, bays, start);
  const machines = assembleMachines(draft, cabinet, day, bays, start);
  assembleSensors(context);
  assembleLeaks(context);
  assembleDoors(context);
  const paths = assemblePaths(context);
  assembleStirring(draft, cabinet, day, bays, machines);
  for (const [id, heat] of Object.entries(cabinet.heats)) assembleHeat(context, id, heat);
  assembleSun(draft, cabinet, bays, day.length);
  closeEnclosures(draft);
  assembleContaminants(draft, cabinet, day);
  forgetAbsent(draft);

  const { leaks, surfaces, derivations, overridesUsed, enclosures: _, jets: __, ...lists } = draft;
  return {
    network: {
      ...lists,
      title: `${cabinet.title}: ${dayId}`,
      duration: day.length,
      density: { model: 'ideal-gas' },
      fanDensityScaling: true,
      constants: houseConstants,
    },
    day: dayId,
    room: ROOM,
    outdoors: OUTDOORS,
    bays,
    machines,
    paths,
    leaks,
    surfaces,
    derivations,
    overridesUsed,
  };
}

/** Overrides that stand in the cabinet already: every factor, and what machines with jobs of this day give off. */
function standingElsewhere({ overrides }: Cabinet, { jobs }: Day): string[] {
  const printing = Object.values(jobs).map(({ machine }) => `machines.${machine}.emission.`);
  return Object.keys(overrides).filter(
    (path) => path.startsWith('factors.') || printing.some((start) => path.startsWith(start)),
  );
}

function assembleHeat(context: ControlContext, id: string, heat: HeatPart): void {
  const { draft, cabinet, bays } = context;
  const zone = zoneAt(
    bays,
    heat.bay,
    (cabinet.bays[heat.bay]?.z[0] ?? 0) + (heat.what === 'lamp' ? Number.POSITIVE_INFINITY : 0),
  );
  const { control } = assembleControl(context, id, heat.control);
  const windows = windowsOf(control, context.day.length);
  if (heat.water > 0) draft.emissions.push({ contaminant: 'water', zone, rate: heat.water, active: control });
  if (heat.holds !== undefined && windows !== undefined && heat.watts > 0) {
    holdAir(draft, { name: `heater ${id}`, zone, watts: heat.watts, set: heat.holds }, windows);
    return;
  }
  let active = control;
  if (heat.holds !== undefined) {
    const thermostat = `${id} thermostat`;
    draft.thermostats.push({
      name: thermostat,
      sensor: zone,
      on: heat.holds - 1,
      off: heat.holds,
      sense: 'below',
      initial: false,
    });
    active = { allOf: [control, { thermostat }] };
  }
  draft.heatSources.push({ name: id, node: zone, watts: heat.watts, active });
}

/** When something is on, if that does not depend on what is measured. */
function windowsOf(control: When, length: number): readonly (readonly [number, number])[] | undefined {
  if (control === 'always') return [[0, length]];
  return 'windows' in control ? control.windows : undefined;
}

/** Share of the sun let through a pane that stays inside; the rest goes back out. Judgement for a furnished bay. */
const SUN_KEPT = 0.8;

/** Sun through a pane warms the surfaces of the bay behind it, by their area. */
function assembleSun(draft: Draft, cabinet: Cabinet, bays: Readonly<Record<string, BayPlaces>>, length: number): void {
  for (const [id, door] of Object.entries(cabinet.doors)) {
    if (door.sun.length === 0) continue;
    const profile = repeatDaily(door.sun, length);
    for (const bay of door.bays) {
      const pane = draft.surfaces.filter(({ bay: of, part }) => of === bay && part === `doors.${id}`);
      const lit = draft.surfaces.filter(({ bay: of, part }) => of === bay && part !== `doors.${id}`);
      const paneArea = pane.reduce((sum, { area }) => sum + area, 0);
      const litArea = lit.reduce((sum, { area }) => sum + area, 0);
      if (bays[bay] === undefined || litArea <= 0) continue;
      const through = paneArea * door.build.solarTransmittance * SUN_KEPT;
      for (const { node, area } of lit) {
        draft.heatSources.push({
          name: `sun through ${id} on ${node}`,
          node,
          watts: (through * area) / litArea,
          active: 'always',
          profile,
        });
      }
    }
  }
}

/** Each bay's and chamber's surfaces meet at a mean radiant node, weighted once all are known. */
function closeEnclosures(draft: Draft): void {
  for (const [name, members] of draft.enclosures) {
    const weights = enclosureWeights(members);
    const byNode = new Map<string, number>();
    for (const [index, { node }] of members.entries()) byNode.set(node, (byNode.get(node) ?? 0) + weights[index]!);
    draft.stars.push({
      name: `radiation in ${name}`,
      members: [...byNode].map(([node, weight]) => ({ node, weight })),
    });
  }
}

/** Filters and carbon may hold what no material of this day gives off: that says nothing about this day. */
function forgetAbsent(draft: Draft): void {
  const present = new Set(draft.contaminants.map(({ name }) => name));
  const known = (shares: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(shares).filter(([name]) => present.has(name)));
  draft.paths.splice(
    0,
    Infinity,
    ...draft.paths.map((path) => ({ ...path, filterEfficiency: known(path.filterEfficiency) })),
  );
  draft.recirculations.splice(
    0,
    Infinity,
    ...draft.recirculations.map((filter) => ({ ...filter, efficiency: known(filter.efficiency) })),
  );
  draft.carbonBeds.splice(
    0,
    Infinity,
    ...draft.carbonBeds
      .map((bed) => ({ ...bed, vapours: bed.vapours.filter(({ contaminant }) => present.has(contaminant)) }))
      .filter(({ vapours }) => vapours.length > 0),
  );
}
