// Moving a part: each movement is an edit of the text as it was when the part was gripped.

import { type Dispatch, useCallback, useRef } from 'preact/compat';
import type { Look } from '../engine/protocol.ts';
import type { Action, Work } from '../model/work.ts';
import { moveEdits, type Shift, STILL } from '../sheet/moves.ts';
import type { EngineRef } from './use-engine.ts';

/** Moves start from the text and the cabinet as they were when the part was gripped. */
export function useMove(work: Work, act: Dispatch<Action>, engine: EngineRef) {
  const base = useRef<Grip | undefined>(undefined);
  const turn = useRef(0);
  return useCallback(
    (part: string, shift: Shift, phase: 'first' | 'more' | 'last'): void => {
      if (phase === 'first' && work.look !== undefined)
        base.current = gripped(base.current, part, work.text, work.look);
      const held = base.current;
      if (held === undefined) return;
      if (phase === 'last' && shift.x === 0 && shift.y === 0 && shift.z === 0) return;
      held.moved = shift;
      const edits = moveEdits(held.look.cabinet, part, added(held.from, shift));
      if (edits.length === 0) return;
      const mine = ++turn.current;
      void engine.current?.edit(held.text, edits).then((answer) => {
        if (answer.kind !== 'edited' || mine !== turn.current) return;
        // Looked at while the page still takes in the text.
        engine.current?.look(answer.text);
        // Answers that later movement has overtaken are never shown: the first that is shown is the one to be undone.
        act({ do: 'drag', text: answer.text, first: !held.shown });
        held.shown = true;
        held.made = answer.text;
      });
    },
    [work.look, work.text, act, engine],
  );
}

interface Grip {
  readonly part: string;
  readonly text: string;
  readonly look: Look;
  /** Where earlier movements have taken it that the look does not show yet. */
  readonly from: Shift;
  moved: Shift;
  shown: boolean;
  made?: string;
}

/** A new movement of the same part, before the last one is drawn, goes on from where that one ended. */
function gripped(before: Grip | undefined, part: string, text: string, look: Look): Grip {
  const goesOn = before?.part === part && before.look === look && text === (before.made ?? before.text);
  return goesOn
    ? { ...before, from: added(before.from, before.moved), moved: STILL, shown: false }
    : { part, look, text, from: STILL, moved: STILL, shown: false };
}

function added(a: Shift, b: Shift): Shift {
  return { x: a.x + b.x, y: a.y + b.y, z: a.z + b.z };
}
