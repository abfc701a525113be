import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Node, visit } from 'yaml';
import { readInBlocks } from './yaml-blocks.ts';
import { readYaml, type YamlDocument } from './yaml-document.ts';

const folder = join(import.meta.dirname, '../../cases/cabinet');
const texts = ['first.yaml', 'everything.yaml'].map((name) => readFileSync(join(folder, name), 'utf8'));
const scraps = [
  '\n',
  '\n\n',
  '# note\n',
  'a: 1\n',
  'title: x\n',
  ' ',
  '  ',
  '"',
  "'",
  '|\n',
  '>-\n',
  '{',
  ']',
  ': ',
  '- ',
  '---\n',
];
const bound = ['&a ', '*a', '\t', '\r\n', '? ', '...\n', '%', '"key": 1\n', '!!str ', '\u00e9: 1\n'];

const change = fc.record({
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  cut: fc.nat(9),
  put: fc.constantFrom(...scraps, ...bound, ''),
});

/** All that is told of a text: its values, and where each node stands. */
function toldOf(read: ReturnType<typeof readYaml>): unknown {
  if ('complaints' in read) return read.complaints;
  const places: unknown[] = [];
  visit(read.root as unknown as Parameters<typeof visit>[0], {
    Node: (_key, node) => {
      if ((node as unknown) !== read.root) places.push(read.spanOf(node as Node), read.rangeOf(node as Node));
    },
  });
  return { values: read.document.toJS() as unknown, places };
}

const valueAt = (read: ReturnType<typeof readYaml>, key: string): unknown => (read as YamlDocument).root.get(key, true);

describe('a text read in blocks', () => {
  it('cross: comes to what it comes to as a whole, whatever was read before it and whatever is wrong with it', () => {
    fc.assert(
      fc.property(fc.constantFrom(...texts), fc.array(change, { minLength: 1, maxLength: 5 }), (text, changes) => {
        let now = text;
        for (const { at, cut, put } of changes) {
          const from = Math.floor(at * now.length);
          now = now.slice(0, from) + put + now.slice(from + cut);
          expect(toldOf(readInBlocks('f', now)), now).toEqual(toldOf(readYaml('f', now)));
        }
      }),
      { numRuns: 60 },
    );
  });

  it('exact: a block that has only moved keeps its nodes, and tells its new place', () => {
    const before = readInBlocks('f', 'a: 1\nb:\n  c: x\n# end\n') as YamlDocument;
    const after = readInBlocks('f', '# new\na: 22\nb:\n  c: x\n# end\n') as YamlDocument;
    expect(valueAt(after, 'b')).toBe(valueAt(before, 'b'));
    expect(valueAt(after, 'a')).not.toBe(valueAt(before, 'a'));
    const moved = after.document.getIn(['b', 'c'], true) as Node;
    expect(before.spanOf(moved)).toMatchObject({ line: 3, column: 6, lineText: '  c: x' });
    expect(after.spanOf(moved)).toMatchObject({ line: 4, column: 6, lineText: '  c: x' });
  });

  it('exact: a text is read once while it is asked about', () => {
    expect(readInBlocks('f', 'a: 7\n')).toBe(readInBlocks('f', 'a: 7\n'));
  });
});
