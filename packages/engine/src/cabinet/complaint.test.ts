import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Complaint, formatComplaint, inFileOrder, quoted } from './complaint.ts';

describe('formatComplaint', () => {
  it('exact: lays out place, line, caret, what is allowed and how to mend it', () => {
    expect(formatComplaint(complaint('  depth: 45 kg', 10, 5))).toBe(
      [
        'bad.yaml:14:10  error  unit-wrong',
        '  14 |   depth: 45 kg',
        '     |          ^^^^^ "45 kg" is a mass',
        '  allowed: a length from 100 mm to 3 m',
        '  to mend: did you mean 45 cm?',
      ].join('\n'),
    );
  });

  it('exact: cuts a long line around the column and keeps the caret under it', () => {
    const line = `${'a'.repeat(500)}HERE${'b'.repeat(500)}`;
    const [, text = '', caret = ''] = formatComplaint(complaint(line, 501, 4)).split('\n');
    expect(text.slice(caret.indexOf('^'), caret.lastIndexOf('^') + 1)).toBe('HERE');
    expect(text.length).toBeLessThan(115);
    expect(text).toMatch(/\| …a+HEREb+…$/);
  });

  it('exact: the caret of a span longer than what is shown ends with the line', () => {
    const [, text = '', caret = ''] = formatComplaint(complaint('x: 1', 4, 900)).split('\n');
    expect(caret.indexOf('^')).toBe(text.lastIndexOf('1'));
    expect(caret).toContain('^ "45 kg"');
  });

  it('property: neither the terminal nor the reading direction can be moved by what a file holds', () => {
    const moving = /(?!\n)[\p{Cc}\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/u;
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.nat(200), (raw, column) => {
        const line = raw.replaceAll(/[\r\n]/g, '');
        const shown = formatComplaint({ ...complaint(line, column + 1, 3), what: quoted(line) });
        expect(shown).not.toMatch(moving);
        expect(shown.split('\n')).toHaveLength(5);
      }),
    );
  });
});

it('exact: complaints come in the order of the file', () => {
  const at = (line: number, column: number) => ({
    ...complaint('', column, 1),
    where: { ...complaint('', column, 1).where, line },
  });
  const ordered = inFileOrder([at(3, 1), at(1, 9), at(1, 2)]);
  expect(ordered.map(({ where }) => [where.line, where.column])).toEqual([
    [1, 2],
    [1, 9],
    [3, 1],
  ]);
});

it('exact: long words are cut in a message', () => {
  expect(quoted('45 kg')).toBe('"45 kg"');
  expect(quoted('x'.repeat(1000))).toHaveLength(60);
});

function complaint(lineText: string, column: number, length: number): Complaint {
  return {
    code: 'unit-wrong',
    what: '"45 kg" is a mass',
    where: { file: 'bad.yaml', line: 14, column, length, lineText },
    allowed: 'a length from 100 mm to 3 m',
    mend: 'did you mean 45 cm?',
  };
}
