// stillair new: a commented first cabinet file, from options and, at a terminal, from answers.

import { type Complaint, knownKinds, type NewCabinetAnswers, newCabinet, readCabinet } from '@stillair/engine';
import type { ExitCode, Io } from '../io.ts';
import { hanging } from '../text.ts';

export interface NewOptions extends NewCabinetAnswers {
  readonly out?: string;
}

interface Question {
  readonly key: keyof NewCabinetAnswers;
  readonly asks: string;
  readonly read: (answer: string) => NewCabinetAnswers[keyof NewCabinetAnswers];
}

const asWritten = (answer: string): string => answer;

const questions: readonly Question[] = [
  { key: 'title', asks: 'What shall the cabinet be called?', read: asWritten },
  { key: 'inside', asks: 'Inside width x depth x height, such as 800 mm x 600 mm x 1750 mm?', read: asWritten },
  { key: 'madeOf', asks: 'Made of which board, how thick, such as plywood 18 mm?', read: asWritten },
  { key: 'door', asks: 'And its door, such as glass 4 mm, or none?', read: asWritten },
  { key: 'room', asks: 'The room it stands in, such as 4 m x 3.5 m x 2.5 m?', read: asWritten },
  { key: 'temperature', asks: 'How warm is the room, such as 21 °C?', read: asWritten },
  {
    key: 'machines',
    asks: 'Kinds of the machines, from the lowest up, with commas between them?',
    read: (answer) => answer.split(',').map((kind) => kind.trim()),
  },
  { key: 'material', asks: 'Which material is printed most?', read: asWritten },
  {
    key: 'air',
    asks: 'How does the air go: closed, holes, fan, or fan and filter?',
    read: asWritten as Question['read'],
  },
  {
    key: 'vents',
    asks: 'Where does that air go: room or outdoors?',
    read: asWritten as Question['read'],
  },
  { key: 'start', asks: 'When does a usual job start, such as 9:00?', read: asWritten },
  { key: 'lasts', asks: 'How long does it take, such as 6 h?', read: asWritten },
];

/** Answers that leave the question open. */
const UNKNOWN = /^(?:|\?+|-|(?:i )?do(?:n['’]?t| not) know)$/i;
const ENDS: readonly string[] = ['room', 'outdoors'];
const WAYS: readonly string[] = ['closed', 'holes', 'fan', 'fan and filter'];

export async function newFile({ out, ...given }: NewOptions, io: Io): Promise<ExitCode> {
  const wrong = faultOf(given);
  if (wrong !== undefined) {
    io.err(`stillair new: ${wrong}`);
    return 2;
  }
  const answers = await askTheRest(given, io);
  if (io.stop.aborted) return 130;
  const text = newCabinet(answers);
  if (out === undefined) {
    io.out(text.trimEnd());
    return 0;
  }
  const problem = await io.write(out, text, 'new');
  if (problem !== undefined) {
    io.err(`stillair new: cannot write ${out}: ${problem}`);
    return 2;
  }
  io.out(`wrote ${out}; next: stillair check ${out}`);
  return 0;
}

/** Goes on without an answer when there is nobody to ask; an answer that cannot be used is asked for again. */
async function askTheRest(given: NewCabinetAnswers, io: Io): Promise<NewCabinetAnswers> {
  let answers = given;
  let begun = false;
  for (const { key, asks, read } of questions) {
    if (answers[key] !== undefined) continue;
    for (;;) {
      const answer = await io.ask(begun ? asks : `${introduction(io)}\n${asks}`);
      if (answer === undefined) return answers;
      begun = true;
      if (UNKNOWN.test(answer.trim())) break;
      const tried = { ...answers, [key]: read(answer.trim()) };
      const wrong = faultOf(tried);
      if (wrong === undefined) {
        answers = tried;
        break;
      }
      io.err(hanging('  ', wrong, io.columns));
    }
  }
  return answers;
}

function introduction(io: Io): string {
  const { machines, materials, boards } = knownKinds();
  const lists = [
    hanging('machines:  ', machines.join(', '), io.columns),
    hanging('materials: ', materials.join(', '), io.columns),
    hanging('boards:    ', boards.join(', '), io.columns),
  ];
  return `Enter alone means "don't know": the file then says what is assumed.\n${lists.join('\n')}`;
}

/** What is wrong with the answers, found by reading the file that they make. */
function faultOf(answers: NewCabinetAnswers): string | undefined {
  if (answers.air !== undefined && !WAYS.includes(answers.air)) return `"${answers.air}" is none of ${WAYS.join(', ')}`;
  if (answers.vents !== undefined && !ENDS.includes(answers.vents))
    return `"${answers.vents}" is none of ${ENDS.join(', ')}`;
  const reading = readCabinet('cabinet.yaml', newCabinet(answers));
  return reading.ok ? undefined : told(reading.complaints[0]!);
}

function told({ what, allowed, mend }: Complaint): string {
  return `${what}; allowed: ${allowed}; ${mend}`;
}
