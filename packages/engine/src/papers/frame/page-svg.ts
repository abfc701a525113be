// A page as SVG: ink on white, in millimetres. The same page gives the same bytes.

import { element, escaped, label, short } from '../svg.ts';
import { type Fill, type LineKind, lineLooks, type Mark, type Point } from './mark.ts';
import type { Item, Page } from './page.ts';

export const INK = '#000000';
export const GREY = '#5a5a5a';
export const SHADE = '#ececec';

/** `says` names the picture for those who cannot see it. */
export function pageSvg({ width, height, items }: Page, says: string): string {
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${short(width)}mm" height="${short(height)}mm" viewBox="0 0 ${short(width)} ${short(height)}" role="img" aria-labelledby="title">`,
    element('title', { id: 'title' }, escaped(says)),
    element('style', {}, style()),
    element('rect', { width, height, fill: '#ffffff' }),
    ...items.map(group),
    '</svg>',
    '',
  ].join('\n');
}

function style(): string {
  const kinds = Object.entries(lineLooks).map(
    ([kind, { width, dashes }]) =>
      `.${kind}{stroke:${INK};stroke-width:${width}${dashes.length === 0 ? '' : `;stroke-dasharray:${dashes.join(' ')}`}}`,
  );
  return `text{font-family:'DejaVu Sans',Verdana,sans-serif;fill:${INK};white-space:pre}path,circle{fill:none;stroke-linejoin:round}\n${kinds.join('')}`;
}

function group(item: Item): string {
  if (item.role === 'table')
    return element('g', {}, ...[...item.rules, ...item.head.flat(), ...item.rows.flat(2)].map(drawn));
  if (item.role !== 'figure') return element('g', {}, ...item.marks.map(drawn));
  return element('g', { role: 'img', 'aria-label': item.says }, ...item.marks.map(drawn));
}

function drawn(mark: Mark): string {
  switch (mark.kind) {
    case 'line': {
      const path = mark.points.map((point, at) => `${at === 0 ? 'M' : 'L'}${placed(point)}`).join('');
      return element('path', { class: mark.line, d: mark.closed ? `${path}Z` : path, style: colour(mark.fill) });
    }
    case 'circle':
      return element('circle', {
        class: mark.line,
        cx: mark.at[0],
        cy: mark.at[1],
        r: mark.radius,
        style: colour(mark.fill),
      });
    case 'arc':
      return arc(mark.at, mark.radius, mark.from, mark.to, mark.line);
    case 'text':
      return label(mark.at[0], mark.at[1], mark.text, {
        'font-size': mark.size,
        'text-anchor': mark.align === 'middle' ? 'middle' : mark.align === 'right' ? 'end' : undefined,
        'font-weight': mark.bold ? 'bold' : undefined,
        style: mark.grey ? `fill:${GREY}` : undefined,
        transform: mark.turn === undefined ? undefined : `rotate(${short(mark.turn)} ${placed(mark.at)})`,
      });
  }
}

function arc(at: Point, radius: number, from: number, to: number, line: LineKind): string {
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const d = `M${placed(onCircle(at, radius, from))}A${short(radius)} ${short(radius)} 0 ${large} ${to > from ? 1 : 0} ${placed(onCircle(at, radius, to))}`;
  return element('path', { class: line, d });
}

/** The point of a circle at an angle, degrees clockwise from the right. */
function onCircle([x, y]: Point, radius: number, degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
}

function placed([x, y]: Point): string {
  return `${short(x)} ${short(y)}`;
}

/** Said as a style, as the sheet's own style goes before an attribute. */
function colour(fill: Fill | undefined): string | undefined {
  if (fill === undefined) return undefined;
  return `fill:${{ ink: INK, paper: '#ffffff', shade: SHADE }[fill]}`;
}
