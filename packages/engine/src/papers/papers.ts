// The registry of papers: what `stillair papers` can hand over, in the order in which a builder wants it. A paper is one line here.

import { buyingList } from './buying/paper.ts';
import { careSheet } from './care/paper.ts';
import { commissioning } from './commissioning/paper.ts';
import type { Page } from './frame/page.ts';
import { sheetsOf } from './frame/sheets.ts';
import { arrangement } from './joinery/arrangement.ts';
import { boards } from './joinery/boards.ts';
import { cutList } from './joinery/cut-list.ts';
import { sheetPlans } from './joinery/sheet-plans.ts';
import { templates } from './joinery/templates.ts';
import { labels } from './labels/paper.ts';
import type { FlatFile, Paper, PaperFile, PaperInput, SolidFile } from './paper.ts';
import { printedParts } from './printed/paper.ts';
import { report } from './report/paper.ts';
import { settings } from './settings/paper.ts';
import { weekend } from './weekend/paper.ts';
import { wiring } from './wiring/paper.ts';

export const papers: readonly Paper[] = [
  weekend,
  buyingList,
  arrangement,
  cutList,
  sheetPlans,
  boards,
  templates,
  printedParts,
  wiring,
  settings,
  commissioning,
  careSheet,
  labels,
  report,
];

export interface MadePaper {
  readonly id: string;
  readonly title: string;
  readonly what: string;
  readonly pages: readonly Page[];
  /** Inputs that the file does not give. */
  readonly missing: readonly string[];
  readonly files: readonly PaperFile[];
  readonly flats: readonly FlatFile[];
  readonly solids: readonly SolidFile[];
}

/** A paper with frame and title block on every sheet. */
export async function makePaper(paper: Paper, input: PaperInput): Promise<MadePaper> {
  const content = await paper.make(input);
  return {
    id: paper.id,
    title: paper.title,
    what: paper.what,
    pages: sheetsOf(paper, content, input),
    missing: content.missing ?? [],
    files: content.files ?? [],
    flats: content.flats ?? [],
    solids: content.solids ?? [],
  };
}
