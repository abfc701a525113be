// Many hands: tasks of one piece of work spread over helping workers, and over the one that asks. Outcomes come in the order of the
// tasks, whoever did them, and are the same however many hands there are.

import type { Evaluate, LogPlan } from '@stillair/engine';
import type { Help, Helped, Runs } from './protocol.ts';

/** How far a piece of work is, and whether it is still wanted. */
export interface Hooks {
  readonly progress: (done: number, all: number) => void;
  readonly stop: () => boolean;
}

export type Spread<Task, Result> = (
  tasks: readonly Task[],
  hooks: Parameters<Evaluate>[1],
) => Promise<readonly (Result | undefined)[]>;

/** What of a worker is needed here. */
export interface Helper {
  postMessage: (help: Help) => void;
  onmessage: ((event: MessageEvent<Helped>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
}

export interface Work<Task, Result> {
  readonly runs: Runs;
  readonly text: string;
  readonly plan?: LogPlan;
  /** Does a task in this worker. */
  readonly here: (task: Task) => Result;
  readonly heard?: (task: Task, outcome: Result) => void;
}

export interface Hands {
  readonly spread: <Task, Result>(work: Work<Task, Result>) => Spread<Task, Result>;
}

/** With fewer tasks than this, starting a helper would cost more than it saves. */
const FEW = 4;

export function openHands(helpers: number, create: () => Helper): Hands {
  let started: Hand[] | undefined;
  let works = 0;
  return {
    spread: ({ runs, text, plan, here, heard }) => {
      const work = ++works;
      const common = { work, runs, text, ...(plan === undefined ? {} : { plan }) };
      return async (tasks, { finished, stop }) => {
        const outcomes: ReturnType<typeof here>[] = new Array(tasks.length);
        let next = 0;
        const take = (): number | undefined => (stop() || next >= tasks.length ? undefined : next++);
        const keep = (at: number, outcome: ReturnType<typeof here>): void => {
          outcomes[at] = outcome;
          heard?.(tasks[at]!, outcome);
          finished();
        };
        const byMyself = async (): Promise<void> => {
          for (let at = take(); at !== undefined; at = take()) {
            keep(at, here(tasks[at]!));
            await turn();
          }
        };
        const by = async (hand: Hand): Promise<void> => {
          while (!hand.gone) {
            const at = take();
            if (at === undefined) return;
            const answer = await hand.ask({ ...common, task: tasks[at]! });
            keep(at, answer === undefined ? here(tasks[at]!) : (answer.outcome as ReturnType<typeof here>));
          }
        };
        if (tasks.length >= FEW) started ??= Array.from({ length: helpers }, () => handOf(create()));
        await Promise.all([byMyself(), ...(tasks.length >= FEW ? (started ?? []) : []).map(by)]);
        return outcomes;
      };
    },
  };
}

interface Hand {
  readonly gone: boolean;
  /** Nothing when the helper cannot do it: its fault, or that of the task, then shows where it is done instead. */
  readonly ask: (help: Omit<Help, 'kind' | 'ticket'>) => Promise<Helped | undefined>;
}

function handOf(helper: Helper): Hand {
  const waiting = new Map<number, (answer: Helped | undefined) => void>();
  let gone = false;
  let tickets = 0;
  helper.onmessage = ({ data }) => {
    waiting.get(data.ticket)?.(data);
    waiting.delete(data.ticket);
  };
  helper.onerror = (event) => {
    event.preventDefault?.();
    gone = true;
    for (const answer of waiting.values()) answer(undefined);
    waiting.clear();
  };
  return {
    get gone() {
      return gone;
    },
    ask: (help) =>
      new Promise((resolve) => {
        const ticket = ++tickets;
        waiting.set(ticket, resolve);
        helper.postMessage({ kind: 'help', ticket, ...help });
      }),
  };
}

/** Lets messages in. A timer of nothing would wait 4 ms once it is set again and again. */
export function turn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}
