// Colour on a terminal, sparing: it only repeats what the words say already.

export interface Ink {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  /** What fails. */
  readonly alarm: (text: string) => string;
  /** What is tight or unknown. */
  readonly caution: (text: string) => string;
}

const plain = (text: string): string => text;
const ESCAPE = String.fromCharCode(27);
const wrapped =
  (on: number, off: number) =>
  (text: string): string =>
    `${ESCAPE}[${on}m${text}${ESCAPE}[${off}m`;

const noInk: Ink = { strong: plain, faint: plain, alarm: plain, caution: plain };
const terminalInk: Ink = {
  strong: wrapped(1, 22),
  faint: wrapped(2, 22),
  alarm: wrapped(31, 39),
  caution: wrapped(33, 39),
};

export function inkFor({ colour }: { readonly colour: boolean }): Ink {
  return colour ? terminalInk : noInk;
}
