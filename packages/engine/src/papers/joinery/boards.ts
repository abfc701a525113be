// Drawings of every board: each hole, groove, rebate and hinge cup dimensioned from one datum; and the same as shapes for a cutter.

import type { BoardPart } from '../../joinery/board-part.ts';
import { constructionOf } from '../../joinery/construction.ts';
import { type Block, heading, paragraph, smallPrint } from '../frame/block.ts';
import { drawingArea } from '../frame/page.ts';
import type { Paper, Part } from '../paper.ts';
import { boardPicture, letterOf } from './board-picture.ts';
import { flatBoard } from './flat-board.ts';
import { boardName, cutSize, JOINERS_CAUTIONS, mm } from './words.ts';

export const boards: Paper = {
  id: 'boards',
  title: 'Boards',
  what: 'Every board with what is cut into it, dimensioned from one datum: the corner with the small circle. The same shapes for a cutter lie in dxf/, in millimetres, a layer for each purpose and depth.',
  cautions: JOINERS_CAUTIONS,
  make({ source: { cabinet }, format }) {
    const construction = constructionOf(cabinet);
    const area = drawingArea(format);
    return {
      parts: construction.boards.map((board): Part => sheetOf(board, area.width, area.height)),
      missing: construction.problems,
      assumes: construction.assumes,
      rests: ['fit.tolerance'],
      flats: construction.boards.map(flatBoard),
    };
  },
};

function sheetOf(board: BoardPart, width: number, height: number): Part {
  // Few cuts leave more room for the picture; many go on on the next sheet.
  const rows = Math.min(board.cuts.length, 14);
  const picture = boardPicture(board, width, height - 34 - 6 * rows);
  const blocks: Block[] = [
    heading(`${board.mark}  ${board.name}`),
    paragraph(
      `${boardName(board)}${board.thickness === board.nominal ? '' : `, measured ${mm(board.thickness)} mm`}, ${mm(board.u)} x ${mm(board.v)}, ${board.seen}${board.edges === '' ? '' : `; ${board.edges}`}.`,
    ),
    {
      kind: 'picture',
      width: picture.width,
      height: picture.height,
      says: `${board.name}, ${mm(board.u)} by ${mm(board.v)} mm, ${board.seen}, with ${board.cuts.length} cuts that the table lists`,
      marks: picture.marks,
    },
    board.cuts.length === 0 ? smallPrint('Nothing is cut into it.') : cutTable(board),
  ];
  return { kind: 'written', title: `${board.mark}  ${board.name}`, scale: picture.scale.name, blocks };
}

function cutTable({ cuts }: BoardPart): Block {
  return {
    kind: 'table',
    columns: [
      { head: '', align: 'left' },
      { head: 'what' },
      { head: 'size' },
      { head: 'from the datum: across', align: 'right' },
      { head: 'up', align: 'right' },
      { head: 'side' },
    ],
    rows: cuts.map((cut, at) => {
      const { shape, purpose, what, side, depth } = cut;
      const [u, v] =
        shape.kind === 'round'
          ? [mm(shape.at[0]), mm(shape.at[1])]
          : [`${mm(shape.from[0])} to ${mm(shape.to[0])}`, `${mm(shape.from[1])} to ${mm(shape.to[1])}`];
      return [
        letterOf(at),
        `${purpose}, ${what}`,
        cutSize(cut),
        u,
        v,
        depth === 'through' ? 'through' : side === 'seen' ? 'this side' : 'far side',
      ];
    }),
  };
}
