// The paper of printed parts: what each is for, of which filament, how it lies on the bed, and what it costs the air.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Finding } from '../../judge/finding.ts';
import { fileNames } from '../file-name.ts';
import { type Block, heading, list, paragraph, smallPrint } from '../frame/block.ts';
import type { Mark } from '../frame/mark.ts';
import type { Paper, SolidFile } from '../paper.ts';
import { partsCalledFor } from './called-for.ts';
import { type Choice, materialFor } from './material.ts';
import { partPicture } from './picture.ts';
import { type Printing, printingOf } from './pieces.ts';
import type { PrintedPart } from './printed-part.ts';

/** Side of a picture, mm. */
const PICTURE = 46;

interface Asked {
  readonly part: PrintedPart;
  readonly choice: Choice;
  readonly printing: Printing;
}

export const printedParts: Paper = {
  id: 'printed-parts',
  title: 'Printed parts',
  what: 'Parts made to measure for this cabinet, as solids to print (3MF and STL), with filament, orientation and the loss of pressure of each.',
  cautions: [
    'Printed parts burn and soften: none carries mains terminals, none touches a lamp or heater; where a code asks for metal, take metal.',
    'Deburr and pull at each part before it is trusted with a load: a print may hide a weak layer.',
  ],
  judged: true,
  make({ source: { cabinet }, judgement }) {
    const findings = judgement?.findings ?? [];
    const { parts, notDrawn } = partsCalledFor(cabinet, findings);
    const asked = merged(
      parts.map((part) => ({
        part,
        choice: materialFor(part.bay, findings),
        printing: printingOf(part, cabinet),
      })),
    );
    const blocks =
      asked.length === 0
        ? [paragraph('Nothing in this file calls for a printed part.')]
        : allBlocks(asked, cabinet, findings);
    return {
      parts: [{ kind: 'written', blocks }],
      missing: notDrawn.map(({ what, missing }) => `${what}: ${missing}`),
      assumes: [
        'lines of 0.45 mm from a nozzle of 0.4 mm; sliding fits 0.25 mm on each side: print one small part first and measure it',
        'trade sizes of fans and screws, from memory: measure yours',
      ],
      solids: solidsOf(asked),
    };
  },
};

/** Losses of each place, one after another. */
function edits({ loss }: PrintedPart, { loss: more }: PrintedPart): Pick<PrintedPart, 'loss'> {
  if (loss === undefined) return {};
  return { loss: more?.edits === undefined ? loss : { ...loss, edits: [...(loss.edits ?? []), ...more.edits] } };
}

/** The same solid of the same filament for several places is one part to print. */
function merged(asked: readonly Asked[]): Asked[] {
  const kinds = new Map<string, Asked>();
  for (const one of asked) {
    const { part, choice } = one;
    const key = JSON.stringify([part.shape, choice.material]);
    const before = kinds.get(key);
    const known = before?.part;
    if (before === undefined || known === undefined) {
      kinds.set(key, one);
      continue;
    }
    const both = (of: (each: PrintedPart) => readonly string[]): readonly string[] => [
      ...new Set([...of(known), ...of(part)]),
    ];
    kinds.set(key, {
      ...before,
      choice:
        choice.because.length > 0 && choice.because !== before.choice.because
          ? { ...choice, because: `${before.choice.because}; ${choice.because}` }
          : choice,
      part: {
        ...known,
        count: known.count + part.count,
        title: `${known.title}, ${part.title}`,
        sizedFrom: both(({ sizedFrom }) => sizedFrom),
        check: both(({ check }) => check),
        ...edits(known, part),
      },
    });
  }
  return [...kinds.values()];
}

function solidsOf(asked: readonly Asked[]): SolidFile[] {
  const pieces = asked.flatMap(({ part, printing }) =>
    printing.pieces.map((piece) => ({ ...piece, count: part.count })),
  );
  const names = fileNames(pieces.map(({ id }) => id));
  return pieces.map(({ shape, count }, at) => ({ name: names[at]!, shape, count }));
}

function allBlocks(asked: readonly Asked[], cabinet: Cabinet, findings: readonly Finding[]): Block[] {
  const names = fileNames(asked.map(({ part }) => part.id));
  return [
    heading('To print'),
    {
      kind: 'table',
      columns: [
        { head: 'file' },
        { head: 'pieces', align: 'right' },
        { head: 'size, mm' },
        { head: 'cm³ each', align: 'right' },
        { head: 'of' },
        { head: 'where', share: 0.34 },
      ],
      rows: asked.map(({ part, choice, printing }, at) => [
        names[at]!,
        printing.pieces.length > 1 ? `${part.count} x ${printing.pieces.length}` : String(part.count),
        part.size.map((side) => Math.round(10 * side) / 10).join(' x '),
        part.volume === undefined ? '' : (part.volume / 1000).toFixed(part.volume < 10_000 ? 1 : 0),
        choice.material ?? 'see below',
        printing.says,
      ]),
    },
    smallPrint('Volumes are of the full solid; with a sparse filling a part takes less.'),
    ...asked.flatMap((one) => partBlocks(one)),
    ...(findings.length === 0
      ? [paragraph(`Nothing of ${cabinet.title} was simulated for this paper: filaments are not chosen.`)]
      : []),
  ];
}

function partBlocks({ part, choice, printing }: Asked): Block[] {
  const { loss } = part;
  const marks = partPicture(part.shape, part.size, PICTURE);
  return [
    heading(part.count > 1 ? `${part.count} x ${part.title}` : part.title),
    {
      kind: 'picture',
      width: PICTURE,
      height: lowest(marks),
      says: `${part.title}, ${part.size.map((side) => Math.round(side)).join(' x ')} mm`,
      marks,
    },
    list([
      part.why,
      `sized from: ${part.sizedFrom.join('; ')}`,
      `filament: ${choice.material ?? 'open'}: ${choice.because}`,
      `on the bed: ${part.lies}; ${printing.says}`,
      `thinnest wall ${part.thinnest.toFixed(1)} mm`,
      ...(loss === undefined
        ? []
        : [
            `air: K ${loss.factor.toFixed(2)} on ${(loss.area * 1e4).toFixed(1)} cm² (${loss.formula}; ${loss.source})`,
            ...(loss.edits ?? []).map((edit) => `to compute with it, as an edit of an option: ${JSON.stringify(edit)}`),
          ]),
    ]),
    ...(part.check.length === 0 ? [] : [list(part.check, 'box')]),
  ];
}

function lowest(marks: readonly Mark[]): number {
  return Math.max(0, ...marks.flatMap((mark) => (mark.kind === 'line' ? mark.points.map(([, y]) => y) : [])));
}
