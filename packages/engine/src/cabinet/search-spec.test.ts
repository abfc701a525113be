import { describe, expect, it } from 'vitest';
import { readCabinet } from './read-cabinet.ts';
import { inOrder, rangeValues } from './search-spec.ts';

const file = (search: string): string => `stillair: 1
cabinet: { inside: 800 mm x 600 mm x 900 mm, made-of: plywood 18 mm }
air:
  intake: { from: room, to: inside, hole: 80 mm round }
  exhaust: { from: inside, to: room, parts: [{ filter: pleated H13 150 mm }, { fan: axial 92 mm quiet }] }
days: { usual: { } }
options: { larger: { set: { air.intake.hole: 100 mm round } } }
search: ${search}
`;

describe('what a search may change', () => {
  it('exact: ranges are written out in their own unit, to the end where it is met', () => {
    expect(rangeValues({ from: '40 %', to: '100 %', step: '20 %' })).toEqual(['40 %', '60 %', '80 %', '100 %']);
    expect(rangeValues({ from: '60 mm round', to: '95 mm round', step: '15 mm' })).toEqual([
      '60 mm round',
      '75 mm round',
      '90 mm round',
    ]);
    expect(rangeValues({ from: '1', to: '3', step: '1' })).toEqual([1, 2, 3]);
  });

  it('exact: only numbers of one unit that rise or fall lie in order', () => {
    expect(
      [
        ['1 K', '2 K', '4 K'],
        ['4 K', '2 K'],
        ['1 K', '2 °C'],
        ['1 K', '3 K', '2 K'],
        ['in', 'wall'],
      ].map(inOrder),
    ).toEqual([true, true, false, false, false]);
  });

  it('exact: lists, ranges and the catalogue become values; options keep their ids', () => {
    const read = readCabinet(
      'a.yaml',
      file(
        '{ options: [larger], free: { air.intake.hole: [60 mm round, 80 mm round], air.exhaust.parts.1.speed: { from: 50 %, to: 100 %, step: 50 % }, air.exhaust.parts.1.fan: { catalogue: fans, named: blower mm 97 } } }',
      ),
    );
    expect(read.ok && read.cabinet.search).toEqual({
      options: ['larger'],
      free: {
        'air.intake.hole': { values: ['60 mm round', '80 mm round'], ordered: true },
        'air.exhaust.parts.1.speed': { values: ['50 %', '100 %'], ordered: true },
        'air.exhaust.parts.1.fan': { values: ['blower 97 mm'], ordered: false },
      },
    });
  });

  it('exact: what an option takes away from a search is no fault of the option', () => {
    const read = readCabinet(
      'a.yaml',
      file('{ free: { air.intake.hole: [60 mm round] } }').replace(
        'set: { air.intake.hole: 100 mm round }',
        'remove: [air.intake]',
      ),
    );
    expect(read.ok).toBe(true);
  });
});
