import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { joinPath, splitPath } from './edit-path.ts';
import { editText } from './edits.ts';

const text = `# my cabinet
room:   { size: 4 m x 3 m x 2 m,  temperature: 21 °C } # hall

air:
    intake: { from: room, to: lower, hole: 80 mm round }   # drilled in May
    exhaust:
        from: upper
        parts:
        - fan: axial 92 mm quiet # the old one
        - { filter: pleated H13 150 mm }
low: &low { z: 0 mm to 1 m }
other: *low
`;

describe('editText', () => {
  it('exact: a value in place of a value changes its characters and no others', () => {
    const edited = editText(text, [
      { set: { 'air.intake.hole': '100 mm round', 'air.exhaust.parts.0.fan': 'axial 92 mm strong' } },
    ]);
    expect(edited).toBe(text.replace('80 mm round', '100 mm round').replace('axial 92 mm quiet', 'axial 92 mm strong'));
  });

  it('exact: what is put in or taken out leaves comments and everything else', () => {
    const edited = editText(text, [
      { add: { 'air.second': { from: 'room', to: 'lower', hole: '60 mm round' } } },
      { add: { 'air.exhaust.parts.1': { guard: 'wire guard' } }, remove: ['air.intake'] },
      { set: { 'room.humidity': '50 %' } },
    ]);
    for (const comment of ['# my cabinet', '# hall', '# the old one']) expect(edited).toContain(comment);
    expect(parse(edited)).toEqual({
      room: { size: '4 m x 3 m x 2 m', temperature: '21 °C', humidity: '50 %' },
      air: {
        exhaust: {
          from: 'upper',
          parts: [{ fan: 'axial 92 mm quiet' }, { guard: 'wire guard' }, { filter: 'pleated H13 150 mm' }],
        },
        second: { from: 'room', to: 'lower', hole: '60 mm round' },
      },
      low: { z: '0 mm to 1 m' },
      other: { z: '0 mm to 1 m' },
    });
  });

  it('exact: behind an alias only the place that was named changes', () => {
    const edited = parse(editText(text, [{ set: { 'other.z': '1 m to 2 m' } }])) as Record<string, unknown>;
    expect(edited).toMatchObject({ low: { z: '0 mm to 1 m' }, other: { z: '1 m to 2 m' } });
  });

  it('exact: an edit that cannot be done says why', () => {
    expect(() => editText(text, [{ set: { 'air.intak.hole': '1 mm' } }])).toThrow('did you mean "intake"?');
    expect(() => editText(text, [{ remove: ['air.exhaust.parts.7'] }])).toThrow(
      'there is no "7" in "air.exhaust.parts"',
    );
    expect(() => editText('a: [', [{ set: { a: 1 } }])).toThrow('indent-wrong');
  });

  it('property: whatever text is set, it is read back as that text', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 30 }), (value) => {
        const edited = parse(editText(text, [{ set: { 'air.intake.hole': value } }])) as {
          air: { intake: { hole: unknown } };
        };
        expect(edited.air.intake.hole).toBe(value);
      }),
    );
  });
});

describe('paths', () => {
  it('property: a path is joined and split back', () => {
    const id = fc.stringMatching(/^[\p{L}\d .-]{1,12}$/u).filter((text) => text.trim() === text && text !== '');
    fc.assert(
      fc.property(fc.array(id, { minLength: 1, maxLength: 6 }), (segments) => {
        expect(splitPath(joinPath(segments))).toEqual(segments);
      }),
    );
  });

  it.each(['', '.', 'a..b', 'a.', '"a', 'a"b'])('exact: %j is no path', (path) =>
    expect(splitPath(path)).toBeUndefined(),
  );

  it('exact: what is added or taken away changes no other line, whatever its spacing', () => {
    const own = 'a:   [1, 2]  # mine\nm: { k: "x",  l: [3,4] }\nb:\n  one: {p: 1}\n  two: yes # why\n\nlast: 3\n';
    const lines = (edited: string): string[] => edited.split('\n').filter((line) => !own.split('\n').includes(line));
    expect(lines(editText(own, [{ set: { 'm.at': '310 mm, 320 mm' } }]))).toEqual([
      'm: { k: "x",  l: [3,4], at: "310 mm, 320 mm" }',
    ]);
    expect(lines(editText(own, [{ set: { 'b.one.q': '5 mm' } }]))).toEqual(['  one: {p: 1, q: 5 mm}']);
    expect(lines(editText(own, [{ add: { 'b.three': { r: '1 m', s: ['2 m'] } } }]))).toEqual([
      '  three: { r: 1 m, s: [2 m] }',
    ]);
    expect(editText(own, [{ add: { 'b.three': '1' } }])).toContain('two: yes # why\n  three: "1"\n\nlast');
    expect(lines(editText(own, [{ set: { a: ['7', 'x y'] } }]))).toEqual(['a:   ["7", x y]  # mine']);
    expect(lines(editText(own, [{ remove: ['m.l'] }]))).toEqual(['m: { k: "x" }']);
    expect(lines(editText(own, [{ remove: ['m.k'] }]))).toEqual(['m: { l: [3,4] }']);
    expect(editText(own, [{ remove: ['b.two'] }])).toBe(own.replace('  two: yes # why\n', ''));
    expect(editText(own, [{ add: { zed: '4 m' } }])).toBe(`${own}zed: 4 m\n`);
  });

  it('property: every example keeps all its lines but those of the change', () => {
    for (const [file, id] of [
      ['tool-library', 'gable'],
      ['winter-shed', 'heron'],
      ['school-locker', 'ant'],
    ]) {
      const before = readFileSync(new URL(`../../../../examples/${file}.yaml`, import.meta.url), 'utf8');
      const after = editText(before, [{ set: { [`machines.${id}.at`]: '310 mm, 320 mm' } }]);
      const [old, fresh] = [before.split('\n'), after.split('\n')];
      expect(
        fresh.filter((line) => !old.includes(line)),
        file,
      ).toHaveLength(1);
      expect(fresh.filter((line) => old.includes(line)).length).toBeGreaterThanOrEqual(old.length - 1);
    }
  });
});
