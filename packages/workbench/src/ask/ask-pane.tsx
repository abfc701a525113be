// Ask: what takes a while to answer, one question at a time. All questions share how they are begun, watched, stopped and read; a row
// that is about a part marks it on the sheet.

import type { UnitSystem } from '@stillair/engine';
import { useState } from 'preact/compat';
import type { Look, Results, StudyName, Wishes } from '../engine/protocol.ts';
import type { AllAsked, Asked } from '../model/asked.ts';
import type { AnswerProps, Question } from './answer.ts';
import { Course } from './course.tsx';
import { type Askable, questions } from './questions.tsx';

export interface AskPaneProps extends Pick<AnswerProps<StudyName>, 'onPart' | 'partOf' | 'onKeep' | 'onEdit'> {
  readonly look: Look;
  readonly text: string;
  readonly faulty: boolean;
  readonly units: UnitSystem;
  readonly asked: AllAsked;
  /** Where the local server gives job files of the open file; none without one. */
  readonly served?: string | undefined;
  readonly question: StudyName;
  readonly onQuestion: (study: StudyName) => void;
  readonly onAsk: (study: StudyName, wishes: Partial<Wishes>) => void;
  readonly onStop: () => void;
}

export function AskPane(props: AskPaneProps) {
  const { question, onQuestion, asked } = props;
  const shown: Askable = question === 'compare' ? 'faults' : question;
  return (
    <section className="ask-pane" aria-labelledby="ask-title">
      <div className="ask-side">
        <h2 id="ask-title">Ask</h2>
        <ul className="ask-list">
          {Object.entries(questions).map(([study, { asks }]) => (
            <li key={study}>
              <button type="button" aria-pressed={study === shown} onClick={() => onQuestion(study as Askable)}>
                {asks}
                {asked[study as Askable]?.state === 'running' ? ' …' : ''}
              </button>
            </li>
          ))}
        </ul>
      </div>
      <Answered key={shown} {...props} study={shown} of={questions[shown] as Question<StudyName>} />
    </section>
  );
}

function Answered({
  of,
  study,
  ...props
}: AskPaneProps & { readonly of: Question<StudyName>; readonly study: Askable }) {
  const { look, text, faulty, units, asked, served, onAsk, onStop } = props;
  const { says, asks, Controls, wants, handsOn, View } = of;
  const [chosen, setWishes] = useState<Partial<Wishes>>({});
  const its = asked[study] as Asked<Results[StudyName]> | undefined;
  const wishes = served === undefined ? chosen : { ...chosen, served };
  const wanted = faulty ? 'The text has faults: mend them first.' : wants?.(wishes, look);
  return (
    <div className="answered" role="region" aria-label={asks}>
      <p className="says">{says}</p>
      <div className="ask-controls">
        {Controls !== undefined && <Controls look={look} wishes={wishes} onWishes={setWishes} before={its?.result} />}
        <button
          type="button"
          className="begin"
          disabled={wanted !== undefined || its?.state === 'running'}
          onClick={() => onAsk(study, { units, ...wishes, ...(its?.result && handsOn?.(its.result)) })}
        >
          {its?.result === undefined ? 'Ask' : 'Ask anew'}
        </button>
        {wanted !== undefined && <span>{wanted}</span>}
        {its !== undefined && <Course asked={its} text={text} onStop={onStop} />}
      </div>
      {its?.result !== undefined && <View {...props} result={its.result} text={its.text} current={its.text === text} />}
    </div>
  );
}
