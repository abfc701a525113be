// A log beside the cabinet as computed: what was measured as dots, the file as it was as a dashed line, the file put right as a full one.

import type { LogKind } from '../logs/log.ts';
import { placeText } from '../logs/places.ts';
import type { CalibratedColumn, CalibrationStudy } from '../studies/calibrate/calibrate.ts';
import { formatClock, type UnitSystem } from '../units/format.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { decadeScale, linearScale, type Scale } from './scale.ts';
import { element, escaped, label, short } from './svg.ts';

const WIDTH = 960;
const LEFT = 70;
const PLOT = 714;
const HEAD = 86;
const HEIGHT = 170;
const GAP = 46;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}.title{font-size:20px}.faint{fill:${faint}}
.head{font-style:italic;font-size:13px}.tick{font-size:11px;fill:${faint}}.hair{stroke:${hairline};stroke-width:1}.frame{stroke:${ink};stroke-width:.8;fill:none}
.after{fill:none;stroke:${ink};stroke-width:1.6}.before{fill:none;stroke:${ink};stroke-width:1;stroke-dasharray:5 4}.dot{fill:${accent}}`;

interface Shown {
  readonly unit: string;
  readonly of: (si: number) => number;
}

function shownIn(kind: LogKind, units: UnitSystem): Shown {
  if (kind === 'temperature')
    return units === 'metric' ? { unit: '°C', of: (k) => k - 273.15 } : { unit: '°F', of: (k) => k * 1.8 - 459.67 };
  if (kind === 'humidity') return { unit: '%', of: (share) => 100 * share };
  return kind === 'power' ? { unit: 'W', of: (watts) => watts } : { unit: 'as logged, in SI', of: (value) => value };
}

/** The study as a picture; `title` is the cabinet's. */
export function logPicture(
  title: string,
  { columns, log, day }: CalibrationStudy,
  units: UnitSystem = 'metric',
): string {
  const times = columns.flatMap(({ course }) => course.times);
  const span: readonly [number, number] = [Math.min(...times), Math.max(...times)];
  const panels = columns.map((column, at) => panel(column, HEAD + at * (HEIGHT + GAP), span, units));
  const height = HEAD + columns.length * (HEIGHT + GAP) + 6;
  const heading = `${title}: ${log.file} against the day ${day}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${short(height)}" viewBox="0 0 ${WIDTH} ${short(height)}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(heading)),
    element(
      'desc',
      { id: 'desc' },
      escaped(
        columns
          .map(({ name, before, after }) => `${name}: off by ${short(before)} before and ${short(after)} after.`)
          .join(' '),
      ),
    ),
    element('style', {}, style),
    element('rect', { width: WIDTH, height, fill: paper }),
    label(LEFT, 36, heading, { class: 'title' }),
    label(LEFT, 56, 'Dots: measured. Dashes: the file as it was. Line: the file with the values that the log gave.', {
      class: 'faint',
    }),
    ...panels,
    '</svg>',
    '',
  ].join('\n');
}

function panel(
  { name, place, kind, course }: CalibratedColumn,
  top: number,
  span: readonly [number, number],
  units: UnitSystem,
): string {
  const { unit, of } = shownIn(kind, units);
  const values = [...course.measured, ...course.before, ...course.after].map(of);
  const scale = kind === 'concentration' ? decadeScale(values) : linearScale(values, 5);
  const x = (time: number): number => LEFT + (PLOT * (time - span[0])) / Math.max(span[1] - span[0], 1);
  const y = (value: number): number => top + HEIGHT * (1 - scale.share(of(value)));
  const line = (points: readonly number[], kindOfLine: string): string =>
    element('path', {
      class: kindOfLine,
      d: points
        .map((value, at) => `${joins(course.times, at) ? 'L' : 'M'}${short(x(course.times[at]!))} ${short(y(value))}`)
        .join(''),
    });
  const dots = course.measured.map((value, at) =>
    element('circle', { class: 'dot', cx: x(course.times[at]!), cy: y(value), r: 1.7 }),
  );
  return [
    label(LEFT, top - 9, `${name} (${placeText(place)}), ${unit}`, { class: 'head' }),
    ...scale.ticks.map((tick) => tickLine(tick, scale, top)),
    ...hours(span).map((time) =>
      label(x(time), top + HEIGHT + 15, formatClock(time), { class: 'tick', 'text-anchor': 'middle' }),
    ),
    element('rect', { x: LEFT, y: top, width: PLOT, height: HEIGHT, class: 'frame' }),
    line(course.before, 'before'),
    ...dots,
    line(course.after, 'after'),
    label(LEFT + PLOT + 12, y(course.after.at(-1) ?? 0) + 4, 'put right'),
  ].join('\n');
}

function tickLine(tick: number, scale: Scale, top: number): string {
  const y = top + HEIGHT * (1 - scale.share(tick));
  return [
    element('line', { x1: LEFT, y1: y, x2: LEFT + PLOT, y2: y, class: 'hair' }),
    label(LEFT - 8, y + 4, short(tick), { class: 'tick', 'text-anchor': 'end' }),
  ].join('');
}

/** Whether a point goes on from the one before it: not over a gap of hours. */
function joins(times: readonly number[], at: number): boolean {
  return at > 0 && times[at]! - times[at - 1]! < 4 * 3600;
}

function hours([from, to]: readonly [number, number]): number[] {
  const step = [1, 2, 3, 6, 12, 24, 48, 168].find((each) => (to - from) / (each * 3600) <= 10) ?? 336;
  const first = Math.ceil(from / (step * 3600));
  return Array.from(
    { length: Math.max(0, Math.floor(to / (step * 3600)) - first + 1) },
    (_, at) => (first + at) * step * 3600,
  );
}
