// Where the text comes from and goes to: the local server, or the browser alone.

export interface FileName {
  readonly name: string;
  readonly title?: string;
}

export interface OpenedText {
  readonly name: string;
  readonly text: string;
  /** Names this state of the file, so that a newer one is never written over. */
  readonly tag?: string;
}

export type SaveAnswer =
  | { readonly ok: true; readonly tag?: string }
  /** Somebody else has changed the file: its newer text. */
  | { readonly ok: false; readonly newer: OpenedText }
  | { readonly ok: false; readonly why: string };

export interface Store {
  readonly kind: 'server' | 'browser';
  readonly files: readonly FileName[];
  readonly examples: readonly FileName[];
  /** What to open first. */
  readonly first?: string;
  readonly writable: boolean;
  readonly open: (name: string) => Promise<OpenedText>;
  readonly openExample: (name: string) => Promise<OpenedText>;
  readonly save: (name: string, text: string, tag: string | undefined) => Promise<SaveAnswer>;
  /** Calls back when a file was changed from outside; gives back how to stop. */
  readonly watch: (changed: (name: string, tag: string) => void) => () => void;
}
