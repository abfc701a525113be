import { describe, expect, it } from 'vitest';
import type { Cabinet } from './cabinet.ts';
import type { Origins } from './origin.ts';
import { readCabinet } from './read-cabinet.ts';

function read(machine: string, more = ''): { cabinet: Cabinet; origins: Origins } {
  const answer = readCabinet(
    'cabinet.yaml',
    `stillair: 1
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: birch plywood 18 mm, door: glass 4 mm${more} }
bays: { lower: { z: 0 mm to 430 mm }, upper: { z: 450 mm to 900 mm } }
shelves: { deck: { between: [lower, upper], joint: housing, lipping: 40 mm x 20 mm, load: 4 lb } }
machines: { left: { kind: moving bed 220, bay: upper${machine} } }
days: { usual: { jobs: { part: { machine: left, material: PLA, start: 9:00, for: 3 h } } } }
`,
  );
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer;
}

describe('what carries and shakes, filled in', () => {
  it('exact: nothing said about it is not a board: it stays open', () => {
    expect(read('').cabinet.machines['left']!.standsOn).toBeUndefined();
    expect(read(', stands-on: board').cabinet.machines['left']!.standsOn).toEqual({});
  });

  it('exact: slabs of one size are one thick slab, and their density is assumed with its spread', () => {
    const { cabinet, origins } = read(', stands-on: { slab: 400 mm x 400 mm x 40 mm, slabs: 2 }');
    expect(cabinet.machines['left']!.standsOn!.slab).toEqual({
      width: 0.4,
      depth: 0.4,
      thickness: 0.08,
      density: 2350,
    });
    expect(origins.get('machines.left.standsOn.slab.density')).toMatchObject({
      kind: 'assumed',
      spread: { p10: 2250, p90: 2450 },
    });
  });

  it('exact: foam without pads is a sheet of the size of what stands on it', () => {
    const slab = read(', stands-on: { slab: 450 mm x 400 mm x 32 mm, foam: seating foam 20 mm }').cabinet;
    expect(slab.machines['left']!.standsOn!.foam).toMatchObject({ pads: 0, width: 0.45, depth: 0.4, thickness: 0.02 });
    const pads = read(', stands-on: { foam: rubber 10 mm, pads: 4, pad-size: 2 in x 2 in }').cabinet;
    expect(pads.machines['left']!.standsOn!.foam).toMatchObject({ pads: 4, width: 0.0508, depth: 0.0508 });
  });

  it('exact: a number of the file goes before that of the kind, that of the kind before the assumption', () => {
    const { cabinet, origins } = read(', mass: 20 lb, shaking: { acceleration: 3000 mm/s2 }');
    expect(cabinet.machines['left']!.mass).toBeCloseTo(9.0718474, 9);
    expect(cabinet.machines['left']!.shaking).toMatchObject({ acceleration: 3, headMass: 0.4, speed: 0.1 });
    expect(origins.get('machines.left.mass')!.kind).toBe('given');
    expect(origins.get('machines.left.shaking.headMass')!.kind).toBe('catalogue');
    expect(origins.get('machines.left.shaking.stroke')!.kind).toBe('assumed');
  });

  it('exact: a shelf without a word lies on cleats that let its ends turn; a groove is assumed to hold them a little', () => {
    const { cabinet, origins } = read('');
    expect(cabinet.structure.shelves['deck']).toMatchObject({
      joint: 'housing',
      endFixity: 0.15,
      posts: 0,
      grain: 'along',
    });
    expect(cabinet.structure.shelves['deck']!.load).toBeCloseTo(1.81436948, 9);
    expect(cabinet.structure.shelves['deck']!.lipping).toMatchObject({ height: 0.04, breadth: 0.02, edges: 1 });
    expect(origins.get('structure.shelves.deck.endFixity')!.kind).toBe('assumed');
    expect(cabinet.structure.boards['birch plywood']).toMatchObject({ along: 17.5e9, veneer: 0.0014 });
  });

  it('exact: feet and strap are as written; without a word the bottom lies on the floor and nothing holds the wall', () => {
    expect(read('').cabinet.structure).toMatchObject({ wallStrap: false, feet: { count: 0, inset: 0 } });
    const { structure } = read('', ', wall-strap: yes, feet: { count: 6, height: 100 mm, inset: 30 mm }').cabinet;
    expect(structure).toMatchObject({ wallStrap: true, feet: { count: 6, height: 0.1, inset: 0.03, size: 0.04 } });
    expect(structure.hinges['door']).toMatchObject({ count: 2, carries: 4 });
    expect(structure.hinges['door']!.spacing).toBeCloseTo(0.675, 12);
  });
});
