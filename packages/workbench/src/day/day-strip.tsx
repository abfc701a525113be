// The foot of the page: what happens over the day, and a time cursor that tints the sheet.

import { type Band, dashes, formatClock, type Line, type Panel, type Strip } from '@stillair/engine';
import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'preact/compat';
import type { DayLines, Measured, Results, ShownDay } from '../engine/protocol.ts';
import { useSize } from '../sheet/use-size.ts';

export interface DayStripProps {
  readonly day: ShownDay;
  readonly lines: DayLines;
  /** A log that was held against a day: its values are laid over the lines of that day. */
  readonly logged?: Results['calibrate'] | undefined;
  readonly time: number;
  readonly onTime: (time: number) => void;
  /** Titles of panels that are drawn; the rest are offered. */
  readonly shown: readonly string[];
  readonly onShow: (title: string, show: boolean) => void;
}

const LEFT = 132;
const RIGHT = 118;
const STRIP = 16;
const PANEL = 92;
const GAP = 26;

export function DayStrip({ day, lines, logged, time, onTime, shown, onShow }: DayStripProps) {
  const frame = useRef<HTMLDivElement>(null);
  const { width: room } = useSize(frame, { width: 960, height: 240 });
  // Drawn for letters of 15 pixels, and larger by as much as those of the page are.
  // biome-ignore lint/correctness/useExhaustiveDependencies: letters change when the window does, and with it the room.
  const scale = useMemo(letterScale, [room]);
  const width = room / scale;
  const { sheet } = day;
  const { strips, panels } = lines;
  const measured = measuredOn(logged, sheet.day);
  const end = sheet.times.at(-1)!;
  const plot = Math.max(120, width - LEFT - RIGHT);
  const x = (seconds: number): number => LEFT + (seconds / end) * plot;
  const drawn = panels.filter(({ title }) => shown.includes(title));
  const stripsBottom = 22 + strips.length * STRIP;
  const height = stripsBottom + drawn.length * (PANEL + GAP) + 14;

  const toTime = (event: PointerEvent<SVGSVGElement>): void => {
    const { left } = event.currentTarget.getBoundingClientRect();
    onTime(clamped((((event.clientX - left) / scale - LEFT) / plot) * end, end));
  };
  const key = (event: KeyboardEvent<HTMLElement>): void => {
    const steps: Readonly<Record<string, number>> = {
      ArrowLeft: -300,
      ArrowRight: 300,
      PageDown: -3600,
      PageUp: 3600,
      Home: -end,
      End: end,
    };
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    onTime(clamped(time + step, end));
  };
  return (
    <div className="day-strip" ref={frame}>
      <fieldset className="panel-choice">
        <legend>Shown below</legend>
        {panels.map(({ title }) => (
          <label key={title}>
            <input
              type="checkbox"
              checked={shown.includes(title)}
              onChange={(event) => onShow(title, event.currentTarget.checked)}
            />{' '}
            {title}
          </label>
        ))}
      </fieldset>
      <div
        className="time-cursor"
        role="slider"
        tabIndex={0}
        aria-label="time of day shown on the sheet"
        aria-valuemin={0}
        aria-valuemax={Math.round(end)}
        aria-valuenow={Math.round(time)}
        aria-valuetext={formatClock(time)}
        onKeyDown={key}
      >
        <svg
          width={room}
          height={height * scale}
          viewBox={`0 0 ${width} ${height}`}
          aria-hidden="true"
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            toTime(event);
          }}
          onPointerMove={(event) => {
            if (event.buttons === 1) toTime(event);
          }}
        >
          <Hours end={end} x={x} bottom={height - 14} />
          {strips.map((strip, at) => (
            <StripRow key={strip.label} strip={strip} top={22 + at * STRIP} x={x} />
          ))}
          {drawn.map((panel, at) => (
            <PanelPlot
              key={panel.title}
              panel={panel}
              measured={measured.filter((each) => each.panel === panel.title && each.unit === panel.unit)}
              top={stripsBottom + GAP - 8 + at * (PANEL + GAP)}
              left={LEFT}
              width={plot}
              end={end}
            />
          ))}
          <path className="cursor" d={`M${x(time)} 0V${height}`} />
          <text className="cursor-time" x={x(time) + 4} y={11}>
            {formatClock(time)}
          </text>
        </svg>
      </div>
    </div>
  );
}

function measuredOn(logged: DayStripProps['logged'], day: string): readonly Measured[] {
  return logged === undefined || 'fault' in logged || logged.study.day !== day ? [] : logged.overlay;
}

function letterScale(): number {
  return Math.max(1, Number.parseFloat(getComputedStyle(document.documentElement).fontSize) / 15);
}

function clamped(time: number, end: number): number {
  return Math.min(end, Math.max(0, Math.round(time / 60) * 60));
}

function Hours({
  end,
  x,
  bottom,
}: {
  readonly end: number;
  readonly x: (time: number) => number;
  readonly bottom: number;
}) {
  const step = end > 172_800 ? 21_600 : 10_800;
  const hours = Array.from({ length: Math.floor(end / step) + 1 }, (_, at) => at * step);
  return (
    <g className="hours">
      {hours.map((time) => (
        <g key={time}>
          <path d={`M${x(time)} 16V${bottom}`} />
          <text x={x(time)} y={bottom + 12} textAnchor="middle">
            {formatClock(time)}
          </text>
        </g>
      ))}
    </g>
  );
}

function StripRow({
  strip,
  top,
  x,
}: {
  readonly strip: Strip;
  readonly top: number;
  readonly x: (time: number) => number;
}) {
  return (
    <g className="strip">
      <text x={LEFT - 8} y={top + 11} textAnchor="end">
        {strip.label}
      </text>
      {strip.bars.map(({ start, end, share, label }) => {
        const high = Math.max(2, (STRIP - 5) * share);
        const [left, right] = [x(start), x(end)];
        return (
          <g key={start}>
            <rect
              className={strip.kind}
              x={left}
              y={top + STRIP - 3 - high}
              width={Math.max(1.5, right - left)}
              height={high}
            />
            {label !== undefined && right - left > label.length * 6 && (
              <text className="in-bar" x={left + 4} y={top + 11}>
                {label}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

interface PanelPlotProps {
  readonly panel: Panel;
  readonly measured: readonly Measured[];
  readonly top: number;
  readonly left: number;
  readonly width: number;
  readonly end: number;
}

function PanelPlot({ panel, measured, top, left, width, end }: PanelPlotProps) {
  const decades = panel.scale === 'decades';
  const onScale = (value: number): number => (decades ? Math.log10(Math.max(value, 1e-12)) : value);
  const values = [
    ...panel.lines.flatMap(({ points }) => points.map(([, value]) => value)),
    ...measured.flatMap(({ points }) => points.map(([, value]) => value)),
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
      {panel.lines.map((line) => (
        <path key={line.label} className="line" d={pathOf(line, x, y, decades)} strokeDasharray={dashes[line.pen]} />
      ))}
      {measured.map(({ name, points }) => (
        <path key={name} className="measured" d={dotsOf(points, x, y)} />
      ))}
      <LineNames lines={panel.lines} y={y} left={left + width + 5} top={top} />
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
}: {
  readonly lines: readonly Line[];
  readonly y: (value: number) => number;
  readonly left: number;
  readonly top: number;
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
        <text key={label} className="line-name" x={left} y={at + 4}>
          {label}
        </text>
      ))}
    </>
  );
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
