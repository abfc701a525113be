// Everything in a cabinet that wants care, with its interval: the file's own, else what is common practice.

import type { Assumption } from './assumption.ts';
import type { Cabinet, Control } from './cabinet.ts';
import type { CareAction, CareCount, CareKind, CareTask } from './care.ts';
import { type MachineCare, machinePractice, type Practice, partPractice } from './care-practice.ts';
import type { Origins } from './origin.ts';

type Told = Pick<
  Cabinet,
  'paths' | 'doors' | 'machines' | 'spools' | 'protection' | 'sensors' | 'bays' | 'costs' | 'care'
>;

/** In the order of the cabinet. What the file says is never done is left out. */
export function careTasksOf(cabinet: Told, origins: Origins = new Map()): CareTask[] {
  return allCareTasks(cabinet, origins).flatMap((task) => {
    const own = cabinet.care[task.part]?.[task.action];
    if (own === undefined) return [task];
    if (Object.keys(own).length === 0) return [];
    return [{ ...task, interval: own, source: 'the cabinet file', own: true as const }];
  });
}

/** By common practice alone. */
export function allCareTasks(cabinet: Told, origins: Origins = new Map()): CareTask[] {
  return [
    ...ofPaths(cabinet, origins),
    ...ofDoors(cabinet),
    ...ofMachines(cabinet),
    ...ofSpools(cabinet),
    ...ofProtection(cabinet),
    ...Object.keys(cabinet.sensors).map((id) =>
      task(
        'sensor',
        `sensor ${id}`,
        'check',
        `compare the sensor ${id}`,
        partPractice.sensorCheck,
        {},
        `sensors.${id}`,
      ),
    ),
    ...Object.keys(cabinet.bays).map((id) =>
      task('bay', `bay ${id}`, 'clean', `clean ${id}`, partPractice.insideClean, {}),
    ),
  ];
}

function task(
  kind: CareKind,
  part: string,
  action: CareAction,
  says: string,
  { interval, source }: Practice,
  counts: CareCount,
  about?: string,
): CareTask {
  return {
    id: `${part} ${action}`,
    part,
    action,
    says,
    counts,
    interval,
    source,
    kind,
    ...(about === undefined ? {} : { about }),
  };
}

function ofPaths({ paths, costs }: Told, origins: Origins): CareTask[] {
  const life = (name: 'filterLife' | 'carbonLife'): Assumption => {
    const { p10 = costs[name], p90 = costs[name] } = origins.get(`costs.${name}`)?.spread ?? {};
    return { value: costs[name], low: p10, high: p90, shape: 'log-normal', why: `costs.${name}` };
  };
  return Object.entries(paths).flatMap(([id, { parts }]) =>
    parts.flatMap((part, at): CareTask[] => {
      const { part: what } = part;
      if (what !== 'filter' && what !== 'carbon' && what !== 'fan') return [];
      const several = parts.filter((other) => other.part === what);
      const name = several.length > 1 ? `${what} ${id} ${several.indexOf(part) + 1}` : `${what} ${id}`;
      const own = (action: CareAction, says: string, practice: Practice): CareTask =>
        task(what, name, action, says, practice, { path: id }, `air.${id}.${at}`);
      if (what === 'filter')
        return [
          own('change', `change the ${name}`, withPrinting(partPractice.filterChange, life('filterLife'))),
          own('check', `look at the ${name} and read its pressure loss`, partPractice.filterCheck),
        ];
      if (what === 'carbon')
        return [own('change', `change the ${name}`, withPrinting(partPractice.carbonChange, life('carbonLife')))];
      if (part.part !== 'fan' || part.control.kind === 'never') return [];
      return [
        own('check', `look at the ${name}: dust, noise, play`, partPractice.fanCheck),
        own('change', `change the ${name}`, bearing(part.control)),
      ];
    }),
  );
}

function bearing({ kind }: Control): Practice {
  return kind === 'always' ? partPractice.fanAlways : partPractice.fanChange;
}

/** Hours of printing from `costs:`, so that what is paid for and what is asked for are one. */
function withPrinting({ interval, source }: Practice, printing: Assumption): Practice {
  return { interval: { ...interval, printing }, source };
}

function ofDoors({ doors }: Told): CareTask[] {
  return Object.keys(doors).map((id) =>
    task('seal', `seal ${id}`, 'check', `check the seal of ${id}`, partPractice.sealCheck, {}, `doors.${id}`),
  );
}

const MACHINE: readonly (readonly [MachineCare, CareAction, string])[] = [
  ['belts', 'check', 'check belts and fan intakes of'],
  ['terminals', 'check', 'check terminals, bed cables and screws of'],
  ['guides', 'lubricate', 'lubricate the guides of'],
  ['tube end', 'check', 'check the end of the tube of'],
  ['hot end', 'clean', 'clean the hot end of'],
  ['bed cable', 'change', 'change the cable to the moving bed of'],
];

function ofMachines({ machines }: Told): CareTask[] {
  return Object.entries(machines).flatMap(([id, { style }]) =>
    MACHINE.flatMap(([name, action, says]) =>
      name === 'bed cable' && style !== 'moving-bed'
        ? []
        : [task('machine', `${name} ${id}`, action, `${says} ${id}`, machinePractice[name], { machine: id })],
    ),
  );
}

/** A spool with a humidity of its own is kept in a box that something dries. */
function ofSpools({ spools }: Told): CareTask[] {
  return Object.entries(spools).flatMap(([id, { humidity }]) =>
    humidity === undefined
      ? []
      : [
          task(
            'desiccant',
            `desiccant ${id}`,
            'dry',
            `dry or change the desiccant of ${id}`,
            partPractice.desiccantDry,
            {},
            `spools.${id}`,
          ),
        ],
  );
}

function ofProtection({ protection }: Told): CareTask[] {
  const { chain = {}, detectors = {}, extinguisher } = protection;
  return [
    ...Object.entries(detectors).flatMap(([id, { what }]) => {
      const about = `protection.detectors.${id}`;
      return [
        task('detector', `detector ${id}`, 'test', `test the detector ${id}`, partPractice.detectorTest, {}, about),
        ...(what === 'smoke'
          ? [
              task(
                'detector',
                `detector ${id}`,
                'change',
                `change the smoke detector ${id}`,
                partPractice.detectorChange,
                {},
                about,
              ),
            ]
          : []),
      ];
    }),
    ...Object.entries(chain).map(([id, { what }]) => {
      const link = what === 'thermal link';
      return task(
        'chain',
        `chain ${id}`,
        link ? 'check' : 'test',
        link ? `look at the thermal link ${id}` : `trip ${id} (${what})`,
        link ? partPractice.linkCheck : partPractice.chainTest,
        {},
        `protection.chain.${id}`,
      );
    }),
    ...(extinguisher === undefined
      ? []
      : [
          task(
            'extinguisher',
            'extinguisher',
            'check',
            'have the extinguisher checked',
            partPractice.extinguisherCheck,
            {},
            'protection.extinguisher',
          ),
        ]),
  ];
}
