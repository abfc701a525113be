import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Page, type SheetMark, textWidth } from '@stillair/engine';
import PDFDocument from 'pdfkit';
import { afterAll, describe, expect, it } from 'vitest';
import { fontFile, pagesPdf } from './page-pdf.ts';

const scratch = mkdtempSync(join(tmpdir(), 'stillair-pdf-'));
afterAll(() => rmSync(scratch, { recursive: true }));

const poppler = '/usr/bin/pdftotext';
/** A machine that builds must have it; elsewhere what needs it is left out. */
const canRead = existsSync(poppler) || process.env['CI'] !== undefined;

const words: SheetMark[] = [
  { kind: 'text', at: [30, 40], text: 'kerf 3.2 mm', size: 4 },
  { kind: 'text', at: [120, 60], text: 'Ø 35 × 12, ≤ 0.5 µm, 21 °C – ½ λ', size: 3, align: 'right' },
];
const page: Page = {
  width: 210,
  height: 297,
  items: [
    {
      role: 'trim',
      marks: [
        {
          kind: 'line',
          points: [
            [20, 10],
            [200, 10],
          ],
          line: 'frame',
        },
      ],
    },
    { role: 'text', marks: words },
    { role: 'figure', says: 'a hole', marks: [{ kind: 'circle', at: [60, 100], radius: 10, line: 'outline' }] },
    {
      role: 'table',
      head: [[{ kind: 'text', at: [30, 150], text: 'part', size: 3 }]],
      rows: [[[{ kind: 'text', at: [30, 155], text: 'side', size: 3 }]]],
      rules: [],
    },
  ],
};

describe('pages as PDF', () => {
  it('property: the same pages give the same bytes, and the day of writing is not in them', async () => {
    const [one, two] = [await pagesPdf('Cut list', [page, page]), await pagesPdf('Cut list', [page, page])];
    expect(Buffer.compare(Buffer.from(one), Buffer.from(two))).toBe(0);
    expect(Buffer.from(one).toString('latin1')).not.toMatch(/D:20\d\d|20\d\d-\d\d-/);
  });

  it.runIf(canRead)('cross: another reader finds every sheet, its size, tags and all signs', async () => {
    const path = join(scratch, 'page.pdf');
    writeFileSync(path, await pagesPdf('Cut list', [page, page]));
    const text = spawnSync(poppler, ['-layout', path, '-'], { encoding: 'utf8' });
    expect(text.status).toBe(0);
    for (const said of ['kerf 3.2 mm', 'Ø 35 × 12, ≤ 0.5 µm, 21 °C – ½ λ', 'side']) expect(text.stdout).toContain(said);
    const info = spawnSync('/usr/bin/pdfinfo', [path], { encoding: 'utf8' }).stdout;
    expect(info).toMatch(
      /Title: +Cut list\n[\s\S]*Tagged: +yes[\s\S]*Pages: +2\n[\s\S]*Page size: +595.276 x 841.89 pts \(A4\)/,
    );
    const tree = spawnSync('/usr/bin/pdfinfo', ['-struct', path], { encoding: 'utf8' }).stdout;
    expect(tree).toMatch(/Document[\s\S]*P[\s\S]*Figure[\s\S]*Table[\s\S]*TR[\s\S]*TH[\s\S]*TD/);
    // Places in points: the text begins where it was put, to a tenth of a millimetre.
    const places = spawnSync(poppler, ['-bbox', path, '-'], { encoding: 'utf8' }).stdout;
    const kerf = /xMin="([\d.]+)" yMin="[\d.]+" xMax="[\d.]+" yMax="[\d.]+">kerf</.exec(places);
    expect(Number(kerf?.[1]) * (25.4 / 72)).toBeCloseTo(30, 0);
  });

  it.each([
    [false, 400],
    [true, 700],
  ] as const)('cross: widths of the table are those of the type itself (bold: %s)', (bold, weight) => {
    const doc = new PDFDocument({ font: fontFile(weight) as unknown as string });
    doc.fontSize(10);
    for (const sample of [
      'The quick brown fox, 0123456789',
      'Ø35 × 11.5 ≤ ½ °C µ Δ → ☐ √ ²³',
      'ÄÖÜ ŽŠ éèñ Жук',
      '–—“”’…',
    ])
      expect(textWidth(sample, 10, bold)).toBeCloseTo(doc.widthOfString(sample), 6);
  });
});
