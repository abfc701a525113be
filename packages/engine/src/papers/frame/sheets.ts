// From the content of a paper to its pages: what the paper rests on goes before it, frame and title block round each page.

import { inputLabel } from '../../cabinet/assumed-inputs.ts';
import type { Origins } from '../../cabinet/origin.ts';
import type { Paper, PaperContent, PaperInput, Part } from '../paper.ts';
import { type Block, heading, list, smallPrint } from './block.ts';
import { flow } from './flow.ts';
import { drawingArea, formats, type Item, type Page } from './page.ts';
import { titleBlock } from './title-block.ts';

const NOBODY_MEASURED =
  'Computed from the cabinet file, nothing was measured: check every size on the real thing before you cut, drill, wire or buy.';

/** The pages of a paper. */
export function sheetsOf(paper: Paper, content: PaperContent, input: PaperInput): readonly Page[] {
  const { format, source } = input;
  const area = drawingArea(format);
  const before: Part = { kind: 'written', blocks: basis(paper, content, source.origins) };
  const bodies = together([before, ...content.parts]).flatMap((part): Body[] =>
    part.kind === 'written'
      ? flow(part.blocks, area).map((items) => ({
          items,
          title: part.title ?? paper.title,
          ...(part.scale === undefined ? {} : { scale: part.scale, drawn: true as const }),
        }))
      : [
          {
            items: [{ role: 'figure', says: part.says, marks: part.marks }],
            title: part.title,
            drawn: true,
            ...(part.scale === undefined ? {} : { scale: part.scale }),
          },
        ],
  );
  return bodies.map(({ items, title, scale, drawn }, at): Page => {
    const marks = titleBlock(format, {
      cabinet: source.cabinet.title,
      paper: title,
      file: source.file.replace(/^.*[/\\]/, ''),
      version: input.version,
      caution: `${paper.cautions[0]} ${NOBODY_MEASURED} ${at === 0 ? '' : 'What is assumed: sheet 1.'}`,
      sheet: at + 1,
      sheets: bodies.length,
      ...(scale === undefined ? {} : { scale }),
      ...(drawn && scale !== undefined ? { angle: input.angle } : {}),
      ...(input.date === undefined ? {} : { date: input.date }),
    });
    const round: Item = at === 0 ? { role: 'text', marks } : { role: 'trim', marks };
    return { ...formats[format], items: [round, ...items] };
  });
}

interface Body {
  readonly items: readonly Item[];
  readonly title: string;
  readonly scale?: string;
  readonly drawn?: true;
}

/** Written parts that follow one another share a sheet. */
function together(parts: readonly Part[]): readonly Part[] {
  const joined: Part[] = [];
  for (const part of parts) {
    const last = joined.at(-1);
    if (part.kind === 'written' && part.title === undefined && last?.kind === 'written' && last.title === undefined)
      joined[joined.length - 1] = { kind: 'written', blocks: [...last.blocks, ...part.blocks] };
    else joined.push(part);
  }
  return joined;
}

/** Title, cautions, what is missing and what is assumed. */
function basis(paper: Paper, content: PaperContent, origins: Origins): readonly Block[] {
  const assumed = [...(content.assumes ?? []), ...assumedOf(origins, content.rests ?? [])];
  const missing = content.missing ?? [];
  return [
    heading(paper.title),
    smallPrint(paper.what),
    list(paper.cautions),
    ...(missing.length === 0 ? [] : [heading('Not said in the file, and not guessed here'), list(missing, 'box')]),
    ...(assumed.length === 0 ? [] : [heading('This rests on'), list(assumed)]),
  ];
}

/** Numbers below these paths that nobody gave, each with the reason for its value; those of one reason together. */
function assumedOf(origins: Origins, rests: readonly string[]): readonly string[] {
  const labels = new Map<string, string[]>();
  for (const [path, origin] of origins)
    if (origin.kind === 'assumed' && rests.some((beginning) => path === beginning || path.startsWith(`${beginning}.`)))
      labels.set(origin.why, [...(labels.get(origin.why) ?? []), inputLabel(path)]);
  return [...labels].map(([why, of]) => `${labelsTogether(of)}, assumed: ${why}`);
}

/**
 * Labels of which only the last word differs are told once, with their last words.
 *
 * @example Two axles and a kerf
 * ```ts
 * labelsTogether(['axle of gable', 'axle of ridge', 'kerf']); // => axle of gable, ridge; kerf
 * ```
 */
export function labelsTogether(labels: readonly string[]): string {
  const heads = new Map<string, string[]>();
  for (const label of labels) {
    const at = label.lastIndexOf(' ') + 1;
    heads.set(label.slice(0, at), [...(heads.get(label.slice(0, at)) ?? []), label.slice(at)]);
  }
  return [...heads].map(([head, tails]) => `${head}${tails.join(', ')}`).join('; ');
}
