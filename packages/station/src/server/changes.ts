// Noticing that files of the session change on disk, whoever changes them. Looks only while somebody listens.

import { type FSWatcher, watch } from 'node:fs';
import { stat } from 'node:fs/promises';
import { findFile } from './disk-file.ts';
import { listFiles, placeOf, type Session } from './session.ts';

/** What a file is now, or that there is none any more. */
export type Change = { readonly name: string; readonly etag: string } | { readonly gone: string };

export type Hear = (change: Change) => void;

export interface Changes {
  /** Tells what every file is now, then each change. Returns what ends it. */
  listen(hear: Hear): () => void;
}

export interface Noticing {
  /** Calls back at any stir in the folder; returns what ends that, or undefined where it cannot be. */
  readonly stirs: (folder: string, stirred: () => void) => (() => void) | undefined;
  /** So long it must be quiet before a stir is looked into, ms: programs write in several steps. */
  readonly quiet: number;
  /** So often it is looked anyhow, ms: network disks and linked files stir nothing. */
  readonly every: number;
}

export const usualNoticing: Noticing = { stirs: stirsOfFolder, quiet: 100, every: 2000 };

interface Seen {
  readonly etag: string;
  /** What a change of the file changes too, save for two in the same tick of the clock. */
  readonly sign: string;
}

export function changesOf(session: Session, { stirs, quiet, every }: Noticing = usualNoticing): Changes {
  const listeners = new Set<Hear>();
  let seen: ReadonlyMap<string, Seen> = new Map();
  let looking: Promise<void> = Promise.resolve();
  let rest = () => {};

  const tell = (change: Change) => {
    for (const hear of listeners) hear(change);
  };
  const look = (thoroughly: boolean) => {
    looking = looking
      .then(async () => {
        const now = await lookAt(session, thoroughly ? new Map() : seen);
        for (const change of difference(seen, now)) tell(change);
        seen = now;
      })
      .catch(() => undefined); // the folder itself is gone or shut; the next look may find it again
    return looking;
  };
  const wake = () => {
    let settling: NodeJS.Timeout | undefined;
    const stop = stirs(session.folder, () => {
      clearTimeout(settling);
      settling = setTimeout(() => void look(true), quiet);
    });
    const polling = setInterval(() => void look(false), every);
    rest = () => {
      stop?.();
      clearTimeout(settling);
      clearInterval(polling);
      seen = new Map();
    };
    void look(true);
  };

  return {
    listen(hear) {
      for (const [name, { etag }] of seen) hear({ name, etag });
      listeners.add(hear);
      if (listeners.size === 1) wake();
      return () => {
        if (listeners.delete(hear) && listeners.size === 0) rest();
      };
    },
  };
}

/** What the files are now; one whose sign is as before is not read again. */
async function lookAt(session: Session, before: ReadonlyMap<string, Seen>): Promise<Map<string, Seen>> {
  const now = new Map<string, Seen>();
  for (const { name } of await listFiles(session)) {
    const sign = await signOf(session, name);
    const known = before.get(name);
    if (known !== undefined && known.sign === sign) {
      now.set(name, known);
      continue;
    }
    const found = await findFile(session, name);
    if (found.kind === 'file') now.set(name, { etag: found.etag, sign });
  }
  return now;
}

async function signOf(session: Session, name: string): Promise<string> {
  const path = await placeOf(session, name);
  const facts = path === undefined ? undefined : await stat(path, { bigint: true }).catch(() => undefined);
  return facts === undefined ? '' : [facts.dev, facts.ino, facts.size, facts.mtimeNs, facts.ctimeNs].join(' ');
}

function difference(before: ReadonlyMap<string, Seen>, now: ReadonlyMap<string, Seen>): Change[] {
  const changed = [...now].filter(([name, { etag }]) => before.get(name)?.etag !== etag);
  const gone = [...before.keys()].filter((name) => !now.has(name));
  return [...changed.map(([name, { etag }]) => ({ name, etag })), ...gone.map((name) => ({ gone: name }))];
}

function stirsOfFolder(folder: string, stirred: () => void): (() => void) | undefined {
  let watcher: FSWatcher;
  try {
    watcher = watch(folder, { persistent: false }, stirred);
  } catch {
    return undefined; // no more watches to be had, or none for this kind of disk
  }
  watcher.on('error', () => watcher.close());
  return () => watcher.close();
}
