// What can be asked, in the words that a person would ask it in; in this order.

import type { StudyName } from '../engine/protocol.ts';
import type { Question } from './answer.ts';
import { CalibrateView } from './calibrate-view.tsx';
import { CareView } from './care-view.tsx';
import { DayChoice, DiaryChoice, JobFileChoice, SamplesChoice, WantsChoice } from './controls.tsx';
import { DriftView } from './drift-view.tsx';
import { FaultsView } from './faults-view.tsx';
import { JobView } from './job-view.tsx';
import { LogChoice, ReadingsChoice } from './log-controls.tsx';
import { PapersView } from './papers-view.tsx';
import { PareView } from './pare-view.tsx';
import { PartCostView } from './part-cost-view.tsx';
import { PlanView } from './plan-view.tsx';
import { CostControls, PlanControls, queueWants, ShutOffControls } from './queue-controls.tsx';
import { SearchView } from './search-view.tsx';
import { ShutOffView } from './shut-off-view.tsx';
import { SpreadView } from './spread-view.tsx';

export type Askable = Exclude<StudyName, 'compare'>;

export const questions: { readonly [Name in Askable]: Question<Name> } = {
  spread: {
    asks: 'How sure is it?',
    says: 'Runs the cabinet and its options on common samples of every number that nobody measured: the chance that each limit is kept, what the options change and how surely, and which single measurement would settle most.',
    Controls: SamplesChoice,
    View: SpreadView,
  },
  search: {
    asks: 'What would be better?',
    says: 'Tries what the file leaves free under “search:”, or what may be assumed, for what keeps every limit and is best in what you want.',
    Controls: WantsChoice,
    wants: ({ wants }) => (wants?.length === 0 ? 'Say what is wanted.' : undefined),
    View: SearchView,
  },
  faults: {
    asks: 'What if one part fails?',
    says: 'Runs every single fault of the file, one at a time, and says what it comes to and what in the file catches it. It is no substitute for local codes, for licensed practice and for standing beside a machine.',
    Controls: DayChoice,
    View: FaultsView,
  },
  pare: {
    asks: 'What could go?',
    says: 'Takes out each part alone, then several together, and says which of them no finding would miss. Such a part may still be there for a fault, or for a day that the file does not have.',
    View: PareView,
  },
  job: {
    asks: 'What does a job file come to?',
    says: 'Reads a job file for a machine: how long it lasts, what it takes, how hot, and whether it stays where its machine may go. The file stays on this computer.',
    Controls: JobFileChoice,
    wants: ({ file }) => (file === undefined ? 'Pick a job file first.' : undefined),
    View: JobView,
  },
  shutOff: {
    asks: 'When may a socket go off?',
    says: 'When bed and hot end are cool enough after each job, in the air of this bay, with a reserve; and a rule for a switch that measures power.',
    Controls: ShutOffControls,
    wants: (wishes, look) => (wishes.of === 'queue' ? queueWants(wishes, look) : undefined),
    View: ShutOffView,
  },
  plan: {
    asks: 'When does each job run?',
    says: 'Plans when each job that waits under “queue:” in the file starts, by machines, people, quiet hours, the circuit and the warmth of the bays, and runs the week through. When something has changed (a job that took longer, a machine out of use, a new job), ask anew from that moment on: what has begun stays.',
    Controls: PlanControls,
    wants: queueWants,
    handsOn: (result) =>
      'plan' in result && result.plan.jobs.length > 0
        ? { earlier: { origin: result.plan.queue.origin, starts: result.plan.jobs, cuts: result.plan.cuts } }
        : {},
    View: PlanView,
  },
  partCosts: {
    asks: 'What does a part cost?',
    says: 'Filament, electricity as simulated, wear, filters, the machine, the cabinet’s share and hands, for one good job of each that the days have; for the queue as it would be planned; or for a month, by the diary.',
    Controls: CostControls,
    wants: (wishes, look) =>
      wishes.of === 'queue'
        ? queueWants(wishes, look)
        : wishes.of === 'month' && wishes.file === undefined
          ? 'Pick the diary first.'
          : undefined,
    View: PartCostView,
  },
  care: {
    asks: 'What is due?',
    says: 'What wants to be changed, cleaned or looked at, by the diary of the cabinet and what has run since; and what the findings say when overdue parts are as worn as they may be. Makers’ instructions, local codes and licensed practice go before these intervals.',
    Controls: DiaryChoice,
    View: CareView,
  },
  calibrate: {
    asks: 'What does a log put right?',
    says: 'Holds a log of the real cabinet, or a few readings taken by eye, against a day of the file: what it says of what was only assumed, how surely, what it cannot tell apart, and what to read next. The log stays on this computer.',
    Controls: ReadingsChoice,
    wants: ({ file, readings = [] }) =>
      file === undefined && readings.length === 0 ? 'Pick a log, or type a reading.' : undefined,
    View: CalibrateView,
  },
  drift: {
    asks: 'Has it drifted?',
    says: 'Holds a newer log against the file, hour by hour: whether the cabinet still does what the file says, since when it does not, and what would explain it. The log stays on this computer.',
    Controls: LogChoice,
    wants: ({ file }) => (file === undefined ? 'Pick a log first.' : undefined),
    View: DriftView,
  },
  papers: {
    asks: 'What do I build it from?',
    says: 'Draws the papers: what to do next, cut, print, buy, wire and check. Check every size on the real thing before you cut, drill or wire; they are no substitute for local codes and licensed practice.',
    View: PapersView,
  },
};
