// Changes that trades propose, by what is to be reached. The judge tries each; here nobody knows whether it helps.

import type { Cabinet, Control } from '../cabinet/cabinet.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import type { Remedy } from './measure.ts';
import { connectedBays, exhaustsOf, type FanPart, fansIn, hasFilter, intakesOf, machinesIn, OUTSIDE } from './plant.ts';
import {
  addHole,
  addPart,
  addPath,
  machineOutside,
  millimetres,
  removePart,
  setBlows,
  setControl,
  setDoor,
  setFaceBoards,
  setFanKind,
  setFanSpeed,
  setFilterKind,
  setOnlyHole,
  setTo,
} from './remedy-edits.ts';
import { fansWithMorePressure, nextLarger, ofFamily, quieterFans } from './remedy-parts.ts';

const INSULATION = ['mineral wool 25 mm', 'plywood 4 mm'] as const;
const SECOND_PANE = ['still air 12 mm'] as const;
const GOOD_SEAL = 'silicone profile';
const FLAP = 'light flap';
/** A door that leaves less than this open is sealed, m. */
const SEALED = 0.0003;

/** Ways to cool a bay. */
export function coolerBay(cabinet: Cabinet, bay: string): Remedy[] {
  const exhausts = exhaustsServing(cabinet, bay);
  const first = exhausts[0];
  return [
    ...exhausts.flatMap((id) => earlierFan(cabinet, id)),
    ...(first === undefined ? throughDraught(cabinet, bay) : []),
    ...largerInlet(cabinet, bay),
    ...(first === undefined ? newExhaust(cabinet, bay) : strongerFan(cabinet, first)),
    ...machinesIn(cabinet, bay)
      .filter((id) => cabinet.machines[id]!.supply.inside && cabinet.machines[id]!.chamber === undefined)
      .map((id) => ({ says: `put the power supply of ${id} outside`, edits: [machineOutside(id, 'supply')] })),
  ];
}

/** Ways to keep a bay warmer. */
export function warmerBay(cabinet: Cabinet, bay: string): Remedy[] {
  return [
    ...exhaustsServing(cabinet, bay).flatMap((id) => laterFan(cabinet, id)),
    ...insulateBoards(cabinet),
    ...sealDoors(cabinet, bay),
  ];
}

export function electronicsOutside(cabinet: Cabinet, machine: string): Remedy[] {
  const { supply } = cabinet.machines[machine]!;
  return [
    {
      says: `put the electronics of ${machine} outside the cabinet`,
      edits: [machineOutside(machine, 'electronics'), ...(supply.inside ? [machineOutside(machine, 'supply')] : [])],
    },
  ];
}

export function dryBay(cabinet: Cabinet, bay: string): Remedy[] {
  return exhaustsServing(cabinet, bay).flatMap((id) => alwaysOn(cabinet, id));
}

/** Insulation on a board, a second pane behind a door's first. */
export function insulateFace(cabinet: Cabinet, part: string): Remedy[] {
  const [group, id = ''] = part.split('.');
  if (group === 'faces') {
    const { layers } = cabinet.faces[id as keyof Cabinet['faces']].build;
    return [{ says: `insulate the ${id} with mineral wool 25 mm`, edits: [setFaceBoards(id, layers, INSULATION)] }];
  }
  const door = group === 'doors' ? cabinet.doors[id] : undefined;
  const [pane] = door?.build.layers ?? [];
  if (door === undefined || pane === undefined) return [];
  const second = `${pane.material} ${millimetres(pane.thickness)}`;
  return [{ says: `give ${id} a second pane`, edits: [setDoor(id, door.build.layers, [...SECOND_PANE, second])] }];
}

/** Twice the area of a plain hole, or one more. */
export function largerInlet(cabinet: Cabinet, bay: string): Remedy[] {
  const served = connectedBays(cabinet, bay);
  const inlets = intakesOf(cabinet).filter((id) => served.includes(cabinet.paths[id]!.to));
  const larger = inlets.flatMap((id) => {
    const path = cabinet.paths[id]!;
    const [hole, ...others] = path.parts;
    if (hole?.part !== 'hole' || others.length > 0 || hole.section.shape !== 'round') return [];
    const diameter = hole.section.diameter * Math.SQRT2;
    return [
      { says: `make ${id} ${millimetres(diameter)} wide, twice its area`, edits: [setOnlyHole(id, path, diameter)] },
    ];
  });
  if (larger.length > 0) return larger;
  const lowest = baysOf(cabinet, served).sort((a, b) => cabinet.bays[a]!.z[0] - cabinet.bays[b]!.z[0])[0];
  if (lowest === undefined) return [];
  const size = exhaustsServing(cabinet, bay).flatMap((id) => fansIn(cabinet.paths[id]!))[0]?.diameter ?? 0.1;
  const words = inlets.length === 0 ? 'make an inlet' : 'make one more inlet';
  return [
    {
      says: `${words} of ${millimetres(size)} low in ${lowest}`,
      edits: [addHole(freeId(cabinet, inlets.length === 0 ? 'inlet' : 'second-inlet'), 'room', lowest, size)],
    },
  ];
}

/** The next stronger fan for the same hole, and the next blower. */
export function strongerFan(cabinet: Cabinet, id: string): Remedy[] {
  return eachFan(cabinet, id).flatMap(({ fan, at }) => {
    const kinds = fansWithMorePressure(fan);
    const [axial, blower] = [
      kinds.find((kind) => kind.startsWith('axial')),
      kinds.find((kind) => !kind.startsWith('axial')),
    ];
    return [axial, blower]
      .filter((kind) => kind !== undefined)
      .map((kind) => ({ says: `${kind} in ${id}`, edits: [setFanKind(id, cabinet.paths[id]!, at, kind)] }));
  });
}

export function largerFilter(cabinet: Cabinet, id: string): Remedy[] {
  const path = cabinet.paths[id]!;
  return path.parts.flatMap((part, at) => {
    if (part.part !== 'filter' && part.part !== 'carbon') return [];
    const kind = nextLarger(part.part === 'filter' ? 'filters' : 'carbons', part.kind);
    return kind === undefined ? [] : [{ says: `${kind} in ${id}`, edits: [setFilterKind(id, path, at, kind)] }];
  });
}

export function noStall(cabinet: Cabinet, id: string): Remedy[] {
  return strongerFan(cabinet, id).filter(({ says }) => !says.startsWith('axial'));
}

export function flapIn(cabinet: Cabinet, id: string): Remedy[] {
  return [{ says: `a back-draught flap in ${id}`, edits: [addPart(id, cabinet.paths[id]!, 'flap', FLAP, 'last')] }];
}

/** Half the area of a plain hole: what the fan draws then pulls the bay further below the room. */
function smallerInlet(cabinet: Cabinet, bay: string): Remedy[] {
  const served = connectedBays(cabinet, bay);
  return intakesOf(cabinet).flatMap((id) => {
    const path = cabinet.paths[id]!;
    const [hole, ...others] = path.parts;
    if (!served.includes(path.to) || hole?.part !== 'hole' || others.length > 0 || hole.section.shape !== 'round')
      return [];
    const diameter = hole.section.diameter / Math.SQRT2;
    return [
      { says: `make ${id} ${millimetres(diameter)} wide, half its area`, edits: [setOnlyHole(id, path, diameter)] },
    ];
  });
}

/** Ways to bring a bay below the room's pressure. */
export function inwardLeaks(cabinet: Cabinet, bay: string): Remedy[] {
  const pushing = intakesOf(cabinet).flatMap((id) => eachFan(cabinet, id).map(({ at }) => ({ id, at })));
  const first = exhaustsServing(cabinet, bay)[0];
  return [
    ...pushing.map(({ id, at }) => ({
      says: `take the fan out of ${id}, so that nothing blows into the cabinet`,
      edits: [removePart(id, cabinet.paths[id]!, at)],
    })),
    ...(first === undefined ? [] : [...smallerInlet(cabinet, bay), ...strongerFan(cabinet, first)]),
    ...sealDoors(cabinet, bay),
  ];
}

export function quieterFan(cabinet: Cabinet): Remedy[] {
  return Object.keys(cabinet.paths).flatMap((id) => quieterFansOf(cabinet, id));
}

/** A quieter fan in the place of each of a path's, and each run slower. */
export function quieterFansOf(cabinet: Cabinet, id: string): Remedy[] {
  return eachFan(cabinet, id).flatMap(({ fan, at }) => {
    const path = cabinet.paths[id]!;
    const kind = quieterFans(fan)[0];
    return [
      ...(kind === undefined ? [] : [{ says: `${kind} in ${id}`, edits: [setFanKind(id, path, at, kind)] }]),
      { says: `run the fan of ${id} at 70 %`, edits: [setFanSpeed(id, path, at, 0.7 * fan.speed)] },
    ];
  });
}

/** Ways to keep what prints give off out of the room: every contaminant asks for one of the same two lists. */
export const cleanerAir: (cabinet: Cabinet, of: 'particles' | 'vapours') => Remedy[] = restingOnParts(waysToCleanerAir);

function waysToCleanerAir(cabinet: Cabinet, of: 'particles' | 'vapours'): Remedy[] {
  const particles = of === 'particles';
  const exhausts = exhaustsOf(cabinet).filter((id) => cabinet.paths[id]!.to === 'room');
  const [group, family, words] = particles
    ? (['filter', 'pleated H13', 'a particle filter'] as const)
    : (['carbon', 'granular 25 mm', 'a carbon stage'] as const);
  const stage = (size: number): string | undefined => ofFamily(particles ? 'filters' : 'carbons', family, size);
  const staged = exhausts.flatMap((id) => {
    const path = cabinet.paths[id]!;
    const kind = stage(150);
    if (kind === undefined || path.parts.some(({ part }) => part === group)) return [];
    return [{ says: `${words} (${kind}) in ${id}`, edits: [addPart(id, path, group, kind, 'first')] }];
  });
  const printing = [...new Set(Object.values(cabinet.machines).map(({ bay }) => bay))];
  const scrubbed = printing.flatMap((bay) => {
    const kind = stage(150);
    const fan = 'blower 97 mm';
    if (kind === undefined) return [];
    return [
      {
        says: `${words} with a fan of its own that turns the air of ${bay} round`,
        edits: [addPath(freeId(cabinet, `${bay}-scrubber`), bay, bay, [{ [group]: kind }, { fan, control: 'job' }])],
      },
    ];
  });
  return [
    ...staged,
    ...exhausts.map((id) => ({ says: `lead ${id} outdoors`, edits: [setTo(id, 'outdoors')] })),
    ...exhausts.flatMap((id) => alwaysOn(cabinet, id)),
    ...scrubbed,
    ...(exhausts.length === 0 ? [] : strongerFan(cabinet, exhausts[0]!)),
    ...printing.flatMap((bay) => sealDoors(cabinet, bay)),
  ].filter(
    ({ edits }, at, all) => all.findIndex((other) => JSON.stringify(other.edits) === JSON.stringify(edits)) === at,
  );
}

/** Fans that start with the job and run on after it. */
export function fanWithJob(cabinet: Cabinet, paths: readonly string[], machine: string): Remedy[] {
  return paths.flatMap((id) =>
    eachFan(cabinet, id)
      .filter(({ fan }) => fan.control.kind !== 'always')
      .map(({ fan, at }) => {
        const machines =
          fan.control.kind === 'job' ? [...new Set([...fan.control.machines, machine])] : Object.keys(cabinet.machines);
        const control: Control = { kind: 'job', machines, lead: 300, runOn: 7200 };
        return {
          says: `switch the fan of ${id} by the jobs, from 5 min before to 2 h after`,
          edits: [setControl(id, cabinet.paths[id]!, at, control)],
        };
      }),
  );
}

export function runOn(cabinet: Cabinet, bay: string): Remedy[] {
  return exhaustsServing(cabinet, bay).flatMap((id) =>
    eachFan(cabinet, id)
      .filter(({ fan }) => fan.control.kind !== 'always')
      .map(({ at }) => ({
        says: `let the fan of ${id} run on for an hour after each job`,
        edits: [
          setControl(id, cabinet.paths[id]!, at, {
            kind: 'job',
            machines: Object.keys(cabinet.machines),
            lead: 0,
            runOn: 3600,
          }),
        ],
      })),
  );
}

/** Ways to keep a jet off the print. */
export function stillerAir(cabinet: Cabinet, id: string): Remedy[] {
  const path = cabinet.paths[id];
  if (path === undefined) return [];
  const [hole, ...others] = path.parts;
  return [
    ...(path.blows === 'in'
      ? [{ says: `turn ${id} along the wall with a deflector`, edits: [setBlows(id, 'wall')] }]
      : []),
    ...(path.blows === 'away' ? [] : [{ says: `turn ${id} away from the prints`, edits: [setBlows(id, 'away')] }]),
    ...(hole?.part === 'hole' && others.length === 0 && hole.section.shape === 'round'
      ? [
          {
            says: `make ${id} ${millimetres(1.5 * hole.section.diameter)} wide: the same air, slower`,
            edits: [setOnlyHole(id, path, 1.5 * hole.section.diameter)],
          },
        ]
      : []),
    ...eachFan(cabinet, id).map(({ fan, at }) => ({
      says: `run the fan of ${id} at 60 %`,
      edits: [setFanSpeed(id, path, at, 0.6 * fan.speed)],
    })),
  ];
}

/** A seal for one door, where it has no good one. */
export function sealedDoor({ doors }: Cabinet, id: string): Remedy[] {
  return Object.entries(doors)
    .filter(([door, { sealGap }]) => door === id && sealGap > SEALED)
    .map(([, { build }]) => ({
      says: `seal ${id} with a ${GOOD_SEAL}`,
      edits: [setDoor(id, build.layers, [], GOOD_SEAL)],
    }));
}

function sealDoors(cabinet: Cabinet, bay: string): Remedy[] {
  return Object.entries(cabinet.doors)
    .filter(([, { bays }]) => bays.includes(bay))
    .flatMap(([id]) => sealedDoor(cabinet, id));
}

function insulateBoards({ faces }: Cabinet): Remedy[] {
  const sides = (['back', 'left', 'right', 'top'] as const).filter(
    (face) => !faces[face].build.layers.some(({ conductivity }) => conductivity < 0.06),
  );
  if (sides.length === 0) return [];
  return [
    {
      says: `insulate ${sides.join(', ')} with mineral wool 25 mm`,
      edits: sides.map((face) => setFaceBoards(face, faces[face].build.layers, INSULATION)),
    },
  ];
}

function newExhaust(cabinet: Cabinet, bay: string): Remedy[] {
  const served = connectedBays(cabinet, bay);
  const highest = baysOf(cabinet, served).sort((a, b) => cabinet.bays[b]!.z[1] - cabinet.bays[a]!.z[1])[0]!;
  return [
    {
      says: `an exhaust fan (axial 92 mm quiet) high in ${highest}`,
      edits: [addPath(freeId(cabinet, 'exhaust'), highest, 'room', [{ fan: 'axial 92 mm quiet' }])],
    },
  ];
}

/** Where no air is let in, neither an inlet nor a fan does anything alone. */
function throughDraught(cabinet: Cabinet, bay: string): Remedy[] {
  const served = connectedBays(cabinet, bay);
  if (intakesOf(cabinet).some((id) => served.includes(cabinet.paths[id]!.to))) return [];
  return largerInlet(cabinet, bay).flatMap((inlet) =>
    newExhaust(cabinet, bay).map((fan) => ({
      says: `${inlet.says}, and ${fan.says}`,
      edits: [...inlet.edits, ...fan.edits],
    })),
  );
}

/** A fan that a thermostat switches starts 3 K earlier; one that rests runs always. */
function earlierFan(cabinet: Cabinet, id: string): Remedy[] {
  return eachFan(cabinet, id).flatMap(({ fan: { control }, at }) => {
    if (control.kind === 'thermostat') {
      const earlier: Control = { ...control, on: control.on - 3, off: control.off - 3 };
      return [
        {
          says: `let the thermostat start ${id} 3 K earlier`,
          edits: [setControl(id, cabinet.paths[id]!, at, earlier)],
        },
      ];
    }
    return control.kind === 'never' || control.kind === 'timer' ? alwaysOn(cabinet, id) : [];
  });
}

/** A fan that a thermostat switches starts 5 K later; one that runs anyway runs at half speed. */
function laterFan(cabinet: Cabinet, id: string): Remedy[] {
  const path = cabinet.paths[id]!;
  return eachFan(cabinet, id).map(({ fan: { control, speed }, at }) => {
    if (control.kind === 'thermostat') {
      const later: Control = { ...control, on: control.on + 5, off: control.off + 5 };
      return { says: `let the thermostat start ${id} 5 K later`, edits: [setControl(id, path, at, later)] };
    }
    return { says: `run the fan of ${id} at half its speed`, edits: [setFanSpeed(id, path, at, 0.5 * speed)] };
  });
}

function alwaysOn(cabinet: Cabinet, id: string): Remedy[] {
  return eachFan(cabinet, id)
    .filter(({ fan }) => fan.control.kind !== 'always')
    .map(({ at }) => ({
      says: `let the fan of ${id} run always`,
      edits: [setControl(id, cabinet.paths[id]!, at, { kind: 'always' })],
    }));
}

function eachFan(cabinet: Cabinet, id: string): { fan: FanPart; at: number }[] {
  return cabinet.paths[id]!.parts.flatMap((part, at) => (part.part === 'fan' ? [{ fan: part, at }] : []));
}

/** Exhausts that draw on a bay, those with a filter first. */
function exhaustsServing(cabinet: Cabinet, bay: string): string[] {
  const served = connectedBays(cabinet, bay);
  return exhaustsOf(cabinet)
    .filter((id) => served.includes(cabinet.paths[id]!.from))
    .sort((a, b) => Number(hasFilter(cabinet.paths[b]!)) - Number(hasFilter(cabinet.paths[a]!)));
}

/** Without machines' own chambers, which air paths lead to as well. */
function baysOf({ bays }: Cabinet, places: readonly string[]): string[] {
  return places.filter((place) => bays[place] !== undefined);
}

function freeId({ paths }: Cabinet, wanted: string): string {
  let id = wanted;
  for (let number = 2; paths[id] !== undefined || OUTSIDE.includes(id); number += 1) id = `${wanted}-${number}`;
  return id;
}
