// The head of the page, as the title block of a drawing: what it is, from which side it is seen, and what can be unfolded.

import type { Dispatch } from 'preact/compat';
import type { Action, Pane, View, Work } from '../model/work.ts';
import { share, takePng, takeSvg } from './take-out.ts';
import type { Files } from './use-files.ts';

const views: readonly (readonly [View, string])[] = [
  ['front', 'Front'],
  ['side', 'Side'],
  ['plan', 'Plan'],
  ['space', 'Space'],
];

const panes: readonly (readonly [Pane, string])[] = [
  ['day', 'Day'],
  ['options', 'Options'],
  ['text', 'Text'],
  ['part', 'Part'],
  ['ask', 'Ask'],
];

export interface TitleBlockProps {
  readonly work: Work;
  readonly act: Dispatch<Action>;
  readonly files: Files;
  readonly onOwn: () => void;
}

export function TitleBlock({ work, act, files, onOwn }: TitleBlockProps) {
  const { look, view, units, theme } = work;
  const unsaved = work.text !== work.saved;
  return (
    <header className="title-block">
      <div className="name">
        <h1 title={look?.cabinet.title}>{look?.cabinet.title ?? 'Stillair'}</h1>
        <p>
          {work.name}
          {unsaved ? ', changed' : ''}
          {look === undefined ? '' : '; computed, not measured'}
        </p>
      </div>
      <fieldset>
        <legend>File</legend>
        <select
          className="opens"
          aria-label="open a cabinet"
          value=""
          onChange={(event) => {
            const [group, ...rest] = event.currentTarget.value.split(':');
            const name = rest.join(':');
            if (group === 'file') void files.open(name);
            else if (group === 'example') void files.openExample(name);
            else if (group === 'pick') void files.pick();
          }}
        >
          <option value="" disabled>
            Open …
          </option>
          {files.store?.files.map(({ name }) => (
            <option key={name} value={`file:${name}`}>
              {name}
            </option>
          ))}
          {files.store?.examples.map(({ name, title }) => (
            <option key={name} value={`example:${name}`}>
              example: {title ?? name}
            </option>
          ))}
          <option value="pick:">a file of this computer …</option>
        </select>
        <button type="button" onClick={onOwn}>
          My own cabinet
        </button>
        <button type="button" onClick={() => void files.save()} aria-keyshortcuts="Control+S">
          Save
        </button>
        <button
          type="button"
          disabled={work.past.length === 0}
          onClick={() => act({ do: 'undo' })}
          aria-keyshortcuts="Control+Z"
        >
          Undo
        </button>
        <button
          type="button"
          disabled={work.future.length === 0}
          onClick={() => act({ do: 'redo' })}
          aria-keyshortcuts="Control+Y"
        >
          Redo
        </button>
      </fieldset>
      <fieldset>
        <legend>Seen</legend>
        {views.map(([each, label], at) => (
          <button
            key={each}
            type="button"
            aria-pressed={view === each}
            aria-keyshortcuts={String(at + 1)}
            onClick={() => act({ do: 'view', view: each })}
          >
            {label}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend>Unfold</legend>
        {panes.map(([pane, label]) => (
          <button
            key={pane}
            type="button"
            aria-expanded={work.panes.includes(pane)}
            onClick={() => act({ do: 'pane', pane })}
          >
            {label}
          </button>
        ))}
      </fieldset>
      <fieldset>
        <legend className="hidden">Shown in</legend>
        <button type="button" onClick={() => act({ do: 'units', units: units === 'metric' ? 'imperial' : 'metric' })}>
          {units === 'metric' ? 'mm, °C' : 'in, °F'}
        </button>
        <button
          type="button"
          aria-label={`paper: ${theme}; change`}
          onClick={() =>
            act({ do: 'theme', theme: theme === 'system' ? 'light' : theme === 'light' ? 'dark' : 'system' })
          }
        >
          {theme === 'system' ? 'paper' : theme}
        </button>
      </fieldset>
      <details className="take-out">
        <summary>Take out</summary>
        <div>
          <button type="button" onClick={() => takeSvg(work.name)}>
            drawing as SVG
          </button>
          <button type="button" onClick={() => void takePng(work.name)}>
            drawing as PNG
          </button>
          <button type="button" onClick={() => print()}>
            print this page
          </button>
          <button type="button" onClick={() => void share(work.name, work.text)}>
            share the file
          </button>
        </div>
      </details>
      {files.newer !== undefined && (
        <div className="newer" role="alert">
          <p>This file was changed from outside while you were changing it here.</p>
          <button type="button" onClick={files.takeNewer}>
            take the newer one
          </button>
          <button type="button" onClick={files.keepMine}>
            keep mine, and save over it
          </button>
        </div>
      )}
    </header>
  );
}
