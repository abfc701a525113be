import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from './complaint.ts';
import { knownKinds, newCabinet } from './new-cabinet.ts';
import { readCabinet } from './read-cabinet.ts';

const { machines, materials, boards } = knownKinds();

describe('newCabinet', () => {
  it('exact: without any answer the file can be read, and says what is assumed', () => {
    const text = newCabinet({});
    expect(readCabinet('new.yaml', text)).toMatchObject({ ok: true });
    expect(text.match(/# assumed/g)!.length).toBeGreaterThanOrEqual(7);
  });

  it('exact: answers stand in the file as they were given, without "assumed"', () => {
    const text = newCabinet({
      title: 'Küche: links',
      inside: '60 cm x 60 cm x 2 m',
      madeOf: 'MDF 16 mm',
      door: 'none',
      room: '3 m x 3 m x 2.4 m',
      temperature: '68 °F',
      machines: ['delta 200', 'chambered 250', 'fixed bed 120'],
      material: 'ABS',
      air: 'fan and filter',
      start: '20:00',
      lasts: '3 h',
    });
    expect(text).not.toContain('# assumed');
    const answer = readCabinet('new.yaml', text);
    if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
    const { cabinet } = answer;
    expect(cabinet.title).toBe('Küche: links');
    expect(Object.keys(cabinet.bays)).toHaveLength(3);
    expect(Object.values(cabinet.machines).map(({ kind }) => kind)).toEqual([
      'delta 200',
      'chambered 250',
      'fixed bed 120',
    ]);
    expect(cabinet.room.temperature[0]![1]).toBeCloseTo(293.15, 6);
    expect(cabinet.doors).toEqual({});
  });

  it('exact: an outside size leaves the inside without its boards; what is vented and who sits where stand in the file', () => {
    const text = newCabinet({
      outside: '836 mm x 622 mm x 1786 mm',
      madeOf: 'plywood 18 mm',
      door: 'glass 4 mm',
      vents: 'outdoors',
      air: 'fan',
      desk: '0.5 m, -2 m, 1.2 m',
    });
    const answer = readCabinet('new.yaml', text);
    if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
    expect(answer.cabinet.inside).toEqual({ width: 0.8, depth: 0.6, height: 1.75 });
    expect(answer.cabinet.paths['exhaust']!.to).toBe('outdoors');
    expect(answer.cabinet.people['desk']!.at).toEqual([0.5, -2, 1.2]);
  });

  it('property: whatever is known and whatever is not, the file can be read', () => {
    const answers = fc.record(
      {
        title: fc.string({ unit: 'grapheme', maxLength: 30 }),
        inside: fc
          .tuple(
            fc.integer({ min: 300, max: 2000 }),
            fc.integer({ min: 300, max: 1000 }),
            fc.integer({ min: 1300, max: 2200 }),
          )
          .map((sides) => sides.map((side) => `${side} mm`).join(' x ')),
        madeOf: fc
          .tuple(fc.constantFrom(...boards), fc.integer({ min: 1, max: 40 }))
          .map(([board, thick]) => `${board} ${thick} mm`),
        door: fc.constantFrom('glass 4 mm', 'acrylic 5 mm', 'none'),
        temperature: fc.integer({ min: 5, max: 35 }).map((value) => `${value} °C`),
        machines: fc.array(fc.constantFrom(...machines), { maxLength: 6 }),
        material: fc.constantFrom(...materials),
        air: fc.constantFrom('closed', 'holes', 'fan', 'fan and filter'),
        start: fc.constantFrom('0:00', '9:00', '15:30'),
        lasts: fc.constantFrom('20 min', '6 h', '8 h 30 min'),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(answers, (given) => {
        const answer = readCabinet('new.yaml', newCabinet(given));
        if (!answer.ok) throw new Error(`${newCabinet(given)}\n${answer.complaints.map(formatComplaint).join('\n')}`);
        if (given.title !== undefined) expect(answer.cabinet.title).toBe(given.title);
      }),
      { numRuns: 60 },
    );
  });
});
