// A published office, through the whole pipeline: an open machine in a room whose air is changed once an hour.

import type { OutsideCheck } from '@stillair/physics';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { concentrationSeries, valueAt } from '../day/series.ts';
import { runDay } from './pipeline.ts';

const HOUR = 3600;
const source =
  'P. Azimi, D. Zhao, C. Pouzet, N. E. Crain, B. Stephens, Environ. Sci. Technol. 50 (2016) 1260-1268: rates read in the abstract, ' +
  'office of 45 m3 with one air change an hour and its concentrations from memory';

/** The cabinet's door stands open all the time (a hole has one height, and lets nothing pass both ways). The job is long enough for the room to settle (22 of its air changes). */
const office = (material: string, rate: string): string => `
stillair: 1
room: { size: 5 m x 3.6 m x 2.5 m, temperature: 22 °C, air-changes: 1 /h }
cabinet: { inside: 700 mm x 700 mm x 700 mm, made-of: plywood 18 mm, door: plywood 18 mm }
bays: { frame: { z: 0 mm to 700 mm } }
machines: { open: { kind: moving bed 220, bay: frame } }
materials: { ${material}: { emissions: { ${rate} } } }
days: { print: { doors: [{ at: 0:00, for: 24 h }], jobs: { part: { machine: open, material: ${material}, start: 1:00, for: 22 h } } } }
`;

/** Concentration in the room after 22 hours of printing, µg/m³. */
function settled(material: string, contaminant: string, rate: string): number {
  const read = readCabinet('office.yaml', office(material, `${contaminant}: ${rate}`));
  if (!read.ok) throw new Error(read.complaints.map(({ what }) => what).join('; '));
  const { record } = runDay(read.cabinet, 'print');
  return valueAt(concentrationSeries(record, contaminant, 'room'), 23 * HOUR);
}

export const checks: readonly OutsideCheck[] = [
  {
    what: 'styrene in a 45 m3 office at 1 /h while a machine on ABS gives off 110 µg/min: E/(n V), "about 150"',
    formula: 'runDay',
    source,
    known: 'memory',
    expected: 147,
    unit: 'µg/m3',
    tolerance: 1,
    got: () => settled('ABS', 'styrene', '110 µg/min'),
  },
  {
    what: 'caprolactam in the same office while a machine on nylon gives off 183 µg/min',
    formula: 'runDay',
    source,
    known: 'memory',
    expected: 244,
    unit: 'µg/m3',
    tolerance: 1,
    got: () => settled('PA', 'caprolactam', '183 µg/min'),
  },
];
