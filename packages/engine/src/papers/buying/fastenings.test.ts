import { describe, expect, it } from 'vitest';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { fastenings } from './fastenings.ts';

const text = (door: string, air: string): string => `stillair: 1
cabinet: { inside: 600 mm x 500 mm x 1000 mm, made-of: plywood 18 mm, doors: { low: { bays: [a], ${door} }, high: { bays: [b], made-of: plywood 18 mm, hinges: { count: 3 } } } }
bays: { a: { z: 0 mm to 490 mm }, b: { z: 508 mm to 1000 mm } }
shelves: { mid: { between: [a, b], joint: pins } }
machines: { one: { kind: fixed bed 120, bay: a }, two: { kind: fixed bed 120, bay: b } }
power: { strips: { main: { sockets: 4, where: outside, feeds: [one, two] } } }
air: { ${air} }
days: { usual: {} }
`;

function counted(door: string, air: string) {
  const answer = readCabinet('cabinet.yaml', text(door, air));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  const { things, open } = fastenings(answer.cabinet);
  return {
    open,
    counts: things.map(({ what, count, where }) => [what.replace(/[,(;].*$/, '').trim(), count, where.join()]),
  };
}

describe('small things of the buying list', () => {
  it('exact: four bolts a fan of a trade size, four wood screws a plate, hinges, pins and bushings as the file has them', () => {
    const { counts, open } = counted(
      'made-of: acrylic 5 mm',
      'in: { from: room, to: a, hole: 80 mm round }, out: { from: b, to: room, parts: [{ fan: axial 92 mm quiet }] }, up: { from: a, to: b, parts: [{ fan: axial 92 mm quiet }] }',
    );
    expect(open).toEqual([]);
    expect(counts).toEqual([
      ['screw M4 x 16 with washer and nut', 8, 'out,up'],
      ['wood screw 4 x 16', 8, 'out,up'],
      ['surface hinge or clamp for a leaf of acrylic 5 mm', 2, 'low'],
      ['cup hinge of 35 mm with its plate', 3, 'high'],
      ['shelf pin 5 mm', 4, expect.stringContaining('mid')],
      ['bushing or brush for a hole of 60 mm that a plug passes', 2, 'a,b'],
    ]);
  });

  it('limit: a fan whose frame is of no trade size is told, not guessed; a leaf that slides has no hinge', () => {
    const { counts, open } = counted(
      'made-of: acrylic 5 mm, hinge: slides',
      'in: { from: room, to: a, hole: 80 mm round }, out: { from: b, to: room, parts: [{ fan: blower 97 mm }] }',
    );
    expect(open.join()).toContain('blower 97 mm');
    expect(counts.map(([what]) => what).join()).not.toMatch(/screw|acrylic/);
  });
});
