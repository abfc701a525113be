// Ask: what takes a while to answer, one question at a time, each in the words that a person would ask it in. All of them share how
// they are begun, watched, stopped and read; a row that is about a part marks it on the sheet.

import type { Edit, UnitSystem } from '@stillair/engine';
import { type ComponentType, useState } from 'preact/compat';
import type { Look, Results, StudyName, Wishes } from '../engine/protocol.ts';
import type { AllAsked, Asked } from '../model/asked.ts';
import { Course } from './course.tsx';
import { FaultsView } from './faults-view.tsx';
import { PareView } from './pare-view.tsx';

/** What every answer is given to show itself. */
export interface AnswerProps<Name extends StudyName> {
  readonly result: Results[Name];
  readonly look: Look;
  readonly units: UnitSystem;
  /** Of the cabinet as it is drawn: its changes can be done. */
  readonly current: boolean;
  readonly onPart: (part: string, day?: string, time?: number) => void;
  /** Where a name of the file is on the sheet, if it is drawn. */
  readonly partOf: (name: string, day?: string) => string | undefined;
  readonly onKeep: (title: string, edits: readonly Edit[]) => void;
}

interface Question<Name extends StudyName> {
  readonly study: Name;
  readonly asks: string;
  readonly says: string;
  /** It can be asked for one day. */
  readonly ofDays: boolean;
  readonly View: ComponentType<AnswerProps<Name>>;
}

const questions: { readonly [Name in Exclude<StudyName, 'compare'>]: Question<Name> } = {
  faults: {
    study: 'faults',
    asks: 'What if one part fails?',
    says: 'Runs every single fault of the file, one at a time, and says what it comes to and what in the file catches it. It is no substitute for local codes, for licensed practice and for standing beside a machine.',
    ofDays: true,
    View: FaultsView,
  },
  pare: {
    study: 'pare',
    asks: 'What could go?',
    says: 'Takes out each part alone, then several together, and says which of them no finding would miss. Such a part may still be there for a fault, or for a day that the file does not have.',
    ofDays: false,
    View: PareView,
  },
};

export type Askable = keyof typeof questions;

export interface AskPaneProps {
  readonly look: Look;
  readonly text: string;
  readonly faulty: boolean;
  readonly units: UnitSystem;
  readonly asked: AllAsked;
  readonly question: StudyName;
  readonly onQuestion: (study: StudyName) => void;
  readonly onAsk: (study: StudyName, wishes: Partial<Wishes>) => void;
  readonly onStop: () => void;
  readonly onPart: AnswerProps<StudyName>['onPart'];
  readonly partOf: AnswerProps<StudyName>['partOf'];
  readonly onKeep: AnswerProps<StudyName>['onKeep'];
}

export function AskPane(props: AskPaneProps) {
  const { question, onQuestion, asked } = props;
  const shown: Askable = question in questions ? (question as Askable) : 'faults';
  return (
    <section className="ask-pane" aria-labelledby="ask-title">
      <h2 id="ask-title">Ask</h2>
      <ul className="ask-list">
        {Object.values(questions).map(({ study, asks }) => (
          <li key={study}>
            <button type="button" aria-pressed={study === shown} onClick={() => onQuestion(study)}>
              {asks}
              {asked[study]?.state === 'running' ? ' …' : ''}
            </button>
          </li>
        ))}
      </ul>
      <Answered key={shown} {...props} of={questions[shown] as Question<StudyName>} />
    </section>
  );
}

function Answered({ of, ...props }: AskPaneProps & { readonly of: Question<StudyName> }) {
  const { look, text, faulty, asked, onAsk, onStop } = props;
  const { study, says, ofDays, asks, View } = of;
  const [day, setDay] = useState('');
  const its = asked[study] as Asked<Results[StudyName]> | undefined;
  const days = Object.keys(look.cabinet.days);
  return (
    <div className="answered" role="region" aria-label={asks}>
      <p className="says">{says}</p>
      <p className="ask-controls">
        {ofDays && days.length > 1 && (
          <label>
            on{' '}
            <select value={day} onChange={(event) => setDay(event.currentTarget.value)}>
              <option value="">all days</option>
              {days.map((id) => (
                <option key={id} value={id}>
                  {id}
                </option>
              ))}
            </select>
          </label>
        )}{' '}
        <button
          type="button"
          className="begin"
          disabled={faulty || its?.state === 'running'}
          onClick={() => onAsk(study, day === '' ? {} : { days: [day] })}
        >
          {its?.result === undefined ? 'Ask' : 'Ask anew'}
        </button>
        {faulty && <span> The text has faults: mend them first.</span>}
      </p>
      {its !== undefined && <Course asked={its} text={text} onStop={onStop} />}
      {its?.result !== undefined && <View {...props} result={its.result} current={its.text === text} />}
    </div>
  );
}
