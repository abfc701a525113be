// The page: a sheet with remarks in its margin. Everything else unfolds when it is asked for.

import type { BriefFinding, Edit } from '@stillair/engine';
import { lazy, Suspense, useCallback, useEffect, useMemo, useReducer, useState } from 'preact/compat';
import type { StudyName, Wishes } from '../engine/protocol.ts';
import { keepDraft, keepWishes, keptWishes } from '../files/draft.ts';
import type { Store } from '../files/store.ts';
import { emptyWork, type Pane, reduce, type Work } from '../model/work.ts';
import { freshId } from '../options/fresh-id.ts';
import { Remarks } from '../remarks/remarks.tsx';
import { Legend } from '../sheet/legend.tsx';
import { markedParts } from '../sheet/marked-parts.ts';
import { Sheet } from '../sheet/sheet.tsx';
import { partOfFinding } from '../sheet/solids.ts';
import { whatIsSeen } from '../start/what-is-seen.ts';
import { Complaints } from './complaints.tsx';
import { DayShown } from './day-shown.tsx';
import { Leaders } from './leaders.tsx';
import { TitleBlock } from './title-block.tsx';
import { useAskReason, useDayBands, useFields, useLines, useTraced, useWords } from './use-asked.ts';
import { useDark } from './use-dark.ts';
import { useEngine } from './use-engine.ts';
import { useFiles } from './use-files.ts';
import { useKeys } from './use-keys.ts';
import { useMove } from './use-move.ts';
import { useSteady } from './use-steady.ts';

const AskPane = lazy(() => import('../ask/ask-pane.tsx').then(({ AskPane: found }) => ({ default: found })));
const DayStrip = lazy(() => import('../day/day-strip.tsx').then(({ DayStrip: found }) => ({ default: found })));
const OptionsPane = lazy(() =>
  import('../options/options-pane.tsx').then(({ OptionsPane: found }) => ({ default: found })),
);
const PartPane = lazy(() => import('../parts/part-pane.tsx').then(({ PartPane: found }) => ({ default: found })));
const Questions = lazy(() => import('../start/questions.tsx'));
const SpaceView = lazy(() => import('../space/space-view.tsx'));
const TextPane = lazy(() => import('../text/text-pane.tsx'));

/** The same at every rendering. */
const NONE: readonly never[] = [];
const UNMARKED: Readonly<Record<string, string>> = {};
const stay = (): void => undefined;

/** Only of a file that the server has, not of an example or a text that is in no file. */
function servedJobFiles(store: Store | undefined, { name, from }: Work): string | undefined {
  const known = store?.first === name || store?.files.some((file) => file.name === name) === true;
  return store?.kind === 'server' && from === 'file' && known
    ? new URL(`api/job-file?name=${encodeURIComponent(name)}`, document.baseURI).href
    : undefined;
}

export function App() {
  const [work, act] = useReducer(reduce, { ...emptyWork, ...keptWishes() });
  const engine = useEngine(work, act);
  const files = useFiles(work, act);
  const dark = useDark(work.theme);
  const [asking, setAsking] = useState(false);
  const [shownPanels, setShownPanels] = useState<readonly string[] | undefined>(undefined);

  useEffect(() => {
    if (work.text !== '') keepDraft({ name: work.name, text: work.text, saved: work.saved });
  }, [work.name, work.text, work.saved]);
  useEffect(() => keepWishes({ units: work.units, theme: work.theme }), [work.units, work.theme]);

  const { text } = work;
  const edit = useCallback(
    async (edits: readonly Edit[]): Promise<void> => {
      const answer = await engine.current?.edit(text, edits);
      if (answer?.kind === 'edited') {
        // Looked at while the page still takes in the text.
        engine.current?.look(answer.text);
        act({ do: 'write', text: answer.text });
      } else if (answer?.kind === 'refused') act({ do: 'notice', text: answer.why });
    },
    [engine, text],
  );
  const move = useMove(work, act, engine);
  useKeys({
    undo: () => act({ do: 'undo' }),
    redo: () => act({ do: 'redo' }),
    save: () => void files.save(),
    view: (view) => act({ do: 'view', view }),
    pane: (pane) => act({ do: 'pane', pane }),
    letGo: () => act({ do: 'pick' }),
  });

  const { look, findings } = work;
  const days = look?.days.length ?? 1;
  const partOf = useCallback(
    (finding: BriefFinding) =>
      look === undefined ? undefined : partOfFinding(look.cabinet, finding.part, finding.day),
    [look],
  );
  const marked = useMemo(() => markedParts(findings, partOf), [findings, partOf]);
  const point = useSteady((finding: BriefFinding): void => {
    const part = partOf(finding);
    if (part !== undefined) act({ do: 'pick', part });
    const day = look?.days.findIndex(({ sheet }) => sheet.day === finding.day) ?? -1;
    if (day >= 0) act({ do: 'day', day });
    if (finding.at !== undefined) act({ do: 'time', time: finding.at });
  });
  const keepOption = (title: string, edits: readonly Edit[]): void => {
    const id = freshId(title, Object.keys(look?.cabinet.options ?? {}));
    void edit([{ add: { [`options.${id}`]: { title, edits } } }]);
    act({ do: 'pane', pane: 'options', open: true });
  };
  const tryIt = useSteady((finding: BriefFinding, at: number, keep: boolean): void => {
    const { says, edits } = finding.tried[at]!;
    if (!keep) void edit(edits);
    else keepOption(says, edits);
  });
  const ask = (study: StudyName, wishes: Partial<Wishes> = {}): void => {
    act({ do: 'ask', study });
    engine.current?.ask(text, study, wishes);
  };
  const pointAtPart = (part: string, day?: string, time?: number): void => {
    act({ do: 'pick', part });
    const at = look?.days.findIndex(({ sheet }) => sheet.day === day) ?? -1;
    if (at >= 0) act({ do: 'day', day: at });
    if (time !== undefined) act({ do: 'time', time });
  };
  const pick = useCallback(
    (part: string | undefined) => act({ do: 'pick', ...(part === undefined ? {} : { part }) }),
    [],
  );
  const unfold = useCallback(
    (finding: string | undefined) => act({ do: 'unfold', ...(finding === undefined ? {} : { finding }) }),
    [],
  );
  const stopJudging = useCallback(() => engine.current?.stop('judge'), [engine]);
  const goOn = useSteady(() => {
    act({ do: 'judge' });
    engine.current?.judge(text);
  });
  const why = useAskReason(work, engine);
  const lines = useLines(work, engine);
  const words = useWords(work, engine);
  const fields = useFields(work, engine);
  const bands = useDayBands(work, engine);
  const traced = useTraced(work, engine, act);
  const beside = work.traced?.beside === true ? traced : undefined;
  const has = (pane: Pane): boolean => work.panes.includes(pane);
  const day = look?.days[work.day];
  const logged = work.asked.calibrate?.result;
  return (
    <div className="page" data-panes={work.panes.join(' ')} data-answered={work.answered}>
      <a className="skip" href="#remarks-title">
        To the remarks
      </a>
      <TitleBlock work={work} act={act} files={files} onOwn={() => setAsking(true)} />
      <main>
        {has('text') && (
          <section className="text-pane" aria-label="the text of the cabinet file">
            <Suspense fallback={<p className="waiting">Opening the text …</p>}>
              <TextPane
                text={work.text}
                complaints={work.complaints}
                vocabulary={words}
                onText={(written) => act({ do: 'write', text: written })}
              />
            </Suspense>
          </section>
        )}
        {asking && (
          <Suspense fallback={<p className="waiting">One moment …</p>}>
            <Questions
              onText={(answered) => act({ do: 'own', text: answered })}
              onDone={() => setAsking(false)}
              onLeave={() => {
                setAsking(false);
                const [first] = files.store?.examples ?? [];
                if (first !== undefined) void files.openExample(first.name);
              }}
            />
          </Suspense>
        )}
        {has('part') && look !== undefined && (
          <Suspense fallback={<p className="waiting">One moment …</p>}>
            <PartPane
              part={work.picked}
              cabinet={look.cabinet}
              vocabulary={words}
              fields={fields}
              findings={findings.filter((finding) => finding.verdict !== 'told' && partOf(finding) === work.picked)}
              units={work.units}
              days={days}
              onEdit={(edits) => void edit(edits)}
              onAdd={(edits, part) => void edit(edits).then(() => act({ do: 'pick', part }))}
              onFinding={(finding) => {
                act({ do: 'unfold', finding: finding.id });
                point(finding);
              }}
              onClose={() => act({ do: 'pane', pane: 'part', open: false })}
            />
          </Suspense>
        )}
        <div className={beside === undefined ? 'drawing' : 'drawing pair'}>
          {look !== undefined && (
            <DayShown days={look.days} shown={work.day} onDay={(at) => act({ do: 'day', day: at })} />
          )}
          {look !== undefined && day !== undefined && work.view !== 'space' && (
            <>
              <Sheet
                cabinet={look.cabinet}
                day={day}
                time={work.time}
                view={work.view}
                units={work.units}
                dark={dark}
                picked={work.picked}
                traced={work.traced?.beside === false ? traced?.cabinet : undefined}
                heading={beside === undefined ? undefined : 'as it stands'}
                marked={marked}
                onPick={pick}
                onMove={move}
              />
              {beside !== undefined && work.traced !== undefined && (
                <Sheet
                  cabinet={beside.cabinet}
                  day={beside.days[work.day] ?? day}
                  time={work.time}
                  view={work.view}
                  units={work.units}
                  dark={dark}
                  heading={work.traced.option}
                  picked={work.picked}
                  marked={UNMARKED}
                  onPick={pick}
                  onMove={stay}
                />
              )}
            </>
          )}
          {look !== undefined && day !== undefined && work.view === 'space' && (
            <Suspense fallback={<p className="waiting">Opening the view in space …</p>}>
              <SpaceView
                cabinet={look.cabinet}
                day={day}
                time={work.time}
                dark={dark}
                picked={work.picked}
                onPick={pick}
              />
            </Suspense>
          )}
          {look !== undefined && <Legend dark={dark} units={work.units} />}
          {look === undefined && work.complaints.length === 0 && <p className="waiting">Reading the cabinet …</p>}
          {work.complaints.length > 0 && <Complaints complaints={work.complaints} stale={look !== undefined} />}
        </div>
        <Remarks
          findings={findings}
          pending={work.pending}
          banded={work.banded}
          cut={work.cut}
          progress={work.progress}
          units={work.units}
          days={days}
          why={why}
          opened={work.opened}
          onOpen={unfold}
          partOf={partOf}
          onPoint={point}
          onTry={tryIt}
          onStop={stopJudging}
          onGoOn={goOn}
          uncertain={look?.uncertain ?? NONE}
          seen={files.isExample && look !== undefined ? whatIsSeen(look.cabinet) : undefined}
        />
      </main>
      {has('options') && look !== undefined && (
        <Suspense fallback={<p className="waiting">One moment …</p>}>
          <OptionsPane
            look={look}
            asked={work.asked.compare}
            text={text}
            units={work.units}
            onCompare={() => ask('compare')}
            onStop={() => engine.current?.stop('ask')}
            traced={work.traced}
            onTrace={(option, beside) => act({ do: 'trace', beside, ...(option === undefined ? {} : { option }) })}
            onTake={(option) => void edit(look.cabinet.options[option]!.edits)}
          />
        </Suspense>
      )}
      {has('ask') && look !== undefined && (
        <Suspense fallback={<p className="waiting">One moment …</p>}>
          <AskPane
            look={look}
            text={text}
            faulty={work.complaints.length > 0}
            units={work.units}
            asked={work.asked}
            served={servedJobFiles(files.store, work)}
            question={work.question}
            onQuestion={(study) => act({ do: 'question', study })}
            onAsk={ask}
            onStop={() => engine.current?.stop('ask')}
            onPart={pointAtPart}
            partOf={(name, on) => partOfFinding(look.cabinet, name, on ?? '')}
            onKeep={keepOption}
            onEdit={(edits) => void edit(edits)}
          />
        </Suspense>
      )}
      {has('day') && day !== undefined && lines !== undefined && (
        <section className="foot" aria-label="the day">
          <Suspense fallback={<p className="waiting">One moment …</p>}>
            <DayStrip
              day={day}
              lines={lines}
              logged={logged}
              bands={bands}
              time={work.time}
              onTime={(time) => act({ do: 'time', time })}
              shown={shownPanels ?? lines.panels.slice(0, 2).map(({ title }) => title)}
              onShow={(title, show) => {
                const before = shownPanels ?? lines.panels.slice(0, 2).map((panel) => panel.title);
                setShownPanels(show ? [...before, title] : before.filter((each) => each !== title));
              }}
            />
          </Suspense>
        </section>
      )}
      {beside === undefined && (
        <Leaders opened={work.opened} moved={[work.look, work.view, work.opened, work.panes, work.findings]} />
      )}
      <div className="notice" role="alert">
        {work.notice !== undefined && (
          <p>
            {work.notice}{' '}
            <button type="button" onClick={() => act({ do: 'notice' })}>
              close
            </button>
          </p>
        )}
      </div>
    </div>
  );
}
