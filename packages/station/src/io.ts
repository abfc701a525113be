// Everything a command may touch outside itself. Tests hand in a fake; `main.ts` hands in the real one.

/** A file's text, or why there is none, in words that follow "cannot read NAME: ". */
export type Reading = { readonly ok: true; readonly text: string } | { readonly ok: false; readonly problem: string };

/** A file in pieces, for those too large to be held; a piece is good until the next is asked for. Asking throws when the disk fails. */
export type Stream =
  | { readonly ok: true; readonly bytes: number; readonly pieces: AsyncIterable<Uint8Array> }
  | { readonly ok: false; readonly problem: string };

/** What the workbench's server is asked to open: a file, a folder, or without either the examples. */
export interface Serving {
  readonly path: string | undefined;
  /** The port to take; the usual one, or the next that is free, unless given. */
  readonly port: number | undefined;
}

/** A server that runs until it is closed, or why there is none, in whole words. */
export type Served =
  | { readonly ok: true; readonly address: string; readonly close: () => Promise<void> }
  | { readonly ok: false; readonly problem: string };

export interface SetFile {
  /** Below the folder of the set, with `/` between folders. */
  readonly name: string;
  readonly content: string | Uint8Array;
}

/** `removed`: files of an earlier set that this one no longer has. `foreign`: what is there and did not come from here. */
export type SetWritten =
  | { readonly ok: true; readonly removed: readonly string[] }
  | { readonly ok: false; readonly foreign: readonly string[] }
  | { readonly ok: false; readonly problem: string };

export interface Io {
  read(path: string): Promise<Reading>;
  /** Opens a file of any size. */
  stream(path: string): Promise<Stream>;
  /**
   * Returns what went wrong, in words that follow "cannot write NAME: ", or undefined when it is written.
   * Something that is there already is replaced, with `'whole'` as a whole or not at all, or with `'new'` left alone and
   * complained of.
   */
  write(path: string, text: string, how?: 'new' | 'whole'): Promise<string | undefined>;
  /** Writes a whole set of files into a folder, and nothing of it when something there is not ours and not to be replaced. */
  writeSet(folder: string, files: readonly SetFile[], how: { readonly force: boolean }): Promise<SetWritten>;
  /** Opens the workbench to browsers on this machine. */
  serve(asked: Serving): Promise<Served>;
  /** Results; whole lines. */
  out(text: string): void;
  /** Complaints; whole lines. */
  err(text: string): void;
  /** Shows how far a long piece of work is, in place of what was shown before; an empty text takes it away. */
  progress(text: string): void;
  /** The date where the person is, as year-month-day. */
  today(): string;
  /** Asks the person at the terminal; undefined when there is nobody to ask or no more input. */
  ask(question: string): Promise<string | undefined>;
  /** Results go to a person's terminal, not to a file or another program. */
  readonly isTerminal: boolean;
  /** Columns to lay text out in. */
  readonly columns: number;
  readonly colour: boolean;
  /** Aborted when the person wants to stop. */
  readonly stop: AbortSignal;
}

/**
 * 0 all holds; 1 something fails; 2 the command or a file is wrong; 3 nothing fails, but something is tight or unknown;
 * 70 a fault of this program; 130 stopped by the person.
 */
export type ExitCode = 0 | 1 | 2 | 3 | 70 | 130;
