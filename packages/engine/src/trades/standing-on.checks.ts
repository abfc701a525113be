// What slabs and panes weigh, against what their sellers print.

import type { OutsideCheck } from '@stillair/physics';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { arealMass, slabMass } from './standing-on.ts';

const text = `
stillair: 1
cabinet: { inside: 700 mm x 600 mm x 700 mm, made-of: plywood 18 mm, door: glass 4 mm }
machines: { one: { kind: moving bed 220, stands-on: { slab: 400 mm x 400 mm x 40 mm } } }
days: { usual: {} }
`;

function cabinet() {
  const read = readCabinet('slab.yaml', text);
  if (!read.ok) throw new Error(read.complaints.map(({ what }) => what).join('; '));
  return read.cabinet;
}

export const checks: readonly OutsideCheck[] = [
  {
    what: 'washed paving slab of 400 mm x 400 mm x 40 mm, "about 15 kg"',
    formula: 'slabMass',
    source: 'page on the weight of exposed-aggregate slabs (en.burgeronreport.com)',
    known: 'read',
    expected: 15,
    unit: 'kg',
    tolerance: 0.5,
    got: () => slabMass(cabinet().machines['one']!),
  },
  {
    what: 'pane of 4 mm: 2.5 kg for each square metre and millimetre',
    formula: 'arealMass',
    source: 'EN 572-1, density of float glass',
    known: 'memory',
    expected: 10,
    unit: 'kg/m²',
    tolerance: 0.05,
    got: () => arealMass(cabinet().doors['door']!.build),
  },
];
