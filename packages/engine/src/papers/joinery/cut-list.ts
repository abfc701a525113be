// The cut list on paper: every board to saw with its finished size, its grain and what it is for.

import { cutListOf } from '../../trades/cost/cut-list.ts';
import { formatQuantity } from '../../units/format.ts';
import { type Block, heading, paragraph } from '../frame/block.ts';
import type { Paper } from '../paper.ts';

export const cutList: Paper = {
  id: 'cut-list',
  title: 'Cut list',
  what: 'Every board to saw: finished size, grain, what it becomes.',
  cautions: [
    'Saws and cutters maim: follow their makers’ rules, with guard, goggles, hearing and dust protection.',
    'Boards differ from what is written on them: measure the thickness of each sheet before anything is cut that depends on it.',
  ],
  make({ source: { cabinet } }) {
    const { lots } = cutListOf(cabinet);
    const mm = (length: number): string => String(Math.round(length * 10_000) / 10);
    const blocks = lots.flatMap(({ board, thickness, parts, area }): Block[] => [
      heading(`${board} ${mm(thickness)} mm`),
      paragraph(`${parts.length} ${parts.length === 1 ? 'part' : 'parts'}, ${formatQuantity('area', area)} in all.`),
      {
        kind: 'table',
        columns: [
          { head: 'for' },
          { head: 'length, along the grain', align: 'right' },
          { head: 'width', align: 'right' },
        ],
        rows: parts.map(({ of, length, width }) => [of, mm(length), mm(width)]),
      },
    ]);
    return { parts: [{ kind: 'written', blocks }], rests: ['costs.kerf', 'fit.tolerance'] };
  },
};
