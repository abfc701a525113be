// What the lines of the day are at the time of the cursor, in words, with the band that each lies in.

import { type DayBands, formatClock, formatNumber, type Line, type Panel } from '@stillair/engine';
import { momentIn } from './moment.ts';

export interface ReadingsProps {
  readonly panels: readonly Panel[];
  readonly bands: DayBands | undefined;
  /** s */
  readonly time: number;
}

export function Readings({ panels, bands, time }: ReadingsProps) {
  return (
    <div className="readings">
      <p role="status">{bandsText(bands)}</p>
      <dl id="day-readings" aria-label={`at ${formatClock(time)}`}>
        {panels.map((panel) => (
          <div key={panel.title}>
            <dt>
              {panel.title}, {panel.unit}, at {formatClock(time)}
            </dt>
            <dd>{panel.lines.map((line) => lineText(panel, line, bands, time)).join('; ')}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}

function bandsText(bands: DayBands | undefined): string {
  if (bands === undefined) return 'Lines are middle values; how sure they are comes after the spreads of the remarks.';
  const { ran, asked } = bands.samples;
  if (bands.bands.length === 0)
    return `Only ${ran} of ${asked} samples could be run: too few to say how sure the lines are.`;
  return `Shaded: where a line lies in 80 of 100 cases at each moment, 10th to 90th percentile of ${ran} samples of what is not known for sure.`;
}

function lineText({ title }: Panel, { label, points }: Line, bands: DayBands | undefined, time: number): string {
  const value = valueAt(points, time);
  if (value === undefined) return `${label}: nothing`;
  const band = bands?.bands.find((each) => each.panel === title && each.line === label);
  if (band === undefined) return `${label} ${shown(value)}`;
  const at = momentIn(bands!.times, time);
  return `${label} ${shown(value)} (${shown(band.low[at]!)} to ${shown(band.high[at]!)})`;
}

const shown = (number: number): string => formatNumber(number, 1);

function valueAt(points: Line['points'], time: number): number | undefined {
  const after = points.findIndex(([at]) => at > time);
  if (after === 0 || points.length === 0) return points[0]?.[1];
  if (after < 0) return points.at(-1)![1];
  const [[t0, v0], [t1, v1]] = [points[after - 1]!, points[after]!];
  return v0 + ((v1 - v0) * (time - t0)) / (t1 - t0);
}
