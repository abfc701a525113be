// What the page asks of the engine only while somebody looks at it: words for the editor, keys of a part, an option, how a number came
// about, the lines of a day.

import type { DayBands } from '@stillair/engine';
import { type Dispatch, useCallback, useEffect, useRef, useState } from 'preact/compat';
import type { DayLines, Field, Look, Reason, Vocabulary } from '../engine/protocol.ts';
import { type Action, bandsKey, type Work } from '../model/work.ts';
import { splitOnce } from '../sheet/solids.ts';
import type { EngineRef } from './use-engine.ts';

/** Words for the editor and names to add parts by, while one of the two is open. */
export function useWords(work: Work, engine: EngineRef): Vocabulary | undefined {
  const [words, setWords] = useState<Vocabulary | undefined>(undefined);
  const open = work.panes.includes('text') || work.panes.includes('part');
  const { look, text } = work;
  const latest = useRef(text);
  latest.current = text;
  useEffect(() => {
    if (open && look !== undefined)
      void engine.current?.words(latest.current).then(({ vocabulary }) => setWords(vocabulary));
  }, [open, look, engine]);
  return words;
}

/** The option that is laid over the sheet or beside it, drawn and answered. */
export function useTraced(work: Work, engine: EngineRef, act: Dispatch<Action>): Look | undefined {
  const [seen, setSeen] = useState<Look | undefined>(undefined);
  const { look, text } = work;
  const option = work.traced?.option;
  const latest = useRef(text);
  latest.current = text;
  useEffect(() => {
    setSeen(undefined);
    if (option === undefined || look === undefined) return undefined;
    let late = false;
    void engine.current?.option(latest.current, option).then((answer) => {
      if (late) return;
      if (answer.kind === 'looked') setSeen(answer);
      else
        act({
          do: 'notice',
          text: `${option} cannot be drawn: ${answer.complaints[0]?.what ?? 'its edits cannot be done'}`,
        });
    });
    return () => {
      late = true;
    };
  }, [option, look, engine, act]);
  return option === undefined ? undefined : seen;
}

/** Gives how a finding came about; nothing when its text has been overtaken. */
export type AskReason = (finding: string) => Promise<Reason | undefined>;

/** Another function whenever there are new findings: what it gave before is of the old ones. */
export function useAskReason({ look, lookedAt }: Work, engine: EngineRef): AskReason {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same text looked at anew has new findings.
  return useCallback(
    async (finding) => (lookedAt === undefined ? undefined : engine.current?.reason(lookedAt, finding)),
    [look, lookedAt, engine],
  );
}

/** What is drawn of the day at the foot of the page, while that is open. Lines of an older text stay until new ones come. */
export function useLines({ look, lookedAt, day, units, panes }: Work, engine: EngineRef): DayLines | undefined {
  const [lines, setLines] = useState<{ readonly of: string; readonly drawn: DayLines } | undefined>(undefined);
  const id = panes.includes('day') ? look?.days[day]?.sheet.day : undefined;
  const of = `${id} ${units}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the same text looked at anew has new lines.
  useEffect(() => {
    if (id === undefined || lookedAt === undefined) return undefined;
    let late = false;
    void engine.current?.lines(lookedAt, id, units).then((drawn) => {
      if (!late && drawn !== undefined) setLines({ of, drawn });
    });
    return () => {
      late = true;
    };
  }, [id, look, lookedAt, units, engine]);
  return lines?.of === of ? lines.drawn : undefined;
}

/** Bands about the lines of the day, while they are shown; asked for once the remarks have theirs, which everybody reads. */
export function useDayBands(work: Work, engine: EngineRef): DayBands | undefined {
  const { text, look, lookedAt, day, units, panes, banded, pending, dayBands } = work;
  const shown = look?.days[day]?.sheet.day;
  const known = shown === undefined ? undefined : dayBands[bandsKey(shown, units)];
  const wanted = panes.includes('day') && lookedAt === text && (banded || !pending) && known === undefined;
  useEffect(() => {
    if (wanted && shown !== undefined) engine.current?.dayBands(text, shown, units);
  }, [wanted, text, shown, units, engine]);
  return known;
}

/** Keys of the picked part, while they are shown. */
export function useFields(work: Work, engine: EngineRef): readonly Field[] {
  const [fields, setFields] = useState<readonly Field[]>([]);
  const { picked, text, panes } = work;
  const path = picked === undefined || !panes.includes('part') ? undefined : pathInFile(picked);
  useEffect(() => {
    if (path === undefined) return undefined;
    let late = false;
    void engine.current?.inspect(text, path).then((answer) => {
      if (!late) setFields(answer.fields);
    });
    return () => {
      late = true;
    };
  }, [path, text, engine]);
  return path === undefined ? [] : fields;
}

/** Doors and boards stand elsewhere in the file than in the cabinet. */
function pathInFile(part: string): string {
  const [group, id] = splitOnce(part);
  if (group === 'doors') return `cabinet.doors.${id}`;
  return group === 'partitions' ? `shelves.${id}` : part;
}
