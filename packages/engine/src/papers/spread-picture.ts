// How sure the findings of a cabinet are, as a picture: what the options change, the verdicts that are open, what to measure.
// A pure text of SVG: the same study gives the same bytes.

import type { FindingSpread } from '../studies/spread/finding-spread.ts';
import type { Measurement } from '../studies/spread/measuring.ts';
import type { OptionSpread } from '../studies/spread/option-differences.ts';
import type { SpreadStudy } from '../studies/spread/spread.ts';
import { STANDING } from '../trades/measure.ts';
import { formatBand, formatQuantity, type UnitSystem } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';
import { percentText } from '../units/words.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { linearScale, type Scale } from './scale.ts';
import { element, escaped, label, short } from './svg.ts';

const WIDTH = 960;
const LEFT = 316;
const PLOT = 340;
const RIGHT = LEFT + PLOT + 16;
const ROW = 22;
const GAP = 46;
/** Rows of each panel at most. */
const MOST = 16;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}
.title{font-size:20px}.faint{fill:${faint}}.head{font-style:italic;font-size:14px}.tick{font-size:11px;fill:${faint};font-variant-numeric:tabular-nums}
.band{stroke:${ink};stroke-width:5;stroke-opacity:.35}.middle{stroke:${ink};stroke-width:2.4}.level{stroke:${accent};stroke-width:1.4}
.hair{stroke:${hairline};stroke-width:1}.bar{fill:${ink};fill-opacity:.75}.order{fill:none;stroke:${ink};stroke-width:1}`;

export function spreadPicture(study: SpreadStudy, title: string, units: UnitSystem = 'metric'): string {
  const panels = [
    { head: 'Limits broken, 10 to 90 %', rows: optionRows(study) },
    { head: 'Verdicts that are open: left of the line the limit is kept', rows: findingRows(study, units) },
    {
      head: 'What to measure: wrong calls fewer; verdicts solid, orders of options in outline',
      rows: measureRows(study),
    },
  ].filter(({ rows }) => rows.length > 0);
  let top = 92;
  const drawn = panels.map(({ head, rows }) => {
    const made = [label(24, top, head, { class: 'head' }), ...rows.map((row, at) => row(top + 16 + at * ROW))];
    top += 16 + rows.length * ROW + GAP;
    return made.join('\n');
  });
  const height = top;
  const told = `${study.samples.ran} samples of ${study.inputs} uncertain inputs. Computed from the cabinet file; nothing here was measured.`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${short(height)}" viewBox="0 0 ${WIDTH} ${short(height)}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(`${title}: how sure`)),
    element('desc', { id: 'desc' }, escaped(panels.map(({ head, rows }) => `${head}: ${rows.length} rows`).join('; '))),
    element('style', {}, style),
    element('rect', { width: WIDTH, height, fill: paper }),
    label(24, 36, `${title}: how sure`, { class: 'title' }),
    label(24, 56, told, { class: 'faint' }),
    ...drawn,
    '</svg>',
    '',
  ].join('\n');
}

/** One line of a panel, at its height. */
type Row = (middle: number) => string;

function optionRows({ options }: SpreadStudy): Row[] {
  const able = options.filter(({ brokenBand }) => brokenBand !== undefined).slice(0, MOST);
  if (able.length === 0) return [];
  const scale = linearScale(
    able.flatMap(({ brokenBand }) => [brokenBand!.p10, brokenBand!.p90]),
    6,
  );
  const base = able[0]!;
  return able.map((option) => (middle) => optionRow(option, base, scale, middle));
}

function optionRow(option: OptionSpread, base: OptionSpread, scale: Scale, middle: number): string {
  const { p10, p50, p90 } = option.brokenBand!;
  const said =
    option.fewer === undefined
      ? ''
      : `, fewer in ${percentText(option.fewer.value)}, more in ${percentText(option.more?.value ?? 0)}`;
  return [
    name(option.id, middle),
    band(scale.share(p10), scale.share(p50), scale.share(p90), middle),
    line(scale.share(base.brokenBand!.p50), middle, 'level'),
    label(RIGHT, middle + 4, `${round(option.broken!.value)}${said}`, { class: 'tick' }),
  ].join('');
}

function findingRows({ findings, days }: SpreadStudy, units: UnitSystem): Row[] {
  return openFindings(findings)
    .slice(0, MOST)
    .map((finding) => (middle) => findingRow(finding, days.length, units, middle));
}

/** Findings with a limit that is neither kept nor broken in all samples: what matters and is least sure first. */
export function openFindings(findings: readonly FindingSpread[]): FindingSpread[] {
  const doubt = ({ chance, weight }: FindingSpread): number =>
    weight * Math.min(chance?.value ?? 0, 1 - (chance?.value ?? 0));
  return findings.filter((finding) => doubt(finding) > 0).sort((a, b) => doubt(b) - doubt(a));
}

/** Each row has a scale of its own, with the limit in its middle and what keeps it on the left. */
function findingRow(
  { title, part, day, unit, p10, p50, p90, limit, chance, logarithmic }: FindingSpread,
  days: number,
  units: UnitSystem,
  middle: number,
): string {
  const beyond = (value: number): number => {
    const by = logarithmic && value > 0 && limit!.value > 0 ? Math.log(value / limit!.value) : value - limit!.value;
    return limit!.kind === 'at-most' ? by : -by;
  };
  const ends = [p10!, p50!, p90!].map(beyond);
  const widest = Math.max(...ends.map(Math.abs), 1e-12);
  const [first, half, last] = ends.map((by) => 0.5 + (0.46 * by) / widest) as [number, number, number];
  const about = days > 1 && day !== STANDING ? `${part}, ${day}` : part;
  const numbers = formatBand(unit as KindName, p10!, p90!, units);
  const held = `${limit!.kind === 'at-most' ? '≤' : '≥'} ${formatQuantity(unit as KindName, limit!.value, units)}`;
  return [
    name(`${title}, ${about}`, middle),
    band(Math.min(first, last), half, Math.max(first, last), middle),
    line(0.5, middle, 'level'),
    label(RIGHT, middle + 4, `kept in ${percentText(chance!.value)}: ${numbers}, ${held}`, { class: 'tick' }),
  ].join('');
}

function measureRows({ measurements }: SpreadStudy): Row[] {
  const best = measurements.slice(0, 10);
  if (best.length === 0) return [];
  const most = Math.max(...best.map(({ verdicts, orders }) => verdicts.value + orders.value), 1e-12);
  return best.map((measurement) => (middle) => measureRow(measurement, most, middle));
}

function measureRow({ label: input, exactly, verdicts, orders }: Measurement, most: number, middle: number): string {
  const [solid, outline] = [verdicts.value, orders.value].map((value) => (PLOT * Math.max(value, 0)) / most) as [
    number,
    number,
  ];
  return [
    name(input, middle),
    element('rect', { x: LEFT, y: middle - 6, width: solid, height: 12, class: 'bar' }),
    element('rect', { x: LEFT + solid, y: middle - 6, width: outline, height: 12, class: 'order' }),
    label(RIGHT, middle + 4, `${round(verdicts.value)} + ${round(orders.value)}, read ${exactly}`, { class: 'tick' }),
  ].join('');
}

function name(text: string, middle: number): string {
  // As long as fits on the left of the plot in this size.
  const cut = text.length > 44 ? `${text.slice(0, 43)}…` : text;
  return label(LEFT - 12, middle + 4, cut, { 'text-anchor': 'end' });
}

function band(from: number, at: number, to: number, middle: number): string {
  const x = (share: number): number => LEFT + PLOT * share;
  return [
    element('line', { x1: LEFT, y1: middle + ROW / 2, x2: LEFT + PLOT, y2: middle + ROW / 2, class: 'hair' }),
    element('line', { x1: x(from), y1: middle, x2: Math.max(x(to), x(from) + 1), y2: middle, class: 'band' }),
    line(at, middle, 'middle'),
  ].join('');
}

function line(share: number, middle: number, of: string): string {
  const x = LEFT + PLOT * share;
  return element('line', { x1: x, y1: middle - 7, x2: x, y2: middle + 7, class: of });
}

function round(value: number): string {
  return value.toFixed(value >= 10 ? 1 : 2);
}
