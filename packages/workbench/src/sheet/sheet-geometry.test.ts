// Where things are on the sheet, on the examples and on paper laid by hand.

import { readFileSync } from 'node:fs';
import { type Cabinet, editText, readCabinet } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { moveEdits } from './moves.ts';
import { layPaper } from './projection.ts';
import { boxOf, frameBox, insideBox, machineBox, outsideBox, partOfFinding, standsAt } from './solids.ts';
import { touchesIn } from './touching.ts';
import { changedParts } from './trace.tsx';
import { washOf } from './wash.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../../../../examples/${name}.yaml`, import.meta.url), 'utf8');

function read(text: string): Cabinet {
  const answer = readCabinet('cabinet', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer.cabinet;
}

const library = read(textOf('tool-library'));

describe('paper', () => {
  it('exact: a metre is as long across as up, up is up, and the cabinet stands in the middle', () => {
    const box = { x: [0, 2], y: [0, 1], z: [0, 1] } as const;
    const margins = { top: 50, right: 50, bottom: 50, left: 50 };
    const paper = layPaper('front', box, { width: 500, height: 500 }, margins);
    expect(paper.area(box)).toEqual({ left: 50, top: 150, width: 400, height: 200 });
    expect(paper.up(1)).toBeLessThan(paper.up(0));
    expect(paper.metres(paper.right(1.3) - paper.right(0.8))).toBeCloseTo(0.5, 12);
  });

  it('exact: margins that differ move the middle and leave their room free', () => {
    const box = { x: [0, 1], y: [0, 1], z: [0, 2] } as const;
    const paper = layPaper('front', box, { width: 400, height: 300 }, { top: 20, right: 10, bottom: 80, left: 90 });
    expect(paper.area(box)).toEqual({ left: 190, top: 20, width: 100, height: 200 });
  });

  it('exact: from the right side the front lies left, from above the back lies up', () => {
    const box = { x: [0, 1], y: [0, 1], z: [0, 1] } as const;
    const size = { width: 300, height: 300 };
    const none = { top: 0, right: 0, bottom: 0, left: 0 };
    expect(layPaper('side', box, size, none).right(0)).toBe(0);
    expect(layPaper('plan', box, size, none).up(1)).toBe(0);
  });
});

describe('solids', () => {
  it('property: every machine of the examples lies where its frame is, and all it sweeps holds its frame', () => {
    for (const name of ['tool-library', 'school-locker', 'winter-shed']) {
      const cabinet = read(textOf(name));
      for (const id of Object.keys(cabinet.machines)) {
        const [frame, whole] = [frameBox(cabinet, id), machineBox(cabinet, id)];
        for (const axis of ['x', 'y', 'z'] as const) {
          expect(whole[axis][0]).toBeLessThanOrEqual(frame[axis][0]);
          expect(whole[axis][1]).toBeGreaterThanOrEqual(frame[axis][1]);
        }
      }
    }
  });

  it('property: the outside holds the inside, by the boards between', () => {
    const [inside, outside] = [insideBox(library), outsideBox(library)];
    for (const axis of ['x', 'y', 'z'] as const) {
      expect(outside[axis][0]).toBeLessThan(inside[axis][0]);
      expect(outside[axis][1]).toBeGreaterThan(inside[axis][1]);
    }
  });

  it('exact: findings lead to the part that they are about', () => {
    expect(partOfFinding(library, 'gable.housing', 'repair')).toBe('machines.gable');
    expect(partOfFinding(library, 'west', 'lending')).toBe('bays.west');
    expect(partOfFinding(library, 'exhaust', 'lending')).toBe('air.exhaust');
    expect(partOfFinding(library, 'nothing of the kind', 'lending')).toBeUndefined();
    expect(boxOf(library, 'machines.nobody')).toBeUndefined();
  });
});

describe('moving', () => {
  it('exact: a machine moved by 10 mm stands 10 mm further, in the file and on the sheet', () => {
    const text = textOf('tool-library');
    const moved = read(editText(text, moveEdits(library, 'machines.gable', { x: 0.01, y: 0, z: 0 })));
    expect(standsAt(moved, 'gable')[0]).toBeCloseTo(standsAt(library, 'gable')[0] + 0.01, 3);
  });

  it('exact: a machine dragged into the door tells how deep it stands in it, and which part does', () => {
    const text = textOf('tool-library');
    const into = read(editText(text, moveEdits(library, 'machines.gable', { x: 0, y: -0.2, z: 0 })));
    const before = touchesIn(library).filter(({ says }) => says.startsWith('gable'));
    const touch = touchesIn(into).find(({ says }) => says.startsWith('gable') && says.endsWith('the door'))!;
    expect(before.filter(({ says }) => says.endsWith('the door'))).toEqual([]);
    expect(touch.says).toMatch(/bed \(the bed fully forward\) into the door/);
    // The shut door stands 4 mm into this bay.
    expect(touch.deep).toBeCloseTo(0.004 - machineBox(into, 'gable').y[0], 9);
  });

  it('exact: an option is traced by what it changes', () => {
    const { edits } = library.options['low-slots']!;
    const answer = readCabinet('cabinet', textOf('tool-library'), edits);
    if (!answer.ok) throw new Error('the option must be read');
    expect(changedParts(library, answer.cabinet).map(({ part }) => part)).toEqual([
      'air.west-intake',
      'air.east-intake',
    ]);
  });
});

describe('the wash of the air', () => {
  it('property: lightness falls (on dark paper: rises) all the way from cool to warm, so that greys tell it too', () => {
    const lightness = (kelvin: number, dark: boolean): number =>
      Number(/oklab\(([\d.]+)/.exec(washOf(kelvin, dark))![1]);
    for (let kelvin = 289; kelvin < 338; kelvin++) {
      expect(lightness(kelvin + 1, false)).toBeLessThan(lightness(kelvin, false));
      expect(lightness(kelvin + 1, true)).toBeGreaterThan(lightness(kelvin, true));
    }
  });
});
