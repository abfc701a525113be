// A plan as a picture: a strip for every machine, when somebody is there and when it must be quiet, and below it hour by hour what the
// simulated week comes to. Ink on paper, as the picture of a day.

import type { Band } from '../judge/bands.ts';
import type { Plan, PlannedJob } from '../running/plan.ts';
import type { PlanHour } from '../running/week-run.ts';
import { formatQuantity, type UnitSystem } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';
import { formatDay } from '../units/week.ts';
import { labelPlaces } from './label-places.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { linearScale } from './scale.ts';
import { element, escaped, label, short } from './svg.ts';

const WIDTH = 1040;
const LEFT = 90;
const RIGHT = 130;
const PLOT = WIDTH - LEFT - RIGHT;
const HEAD = 78;
const STRIP = 24;
const PANEL = 96;
const GAP = 34;
const DAY = 86_400;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}
.title{font-size:20px}.faint{fill:${faint}}.head{font-style:italic;font-size:13px}.tick{font-size:11px;fill:${faint};font-variant-numeric:tabular-nums}
.line{fill:none;stroke:${ink};stroke-width:1.3;stroke-linejoin:round}.hair{stroke:${hairline};stroke-width:1}.midnight{stroke:${faint};stroke-width:.8}
.frame{stroke:${ink};stroke-width:.8;fill:none}.job{fill:${paper};stroke:${ink};stroke-width:1}.pinned{fill:${hairline}}.late{stroke:${accent};stroke-width:2}
.there{fill:${ink}}.band{fill:${hairline};fill-opacity:.7;stroke:none}.due{stroke:${accent};stroke-width:1.5}`;

const DASHES = ['', '6 3', '2 2', '9 3 2 3', '1 3', '12 4'];

export interface PlanNames {
  readonly title: string;
  readonly machines: readonly string[];
  readonly units: UnitSystem;
}

export function planPicture(plan: Plan, { title, machines, units }: PlanNames): string {
  const { from, until, origin, present } = plan.queue;
  const x = (time: number): number => LEFT + (PLOT * Math.min(Math.max(time - from, 0), until - from)) / (until - from);
  const stripsEnd = HEAD + (machines.length + 1) * STRIP;
  const panels = panelsOf(plan);
  const bottom = stripsEnd + GAP / 2 + panels.length * PANEL + Math.max(panels.length - 1, 0) * GAP;
  const height = bottom + 40;
  const midnights = Array.from(
    { length: Math.ceil((until - from) / DAY) + 1 },
    (_, at) => (Math.floor(from / DAY) + at) * DAY,
  );
  const days = midnights.filter((time) => time < until);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${short(height)}" viewBox="0 0 ${WIDTH} ${short(height)}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(`${title}: plan`)),
    element('desc', { id: 'desc' }, escaped(plan.jobs.map(({ id, machine }) => `${id} on ${machine}`).join('; '))),
    element('style', {}, style),
    element('rect', { width: WIDTH, height, fill: paper }),
    label(LEFT, 36, `${title}: plan`, { class: 'title' }),
    label(LEFT, 56, subtitle(plan), { class: 'faint' }),
    ...midnights
      .filter((time) => time > from && time < until)
      .map((time) => element('line', { x1: x(time), y1: HEAD - 8, x2: x(time), y2: bottom, class: 'midnight' })),
    ...days.flatMap((time) => {
      const [a, b] = [x(Math.max(time, from)), x(Math.min(time + DAY, until))];
      return b - a < 46
        ? []
        : [
            label((a + b) / 2, bottom + 20, formatDay(origin + Math.round(time / DAY)), {
              class: 'tick',
              'text-anchor': 'middle',
            }),
          ];
    }),
    ...machines.map((machine, at) => strip(plan, machine, HEAD + at * STRIP, x)),
    ...present.map(([a, b]) =>
      element('rect', {
        x: x(a),
        y: stripsEnd - STRIP + 10,
        width: Math.max(x(b) - x(a), 0.5),
        height: 4,
        class: 'there',
      }),
    ),
    label(LEFT + PLOT + 10, stripsEnd - STRIP + 16, 'somebody is there', { class: 'tick' }),
    ...panels.map((panel, at) => drawPanel(panel, plan, stripsEnd + GAP / 2 + at * (PANEL + GAP), x, units)),
    '</svg>',
    '',
  ].join('\n');
}

function subtitle({ samples: { ran }, hours }: Plan): string {
  const what = 'Planned and computed from the cabinet file; nothing here was measured.';
  return hours[0]?.bands === undefined ? what : `${what} Grey: 10th to 90th percentile of ${ran} samples.`;
}

function strip(plan: Plan, machine: string, top: number, x: (time: number) => number): string {
  const own = plan.jobs.filter((job) => job.machine === machine);
  return [
    element('line', { x1: LEFT, y1: top + 18, x2: LEFT + PLOT, y2: top + 18, class: 'hair' }),
    label(LEFT - 8, top + 14, machine, { 'text-anchor': 'end' }),
    ...own.map((job) => bar(job, top, x)),
  ].join('\n');
}

function bar({ id, start, end, how, late, due }: PlannedJob, top: number, x: (time: number) => number): string {
  const [a, b] = [x(start), x(end)];
  const classes = ['job', ...(how === 'planned' ? [] : ['pinned']), ...(late ? ['late'] : [])].join(' ');
  const fits = Math.floor((b - a - 6) / 6.2);
  const name = id.length <= fits ? id : fits > 2 ? `${id.slice(0, fits - 1)}…` : b - a > 9 ? id.slice(0, 1) : '';
  return [
    element(
      'rect',
      { x: a, y: top + 1, width: Math.max(b - a, 1.5), height: 17, class: classes },
      element('title', {}, escaped(id)),
    ),
    ...(name === '' ? [] : [label(a + 3, top + 14, name, { class: 'tick' })]),
    ...(due === undefined
      ? []
      : [element('line', { x1: x(due), y1: top - 1, x2: x(due), y2: top + 20, class: 'due' })]),
  ].join('');
}

interface Panel {
  readonly head: string;
  readonly kind: KindName;
  readonly lines: readonly PanelLine[];
}

interface PanelLine {
  readonly name: string;
  readonly values: readonly number[];
  /** 10th and 90th percentiles; none where nothing was sampled. */
  readonly low: readonly number[];
  readonly high: readonly number[];
}

function panelsOf({ hours }: Plan): Panel[] {
  if (hours.length === 0) return [];
  const names = (of: 'air' | 'noise'): readonly string[] => Object.keys(hours[0]![of]);
  return [
    {
      head: 'warmest air of each bay in the hour',
      kind: 'temperature',
      lines: names('air').map((name) =>
        lineOf(
          name,
          hours,
          ({ air }) => air[name]!,
          ({ bands }) => bands?.air[name],
        ),
      ),
    },
    {
      head: 'most power in the hour',
      kind: 'power',
      lines: [
        lineOf(
          'cabinet',
          hours,
          ({ power }) => power,
          ({ bands }) => bands?.power,
        ),
      ],
    },
    {
      head: 'loudest at their place in the hour',
      kind: 'sound-level',
      lines: names('noise').map((name) =>
        lineOf(
          name,
          hours,
          ({ noise }) => noise[name]!,
          ({ bands }) => bands?.noise[name],
        ),
      ),
    },
  ];
}

function lineOf(
  name: string,
  hours: Plan['hours'],
  of: (hour: PlanHour) => number,
  band: (hour: PlanHour) => Band | undefined,
): PanelLine {
  const bands = hours.map(band);
  const whole = bands.filter((each) => each !== undefined);
  const known = whole.length === hours.length;
  return {
    name,
    values: hours.map(of),
    low: known ? whole.map(({ p10 }) => p10) : [],
    high: known ? whole.map(({ p90 }) => p90) : [],
  };
}

function drawPanel(
  { head, kind, lines }: Panel,
  plan: Plan,
  top: number,
  x: (time: number) => number,
  units: UnitSystem,
): string {
  const degrees = (values: readonly number[]): number[] => values.map((value) => value - 273.15);
  const shown =
    kind === 'temperature'
      ? lines.map(({ name, values, low, high }) => ({
          name,
          values: degrees(values),
          low: degrees(low),
          high: degrees(high),
        }))
      : lines;
  const scale = linearScale(
    [...shown.flatMap(({ values, low, high }) => [...values, ...low, ...high]), ...(kind === 'temperature' ? [] : [0])],
    4,
  );
  const y = (value: number): number => top + PANEL * (1 - scale.share(value));
  const back = (value: number): number => (kind === 'temperature' ? value + 273.15 : value);
  const steps = (values: readonly number[]): string[] =>
    values.flatMap((value, hour) => {
      const { time } = plan.hours[hour]!;
      return [`${short(x(time))},${short(y(value))}`, `${short(x(time + 3600))},${short(y(value))}`];
    });
  const ends = labelPlaces(
    shown.map(({ values }) => y(values.at(-1)!)),
    13,
    top,
    top + PANEL,
  );
  return [
    label(LEFT, top - 5, head, { class: 'head' }),
    ...scale.ticks.flatMap((tick) => [
      element('line', { x1: LEFT, y1: y(tick), x2: LEFT + PLOT, y2: y(tick), class: 'hair' }),
      label(LEFT - 8, y(tick) + 4, formatQuantity(kind, back(tick), units), { class: 'tick', 'text-anchor': 'end' }),
    ]),
    element('rect', { x: LEFT, y: top, width: PLOT, height: PANEL, class: 'frame' }),
    ...shown.flatMap(({ low, high }) =>
      low.length === 0
        ? []
        : [element('polygon', { points: [...steps(high), ...steps(low).reverse()].join(' '), class: 'band' })],
    ),
    ...shown.flatMap(({ name, values }, at) => [
      element('polyline', {
        points: steps(values).join(' '),
        class: 'line',
        'stroke-dasharray': DASHES[at % DASHES.length] === '' ? undefined : DASHES[at % DASHES.length],
      }),
      element('line', {
        x1: LEFT + PLOT + 8,
        y1: ends[at]!,
        x2: LEFT + PLOT + 34,
        y2: ends[at]!,
        class: 'line',
        'stroke-dasharray': DASHES[at % DASHES.length] === '' ? undefined : DASHES[at % DASHES.length],
      }),
      label(LEFT + PLOT + 40, ends[at]! + 4, name, { class: 'tick' }),
    ]),
  ].join('\n');
}
