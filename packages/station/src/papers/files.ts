// The files of a paper: its sheets as one PDF and as a picture each, and whatever else it hands over.

import { type MadePaper, pageSvg } from '@stillair/engine';
import type { SetFile } from '../io.ts';
import { flatDxf } from './flat-dxf.ts';
import { pagesPdf } from './page-pdf.ts';
import { solidFiles } from './solid-files.ts';

export async function filesOf(
  { id, title, pages, files, flats, solids }: MadePaper,
  cabinet: string,
): Promise<readonly SetFile[]> {
  return [
    { name: `${id}.pdf`, content: await pagesPdf(`${title}: ${cabinet}`, pages) },
    ...pages.map((page, at) => ({
      name: `svg/${id}-${at + 1}.svg`,
      content: pageSvg(page, `${cabinet}: ${title}, sheet ${at + 1} of ${pages.length}`),
    })),
    ...flats.map(({ name, shapes }) => ({ name: `dxf/${name}.dxf`, content: flatDxf(shapes) })),
    ...(solids.length === 0 ? [] : await solidFiles(solids)),
    ...files,
  ];
}
