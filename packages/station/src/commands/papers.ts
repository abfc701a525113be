// stillair papers FILE -o FOLDER: what is cut, bought, drilled, wired and checked, as PDF, SVG and DXF.

import {
  type Angle,
  type FormatName,
  type Judgement,
  type MadePaper,
  makePaper,
  type Paper,
  type ReadSource,
  papers as registry,
  type UnitSystem,
} from '@stillair/engine';
import type { ExitCode, Io, SetWritten } from '../io.ts';
import { judged } from '../judged.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { filesOf } from '../papers/files.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { unknownName } from '../unknown-name.ts';
import { VERSION } from '../version.ts';
import { withOption } from '../with-option.ts';

export interface PapersOptions {
  readonly out: string;
  readonly option?: string;
  readonly only?: string;
  readonly angle: Angle;
  readonly paper: FormatName;
  readonly date?: string;
  readonly force?: boolean;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function papers(file: string, options: PapersOptions, io: Io): Promise<ExitCode> {
  const chosen = choice(options.only);
  if (typeof chosen === 'string') {
    io.err(`stillair papers: ${chosen}`);
    return 2;
  }
  const loaded = await loadCabinet(file, 'papers', io);
  if (loaded === undefined) return 2;
  const source = withOption(loaded, options.option);
  if (typeof source === 'string') {
    io.err(`stillair papers: ${source}`);
    return 2;
  }
  const judgement = chosen.some((paper) => paper.judged) ? await judged(source, options, io) : undefined;
  if (io.stop.aborted) {
    io.err('Stopped: no paper was written.');
    return 130;
  }
  const made = await makeAll(chosen, source, judgement, options, io);
  const files = (await Promise.all(made.map((paper) => filesOf(paper, source.cabinet.title)))).flat();
  const written = await io.writeSet(options.out, files, { force: options.force === true });
  if (!written.ok) {
    io.err(`stillair papers: ${refusal(written, options.out)}`);
    return 2;
  }
  const names = files.map(({ name }) => name);
  if (options.json) {
    const told = made.map(({ id, title, pages, missing }) => ({ id, title, sheets: pages.length, missing }));
    io.out(
      JSON.stringify(
        {
          version: 1,
          file,
          cabinet: source.cabinet.title,
          folder: options.out,
          papers: told,
          files: names,
          removed: written.removed,
        },
        null,
        2,
      ),
    );
  } else io.out(inWords(made, names, written.removed, source, options, io));
  return made.some(({ missing }) => missing.length > 0) ? 3 : 0;
}

/** The papers that are asked for, or which of the names is none. */
function choice(only: string | undefined): readonly Paper[] | string {
  if (only === undefined) return registry;
  const names = only.split(',').map((name) => name.trim());
  const known = registry.map(({ id }) => id);
  const strange = names.find((name) => !known.includes(name));
  if (strange !== undefined) return unknownName('paper', strange, known);
  return registry.filter(({ id }) => names.includes(id));
}

async function makeAll(
  chosen: readonly Paper[],
  source: ReadSource,
  judgement: Judgement | undefined,
  { units, angle, paper: format, date }: PapersOptions,
  io: Io,
): Promise<readonly MadePaper[]> {
  const made: MadePaper[] = [];
  for (const [at, paper] of chosen.entries()) {
    io.progress(`${paper.title}: paper ${at + 1} of ${chosen.length}`);
    made.push(
      await makePaper(paper, {
        source,
        version: VERSION,
        units,
        angle,
        format,
        ...(date === undefined ? {} : { date }),
        ...(judgement === undefined ? {} : { judgement }),
      }),
    );
  }
  io.progress('');
  return made;
}

function refusal(written: Exclude<SetWritten, { ok: true }>, folder: string): string {
  if ('problem' in written) return `cannot write into ${folder}: ${written.problem}`;
  const [first, ...others] = written.foreign;
  const more = others.length === 0 ? '' : ` and ${others.length} more`;
  return `${folder} holds ${first}${more}, changed since or not from here; nothing was written (--force replaces)`;
}

/** More files of a folder than these are counted, not named. */
const NAMED = 6;

function besideWords(names: readonly string[]): string {
  const folders = new Map<string, string[]>();
  for (const name of names) {
    const folder = name.slice(0, name.lastIndexOf('/') + 1);
    folders.set(folder, [...(folders.get(folder) ?? []), name]);
  }
  return [...folders]
    .map(([folder, inside]) => (inside.length > NAMED ? `${inside.length} files in ${folder}` : inside.join(', ')))
    .join(', ');
}

function inWords(
  made: readonly MadePaper[],
  names: readonly string[],
  removed: readonly string[],
  source: ReadSource,
  { out }: PapersOptions,
  io: Io,
): string {
  const rows = made.map(({ id, title, pages }) => [`${id}.pdf`, title, String(pages.length)]);
  const beside = names.filter((name) => !/^[^/]+\.pdf$|^svg\//.test(name));
  const missing = [...new Set(made.flatMap((paper) => paper.missing))];
  return [
    `${source.cabinet.title}: ${names.length} files in ${out}`,
    table([{ head: 'file' }, { head: 'what it is', least: 12 }, { head: 'sheets', align: 'right' }], rows, io.columns),
    ...(beside.length === 0 ? [] : [hanging('', `Beside them: ${besideWords(beside)}.`, io.columns)]),
    ...(removed.length === 0
      ? []
      : [hanging('', `Taken away, as this cabinet no longer has them: ${removed.join(', ')}.`, io.columns)]),
    ...(missing.length === 0
      ? []
      : [
          `Not said in the file, and not guessed:\n${missing.map((each) => hanging('- ', each, io.columns)).join('\n')}`,
        ]),
    hanging(
      '',
      'Check every size on the real thing before you cut, drill or wire. These papers are no substitute for local codes and licensed practice.',
      io.columns,
    ),
  ].join('\n\n');
}
