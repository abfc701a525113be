import { describe, expect, it } from 'vitest';
import { isMap, type Node } from 'yaml';
import { formatComplaint } from './complaint.ts';
import { readYaml, type YamlDocument } from './yaml-document.ts';

describe('readYaml', () => {
  it('exact: gives the tree and the place of every node', () => {
    const document = read('a: 1\nmap:\n  key: [x, yz]\r\n');
    const list = (document.root.get('map') as YamlDocument['root']).get('key') as { items: Node[] };
    expect(document.spanOf(list.items[1]!)).toEqual({
      file: 'f.yaml',
      line: 3,
      column: 12,
      length: 2,
      lineText: '  key: [x, yz]',
    });
  });

  it('exact: reads on/off as words, numbers as numbers, and follows an alias', () => {
    const document = read('a: &mark {on: off}\nb: *mark\nc: 1.5e-3\n');
    const alias = document.root.get('b', true) as unknown as Node;
    const target = document.resolve(alias);
    expect(isMap(target) && target.get('on')).toBe('off');
    expect(document.root.get('c')).toBe(0.0015);
  });

  it.each([
    ['', 'file-empty', 1, 1],
    ['# only a remark\n', 'file-empty', 1, 1],
    ['- a\n- b\n', 'not-a-map', 1, 1],
    ['just words\n', 'not-a-map', 1, 1],
    ['a: 1\n\tb: 2\n', 'tab-as-indent', 2, 1],
    ['a: 1\n---\nb: 2\n', 'several-documents', 2, 1],
    ['a: 1\nb:\n  c: 1\n  c: 2\n', 'key-twice', 4, 3],
    ['a: 1\n"a": 2\n', 'key-twice', 2, 1],
    ['a: {x: 1\nb: 2\n', 'indent-wrong', 2, 1],
    ['a: "x\n', 'yaml-wrong', 2, 1],
    ['? [a, b]\n: 1\n', 'key-not-text', 1, 3],
    ['a: *nothing\n', 'alias-astray', 1, 4],
    ['a: &x [*x]\n', 'alias-astray', 1, 8],
    ['a: !cabinet 1\n', 'tag-unknown', 1, 4],
    ['a: 1\nb: \u0000\n', 'not-text', 2, 4],
    ['a: \ufffd\n', 'not-text', 1, 4],
  ])('exact: %j is complained of as %s', (text, code, line, column) => {
    const [first] = complaintsOf(text);
    expect(first).toMatchObject({ code, where: { file: 'f.yaml', line, column } });
    expect(first?.allowed).not.toBe('');
    expect(first?.mend).not.toBe('');
  });

  it('exact: all faults are told at once, in the order of the file', () => {
    const codes = complaintsOf('a: 1\na: 2\nb: *no\nc: {d: 1, d: 2}\n').map(({ code, where }) => [code, where.line]);
    expect(codes).toEqual([
      ['key-twice', 2],
      ['alias-astray', 3],
      ['key-twice', 4],
    ]);
  });

  it('exact: the whole text of a complaint', () => {
    expect(formatComplaint(complaintsOf('zones: 1\nzones: 2\n')[0]!)).toBe(
      [
        'f.yaml:2:1  error  key-twice',
        '   2 | zones: 2',
        '     | ^^^^^ "zones" stands in this map already, on line 1',
        '  allowed: every key once in its map',
        '  to mend: take out one of the two, or give one another name',
      ].join('\n'),
    );
  });

  it('limit: a text of ten million characters is refused without being read', () => {
    const text = 'a: 1\n'.repeat(2_000_000);
    expect(complaintsOf(text)[0]).toMatchObject({ code: 'file-too-large', where: { line: 1, lineText: 'a: 1' } });
  });

  it.each(['[', '{', '- ', 'a: ', '? ', '[a,', '- - a\n', '{a: '])(
    'limit: two million characters of %j neither overflow the stack nor hang',
    (unit) => {
      expect(complaintsOf(unit.repeat(1_999_000 / unit.length)).length).toBeGreaterThan(0);
    },
    60_000,
  );

  it('limit: a hundred levels are read, a hundred and two are not', () => {
    expect(read(`a: ${'['.repeat(99)}${']'.repeat(99)}`)).toBeDefined();
    expect(complaintsOf(`a: ${'['.repeat(102)}${']'.repeat(102)}`)[0]).toMatchObject({ code: 'nested-too-deeply' });
  });

  it('limit: aliases of aliases are refused before they are written out', () => {
    const rows = Array.from({ length: 20 }, (_, i) => `a${i + 1}: &a${i + 1} [${Array(9).fill(`*a${i}`).join(', ')}]`);
    const complaints = complaintsOf(['a0: &a0 [x, x, x]', ...rows].join('\n'));
    expect(complaints.map(({ code }) => code)).toEqual(['aliases-explode']);
    expect(complaints[0]?.where.line).toBe(7);
  });

  it('limit: a map of a hundred thousand keys is read in one pass', () => {
    const text = Array.from({ length: 100_000 }, (_, i) => `k${i}: 1`).join('\n');
    expect(read(text).root.items).toHaveLength(100_000);
  });
});

function read(text: string): YamlDocument {
  const document = readYaml('f.yaml', text);
  if ('complaints' in document) throw new Error(document.complaints.map(formatComplaint).join('\n'));
  return document;
}

function complaintsOf(text: string) {
  const document = readYaml('f.yaml', text);
  return 'complaints' in document ? document.complaints : [];
}
