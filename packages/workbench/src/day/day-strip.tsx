// The foot of the page: what happens over the day, and a time cursor that tints the sheet.

import { type DayBands, formatClock, type Strip } from '@stillair/engine';
import { type KeyboardEvent, type PointerEvent, useMemo, useRef } from 'preact/compat';
import type { DayLines, Measured, Results, ShownDay } from '../engine/protocol.ts';
import { useSize } from '../sheet/use-size.ts';
import { PANEL, PanelPlot } from './panel-plot.tsx';
import { Readings } from './readings.tsx';

export interface DayStripProps {
  readonly day: ShownDay;
  readonly lines: DayLines;
  /** A log that was held against a day: its values are laid over the lines of that day. */
  readonly logged?: Results['calibrate'] | undefined;
  /** Absent until the samples are in. */
  readonly bands?: DayBands | undefined;
  readonly time: number;
  readonly onTime: (time: number) => void;
  /** Titles of panels that are drawn; the rest are offered. */
  readonly shown: readonly string[];
  readonly onShow: (title: string, show: boolean) => void;
}

/** Where names stand: beside the hours, or among them where there is no room. */
export interface StripFrame {
  readonly narrow: boolean;
  readonly left: number;
  readonly right: number;
  /** Height of a row. */
  readonly row: number;
}

const WIDE: StripFrame = { narrow: false, left: 132, right: 118, row: 16 };
const NARROW: StripFrame = { narrow: true, left: 40, right: 6, row: 27 };
/** Below this width names stand among the hours. */
const ROOM_BESIDE = 600;
/** Height of a bar's row. */
const BAR = 16;
const GAP = 26;

export function DayStrip({ day, lines, logged, bands, time, onTime, shown, onShow }: DayStripProps) {
  const frame = useRef<HTMLDivElement>(null);
  const { width: room } = useSize(frame, { width: 960, height: 240 });
  // Drawn for letters of 15 pixels, and larger by as much as those of the page are.
  // biome-ignore lint/correctness/useExhaustiveDependencies: letters change when the window does, and with it the room.
  const scale = useMemo(letterScale, [room]);
  const width = room / scale;
  const laid = width < ROOM_BESIDE ? NARROW : WIDE;
  const { sheet } = day;
  const { strips, panels } = lines;
  const measured = measuredOn(logged, sheet.day);
  const end = sheet.times.at(-1)!;
  const plot = Math.max(120, width - laid.left - laid.right);
  const x = (seconds: number): number => laid.left + (seconds / end) * plot;
  const drawn = panels.filter(({ title }) => shown.includes(title));
  const stripsBottom = 22 + strips.length * laid.row;
  const height = stripsBottom + drawn.length * (PANEL + GAP) + 14;

  const toTime = (event: PointerEvent<SVGSVGElement>): void => {
    const { left } = event.currentTarget.getBoundingClientRect();
    onTime(clamped((((event.clientX - left) / scale - laid.left) / plot) * end, end));
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
        aria-describedby="day-readings"
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
          <Hours end={end} x={x} bottom={height - 14} narrow={laid.narrow} />
          {strips.map((strip, at) => (
            <StripRow key={strip.label} strip={strip} top={22 + at * laid.row} laid={laid} x={x} />
          ))}
          {drawn.map((panel, at) => (
            <PanelPlot
              key={panel.title}
              panel={panel}
              bands={bands?.bands.filter((each) => each.panel === panel.title) ?? []}
              times={bands?.times ?? []}
              measured={measured.filter((each) => each.panel === panel.title && each.unit === panel.unit)}
              top={stripsBottom + GAP - 8 + at * (PANEL + GAP)}
              left={laid.left}
              width={plot}
              narrow={laid.narrow}
              end={end}
            />
          ))}
          <path className="cursor" d={`M${x(time)} 0V${height}`} />
          <text className="cursor-time" x={x(time) + 4} y={11}>
            {formatClock(time)}
          </text>
        </svg>
      </div>
      <Readings panels={drawn} bands={bands} time={time} />
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
  narrow,
}: {
  readonly end: number;
  readonly x: (time: number) => number;
  readonly bottom: number;
  readonly narrow: boolean;
}) {
  const step = (end > 172_800 ? 21_600 : 10_800) * (narrow ? 2 : 1);
  const hours = Array.from({ length: Math.floor(end / step) + 1 }, (_, at) => at * step);
  return (
    <g className="hours">
      {hours.map((time) => (
        <g key={time}>
          <path d={`M${x(time)} 16V${bottom}`} />
          <text x={x(time)} y={bottom + 12} textAnchor={narrow && time === end ? 'end' : 'middle'}>
            {formatClock(time)}
          </text>
        </g>
      ))}
    </g>
  );
}

function StripRow({
  strip,
  top: of,
  laid: { narrow, left: edge },
  x,
}: {
  readonly strip: Strip;
  readonly top: number;
  readonly laid: StripFrame;
  readonly x: (time: number) => number;
}) {
  // Its name stands before the bars, or above them.
  const top = narrow ? of + 11 : of;
  return (
    <g className="strip">
      <text x={narrow ? edge : edge - 8} y={narrow ? of + 9 : of + 11} textAnchor={narrow ? 'start' : 'end'}>
        {strip.label}
      </text>
      {strip.bars.map(({ start, end, share, label }) => {
        const high = Math.max(2, (BAR - 5) * share);
        const [left, right] = [x(start), x(end)];
        return (
          <g key={start}>
            <rect
              className={strip.kind}
              x={left}
              y={top + BAR - 3 - high}
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
