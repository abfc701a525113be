// Papers of the cabinet, their sheets as pictures. Findings are worked out first where a paper needs them.

import {
  judge,
  makePaper,
  type Outcome,
  pageSvg,
  type ReadSource,
  papers as registry,
  type Variant,
  variantRunner,
} from '@stillair/engine';
import { type Hands, turn } from './hands.ts';
import type { PaperShown, Results, Wishes } from './protocol.ts';

export async function makePapers(
  source: ReadSource,
  { samples, units = 'metric' }: Wishes,
  hands: Hands,
  {
    progress,
    stop,
    soFar,
  }: {
    readonly progress: (done: number, all: number) => void;
    readonly stop: () => boolean;
    readonly soFar: (result: Results['papers']) => void;
  },
): Promise<Results['papers']> {
  const { text, cabinet } = source;
  const before = registry.some(({ judged }) => judged === true) ? samples : 0;
  const all = before + registry.length;
  const judgement =
    before === 0
      ? undefined
      : await judge(source, {
          samples,
          stop,
          evaluate: hands.spread<Variant, Outcome>({ runs: 'variants', text, here: variantRunner(source) }),
          progress: (done, of) => progress(Math.floor((done / of) * before), all),
        });
  const made: PaperShown[] = [];
  for (const paper of registry) {
    if (stop()) break;
    const { id, title, what, pages, missing, files, flats, solids } = await makePaper(paper, {
      source,
      version: import.meta.env.VERSION,
      units,
      angle: 'first',
      format: units === 'imperial' ? 'letter' : 'a4',
      ...(judgement === undefined ? {} : { judgement }),
    });
    const sheets = pages.map((page, at) =>
      pageSvg(page, `${cabinet.title}: ${title}, sheet ${at + 1} of ${pages.length}`),
    );
    made.push({ id, title, what, sheets, missing, files, elsewhere: flats.length + solids.length });
    progress(before + made.length, all);
    soFar({ papers: [...made] });
    await turn();
  }
  return { papers: made };
}
