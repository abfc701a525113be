import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { absorptionOf, BARE, fillMuffler, soundDefaults } from './fill-sound.ts';
import { octavesFrom } from './octaves.ts';
import { readCabinet } from './read-cabinet.ts';

const cases = join(import.meta.dirname, '../../cases/cabinet');

function cabinetOf(text: string) {
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  return answer;
}

const little = (more: string): string =>
  `stillair: 1\ncabinet: { inside: 600 mm x 600 mm x 700 mm, made-of: plywood 18 mm${more} }\nmachines: { one: { kind: moving bed 220 } }\ndays: { usual: {} }\n`;

describe('octavesFrom', () => {
  it('exact: straight in the logarithm of frequency, held above, falling below', () => {
    const octaves = octavesFrom(
      [
        [125, 10],
        [500, 20],
      ],
      6,
    );
    expect(octaves[0]).toBeCloseTo(10 - 6 * Math.log2(125 / 63), 12);
    expect(octaves.slice(1)).toEqual([10, 15, 20, 20, 20, 20, 20]);
  });
});

describe('what a file says about sound', () => {
  const { cabinet } = cabinetOf(readFileSync(join(cases, 'everything.yaml'), 'utf8'));

  it('exact: levels, wishes, the room and a board of one’s own', () => {
    expect(cabinet.sound.machines['left']).toMatchObject({ printingDbA: 47, idleDbA: 26 });
    expect(cabinet.sound.machines['left']!.octavesDb[0]).toBe(38);
    expect(cabinet.sound.people['desk']).toEqual([
      { hours: [22 * 3600, 31 * 3600], limitDbA: 28 },
      { hours: [7 * 3600, 22 * 3600], limitDbA: 38 },
    ]);
    expect(cabinet.sound.room).toEqual({ reverberation: 0.45, backgroundDbA: 28 });
  });

  it('exact: mufflers by how they are built, or as measured', () => {
    const mufflers = cabinet.paths['exhaust']!.parts.flatMap((part) =>
      part.part === 'loss' && part.muffler !== undefined ? [part.muffler] : [],
    );
    expect(mufflers.map(({ how }) => how)).toEqual(['lined duct', 'lined box', 'measured']);
    expect(mufflers[0]).toMatchObject({ length: 0.35 });
    expect(mufflers[1]).toMatchObject({ size: [0.25, 0.15, 0.15] });
    expect(fillMuffler({ box: [0.3, 0.2, 0.2] }, {}, undefined)?.how).toBe('expansion box');
    expect(fillMuffler({}, {}, undefined)).toBeUndefined();
  });

  it('exact: a lining is the innermost layer of its faces, for heat as for sound, and of no others', () => {
    const { faces } = cabinet;
    expect(faces.right.build.layers[0]).toMatchObject({ material: 'melamine foam', thickness: 0.025, lining: true });
    expect(faces.right.build.layers.slice(1)).toEqual(faces.bottom.build.layers);
    expect(faces.bottom.build.layers.every(({ lining }) => lining === undefined)).toBe(true);
  });

  it('exact: by default a lining spares the door and the floor', () => {
    const { faces, doors } = cabinetOf(little(', door: glass 4 mm, lining: felt 10 mm')).cabinet;
    const lined = Object.entries(faces).filter(([, { build }]) => build.layers[0]!.lining === true);
    expect(lined.map(([face]) => face)).toEqual(['back', 'left', 'right', 'top']);
    expect(doors['door']!.build.layers).toHaveLength(1);
  });

  it('exact: what is not said is assumed, with its spread', () => {
    const { cabinet: bare, origins } = cabinetOf(little(''));
    expect(bare.sound.room.reverberation).toBe(soundDefaults.reverberation.value);
    expect(origins.get('sound.room.reverberation')).toMatchObject({ kind: 'assumed', spread: { p10: 0.35, p90: 0.9 } });
    expect(origins.get('sound.machines.one.printingDbA')).toMatchObject({ kind: 'catalogue', spread: { p90: 53 } });
    expect(origins.get('sound.doubt.panelsDb')).toMatchObject({ spread: { p10: -5, p90: 5 } });
  });
});

describe('absorptionOf', () => {
  const rows = [{ thickness: 0.05, octaves: [0.1, 0.2, 0.4, 0.8, 0.8, 0.8, 0.8, 0.8] }];

  it('limit: nothing known is a bare board', () => {
    expect(absorptionOf({ thickness: 0.018, density: 500 }, [])).toBe(BARE);
  });

  it('exact: half of a porous layer swallows at twice the frequency; a board is what its nearest row says', () => {
    const half = absorptionOf({ thickness: 0.025, density: 30 }, rows);
    expect(half[3]).toBeCloseTo(0.4, 2);
    expect(half[1]).toBeCloseTo(0.1, 2);
    expect(absorptionOf({ thickness: 0.025, density: 500 }, rows)).toEqual(rows[0]!.octaves);
  });
});
