// The air-quality trade: what people in the room breathe, by which way it gets there, when to open the door, when stages are spent.

import type { DayTrade } from '../measure.ts';
import { emittedOf, releasesOf } from './emitted.ts';
import { purge } from './purge.ts';
import { bayLevels, reach } from './reach.ts';
import { room } from './room.ts';
import { stages } from './stages.ts';
import { timing } from './timing.ts';
import { waysOf } from './ways.ts';

export const airQuality: DayTrade = {
  id: 'air-quality',
  title: 'Air quality',
  measure: (run) => {
    const releases = releasesOf(run);
    const emitted = [...new Set(releases.map(({ contaminant }) => contaminant))].filter(
      (contaminant) => emittedOf(releases, contaminant) > 0 && run.record.concentrations[contaminant] !== undefined,
    );
    const ways = new Map(emitted.map((contaminant) => [contaminant, waysOf(run, contaminant)] as const));
    return [
      ...room(run, releases, ways),
      ...reach(run, releases, ways),
      ...bayLevels(
        run,
        releases.filter(({ contaminant }) => ways.has(contaminant)),
      ),
      ...timing(run, releases),
      ...purge(run),
      ...stages(run),
    ];
  },
};
