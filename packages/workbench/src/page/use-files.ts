// Opening and saving: which store there is, what is open, and what to do when a file was changed from outside.

import { type Dispatch, useCallback, useEffect, useRef, useState } from 'preact/compat';
import { browserStore, download, pickFile } from '../files/browser-store.ts';
import { keptDraft } from '../files/draft.ts';
import { serverStore } from '../files/server-store.ts';
import type { Store } from '../files/store.ts';
import type { Action, From, Work } from '../model/work.ts';

export interface Files {
  readonly store: Store | undefined;
  readonly open: (name: string) => Promise<void>;
  readonly openExample: (name: string) => Promise<void>;
  readonly pick: () => Promise<void>;
  readonly save: () => Promise<void>;
  /** What is open is an example, not yet changed. */
  readonly isExample: boolean;
  /** A newer text of the open file, that somebody else wrote. */
  readonly newer: string | undefined;
  readonly takeNewer: () => void;
  readonly keepMine: () => void;
}

/** A newcomer lands on the one that shows most. */
const FIRST = 'tool-library.yaml';

function firstExample({ examples }: Store): string {
  return examples.find(({ name }) => name === FIRST)?.name ?? examples[0]!.name;
}

export function useFiles(work: Work, act: Dispatch<Action>): Files {
  const [store, setStore] = useState<Store | undefined>(undefined);
  const [newer, setNewer] = useState<{ readonly text: string; readonly tag?: string } | undefined>(undefined);
  const tag = useRef<string | undefined>(undefined);
  const now = useRef(work);
  now.current = work;

  const opened = useCallback(
    (name: string, text: string, its: string | undefined, from: From): void => {
      tag.current = its;
      setNewer(undefined);
      act({ do: 'open', name, from, text });
      const draft = keptDraft();
      if (draft !== undefined && draft.name === name && draft.text !== text && draft.saved === text)
        act({ do: 'write', text: draft.text });
    },
    [act],
  );
  const failed = useCallback(
    (error: unknown): void => act({ do: 'notice', text: error instanceof Error ? error.message : String(error) }),
    [act],
  );

  useEffect(() => {
    let gone = false;
    void (async () => {
      const found = (await serverStore()) ?? browserStore();
      if (gone) return;
      setStore(found);
      const draft = keptDraft();
      const first = found.first ?? found.files[0]?.name;
      try {
        if (first !== undefined) {
          const { name, text, tag: its } = await found.open(first);
          if (!gone) opened(name, text, its, 'file');
        } else if (draft !== undefined && !found.examples.some(({ name }) => name === draft.name)) {
          opened(draft.name, draft.saved, undefined, 'file');
        } else {
          const { name, text } = await found.openExample(draft?.name ?? firstExample(found));
          if (!gone) opened(name, text, undefined, 'example');
        }
      } catch (error) {
        failed(error);
      }
    })();
    return () => {
      gone = true;
    };
  }, [opened, failed]);

  useEffect(
    () =>
      store?.watch((name, changed) => {
        if (name !== now.current.name || changed === tag.current) return;
        void store.open(name).then((file) => {
          // What this page has just saved itself is no news.
          if (file.text === now.current.saved) tag.current = file.tag;
          else if (file.text === now.current.text) {
            tag.current = file.tag;
            act({ do: 'saved', text: file.text });
          } else if (now.current.text === now.current.saved) opened(name, file.text, file.tag, 'file');
          else setNewer(file);
        }, failed);
      }),
    [store, act, opened, failed],
  );

  const save = async (): Promise<void> => {
    const { name, text, from } = now.current;
    if (store === undefined) return;
    if (store.kind === 'server' && (!store.writable || from === 'example')) {
      download(name, new Blob([text], { type: 'application/yaml' }));
      act({ do: 'saved', text });
      return;
    }
    // What is in no file yet has no tag: it must not meet another file of its name.
    const answer = await store.save(name, text, from === 'own' ? undefined : tag.current);
    if (answer.ok) {
      tag.current = answer.tag;
      act({ do: 'saved', text });
    } else if ('newer' in answer) setNewer(answer.newer);
    else act({ do: 'notice', text: `${name} was not saved: ${answer.why}` });
  };
  return {
    store,
    open: (name) =>
      store?.open(name).then((file) => opened(name, file.text, file.tag, 'file'), failed) ?? Promise.resolve(),
    openExample: (name) =>
      store?.openExample(name).then((file) => opened(name, file.text, undefined, 'example'), failed) ??
      Promise.resolve(),
    pick: async () => {
      const file = await pickFile();
      if (file !== undefined) opened(file.name, file.text, undefined, 'file');
    },
    save,
    isExample: work.from === 'example' && work.text === work.saved,
    newer: newer?.text,
    takeNewer: () => {
      if (newer !== undefined) opened(now.current.name, newer.text, newer.tag, 'file');
    },
    keepMine: () => {
      tag.current = newer?.tag;
      setNewer(undefined);
    },
  };
}
