// The care sheet: what to change, check, clean and test, by hours of printing and by the calendar, with room to write when it was done.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { CareCount, CareInterval, CareTask } from '../../cabinet/care.ts';
import { careTasksOf } from '../../cabinet/care-tasks.ts';
import { addMonths, formatDate, parseDate } from '../../units/calendar.ts';
import { formatQuantity, type UnitSystem } from '../../units/format.ts';
import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import type { Paper } from '../paper.ts';
import { printingAWeek } from './printing-a-week.ts';

const HOUR = 3600;

export const careSheet: Paper = {
  id: 'care',
  title: 'Care',
  what: 'What to change, check, clean and test, by hours of printing and by the calendar, with room to write when it was done.',
  cautions: [
    'Power off, cold and unplugged before a hand goes in; used filters and carbon go into a closed bag, with gloves and a mask.',
    'What must notice a fire is tested every month by what it notices, not by its lamp.',
    'The makers’ own intervals go before these.',
  ],
  make({ source: { cabinet, origins }, units, date }) {
    const tasks = careTasksOf(cabinet, origins);
    const sources = [...new Set(tasks.map(({ source }) => source))];
    const begun = date === undefined ? undefined : parseDate(date);
    const since = typeof begun === 'number' ? begun : undefined;
    const told = Object.keys(cabinet.costs.times).length > 0;
    return {
      parts: [
        {
          kind: 'written',
          blocks: [
            heading('What, and how often'),
            paragraph(
              `Hours are hours of printing. ${told ? 'The weeks are those in which the days of the file print so long (costs.times).' : 'How often each day comes is not said (costs.times), so that hours are not put into weeks.'}${since === undefined ? '' : ` First dates count from ${formatDate(since)}.`}`,
            ),
            {
              kind: 'table',
              columns: [
                { head: 'what', share: 0.34 },
                { head: 'every', share: 0.26 },
                { head: since === undefined ? 'next' : 'first by', share: 0.14 },
                { head: 'done', share: 0.13 },
                { head: 'done', share: 0.13 },
              ],
              rows: tasks.map((task) => [
                `${task.says} [${sources.indexOf(task.source) + 1}]`,
                everyWords(task, cabinet, units),
                since === undefined ? '' : firstBy(task.interval, since),
                '',
                '',
              ]),
              rowHeight: 7,
            },
            ...sources.map((words, at) => smallPrint(`[${at + 1}] ${words}`)),
            ...alarms(cabinet),
            smallPrint(
              'stillair care FILE keeps this list against a diary: what has been printed, what was done, what is due.',
            ),
          ],
        },
      ],
      rests: ['costs.filterLife', 'costs.carbonLife'],
      missing: told ? [] : ['how often each day comes in a year: give costs.times'],
    };
  },
};

function everyWords({ interval, counts }: CareTask, cabinet: Cabinet, units: UnitSystem): string {
  const { printing, months, days, pressure } = interval;
  const words = [
    ...(printing === undefined
      ? []
      : [`${Math.round(printing.value / HOUR)} h${weeks(printing.value, counts, cabinet)}`]),
    ...(months === undefined
      ? []
      : [months.value % 12 === 0 ? count(months.value / 12, 'year') : count(months.value, 'month')]),
    ...(days === undefined ? [] : [count(days.value, 'day')]),
    ...(pressure === undefined ? [] : [`when it loses ${formatQuantity('pressure', pressure, units)}`]),
  ];
  return words.join(', or ');
}

const count = (number: number, what: string): string =>
  `${Math.round(10 * number) / 10} ${what}${number === 1 ? '' : 's'}`;

function weeks(seconds: number, counts: CareCount, cabinet: Cabinet): string {
  const aWeek = printingAWeek(cabinet, counts.machine);
  if (aWeek <= 0) return '';
  const number = seconds / aWeek;
  return ` (about ${number < 1.5 ? 'a week' : number < 150 ? `${Math.round(number)} weeks` : `${Math.round(number / 52)} years`})`;
}

/** The calendar's part alone: what is due by hours, hours tell. */
function firstBy({ months, days }: CareInterval, since: number): string {
  const ends = [
    ...(months === undefined ? [] : [addMonths(since, Math.round(months.value))]),
    ...(days === undefined ? [] : [since + Math.round(days.value)]),
  ];
  return ends.length === 0 ? 'by hours' : formatDate(Math.min(...ends));
}

function alarms({ protection }: Cabinet): Block[] {
  const detectors = Object.entries(protection.detectors ?? {}).map(
    ([id, { what, where }]) => `${id} (${what}, ${where})`,
  );
  const stops = Object.entries(protection.chain ?? {}).flatMap(([id, { what }]) =>
    what === 'stop button' ? [id] : [],
  );
  return [
    heading('When an alarm sounds'),
    list(
      [
        `get out first whoever is in the room; then, if it can be reached on the way, ${stops.length === 0 ? 'the main switch' : stops.join(', ')}`,
        'doors of the cabinet stay shut: an open door feeds a fire',
        'call the fire service from outside; use an extinguisher only with the way out behind you',
        `who may sound: ${detectors.length === 0 ? 'nothing is said (protection.detectors)' : detectors.join(', ')}`,
        'afterwards nothing is switched on again before its cause is found; a thermal link that has opened is replaced, never bridged',
      ],
      'number',
    ),
  ];
}
