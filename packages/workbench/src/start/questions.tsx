// "My own cabinet": a few questions, each of which may stay open. The sheet draws along; a first file comes out.

import { knownKinds, type NewCabinetAnswers, newCabinet } from '@stillair/engine';
import { useEffect, useId, useState } from 'preact/compat';

export interface QuestionsProps {
  /** Called with the file of the answers so far, whenever one changes. */
  readonly onText: (text: string) => void;
  readonly onDone: () => void;
  readonly onLeave: () => void;
}

type Key = keyof NewCabinetAnswers;

interface Question {
  readonly key: Key;
  readonly asks: string;
  readonly example: string;
  readonly words?: readonly string[];
}

const { machines: kinds, materials, boards } = knownKinds();

const questions: readonly Question[] = [
  { key: 'title', asks: 'What is it called?', example: 'Attic cabinet' },
  { key: 'inside', asks: 'Inside width x depth x height', example: '800 mm x 600 mm x 1750 mm' },
  { key: 'outside', asks: 'or, if that is easier to measure, outside', example: '836 mm x 622 mm x 1786 mm' },
  {
    key: 'madeOf',
    asks: 'What is it made of, how thick?',
    example: 'plywood 18 mm',
    words: boards.map((board) => `${board} 18 mm`),
  },
  {
    key: 'door',
    asks: 'And its door?',
    example: 'glass 4 mm',
    words: ['glass 4 mm', 'acrylic 4 mm', 'polycarbonate 4 mm', 'plywood 18 mm', 'none'],
  },
  { key: 'material', asks: 'What do you print most?', example: 'PLA', words: materials },
  { key: 'air', asks: 'How does its air go?', example: 'holes', words: ['closed', 'holes', 'fan', 'fan and filter'] },
  { key: 'vents', asks: 'Where does that air go?', example: 'room', words: ['room', 'outdoors'] },
  { key: 'room', asks: 'The room: width x depth x height', example: '4 m x 3.5 m x 2.5 m' },
  { key: 'temperature', asks: 'How warm is the room?', example: '21 °C' },
  {
    key: 'desk',
    asks: 'Where does somebody sit: to the right, to the back, up, from its inside lower left front corner?',
    example: '0.5 m, -1.5 m, 1.2 m',
  },
  { key: 'start', asks: 'When does a usual print start?', example: '9:00' },
  { key: 'lasts', asks: 'How long does it take?', example: '6 h' },
];

export default function Questions({ onText, onDone, onLeave }: QuestionsProps) {
  const [answers, setAnswers] = useState<NewCabinetAnswers>({});
  // biome-ignore lint/correctness/useExhaustiveDependencies: only an answer makes a new text.
  useEffect(() => onText(newCabinet(answers)), [answers]);
  const answer = (key: Key, value: string): void =>
    setAnswers((before) => {
      const { [key]: _gone, ...rest } = before;
      return value === '' ? rest : { ...rest, [key]: value };
    });
  const open = questions.filter(({ key }) => answers[key] === undefined).length;
  return (
    <section className="part-pane questions" aria-labelledby="questions-title">
      <h2 id="questions-title">My own cabinet</h2>
      <p>Answer what you know. What you leave open is assumed, said so, and counted into how sure the answers are.</p>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          onDone();
        }}
      >
        <Machines
          chosen={answers.machines ?? []}
          onChoose={(machines) => setAnswers((before) => withMachines(before, machines))}
        />
        {questions.map((question) => (
          <Ask key={question.key} question={question} onAnswer={(value) => answer(question.key, value)} />
        ))}
        <p>
          {open === 0 ? 'All is answered.' : `${open} of ${questions.length} questions are open: those are assumed.`}
        </p>
        <button type="submit">Work with it</button>{' '}
        <button type="button" className="quiet" onClick={onLeave}>
          back to the example
        </button>
      </form>
    </section>
  );
}

function withMachines(before: NewCabinetAnswers, machines: readonly string[]): NewCabinetAnswers {
  const { machines: _gone, ...rest } = before;
  return machines.length === 0 ? rest : { ...rest, machines };
}

/** Machines from the lowest up, by kind and size of the bed. */
function Machines({
  chosen,
  onChoose,
}: {
  readonly chosen: readonly string[];
  readonly onChoose: (machines: readonly string[]) => void;
}) {
  const id = useId();
  return (
    <div className="ask">
      <label htmlFor={id}>Which machines, from the lowest up?</label>
      <select id={id} value="" onChange={(event) => onChoose([...chosen, event.currentTarget.value])}>
        <option value="">{chosen.length === 0 ? 'I don’t know yet' : 'another one …'}</option>
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {kind}
          </option>
        ))}
      </select>
      <ul>
        {chosen.map((kind, at) => (
          <li key={`${kind}${String(at)}`}>
            {kind}{' '}
            <button
              type="button"
              className="quiet"
              aria-label={`take away ${kind}`}
              onClick={() => onChoose(chosen.filter((_, other) => other !== at))}
            >
              take away
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Ask({ question, onAnswer }: { readonly question: Question; readonly onAnswer: (value: string) => void }) {
  const { asks, example, words } = question;
  const id = useId();
  const [typed, setTyped] = useState('');
  const [known, setKnown] = useState(true);
  return (
    <div className="ask">
      <label htmlFor={id}>{asks}</label>
      <input
        id={id}
        value={known ? typed : ''}
        disabled={!known}
        list={words === undefined ? undefined : `${id}-words`}
        placeholder={known ? `such as ${example}` : `assumed: ${example}`}
        onInput={(event) => setTyped(event.currentTarget.value)}
        onBlur={() => onAnswer(typed.trim())}
      />
      {words !== undefined && (
        <datalist id={`${id}-words`}>
          {words.map((word) => (
            <option key={word} value={word} />
          ))}
        </datalist>
      )}
      <label className="unknown">
        <input
          type="checkbox"
          checked={!known}
          onChange={(event) => {
            setKnown(!event.currentTarget.checked);
            onAnswer(event.currentTarget.checked ? '' : typed.trim());
          }}
        />{' '}
        I don’t know
      </label>
    </div>
  );
}
