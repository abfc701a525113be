// One panel of the day strip: lines over the hours, each with the band that it lies in, what is wanted of them, and what was measured.

import { type Band, dashes, type Line, type LineBand, type Panel } from '@stillair/engine';
import type { Measured } from '../engine/protocol.ts';

export const PANEL = 92;

export interface PanelPlotProps {
  readonly panel: Panel;
  /** Of its lines, at `times`. */
  readonly bands: readonly LineBand[];
  /** s */
  readonly times: readonly number[];
  readonly measured: readonly Measured[];
  readonly top: number;
  readonly left: number;
  readonly width: number;
  readonly end: number;
  /** Names of lines stand in it. */
  readonly narrow: boolean;
}

export function PanelPlot({ panel, bands, times, measured, top, left, width, end, narrow }: PanelPlotProps) {
  const decades = panel.scale === 'decades';
  const onScale = (value: number): number => (decades ? Math.log10(Math.max(value, 1e-12)) : value);
  const values = [
    ...panel.lines.flatMap(({ points }) => points.map(([, value]) => value)),
    ...measured.flatMap(({ points }) => points.map(([, value]) => value)),
    ...bands.flatMap(({ low, high }) => [...low, ...high]),
    ...panel.levels.map(({ value }) => value),
    ...panel.bands.flatMap(({ low, high }) => [low, high]),
  ].filter((value) => !decades || value > 0);
  const [least, most] = limitsOf(values.map(onScale), decades);
  const x = (time: number): number => left + (time / end) * width;
  const y = (value: number): number => top + PANEL - ((onScale(value) - least) / (most - least)) * PANEL;
  const ticks = ticksOf(least, most, decades);
  return (
    <g className="panel">
      <text className="panel-title" x={left} y={top - 5}>
        {panel.title}, {panel.unit}
        {measured.length > 0 && `; dots: measured, ${measured.map(({ name }) => name).join(', ')}`}
      </text>
      <rect className="plot" x={left} y={top} width={width} height={PANEL} />
      {panel.bands.map((band) => (
        <BandArea key={`${band.label}${band.start}`} band={band} x={x} y={y} top={top} />
      ))}
      {ticks.map(({ at, text }) => (
        <g key={text}>
          <path className="tick" d={`M${left} ${y(at)}H${left + width}`} />
          <text x={left - 6} y={y(at) + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {panel.levels.map(({ value, label, ofMean }) => (
        <g key={label}>
          <path className={ofMean === true ? 'level mean' : 'level'} d={`M${left} ${y(value)}H${left + width}`} />
          <text className="level-text" x={left + width - 3} y={y(value) - 3} textAnchor="end">
            {label}
          </text>
        </g>
      ))}
      {bands.map((band) => (
        <path key={band.line} className="spread" d={areaOf(band, times, x, y)} />
      ))}
      {panel.lines.map((line) => (
        <path key={line.label} className="line" d={pathOf(line, x, y, decades)} strokeDasharray={dashes[line.pen]} />
      ))}
      {measured.map(({ name, points }) => (
        <path key={name} className="measured" d={dotsOf(points, x, y)} />
      ))}
      <LineNames
        lines={panel.lines}
        y={y}
        left={narrow ? left + width - 4 : left + width + 5}
        narrow={narrow}
        top={top}
      />
    </g>
  );
}

function BandArea({
  band,
  x,
  y,
  top,
}: {
  readonly band: Band;
  readonly x: (time: number) => number;
  readonly y: (value: number) => number;
  readonly top: number;
}) {
  const high = Math.max(top, y(band.high));
  const low = Math.min(top + PANEL, y(band.low));
  return (
    <rect
      className="wanted"
      x={x(band.start)}
      y={high}
      width={x(band.end) - x(band.start)}
      height={Math.max(0, low - high)}
    />
  );
}

/** Names at the ends of lines, moved apart. */
function LineNames({
  lines,
  y,
  left,
  top,
  narrow,
}: {
  readonly lines: readonly Line[];
  readonly y: (value: number) => number;
  readonly left: number;
  readonly top: number;
  readonly narrow: boolean;
}) {
  let last = top - 12;
  const named = [...lines]
    .map(({ label, points }) => ({ label, at: y(points.at(-1)?.[1] ?? 0) }))
    .sort((a, b) => a.at - b.at)
    .map(({ label, at }) => {
      last = Math.max(at, last + 12);
      return { label, at: last };
    });
  return (
    <>
      {named.map(({ label, at }) => (
        <text
          key={label}
          className="line-name"
          x={left}
          y={narrow ? at - 4 : at + 4}
          textAnchor={narrow ? 'end' : 'start'}
        >
          {label}
        </text>
      ))}
    </>
  );
}

/** There along the upper edge and back along the lower one. */
function areaOf(
  { low, high }: LineBand,
  times: readonly number[],
  x: (time: number) => number,
  y: (value: number) => number,
): string {
  const point = (value: number, at: number): string => `${x(times[at]!).toFixed(1)} ${y(value).toFixed(1)}`;
  return `M${[...high.map(point), ...low.map(point).reverse()].join('L')}Z`;
}

/** Dots are strokes of no length with round ends: one element for hundreds of them. */
function dotsOf(points: Measured['points'], x: (time: number) => number, y: (value: number) => number): string {
  return points.map(([time, value]) => `M${x(time).toFixed(1)} ${y(value).toFixed(1)}h0`).join('');
}

function pathOf({ points }: Line, x: (time: number) => number, y: (value: number) => number, decades: boolean): string {
  const shown = decades ? points.filter(([, value]) => value > 0) : points;
  return shown
    .map(([time, value], at) => `${at === 0 ? 'M' : 'L'}${x(time).toFixed(1)} ${y(value).toFixed(1)}`)
    .join('');
}

function limitsOf(values: readonly number[], decades: boolean): readonly [number, number] {
  if (values.length === 0) return [0, 1];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  if (decades) return [Math.floor(Math.max(least, most - 7)), Math.max(Math.ceil(most), Math.floor(least) + 1)];
  const room = Math.max((most - least) * 0.08, 0.5);
  return [least - room, most + room];
}

function ticksOf(least: number, most: number, decades: boolean): { readonly at: number; readonly text: string }[] {
  if (decades) {
    const powers = Array.from({ length: Math.floor(most) - Math.ceil(least) + 1 }, (_, at) => Math.ceil(least) + at);
    return powers.map((power) => ({
      at: 10 ** power,
      text: power >= -2 && power <= 4 ? String(10 ** power) : `1e${power}`,
    }));
  }
  const rough = (most - least) / 4;
  const magnitude = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((each) => each * magnitude).find((each) => each >= rough)!;
  const first = Math.ceil(least / step);
  const count = Math.floor(most / step) - first + 1;
  return Array.from({ length: count }, (_, at) => {
    const value = (first + at) * step;
    return { at: value, text: String(Number(value.toPrecision(6))) };
  });
}
