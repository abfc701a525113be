// Pages as one PDF: the type embedded, tagged so that it can be read aloud, and the same bytes for the same pages.

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  type Cells,
  type Fill,
  GREY,
  INK,
  type Item,
  type LineKind,
  lineLooks,
  type SheetMark as Mark,
  type Page,
  SHADE,
} from '@stillair/engine';
import PDFDocument from 'pdfkit';
import { fromWoff } from './woff.ts';

const POINTS_PER_MM = 72 / 25.4;
/** A PDF must have a date: the first that there is stands for none, so that the same pages give the same bytes. */
const NO_DATE = new Date(0);
/** Kerning and ligatures: without them widths are those in which the text was laid out. */
const FINE_SETTING = ['GSUB', 'GPOS', 'GDEF', 'kern', 'JSTF'];

const fonts = createRequire(import.meta.url);
const opened = new Map<number, Buffer>();

/** Opened once: a set has many papers. */
export function fontFile(weight: 400 | 700): Buffer {
  const known = opened.get(weight);
  if (known !== undefined) return known;
  const path = fonts.resolve(`@fontsource/dejavu-sans/files/dejavu-sans-latin-${weight}-normal.woff`);
  const font = fromWoff(readFileSync(path), FINE_SETTING);
  opened.set(weight, font);
  return font;
}

type Document = InstanceType<typeof PDFDocument>;

export function pagesPdf(title: string, pages: readonly Page[]): Promise<Uint8Array> {
  const [regular, bold] = [fontFile(400), fontFile(700)];
  const doc = new PDFDocument({
    // Else it would look for a type of its own.
    font: regular as unknown as string,
    autoFirstPage: false,
    pdfVersion: '1.7',
    tagged: true,
    displayTitle: true,
    lang: 'en',
    info: { Title: title, Creator: 'stillair', Producer: 'stillair', CreationDate: NO_DATE, ModDate: NO_DATE },
  });
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  const ended = new Promise<Uint8Array>((resolve) => doc.on('end', () => resolve(Buffer.concat(chunks))));
  doc.registerFont('regular', regular);
  doc.registerFont('bold', bold);
  const root = doc.struct('Document');
  doc.addStructure(root);
  for (const { width, height, items } of pages) {
    doc.addPage({ size: [width * POINTS_PER_MM, height * POINTS_PER_MM], margin: 0 });
    doc.scale(POINTS_PER_MM);
    for (const item of items) drawItem(doc, root, item);
  }
  root.end();
  doc.end();
  return ended;
}

type Structure = ReturnType<Document['struct']>;

function drawItem(doc: Document, root: Structure, item: Item): void {
  switch (item.role) {
    case 'trim':
      drawArtifact(doc, item.marks);
      return;
    case 'table':
      drawArtifact(doc, item.rules);
      root.add(table(doc, item.head, item.rows));
      return;
    case 'figure':
      root.add(tagged(doc, 'Figure', item.marks, { alt: item.says }));
      return;
    default:
      root.add(tagged(doc, item.role === 'title' ? 'H1' : item.role === 'heading' ? 'H2' : 'P', item.marks));
  }
}

function drawArtifact(doc: Document, marks: readonly Mark[]): void {
  doc.markContent('Artifact', { type: 'Layout' });
  for (const mark of marks) draw(doc, mark);
  doc.endMarkedContent();
}

function tagged(doc: Document, tag: string, marks: readonly Mark[], options: { alt?: string } = {}): Structure {
  const content = doc.markStructureContent(tag);
  for (const mark of marks) draw(doc, mark);
  doc.endMarkedContent();
  return doc.struct(tag, options, content);
}

function table(doc: Document, head: Cells, rows: readonly Cells[]): Structure {
  const row = (cells: Cells, tag: 'TH' | 'TD'): Structure =>
    doc.struct(
      'TR',
      {},
      cells.map((marks) => tagged(doc, tag, marks)),
    );
  return doc.struct('Table', {}, [row(head, 'TH'), ...rows.map((cells) => row(cells, 'TD'))]);
}

function draw(doc: Document, mark: Mark): void {
  switch (mark.kind) {
    case 'line': {
      const [first, ...others] = mark.points;
      if (first === undefined) return;
      doc.moveTo(...first);
      for (const point of others) doc.lineTo(...point);
      if (mark.closed) doc.closePath();
      finish(doc, mark.line, mark.fill);
      return;
    }
    case 'circle':
      doc.circle(...mark.at, mark.radius);
      finish(doc, mark.line, mark.fill);
      return;
    case 'arc': {
      const [from, to] = [(mark.from * Math.PI) / 180, (mark.to * Math.PI) / 180];
      arcOn(doc).arc(...mark.at, mark.radius, from, to, to < from);
      finish(doc, mark.line, undefined);
      return;
    }
    case 'text': {
      const [x, y] = mark.at;
      doc.font(mark.bold ? 'bold' : 'regular').fontSize(mark.size);
      const width = mark.align === undefined || mark.align === 'left' ? 0 : doc.widthOfString(mark.text);
      const left = x - (mark.align === 'middle' ? width / 2 : width);
      doc.save();
      if (mark.turn !== undefined) doc.rotate(mark.turn, { origin: [x, y] });
      doc.fillColor(mark.grey ? GREY : INK);
      doc.text(mark.text, left, y, { lineBreak: false, baseline: 'alphabetic' });
      doc.restore();
    }
  }
}

/** The types do not know of arcs. */
function arcOn(doc: Document): {
  arc(x: number, y: number, radius: number, from: number, to: number, backwards: boolean): Document;
} {
  return doc as never;
}

function finish(doc: Document, line: LineKind | undefined, fill: Fill | undefined): void {
  if (fill !== undefined) doc.fillColor(fill === 'ink' ? INK : fill === 'shade' ? SHADE : '#ffffff');
  if (line === undefined) {
    if (fill !== undefined) doc.fill();
    return;
  }
  const { width, dashes } = lineLooks[line];
  doc.lineWidth(width).lineJoin('round').strokeColor(INK);
  if (dashes.length === 0) doc.undash();
  // The types know of one dash only.
  else doc.dash(dashes as unknown as number, {});
  if (fill === undefined) doc.stroke();
  else doc.fillAndStroke();
}
