import { describe, expect, it } from 'vitest';
import { placeInText } from './place-in-text.ts';

/** The cursor stands at the bar. */
function at(text: string) {
  const offset = text.indexOf('|');
  const { path, key, word } = placeInText(text.replace('|', ''), offset);
  return { path: path.join('.'), key, word };
}

describe('place of a cursor', () => {
  it.each([
    ['ro|', '', undefined, 'ro'],
    ['room:\n  siz|', 'room', undefined, 'siz'],
    ['room:\n  |', 'room', undefined, ''],
    ['room:\n  size: 4 m x|', 'room', 'size', '4 m x'],
    ['machines:\n  left:\n    kind: mov|', 'machines.left', 'kind', 'mov'],
    ['machines:\n  left: { kind: moving bed 220, ba|', 'machines.left', undefined, 'ba'],
    ['machines:\n  left: { kind: mo|', 'machines.left', 'kind', 'mo'],
    ['days:\n  usual:\n    jobs:\n      a: { start: 9:00 }\n    do|', 'days.usual', undefined, 'do'],
    ['air:\n  out:\n    parts:\n      - { filter: a }\n      - { fa|', 'air.out.parts.1', undefined, 'fa'],
    ['air:\n  out:\n    parts:\n      - fan: x\n        sp|', 'air.out.parts.0', undefined, 'sp'],
    ['air:\n  out:\n    parts:\n      - { fan: x, control: { th|', 'air.out.parts.0.control', undefined, 'th'],
    ['# note\ncabinet:\n  made-of: ply|', 'cabinet', 'made-of', 'ply'],
    ['people:\n  desk: { at: [1 m, |', 'people.desk.at.1', undefined, ''],
  ])('exact: %j stands in %j at %j, with %j written', (text, path, key, word) => {
    expect(at(text)).toEqual({ path, key, word });
  });
});
