// The day of a cabinet as a picture: ink on paper, one accent for what is beyond a limit, lines told apart by their dashes
// and named where they end. A pure text of SVG: the same day gives the same bytes.

import type { DayRun } from '../trades/measure.ts';
import { formatClock } from '../units/format.ts';
import {
  type Band,
  dashes,
  dayPanels,
  dayStrips,
  type Level,
  type Line,
  type Mark,
  type Panel,
  type Pen,
  type Strip,
  type Wording,
} from './day-panels.ts';
import { labelPlaces } from './label-places.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { decadeScale, linearScale, type Scale, timeScale } from './scale.ts';
import { type Attributes, element, escaped, label, short } from './svg.ts';

const WIDTH = 960;
const LEFT = 70;
const RIGHT = 176;
const PLOT = WIDTH - LEFT - RIGHT;
const HEAD = 78;
const STRIP = 19;
const GAP = 40;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}
.title{font-size:20px}.faint{fill:${faint}}.head{font-style:italic;font-size:13px}.tick{font-size:11px;fill:${faint};font-variant-numeric:tabular-nums}
.alarm{fill:${accent}}.line{fill:none;stroke:${ink};stroke-width:1.4;stroke-linejoin:round}.over{fill:none;stroke:${accent};stroke-width:2.4}
.hair{stroke:${hairline};stroke-width:1}.frame{stroke:${ink};stroke-width:.8;fill:none}.level{stroke:${accent};stroke-width:1.2;stroke-dasharray:12 3}.mean{stroke-width:.7;stroke-dasharray:4 3}
.mark{stroke:${ink};stroke-width:.7;stroke-dasharray:1 3}.flag{fill:${ink}}
.job{fill:${paper};stroke:${ink};stroke-width:1}.running,.open{fill:${ink}}.lead{stroke:${faint};stroke-width:.6}`;

/** Draws one simulated day; `units` changes what temperatures are written in. */
export function dayPicture(run: DayRun, wording: Wording = { units: 'metric' }): string {
  const day = run.cabinet.days[run.day]!;
  const time = timeScale(day.length);
  const strips = dayStrips(run);
  const panels = dayPanels(run, wording);
  const drawn: string[] = [];
  const stripsTop = HEAD;
  drawn.push(...strips.map((strip, at) => drawStrip(strip, stripsTop + at * STRIP, time)));
  let top = stripsTop + strips.length * STRIP + GAP;
  for (const [at, panel] of panels.entries()) {
    drawn.push(drawPanel(panel, top, time, at));
    top += panel.height + GAP;
  }
  const bottom = top - GAP;
  const height = bottom + 58;
  const title = `${run.cabinet.title}: ${day.title}`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${short(height)}" viewBox="0 0 ${WIDTH} ${short(height)}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(title)),
    element('desc', { id: 'desc' }, escaped(describe(strips, panels))),
    element('style', {}, style),
    element('defs', {}, hatch),
    element('rect', { width: WIDTH, height, fill: paper }),
    label(LEFT, 36, title, { class: 'title' }),
    label(LEFT, 56, 'Computed from the cabinet file; nothing here was measured.', { class: 'faint' }),
    hourLines(time, stripsTop, bottom),
    ...drawn,
    timeAxis(time, bottom),
    '</svg>',
    '',
  ].join('\n');
}

/** A label may stand out of a short band, so that it can be read. */
const SHORTEST_LABEL = 110;

/** Thin strokes for what is wanted: paper shows through, so that lines over it stay clear. */
const hatch = element(
  'pattern',
  { id: 'wanted', width: 6, height: 6, patternUnits: 'userSpaceOnUse', patternTransform: 'rotate(45)' },
  element('line', { x1: 0, y1: 0, x2: 0, y2: 6, stroke: '#a9a494', 'stroke-width': 1 }),
);

function drawStrip({ label: name, kind, bars }: Strip, top: number, time: Scale): string {
  const middle = top + STRIP / 2;
  const shapes = bars.flatMap(({ start, end, share, label: text }) => {
    const x = LEFT + PLOT * time.share(start);
    const width = Math.max(kind === 'open' ? 2.5 : 1, LEFT + PLOT * time.share(end) - x);
    const height = (kind === 'job' ? 15 : 9) * share;
    const bar = element('rect', {
      x,
      y: kind === 'job' ? middle - height / 2 : middle + 4.5 - height,
      width,
      height,
      class: kind,
    });
    if (text === undefined) return [bar];
    return [bar, label(x + 5, middle + 4, cutTo(text, width - 8), { class: 'tick' })];
  });
  const baseline = element('line', { x1: LEFT, y1: middle + 4.5, x2: LEFT + PLOT, y2: middle + 4.5, class: 'hair' });
  return [baseline, ...shapes, label(LEFT + PLOT + 12, middle + 4, cutTo(name, RIGHT - 16))].join('\n');
}

function drawPanel(panel: Panel, top: number, time: Scale, at: number): string {
  const { height, lines, bands, levels, marks } = panel;
  const values = [
    ...lines.flatMap(({ points }) => points.map(([, value]) => value)),
    ...bands.flatMap(({ low, high }) => [low, high]),
    ...levels.map(({ value }) => value),
  ];
  const scale = panel.scale === 'decades' ? decadeScale(values) : linearScale(values, Math.round(height / 28));
  const x = (seconds: number) => LEFT + PLOT * time.share(seconds);
  const y = (value: number) => top + height * (1 - scale.share(value));
  const ends = [
    ...lines.map((line) => ({
      text: line.label,
      at: y(line.points.at(-1)?.[1] ?? 0),
      stroke: { class: 'line', ...stroke(line.pen) },
      class: undefined,
    })),
    ...levels.map((level) => ({
      text: level.label,
      at: y(level.value),
      stroke: { class: levelClass(level) },
      class: 'alarm',
    })),
  ];
  const places = labelPlaces(
    ends.map((end) => end.at),
    14,
    top + 2,
    top + height - 2,
  );
  return [
    label(LEFT, top - 9, `${panel.title}, ${panel.unit}`, { class: 'head' }),
    ...(panel.note === undefined
      ? []
      : [label(LEFT + PLOT, top - 9, panel.note, { class: 'tick', 'text-anchor': 'end' })]),
    ...scale.ticks.flatMap((tick) => [
      element('line', { x1: LEFT, y1: y(tick), x2: LEFT + PLOT, y2: y(tick), class: 'hair' }),
      label(LEFT - 8, y(tick) + 4, tickText(tick, scale, panel.scale), { class: 'tick', 'text-anchor': 'end' }),
    ]),
    ...bands.map((band) => drawBand(band, x, y)),
    ...levels.map((level) => {
      const at = y(level.value);
      return element('line', { x1: LEFT, y1: at, x2: LEFT + PLOT, y2: at, class: levelClass(level) });
    }),
    ...drawMarks(marks, x, top, height),
    ...lines.flatMap((line, index) => drawLine(line, x, y, `over-${at}-${index}`, top)),
    element('line', { x1: LEFT, y1: top, x2: LEFT, y2: top + height, class: 'frame' }),
    ...ends.flatMap((end, index) => {
      const place = places[index]!;
      const text = label(LEFT + PLOT + 40, place + 4, cutTo(end.text, RIGHT - 44), { class: end.class });
      const lead = element('line', { x1: LEFT + PLOT + 1, y1: end.at, x2: LEFT + PLOT + 9, y2: place, class: 'lead' });
      const sample = { x1: LEFT + PLOT + 10, y1: place, x2: LEFT + PLOT + 34, y2: place };
      return [lead, element('line', { ...sample, ...end.stroke }), text];
    }),
  ].join('\n');
}

function drawBand(
  { start, end, low, high, label: text }: Band,
  x: (s: number) => number,
  y: (v: number) => number,
): string {
  const box = { x: x(start), y: y(high), width: x(end) - x(start), height: y(low) - y(high) };
  const shown = cutTo(text, Math.max(box.width - 8, SHORTEST_LABEL));
  // The words stand on paper of their own, or the strokes would run through them.
  const ground = { x: box.x + 3, y: box.y + 3, width: textLength(shown, 11) + 6, height: 15, fill: paper };
  return [
    element('rect', { ...box, fill: 'url(#wanted)' }),
    ...(shown === '' ? [] : [element('rect', ground), label(box.x + 6, box.y + 14, shown, { class: 'tick' })]),
  ].join('\n');
}

function drawLine(line: Line, x: (s: number) => number, y: (v: number) => number, id: string, top: number): string[] {
  const d = pathThrough(line.points.map(([time, value]) => [x(time), y(value)]));
  const path = element('path', { d, class: 'line', ...stroke(line.pen) });
  const { alarmAbove } = line;
  if (alarmAbove === undefined || line.points.every(([, value]) => value <= alarmAbove)) return [path];
  const above = element('rect', { x: LEFT, y: top - 4, width: PLOT, height: Math.max(0, y(alarmAbove) - top + 4) });
  return [path, element('clipPath', { id }, above), element('path', { d, class: 'over', 'clip-path': `url(#${id})` })];
}

function levelClass({ ofMean = false }: Level): string {
  return ofMean ? 'level mean' : 'level';
}

/** A dotted line down the panel under a small flag; the name stands on that side of the flag where it meets no other, if there is one. */
function drawMarks(marks: readonly Mark[], x: (s: number) => number, top: number, height: number): string[] {
  const sorted = [...marks].sort((a, b) => a.time - b.time);
  let taken = LEFT;
  return sorted.flatMap(({ time, label: text }, index) => {
    const at = x(time);
    const next = index + 1 < sorted.length ? x(sorted[index + 1]!.time) : LEFT + PLOT;
    const length = textLength(text, 11) + 12;
    const side = at + length <= next ? 1 : at - length >= taken ? -1 : 0;
    taken = at + (side > 0 ? length : 6);
    return [
      element('line', { x1: at, y1: top, x2: at, y2: top + height, class: 'mark' }),
      element('path', { d: `M${short(at - 3)} ${short(top)}h6l-3 5z`, class: 'flag' }),
      ...(side === 0
        ? []
        : [label(at + 6 * side, top + 9, text, { class: 'tick', 'text-anchor': side < 0 ? 'end' : undefined })]),
    ];
  });
}

function stroke(pen: Pen | undefined): Attributes {
  return { 'stroke-dasharray': pen === undefined ? undefined : dashes[pen] };
}

/** Points that lie on the straight way between their neighbours, to a twentieth of a unit, are left out. */
function pathThrough(points: readonly (readonly [number, number])[]): string {
  const kept: (readonly [number, number])[] = [];
  for (const point of points) {
    const [before, last] = kept.slice(-2);
    if (before !== undefined && last !== undefined && onTheWay(before, last, point)) kept.pop();
    kept.push(point);
  }
  return kept.map(([px, py], at) => `${at === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('');
}

function onTheWay(
  [ax, ay]: readonly [number, number],
  [bx, by]: readonly [number, number],
  [cx, cy]: readonly [number, number],
) {
  if (cx === ax) return cx === bx && by >= Math.min(ay, cy) && by <= Math.max(ay, cy);
  return Math.abs(ay + ((cy - ay) * (bx - ax)) / (cx - ax) - by) < 0.05;
}

function hourLines(time: Scale, top: number, bottom: number): string {
  return time.ticks
    .map((tick) => LEFT + PLOT * time.share(tick))
    .map((x) => element('line', { x1: x, y1: top, x2: x, y2: bottom, class: 'hair' }))
    .join('\n');
}

function timeAxis(time: Scale, bottom: number): string {
  return [
    element('line', { x1: LEFT, y1: bottom, x2: LEFT + PLOT, y2: bottom, class: 'frame' }),
    ...time.ticks.map((tick) =>
      label(LEFT + PLOT * time.share(tick), bottom + 17, formatClock(tick), { class: 'tick', 'text-anchor': 'middle' }),
    ),
    label(LEFT + PLOT / 2, bottom + 38, 'time of day, h:min', { class: 'faint', 'text-anchor': 'middle' }),
  ].join('\n');
}

const superscripts = '⁰¹²³⁴⁵⁶⁷⁸⁹';

/** Decades as powers of ten once one of them lies beyond 0.01 to 1000. */
function tickText(value: number, { ticks }: Scale, kind: Panel['scale']): string {
  const plain = ticks.every((tick) => tick >= 0.01 && tick <= 1000);
  if (kind === 'straight' || plain) return `${value}`.replace('-', '−');
  const power = Math.floor(Math.log10(value) + 1e-9);
  const times = Math.round(value / 10 ** power);
  return `${times === 1 ? '' : `${times}·`}10${power < 0 ? '⁻' : ''}${String(Math.abs(power)).replaceAll(/\d/g, (digit) => superscripts[Number(digit)]!)}`;
}

/** Width of a text as set, about: serif letters are half as wide as tall. */
function textLength(text: string, size = 12): number {
  return text.length * size * 0.52;
}

function cutTo(text: string, width: number): string {
  if (textLength(text) <= width) return text;
  const letters = Math.floor(width / (12 * 0.52)) - 1;
  return letters < 3 ? '' : `${text.slice(0, letters)}…`;
}

/** The picture in words, for those who do not see it. */
function describe(strips: readonly Strip[], panels: readonly Panel[]): string {
  const happenings = strips
    .filter(({ bars }) => bars.length > 0)
    .map(({ label: name, bars }) => `${name} ${bars.length === 1 ? 'once' : `${bars.length} times`}`);
  const peaks = panels.map(({ title, unit, lines, levels }) => {
    const tops = lines.map((line) => {
      const highest = line.points.reduce(
        (best, point) => (point[1] > best[1] ? point : best),
        line.points[0] ?? [0, 0],
      );
      return `${line.label} up to ${Number(highest[1].toPrecision(3))} at ${formatClock(highest[0])}`;
    });
    const limits = levels.map((level) => `${level.label} ${Number(level.value.toPrecision(3))}`);
    return `${title}, ${unit}: ${[...tops, ...limits].join('; ')}.`;
  });
  return [`Over the day: ${happenings.join(', ') || 'nothing is switched'}.`, ...peaks].join(' ');
}
