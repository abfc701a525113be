// `queue:` of the cabinet file: jobs that wait.

import * as z from 'zod';
import { isFault } from '../units/quantity.ts';
import { type Moment, parseDatedMoment, parseMoment, parseMoments, parseWeekdays } from '../units/week.ts';
import { quoted } from './complaint.ts';
import { isJobPath } from './job-file.ts';
import { type MomentsSpec, type PresentSpec, type QueueJobSpec, type QueueSpec, queueAims } from './queue.ts';
import {
  count,
  fromText,
  mapOf,
  name,
  oneOrMore,
  quantity,
  type Schema,
  say,
  sizes,
  thing,
  typeFault,
  window,
  word,
} from './shape.ts';

const moment = (about: string): Schema<Moment> =>
  fromText((input) => parseMoment(String(input)), false, about, 'such as Tue 18:00 or 2026-12-01 18:00');

/** `{ Mon to Fri: 9:30 to 18:30, Sat: [10:00 to 13:00] }` */
function present(): Schema<readonly PresentSpec[]> {
  const allowed = 'a map from days of the week to hours, such as { Mon to Fri: 9:00 to 18:00 }';
  const hours = oneOrMore(window('when somebody is there'), 'when somebody is there');
  return z
    .record(z.string(), hours, { error: typeFault(allowed) })
    .transform((map, context) =>
      Object.entries(map).flatMap(([key, windows]): PresentSpec[] => {
        const days = parseWeekdays(key);
        if (!isFault(days)) return [{ written: key, days, windows }];
        const message = say({ ...days, onKey: true });
        context.issues.push({ code: 'custom', path: [key], message, input: key });
        return [];
      }),
    )
    .describe('when somebody is there who can start a job and watch it') as unknown as Schema<readonly PresentSpec[]>;
}

const moments = (about: string): Schema<MomentsSpec> =>
  fromText((input) => parseMoments(String(input)), false, about, 'such as Tue 9:00 to Thu 18:00');

function jobPath(): Schema<string> {
  const allowed = 'a path such as parts/bracket.gcode, from the folder of this file on';
  return z
    .string({ error: typeFault(allowed) })
    .transform((path, context) => {
      if (isJobPath(path)) return path;
      const message = say({
        code: 'path-wrong',
        what: `${quoted(path)} does not lie below the folder of this file`,
        allowed: `${allowed}: with / between folders, and nothing hidden, no .. and no drive`,
        mend: 'put the job file beside the cabinet file, or into a folder below it',
      });
      context.issues.push({ code: 'custom', message, input: path });
      return z.NEVER;
    })
    .describe(
      'job file that says how long, how much, how hot and where; what is written beside it goes first',
    ) as Schema<string>;
}

export function queueSchema(): Schema<QueueSpec> {
  const watched = 'how long somebody watches it once it is warm; 0 min for one that only has to be started';
  const job = thing(
    {
      machine: oneOrMore(name('machine'), 'machines on which it may run').optional(),
      material: name('material'),
      'job-file': jobPath().optional(),
      for: quantity('duration', 'from its start to the end of the print, heating included', {
        above: 0,
        to: 35 * 86_400,
      }).optional(),
      nozzle: quantity('temperature', 'nozzle', { from: 293.15, to: 773.15 }).optional(),
      bed: quantity('temperature', 'bed', { from: 273.15, to: 473.15 }).optional(),
      mass: quantity('mass', 'filament used', { above: 0, to: 100 }).optional(),
      'part-size': quantity('length', 'largest span of the part', { above: 0, to: 2 }).optional(),
      base: sizes(2, 'width x depth on the bed').optional(),
      copies: count('how often it is printed', 50).optional(),
      earliest: moment('not before').optional(),
      due: moment('when it must be done').optional(),
      attended: quantity('duration', watched, { from: 0, to: 86_400 }).optional(),
      pinned: moment('when it starts or has started, whatever the plan says').optional(),
    },
    'a job that waits',
  ) as unknown as Schema<QueueJobSpec>;
  return thing(
    {
      from: fromText(
        (input) => parseDatedMoment(String(input)),
        false,
        'when the plan begins',
        'such as 2026-11-30 7:00',
      ),
      length: quantity('duration', 'of the plan', { above: 0, to: 14 * 86_400 }).optional(),
      step: quantity('duration', 'starts lie so far apart', { from: 60, to: 3600 }).optional(),
      like: name('day of the file whose room and outdoors it has').optional(),
      aims: oneOrMore(
        word(queueAims, 'what is made least'),
        'what is made least after missed deadlines, one after the other',
      ).optional(),
      attended: quantity('duration', `${watched}, of jobs that do not say`, { from: 0, to: 86_400 }).optional(),
      present: present().optional(),
      down: mapOf(
        oneOrMore(moments('when it is out of use'), 'when it is out of use'),
        'machines that are out of use for a time',
        'machine',
      ).optional(),
      jobs: mapOf(job, 'jobs that wait', 'job').optional(),
    },
    'jobs that wait to be printed',
  ) as unknown as Schema<QueueSpec>;
}
