import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hanging, pad, textWidth, whole, wrap } from './text.ts';

describe('textWidth', () => {
  it.each([
    ['plain', 5],
    ['µg/m³ °C', 8],
    ['e\u0301te\u0301', 3],
    ['温度', 4],
    ['ファン', 6],
    ['한글', 4],
    ['🔥', 2],
    ['👩‍🔧', 2],
    ['\u200Bz', 1],
    ['\u001B[31mred\u001B[39m', 3],
    ['', 0],
  ])('exact: %j takes %d columns', (text, width) => {
    expect(textWidth(text)).toBe(width);
  });

  it('cross: signs that are counted without the tables of Unicode are as wide as those say', () => {
    const plain = [
      0x20, 0x7e, 0xa0, 0xb0, 0xb3, 0xb5, 0xd7, 0xe4, 0x2ff, 0x2013, 0x2019, 0x2026, 0x2074, 0x2264, 0x2500,
    ];
    const invisible = '\u200B';
    for (const sign of plain.map((code) => String.fromCodePoint(code)))
      expect(textWidth(sign), sign).toBe(textWidth(sign + invisible));
  });

  it('property: widths of texts set beside each other with a space add up', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), fc.string({ unit: 'grapheme-ascii' }), (a, b) => {
        expect(textWidth(`${a} ${b}`)).toBe(textWidth(`${a} `) + textWidth(b));
      }),
    );
  });
});

describe('wrap', () => {
  it('exact: breaks at spaces and keeps words whole', () => {
    expect(wrap('the inlet is smaller than the exhaust', 12)).toEqual(['the inlet is', 'smaller than', 'the exhaust']);
  });

  it('exact: breaks a word that is wider than the line after a joint of it', () => {
    expect(wrap('heat/peak-print-air/left/usual', 12)).toEqual(['heat/peak-', 'print-air/', 'left/usual']);
  });

  it('exact: counts a wide character as two', () => {
    expect(wrap('温度温度', 5)).toEqual(['温度', '温度']);
  });

  it('property: no line exceeds the width, and no letter is lost or made up', () => {
    const text = fc
      .array(fc.string({ unit: fc.constantFrom('a', 'bc', '温', 'é', '-', '/', '🔥', '°') }))
      .map((words) => words.join(' '));
    fc.assert(
      fc.property(text, fc.integer({ min: 2, max: 30 }), (given, width) => {
        const lines = wrap(given, width);
        for (const line of lines) expect(textWidth(line)).toBeLessThanOrEqual(width);
        expect(lines.join('').replaceAll(' ', '')).toBe(given.replaceAll(' ', ''));
      }),
    );
  });
});

it('exact: pad fills to either side, by columns', () => {
  expect(pad('温', 4)).toBe('温  ');
  expect(pad('3.5', 6, 'right')).toBe('   3.5');
  expect(pad('wider', 3)).toBe('wider');
});

it('exact: hanging indents what follows its first words', () => {
  expect(hanging('  to mend: ', 'open a second inlet', 22)).toBe(
    '  to mend: open a\n           second\n           inlet',
  );
});

it('exact: hanging keeps on one line what is whole, and prints plain spaces', () => {
  expect(hanging('', `about ${whole('15 %')} of it`, 8)).toBe('about\n15 % of\nit');
});
