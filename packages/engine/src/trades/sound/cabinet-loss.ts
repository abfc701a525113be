// What the closed cabinet takes off each machine's sound before it is in the room.

import { octaveBands } from '@stillair/physics';
import type { DayRun, Measure, Step } from '../measure.ts';
import { boardLoss } from './boards.ts';
import { boxesOf } from './boxes.ts';
import { weighted } from './places.ts';
import { sourcesOf } from './sources.ts';

export function cabinetLoss(run: DayRun): Measure[] {
  const { cabinet } = run;
  const boxes = boxesOf(cabinet);
  return sourcesOf(cabinet)
    .filter(({ kind }) => kind === 'machine')
    .map(({ id, power }) => {
      const from = boxes.bays.indexOf(cabinet.machines[id]!.bay);
      const ways = boxes.ways.filter(({ at }) => at !== undefined);
      const out = power.map((one, band) =>
        ways.reduce((sum, { bay, letThrough }) => {
          return sum + one * boxes.inside[band]![boxes.bays.indexOf(bay)]![from]! * letThrough[band]!;
        }, 0),
      );
      return {
        trade: 'sound',
        quantity: 'cabinet-loss',
        part: id,
        title: 'what the closed cabinet takes off its noise',
        value: Math.max(10 * Math.log10(weighted(power) / weighted(out)), 0),
        unit: 'sound-level',
        get steps(): readonly Step[] {
          const { bay } = cabinet.machines[id]!;
          const mine = boxes.ways.filter((way) => way.bay === bay);
          const sum = (kind: string): number =>
            mine.reduce((all, way) => all + (way.kind === kind ? way.letThrough[MIDDLE]! : 0), 0);
          const front = Object.entries(cabinet.doors).find(([, { bays }]) => bays.includes(bay));
          const build = front === undefined ? cabinet.faces.left.build : front[1].build;
          return [
            {
              text: 'swallowed inside its bay at 500 Hz, α S',
              value: boxes.absorbed[boxes.bays.indexOf(bay)]![MIDDLE]!,
              unit: 'area',
              inputs: [`bays.${bay}.x`, `bays.${bay}.z`],
            },
            { text: 'let out by its boards and panes at 500 Hz, τ S', value: sum('board'), unit: 'area' },
            { text: 'by gaps round doors', value: sum('gap'), unit: 'area' },
            { text: 'by holes and other openings', value: sum('opening'), unit: 'area' },
            {
              text: `${front === undefined ? 'its boards' : front[0]}: ${boardLoss(build, cabinet.sound).from}`,
              value: boardLoss(build, cabinet.sound).loss[MIDDLE]!,
              unit: 'sound-level',
              source:
                'Bies, Hansen & Howard, Engineering Noise Control, 5th ed. 2017, section 7.2 and table 7.6, second-hand',
            },
            {
              text: 'all octaves together, A-weighted',
              value: Math.max(10 * Math.log10(weighted(power) / weighted(out)), 0),
              unit: 'sound-level',
              formula: 'IL = 10 lg(1 + Σ α S/Σ τ S), bay by bay',
              source: 'balance of power (Vér), from memory',
            },
          ];
        },
        remedies: [],
        weight: 0.1,
        better: 'higher',
      } satisfies Measure;
    });
}

/** 500 Hz */
const MIDDLE = octaveBands.indexOf(500);
