// The cut list on paper: every board to saw with its finished size, its grain, its edges and its mark, and the strips beside them.

import { constructionOf } from '../../joinery/construction.ts';
import { cutListOf } from '../../joinery/cut-list.ts';
import { formatQuantity } from '../../units/format.ts';
import { type Block, heading, paragraph } from '../frame/block.ts';
import type { Paper } from '../paper.ts';
import { boardName, JOINERS_CAUTIONS, mm } from './words.ts';

export const cutList: Paper = {
  id: 'cut-list',
  title: 'Cut list',
  what: 'Every board to saw: its mark, finished size, grain, edges, and what it becomes. Write the mark on the board.',
  cautions: JOINERS_CAUTIONS,
  make({ source: { cabinet } }) {
    const { strips, problems, assumes } = constructionOf(cabinet);
    const { lots } = cutListOf(cabinet);
    const blocks = lots.flatMap(({ parts, area }): Block[] => [
      heading(boardName(parts[0]!.part)),
      paragraph(
        `${parts.length} ${parts.length === 1 ? 'part' : 'parts'}, ${formatQuantity('area', area)} in all.${measured(parts[0]!.part)}`,
      ),
      {
        kind: 'table',
        columns: [
          { head: 'mark', align: 'right' },
          { head: 'what' },
          { head: 'length', align: 'right' },
          { head: 'width', align: 'right' },
          { head: 'thick', align: 'right' },
          { head: 'grain' },
          { head: 'edges' },
          { head: 'cuts', align: 'right' },
        ],
        rows: parts.map(({ part, length, width }) => [
          part.mark,
          part.name,
          mm(length),
          mm(width),
          mm(part.thickness),
          part.grain === 'none' ? 'any' : 'along the length',
          part.edges === '' ? '–' : part.edges,
          part.cuts.length === 0 ? '–' : String(part.cuts.length),
        ]),
      },
    ]);
    const beside: readonly Block[] =
      strips.length === 0
        ? []
        : [
            heading('Strips'),
            {
              kind: 'table',
              columns: [
                { head: 'what' },
                { head: 'for' },
                { head: 'pieces', align: 'right' },
                { head: 'length', align: 'right' },
                { head: 'section', align: 'right' },
              ],
              rows: strips.map(({ what, of, count, length, height, breadth }) => [
                what,
                of,
                String(count),
                mm(length),
                `${mm(height)} x ${mm(breadth)}`,
              ]),
            },
          ];
    return {
      parts: [{ kind: 'written', blocks: [...blocks, ...beside] }],
      missing: problems,
      assumes,
      rests: ['fit.tolerance'],
    };
  },
};

function measured({ nominal, thickness }: { readonly nominal: number; readonly thickness: number }): string {
  return nominal === thickness ? '' : ` Measured: ${mm(thickness)} mm.`;
}
