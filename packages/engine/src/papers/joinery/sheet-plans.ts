// How each lot of boards is sawn out of whole sheets: cuts from edge to edge, in their order.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { type BoardLot, cutListOf } from '../../joinery/cut-list.ts';
import { cutsOf, type Region, regionsOf, type Stock } from '../../numerics/guillotine/piece.ts';
import { type NestingPlan, nest, offcutOf } from '../../numerics/guillotine/plan.ts';
import { drawingScale } from '../drawing/scale.ts';
import { type Block, heading, paragraph, smallPrint } from '../frame/block.ts';
import { box, circle, line, type Mark, text } from '../frame/mark.ts';
import { drawingArea } from '../frame/page.ts';
import { textWidth } from '../frame/text-width.ts';
import type { Paper, Part } from '../paper.ts';
import { boardName, JOINERS_CAUTIONS, mm } from './words.ts';

export interface LotPlan {
  readonly lot: BoardLot;
  /** As it is sold. */
  readonly sheet: readonly [length: number, width: number];
  readonly stock: Stock;
  readonly plan: NestingPlan;
}

export function lotPlans(cabinet: Cabinet): readonly LotPlan[] {
  const { trim, kerf, sheets, turned } = cabinet.costs;
  return cutListOf(cabinet).lots.flatMap((lot): LotPlan[] => {
    const sheet = sheets[lot.board];
    if (sheet === undefined) return [];
    const stock = { length: sheet[0] - 2 * trim, width: sheet[1] - 2 * trim, kerf };
    const pieces = lot.parts.map(({ length, width, turned: bare }) => ({ length, width, turned: bare ?? turned }));
    return [{ lot, sheet, stock, plan: nest(pieces, stock) }];
  });
}

export const sheetPlans: Paper = {
  id: 'sheets',
  title: 'Sheets and cuts',
  what: 'How the boards are sawn out of whole sheets: each cut runs from edge to edge of the piece that it divides, in the order of its number. Trim the edges of a new sheet first.',
  cautions: JOINERS_CAUTIONS,
  make({ source: { cabinet }, format }) {
    const { width } = drawingArea(format);
    const plans = lotPlans(cabinet);
    const bare = cutListOf(cabinet).lots.filter(({ board }) => cabinet.costs.sheets[board] === undefined);
    const parts: Part[] = plans.flatMap((lot) =>
      lot.plan.sheets.map((sheet, at): Part => sheetPart(cabinet, lot, sheet, at, width)),
    );
    return {
      parts: [
        ...(bare.length === 0
          ? []
          : [
              {
                kind: 'written' as const,
                blocks: [
                  paragraph(
                    `Ordered cut to size, as no sheet of them is known (costs.sheets): ${bare.map(({ parts: [first] }) => boardName(first!.part)).join(', ')}. Their sizes stand in the cut list.`,
                  ),
                ],
              },
            ]),
        ...parts,
      ],
      missing: plans.flatMap(({ lot, plan: { tooLarge }, sheet }) =>
        tooLarge.map((at) => {
          const { part, length, width: across } = lot.parts[at]!;
          return `${part.mark} ${part.name}, ${mm(length)} x ${mm(across)}, fits no sheet of ${lot.board} of ${mm(sheet[0])} x ${mm(sheet[1])}: give costs.sheets.${lot.board}, or join it`;
        }),
      ),
      assumes: [
        `the saw takes ${mm(cabinet.costs.kerf)} mm with each cut (costs.kerf), and ${mm(cabinet.costs.trim)} mm are trimmed off each edge of a new sheet (costs.trim)`,
        cabinet.costs.turned ? 'boards may be turned (costs.turned)' : 'boards with a grain lie along the sheet',
      ],
    };
  },
};

function sheetPart(
  cabinet: Cabinet,
  { lot, sheet, stock, plan }: LotPlan,
  root: Region,
  at: number,
  width: number,
): Part {
  const name = `${boardName(lot.parts[0]!.part)}, sheet ${at + 1} of ${plan.sheets.length}`;
  const scale = drawingScale(sheet, [width, 150]);
  const { factor } = scale;
  const trim = cabinet.costs.trim;
  const left = (width - sheet[0] * factor) / 2;
  const x = (u: number): number => left + (u + trim) * factor;
  const y = (v: number): number => (sheet[1] - trim - v) * factor;
  const cuts = cutsOf(root);
  const used = regionsOf(root).reduce((sum, each) => (each.is === 'piece' ? sum + each.length * each.width : sum), 0);
  const left0 = offcutOf(root);
  const marks: Mark[] = [
    box(left, 0, sheet[0] * factor, sheet[1] * factor, 'thin'),
    box(x(0), y(stock.width), stock.length * factor, stock.width * factor, 'outline', 'shade'),
    ...regionsOf(root).flatMap((region): Mark[] => {
      if (region.is !== 'piece') return [];
      const { part } = lot.parts[region.piece]!;
      const [w, h] = [region.length * factor, region.width * factor];
      return [
        box(x(region.x), y(region.y + region.width), w, h, 'outline', 'paper'),
        ...named(part.mark, part.name, region, x(region.x), y(region.y), w, h),
      ];
    }),
    ...cuts.flatMap((cut, order): Mark[] => {
      const [a, b] =
        cut.way === 'across'
          ? ([
              [x(cut.x + cut.at), y(cut.y)],
              [x(cut.x + cut.at), y(cut.y + cut.width)],
            ] as const)
          : ([
              [x(cut.x), y(cut.y + cut.at)],
              [x(cut.x + cut.length), y(cut.y + cut.at)],
            ] as const);
      const words = String(order + 1);
      const size = 2.2;
      const middle = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2] as const;
      return [
        line('cut', a, b),
        circle(middle, Math.max(1.6, textWidth(words, size) / 2 + 0.5), 'thin', 'paper'),
        text([middle[0], middle[1] + 0.8], words, size, { align: 'middle' }),
      ];
    }),
  ];
  const blocks: Block[] = [
    heading(name),
    paragraph(
      `Sheet of ${mm(sheet[0])} x ${mm(sheet[1])}; ${cuts.length} cuts; ${Math.round((100 * used) / (sheet[0] * sheet[1]))} % of it becomes boards.${
        left0 === undefined ? '' : ` Largest piece left: ${mm(left0.length)} x ${mm(left0.width)}.`
      }${at > 0 ? '' : ` ${plan.atLeast === plan.sheets.length ? 'No plan does with fewer sheets.' : `No plan does with fewer than ${plan.atLeast}; whether one does with fewer than ${plan.sheets.length} was not proven.`}`}`,
    ),
    {
      kind: 'picture',
      width,
      height: sheet[1] * factor,
      says: `${name}: ${regionsOf(root).filter(({ is }) => is === 'piece').length} boards and ${cuts.length} numbered cuts, which the table lists`,
      marks,
    },
    smallPrint(
      'Shaded: waste. Long sides along the grain. Set the stop to the size from the edge that the cut leaves whole; the kerf lies behind it.',
    ),
    {
      kind: 'table',
      columns: [
        { head: 'cut', align: 'right' },
        { head: 'of the piece' },
        { head: 'way' },
        { head: 'stop at', align: 'right' },
      ],
      rows: cuts.map((cut, order) => [
        String(order + 1),
        `${mm(cut.length)} x ${mm(cut.width)}`,
        cut.way === 'across' ? 'across the length' : 'along the length',
        mm(cut.at),
      ]),
    },
  ];
  return { kind: 'written', title: name, scale: scale.name, blocks };
}

function named(
  mark: string,
  name: string,
  region: Region,
  x: number,
  bottom: number,
  w: number,
  h: number,
): readonly Mark[] {
  const middle = x + w / 2;
  const center = bottom - h / 2;
  const size = `${mm(region.length)} x ${mm(region.width)}`;
  const wide = (words: string, type: number): boolean => textWidth(words, type) <= w - 2;
  return [
    text([middle, center - (h > 8 ? 0.6 : -1)], mark, 3.4, { align: 'middle', bold: true }),
    ...(h > 8 && wide(size, 2.2) ? [text([middle, center + 2.6], size, 2.2, { align: 'middle' })] : []),
    ...(h > 13 && wide(name, 2.2) ? [text([middle, center + 5.6], name, 2.2, { align: 'middle' })] : []),
  ];
}
