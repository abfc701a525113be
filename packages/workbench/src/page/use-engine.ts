// The engine beside the page: asked whenever the text changes, its answers put where the page's knowledge is.

import { type Dispatch, useEffect, useRef } from 'preact/compat';
import { type EngineClient, openEngine } from '../engine/engine-client.ts';
import type { Action, Work } from '../model/work.ts';

/** Absent until the page stands. */
export interface EngineRef {
  readonly current: EngineClient | undefined;
}

export function useEngine(work: Work, act: Dispatch<Action>): EngineRef {
  const engine = useRef<EngineClient | undefined>(undefined);
  useEffect(() => {
    const opened = openEngine((answer) => act({ do: 'hear', answer }));
    engine.current = opened;
    return () => opened.close();
  }, [act]);
  const { text } = work;
  useEffect(() => {
    if (text !== '') engine.current?.look(text);
  }, [text]);
  return engine;
}
