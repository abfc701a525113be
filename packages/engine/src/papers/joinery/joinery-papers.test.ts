import { describe, expect, it } from 'vitest';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { constructionOf } from '../../joinery/construction.ts';
import { sheetsOf } from '../../joinery/cut-list.ts';
import { thingsToBuy } from '../buying/things.ts';
import { drawingArea, type FormatName, formats, marksOf, type Page } from '../frame/page.ts';
import { textWidth } from '../frame/text-width.ts';
import type { Angle, Paper, PaperInput } from '../paper.ts';
import { makePaper } from '../papers.ts';
import { arrangement } from './arrangement.ts';
import { boards } from './boards.ts';
import { cutList } from './cut-list.ts';
import { lotPlans, sheetPlans } from './sheet-plans.ts';
import { patchesOf, templates } from './templates.ts';
import { mm } from './words.ts';

/** As many bays and machines as one likes, one above another, with shelves in grooves and a wooden door. */
function inputOf(machines: number, more: { angle?: Angle; format?: FormatName } = {}): PaperInput {
  const bay = (at: number): string => `b${at}: { z: ${at * 518} mm to ${at * 518 + 500} mm }`;
  const all = Array.from({ length: machines }, (_, at) => at);
  const text = `stillair: 1
title: A tower of ${machines}
cabinet: { inside: 600 mm x 560 mm x ${machines * 518 - 18} mm, made-of: plywood 18 mm, door: { made-of: plywood 18 mm } }
bays: { ${all.map(bay).join(', ')} }
shelves: { ${all
    .slice(1)
    .map((at) => `s${at}: { between: [b${at - 1}, b${at}], joint: ${at % 2 === 0 ? 'pins' : 'housing'} }`)
    .join(', ')} }
machines: { ${all.map((at) => `m${at}: { kind: fixed bed 120, bay: b${at} }`).join(', ')} }
air: { in: { from: room, to: b0, hole: 80 mm round }, out: { from: b${machines - 1}, to: room, parts: [{ fan: axial 92 mm quiet }] } }
days: { usual: {} }
`.replace('shelves: {  }\n', '');
  const answer = readCabinet('tower.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('\n'));
  const source = { file: 'tower.yaml', text, cabinet: answer.cabinet, origins: answer.origins };
  return { source, version: '0.1.0', units: 'metric', angle: 'first', format: 'a4', ...more };
}

/** Texts that reach out of the frame of their page. */
function outside({ items, width, height }: Page, format: FormatName): string[] {
  const frame = { left: 20, right: 200, top: 10, bottom: formats[format].height - 10 };
  return marksOf({ items, width, height }).flatMap((mark) => {
    if (mark.kind !== 'text') return [];
    const long = textWidth(mark.text, mark.size, mark.bold);
    const before = mark.align === 'right' ? long : mark.align === 'middle' ? long / 2 : 0;
    const upright = mark.turn === -90;
    const [x, y] = mark.at;
    const [left, right] = upright ? [x - mark.size, x] : [x - before, x - before + long];
    const [top, bottom] = upright ? [y + before - long, y + before] : [y - 0.73 * mark.size, y];
    return left < frame.left - 0.1 || right > frame.right + 0.1 || top < frame.top - 0.1 || bottom > frame.bottom + 0.1
      ? [`${mark.text} at ${mark.at.join(', ')}`]
      : [];
  });
}

const wordsOf = (pages: readonly Page[]): string[] =>
  pages.flatMap((page) => marksOf(page).flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));

const all: readonly Paper[] = [arrangement, cutList, sheetPlans, boards, templates];

describe('the joiner’s papers', () => {
  it.each([1, 2, 5, 12])(
    'property: stand %d machines: no word lies outside the frame, on A4 or Letter',
    async (machines) => {
      for (const format of ['a4', 'letter'] as const) {
        const input = inputOf(machines, { format });
        for (const paper of all) {
          const { pages } = await makePaper(paper, input);
          expect(pages.flatMap((page) => outside(page, format))).toEqual([]);
          expect(drawingArea(format).height).toBeGreaterThan(200);
        }
      }
    },
  );

  it.each([1, 12])('property: titles of views of %d machines do not lie on one another', async (machines) => {
    for (const angle of ['first', 'third'] as const) {
      const { pages } = await makePaper(arrangement, inputOf(machines, { angle }));
      for (const page of pages) {
        const titles = marksOf(page).flatMap((mark) =>
          mark.kind === 'text' &&
          /^(?:from|section|without|above|left|front|doors|A-A)/.test(mark.text) &&
          mark.size === 2.8
            ? [{ x: mark.at[0], y: mark.at[1], end: mark.at[0] + textWidth(mark.text, mark.size) }]
            : [],
        );
        for (const [at, one] of titles.entries())
          for (const other of titles.slice(at + 1))
            expect(Math.abs(one.y - other.y) > 2 || one.end < other.x || other.end < one.x).toBe(true);
      }
    }
  });

  it.each(['a4', 'letter'] as const)(
    'property: nothing of a template lies on the title block of %s',
    async (format) => {
      const { pages } = await makePaper(templates, inputOf(2, { format }));
      const { y, height } = drawingArea(format);
      const lowest = pages.flatMap(({ items }) =>
        items.flatMap((item) =>
          item.role === 'figure'
            ? item.marks.flatMap((mark) => (mark.kind === 'line' ? mark.points.map(([, at]) => at) : []))
            : [],
        ),
      );
      expect(lowest.length).toBeGreaterThan(0);
      expect(Math.max(...lowest)).toBeLessThanOrEqual(y + height);
    },
  );

  it('property: each cut stands in the table of its board and on its dimension lines, from one datum', async () => {
    const input = inputOf(3);
    const { boards: parts } = constructionOf(input.source.cabinet);
    const { pages } = await makePaper(boards, input);
    for (const part of parts) {
      const own = pages.filter((page) => wordsOf([page]).includes(`${part.mark} ${part.name}`));
      const said = new Set(wordsOf(own).map((words) => words.trim()));
      expect(said).toContain(mm(part.u));
      expect(said).toContain(mm(part.v));
      for (const { shape } of part.cuts)
        for (const place of shape.kind === 'round' ? shape.at : [...shape.from, ...shape.to])
          if (place > 1e-4) expect(said, `${part.name}: ${place}`).toContain(mm(place));
    }
  });

  it('exact: the buying list counts the sheets that the sheets paper draws, and the bill of check as many or one more', () => {
    for (const machines of [1, 2, 3, 4]) {
      const { cabinet } = inputOf(machines).source;
      const list = thingsToBuy(cabinet, 'metric').filter(({ what }) => what.includes(', sheets of'));
      const plans = lotPlans(cabinet);
      expect(list.map(({ count }) => count)).toEqual(plans.map(({ plan: { sheets } }) => sheets.length));
      for (const { lot, plan } of plans) {
        const { planned, atLeast } = sheetsOf(cabinet, lot)!;
        expect([0, 1]).toContain(planned - plan.sheets.length);
        expect(plan.atLeast).toBeGreaterThanOrEqual(atLeast);
      }
    }
  });

  it('exact: every board lies on one sheet of its lot, and the sheet says its mark', async () => {
    const input = inputOf(4);
    const { pages } = await makePaper(sheetPlans, input);
    const said = wordsOf(pages);
    for (const { lot, plan } of lotPlans(input.source.cabinet)) {
      expect(plan.tooLarge).toEqual([]);
      for (const { part } of lot.parts) expect(said.filter((words) => words === part.mark).length).toBeGreaterThan(0);
    }
  });

  it('exact: a board larger than any sheet is asked for, not drawn', async () => {
    const { missing } = await makePaper(sheetPlans, inputOf(12));
    expect(missing.join('\n')).toMatch(/fits no sheet of plywood/);
  });

  it('exact: from the left the view stands at the right of the front in first angle, at its left in third; the plan below or above', async () => {
    const places = async (angle: Angle): Promise<Record<string, readonly [number, number]>> => {
      const { pages } = await makePaper(arrangement, inputOf(2, { angle }));
      const titles = pages.flatMap((page) => marksOf(page)).filter((mark) => mark.kind === 'text');
      return Object.fromEntries(titles.map(({ text, at }) => [text, at]));
    };
    const [first, third] = [await places('first'), await places('third')];
    const [front, left, above] = ['from the front', 'from the left', 'from above'];
    expect(first[left!]![0]).toBeGreaterThan(first[front!]![0]);
    expect(third[left!]![0]).toBeLessThan(third[front!]![0]);
    expect(first[above!]![1]).toBeGreaterThan(first[front!]![1]);
    expect(third[above!]![1]).toBeLessThan(third[front!]![1]);
    // The inside from the floor up: 18 mm of board below it; its height stands left of all views.
    for (const sheet of [first, third])
      expect(sheet['518']![0]).toBeLessThan(Math.min(sheet[left!]![0], sheet[front!]![0]));
  });

  it('exact: templates are full size: middles of holes lie as far apart on paper as on the board, and the square is 50 mm', async () => {
    const input = inputOf(3);
    const { boards: parts } = constructionOf(input.source.cabinet);
    const side = parts.find(({ name }) => name === 'left side')!;
    const pilots = side.cuts.filter(({ purpose }) => purpose === 'pilot');
    expect(pilots.length).toBeGreaterThan(2);
    const { pages } = await makePaper(templates, input);
    const sheet = pages.find((page) => {
      const words = wordsOf([page]);
      return (
        words.some((each) => each.startsWith(`${side.mark} left side:`)) &&
        words.filter((each) => /Ø5, 11 deep/.test(each)).length >= 2
      );
    })!;
    const middles = marksOf(sheet).flatMap((mark) =>
      mark.kind === 'circle' && Math.abs(mark.radius - 2.5) < 1e-9 ? [mark.at] : [],
    );
    expect(middles.flatMap((one) => middles.map((other) => Math.round((one[1] - other[1]) * 1e6) / 1e6))).toContain(32);
    const squares = marksOf(sheet).filter(
      (mark) =>
        mark.kind === 'line' &&
        mark.closed &&
        Math.abs(Math.hypot(mark.points[0]![0] - mark.points[1]![0], mark.points[0]![1] - mark.points[1]![1]) - 50) <
          1e-9,
    );
    expect(squares).toHaveLength(1);
  });

  it('property: every drilled cut of every board is on one template', () => {
    const { boards: parts } = constructionOf(inputOf(5).source.cabinet);
    for (const part of parts) {
      const drilled = part.cuts.filter(({ purpose }) => /hole|cup|pin|pilot/.test(purpose));
      expect(patchesOf(part).flatMap(({ cuts }) => cuts.map(({ cut }) => cut))).toEqual(
        expect.arrayContaining(drilled),
      );
      expect(patchesOf(part).flatMap(({ cuts }) => cuts)).toHaveLength(drilled.length);
    }
  });
});
