import { describe, expect, it } from 'vitest';
import { restingOnParts } from './resting-on-parts.ts';

interface Shed {
  readonly walls: { readonly area: number };
  readonly lamps: { readonly count: number };
  readonly name: string;
  readonly stove?: { readonly watts: number };
}

const shed: Shed = { walls: { area: 12 }, lamps: { count: 3 }, name: 'back' };

/** A question with a count of how often it was worked out. */
function counted<Answer>(ask: (shed: Shed) => Answer): { ask: (shed: Shed) => Answer; times: () => number } {
  let times = 0;
  const resting = restingOnParts((whole: Shed) => {
    times += 1;
    return ask(whole);
  });
  return { ask: resting, times: () => times };
}

describe('what rests on parts', () => {
  it('exact: is worked out again only when a part that was read is another', () => {
    const { ask, times } = counted(({ walls, name }) => `${name} ${walls.area}`);
    expect(ask(shed)).toBe('back 12');
    expect(ask({ ...shed, lamps: { count: 4 } })).toBe('back 12');
    expect(times()).toBe(1);
    expect(ask({ ...shed, walls: { area: 13 } })).toBe('back 13');
    expect(ask({ ...shed, name: 'front' })).toBe('front 12');
    expect(times()).toBe(3);
    expect(ask(shed)).toBe('back 12');
    expect(times()).toBe(3);
  });

  it('exact: a question rests on all that the questions inside it rest on, found again or not', () => {
    const bright = restingOnParts(({ lamps }: Shed) => 100 * lamps.count);
    const { ask, times } = counted((whole) => bright(whole) / whole.walls.area);
    bright(shed);
    expect(ask(shed)).toBe(25);
    expect(ask({ ...shed, lamps: { count: 6 } })).toBe(50);
    expect(ask({ ...shed, name: 'front' })).toBe(25);
    expect(times()).toBe(2);
  });

  it('exact: a part that was not there counts as read', () => {
    const { ask } = counted((whole) => ('stove' in whole ? 1 : 0) + (whole.stove?.watts ?? 0));
    expect(ask(shed)).toBe(0);
    expect(ask({ ...shed, stove: { watts: 500 } })).toBe(501);
  });

  it('exact: each name has an answer of its own', () => {
    const of = restingOnParts(({ walls, lamps }: Shed, what: 'area' | 'count') =>
      what === 'area' ? walls.area : lamps.count,
    );
    expect([of(shed, 'area'), of(shed, 'count'), of(shed, 'area')]).toEqual([12, 3, 12]);
  });

  it('limit: the oldest answers are let go, and worked out again', () => {
    const { ask, times } = counted(({ walls }) => walls.area);
    for (let area = 0; area < 100; area += 1) expect(ask({ ...shed, walls: { area } })).toBe(area);
    expect(ask(shed)).toBe(12);
    expect(times()).toBe(101);
  });

  it('limit: what lists the parts cannot say which it rests on', () => {
    expect(() => restingOnParts((whole: Shed) => Object.keys(whole))(shed)).toThrow('asked for by name');
  });
});
