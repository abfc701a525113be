// The name of a row: a button that marks its part on the sheet, or plain words where it has none there.

import type { AnswerProps } from './answer.ts';

export interface PartNameProps extends Pick<AnswerProps<'compare'>, 'onPart' | 'partOf'> {
  readonly says: string;
  /** As a finding or the file names it. */
  readonly name?: string | undefined;
  readonly day?: string | undefined;
  readonly time?: number | undefined;
}

export function PartName({ says, name, day, time, onPart, partOf }: PartNameProps) {
  const part = name === undefined ? undefined : partOf(name, day);
  if (part === undefined) return <>{says}</>;
  return (
    <button type="button" className="part-name" data-points-at={part} onClick={() => onPart(part, day, time)}>
      {says}
    </button>
  );
}
