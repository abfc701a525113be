// A newer log beside the file, hour by hour: what was measured less what is computed, and since when it is off.

import type { DriftColumn, DriftStudy } from '../studies/drift/drift.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { linearScale } from './scale.ts';
import { element, escaped, label, short } from './svg.ts';

const WIDTH = 960;
const LEFT = 70;
const PLOT = 714;
const HEAD = 86;
const HEIGHT = 150;
const GAP = 46;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}.title{font-size:20px}.faint{fill:${faint}}
.head{font-style:italic;font-size:13px}.tick{font-size:11px;fill:${faint}}.hair{stroke:${hairline};stroke-width:1}.frame{stroke:${ink};stroke-width:.8;fill:none}
.dot{fill:${ink}}.onset{stroke:${accent};stroke-width:1.4}.doubt{fill:${accent};fill-opacity:.12}.usual{stroke:${ink};stroke-width:.7;stroke-dasharray:4 3}`;

const UNIT: Readonly<Record<DriftColumn['kind'], string>> = {
  temperature: 'K',
  humidity: 'share of 1',
  power: 'W',
  concentration: 'of the logarithm',
};

export function driftPicture(title: string, study: DriftStudy): string {
  const { columns, log, day, onset } = study;
  const last = Math.max(...columns.flatMap(({ course }) => course.hours), 1);
  const days = Math.ceil((last + 1) / 24);
  const height = HEAD + columns.length * (HEIGHT + GAP) + 6;
  const heading = `${title}: ${log.file} against the day ${day}`;
  const x = (seconds: number): number => LEFT + (PLOT * seconds) / (days * 86_400);
  const said = study.drifted
    ? 'Off since the upright line; shaded: when it may have begun.'
    : study.tooShort
      ? 'The log is too short to tell a drift.'
      : 'No drift was found.';
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${short(height)}" viewBox="0 0 ${WIDTH} ${short(height)}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(heading)),
    element('desc', { id: 'desc' }, escaped(said)),
    element('style', {}, style),
    element('rect', { width: WIDTH, height, fill: paper }),
    label(LEFT, 36, heading, { class: 'title' }),
    label(LEFT, 56, `Dots: measured less computed, mean of each hour. ${said}`, { class: 'faint' }),
    ...columns.map((column, at) => panel(column, HEAD + at * (HEIGHT + GAP), days, x, onset)),
    '</svg>',
    '',
  ].join('\n');
}

function panel(
  { name, kind, course, noise }: DriftColumn,
  top: number,
  days: number,
  x: (seconds: number) => number,
  onset: DriftStudy['onset'],
): string {
  const scale = linearScale([...course.residuals, 0], 4);
  const y = (value: number): number => top + HEIGHT * (1 - scale.share(value));
  const step = Math.ceil(days / 14);
  const shown = Array.from({ length: Math.ceil(days / step) }, (_, at) => at * step);
  const level = (value: number, line: string): string =>
    element('line', { x1: LEFT, y1: y(value), x2: LEFT + PLOT, y2: y(value), class: line });
  return [
    label(LEFT, top - 9, `${name}, ${UNIT[kind]}`, { class: 'head' }),
    ...scale.ticks.map(
      (tick) =>
        level(tick, 'hair') + label(LEFT - 8, y(tick) + 4, short(tick), { class: 'tick', 'text-anchor': 'end' }),
    ),
    ...shown.map((day) => label(x(day * 86_400), top + HEIGHT + 15, `day ${day + 1}`, { class: 'tick' })),
    ...(onset === undefined
      ? []
      : [
          element('rect', {
            x: x(onset.from),
            y: top,
            width: Math.max(2, x(onset.to) - x(onset.from)),
            height: HEIGHT,
            class: 'doubt',
          }),
          element('line', { x1: x(onset.time), y1: top, x2: x(onset.time), y2: top + HEIGHT, class: 'onset' }),
        ]),
    level(noise.mean, 'usual'),
    ...course.hours.map((hour, at) =>
      element('circle', { class: 'dot', cx: x((hour + 0.5) * 3600), cy: y(course.residuals[at]!), r: 1.7 }),
    ),
    element('rect', { x: LEFT, y: top, width: PLOT, height: HEIGHT, class: 'frame' }),
  ].join('\n');
}
