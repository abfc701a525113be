// Keys that work anywhere on the page, but not while somebody writes in a field.

import { useEffect, useRef } from 'preact/compat';
import type { Pane, View } from '../model/work.ts';

export interface Keys {
  readonly undo: () => void;
  readonly redo: () => void;
  readonly save: () => void;
  readonly view: (view: View) => void;
  readonly pane: (pane: Pane) => void;
  readonly letGo: () => void;
}

const views: Readonly<Record<string, View>> = { '1': 'front', '2': 'side', '3': 'plan', '4': 'space' };
const panes: Readonly<Record<string, Pane>> = { d: 'day', o: 'options', t: 'text', a: 'ask' };

export function useKeys(keys: Keys): void {
  const now = useRef(keys);
  now.current = keys;
  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      const control = event.ctrlKey || event.metaKey;
      const key = event.key.toLowerCase();
      if (control && key === 's') act(event, now.current.save);
      else if (writes(event.target)) return;
      else if (control && key === 'z') act(event, event.shiftKey ? now.current.redo : now.current.undo);
      else if (control && key === 'y') act(event, now.current.redo);
      else if (control || event.altKey) return;
      else if (key === 'escape') now.current.letGo();
      else if (views[key] !== undefined) now.current.view(views[key]);
      else if (panes[key] !== undefined) now.current.pane(panes[key]);
    };
    window.addEventListener('keydown', pressed);
    return () => window.removeEventListener('keydown', pressed);
  }, []);
}

function act(event: KeyboardEvent, does: () => void): void {
  event.preventDefault();
  does();
}

function writes(target: EventTarget | null): boolean {
  return target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable="true"]') !== null;
}
