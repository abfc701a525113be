// Taking papers out: with the local server all that the command writes, made there; without it what a browser makes.

import type { UnitSystem } from '@stillair/engine';
import { strToU8, zipSync } from 'fflate';
import { useEffect, useRef, useState } from 'preact/compat';
import type { PaperShown } from '../engine/protocol.ts';
import { download } from '../files/browser-store.ts';
import { type PapersProgress, papersOfServer } from '../files/server-papers.ts';
import { isServed } from '../files/server-store.ts';

export function TakePapers({
  papers,
  name,
  text,
  units,
}: {
  readonly papers: readonly PaperShown[];
  readonly name: string;
  readonly text: string;
  readonly units: UnitSystem;
}) {
  const elsewhere = papers.reduce((sum, each) => sum + each.elsewhere, 0);
  const sheets = (
    <button
      type="button"
      onClick={() => download(`${name}.zip`, new Blob([zipped(papers)], { type: 'application/zip' }))}
    >
      take out all sheets as one file
    </button>
  );
  if (isServed())
    return (
      <div className="ask-controls">
        <WholeSet name={name} text={text} units={units} />
        {sheets}
        <span>Sheets are pictures (SVG); all papers are those, and PDF, DXF, 3MF and STL.</span>
      </div>
    );
  return (
    <p>
      {sheets} It holds the sheets as pictures (SVG), and the lists and notes beside them. Only the command makes the
      sheets as PDF{elsewhere === 0 ? '' : `, and ${elsewhere} flat shapes and solids as DXF, 3MF and STL`}:{' '}
      <code>stillair papers FILE -o FOLDER</code>
    </p>
  );
}

type Making = { readonly progress?: PapersProgress; readonly stop: AbortController };

function WholeSet({ name, text, units }: { readonly name: string; readonly text: string; readonly units: UnitSystem }) {
  const [making, setMaking] = useState<Making | undefined>(undefined);
  const [end, setEnd] = useState('');
  const running = useRef<AbortController | undefined>(undefined);
  // Whoever goes elsewhere wants them no more.
  useEffect(() => () => running.current?.abort(), []);
  const make = async (): Promise<void> => {
    const stop = new AbortController();
    running.current = stop;
    setEnd('');
    setMaking({ stop });
    try {
      const zip = await papersOfServer(text, units, stop.signal, (progress) => setMaking({ stop, progress }));
      download(`${name}.zip`, zip);
      setEnd(`Done: ${(zip.size / 1e6).toFixed(1)} MB.`);
    } catch (error) {
      setEnd(
        stop.signal.aborted ? 'Stopped: no papers were made.' : `No papers came of it: ${(error as Error).message}.`,
      );
    } finally {
      setMaking(undefined);
    }
  };
  return (
    <>
      <button type="button" disabled={making !== undefined} onClick={() => void make()}>
        take out all papers
      </button>
      {making !== undefined && (
        <span className="course">
          <progress
            aria-label="how far the papers are"
            {...(making.progress === undefined ? {} : { value: making.progress.done, max: making.progress.all })}
          />
          <span>{making.progress?.what ?? 'beginning'}</span>
          <button type="button" className="quiet" onClick={() => making.stop.abort()}>
            stop the papers
          </button>
        </span>
      )}
      <span role="status" className="papers-end">
        {end}
      </span>
    </>
  );
}

/** The same names as the command gives them. */
function zipped(papers: readonly PaperShown[]): Uint8Array<ArrayBuffer> {
  const files: Record<string, Uint8Array> = {};
  for (const { id, sheets, files: beside } of papers) {
    for (const [at, sheet] of sheets.entries()) files[`svg/${id}-${at + 1}.svg`] = strToU8(sheet);
    for (const { name, content } of beside) files[name] = typeof content === 'string' ? strToU8(content) : content;
  }
  return zipSync(files) as Uint8Array<ArrayBuffer>;
}
