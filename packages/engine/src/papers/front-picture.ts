// What a search has run, as a picture of two costs: every variant a mark, the front a line, the winner and the cabinet as it stands named.
// Ink on paper; what breaks a limit is hollow, so that nothing depends on colour. The same study gives the same bytes.

import type { SearchStudy, SearchVariant } from '../studies/search/search-study.ts';
import { type Want, wantRules } from '../studies/wants.ts';
import { formatQuantity, type UnitSystem } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';
import { accent, faint, hairline, ink, paper } from './picture-colours.ts';
import { linearScale } from './scale.ts';
import { element, escaped, label, short } from './svg.ts';

const WIDTH = 760;
const HEIGHT = 560;
const LEFT = 90;
const RIGHT = 40;
const TOP = 84;
const BOTTOM = 70;

const style = `text{font-family:ui-serif,Georgia,serif;font-size:12px;fill:${ink}}
.title{font-size:20px}.faint,.tick{fill:${faint}}.tick{font-size:11px;font-variant-numeric:tabular-nums}.hair{stroke:${hairline};stroke-width:1}
.kept{fill:${ink};opacity:.55}.broken{fill:none;stroke:${faint};stroke-width:.8}.front{fill:none;stroke:${accent};stroke-width:1.6}
.member{fill:${accent}}.named{fill:none;stroke:${ink};stroke-width:1.6}`;

interface Axis {
  readonly want: Want;
  readonly title: string;
  readonly unit: string;
}

/** The two wants that are drawn: those searched for, else the price, else the noise beside it. */
function drawnWants(wants: readonly Want[]): readonly [Want, Want] {
  const [first = 'cheap', second] = wants;
  return [first, second ?? (first === 'cheap' ? 'quiet' : 'cheap')];
}

export function frontPicture(study: SearchStudy, title: string, units: UnitSystem = 'metric'): string {
  const [x, y] = drawnWants(study.wants).map((want): Axis => {
    const rule = wantRules.find((each) => each.want === want)!;
    const measured = want === 'cheap' ? 'to buy, and to run for a year where the file says how often' : rule.measuredBy;
    return { want, title: `${want}: ${measured}`, unit: rule.unit };
  }) as [Axis, Axis];
  const place = (comesTo: SearchVariant['comesTo']): readonly [number, number] | undefined => {
    const [a, b] = [comesTo[x.want], comesTo[y.want]];
    return a === undefined || b === undefined ? undefined : [a, b];
  };
  const cloud = study.cloud.flatMap(({ comesTo, keeps }) => {
    const at = place(comesTo);
    return at === undefined ? [] : [{ at, keeps }];
  });
  const members = study.front.flatMap(({ comesTo }) => {
    const at = place(comesTo);
    return at === undefined ? [] : [at];
  });
  const across = linearScale(
    cloud.map(({ at }) => at[0]),
    8,
  );
  const up = linearScale(
    cloud.map(({ at }) => at[1]),
    8,
  );
  const point = ([a, b]: readonly [number, number]): readonly [number, number] => [
    LEFT + (WIDTH - LEFT - RIGHT) * across.share(a),
    HEIGHT - BOTTOM - (HEIGHT - TOP - BOTTOM) * up.share(b),
  ];
  const circle = (at: readonly [number, number], r: number, kind: string): string => {
    const [cx, cy] = point(at);
    return element('circle', { cx, cy, r, class: kind });
  };
  const named = (variant: SearchVariant | undefined, text: string, r: number): string[] => {
    const at = variant === undefined ? undefined : place(variant.comesTo);
    if (at === undefined) return [];
    const [cx, cy] = point(at);
    const right = cx > WIDTH - 200;
    return [
      circle(at, r, 'named'),
      label(right ? cx - r - 4 : cx + r + 4, cy - r - 2, text, right ? { 'text-anchor': 'end' } : {}),
    ];
  };
  const told = (axis: Axis, value: number): string => formatQuantity(axis.unit as KindName, value, units);
  const path = members.map((at, number) => `${number === 0 ? 'M' : 'L'}${point(at).map(short).join(' ')}`).join('');
  const says = `${study.ran} of ${study.variants} variants were run. Filled: breaks no more limits than the winner; hollow: breaks more.`;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" aria-labelledby="title desc">`,
    element('title', { id: 'title' }, escaped(title)),
    element('desc', { id: 'desc' }, escaped(says)),
    element('style', {}, style),
    element('rect', { width: WIDTH, height: HEIGHT, fill: paper }),
    label(LEFT, 36, title, { class: 'title' }),
    label(LEFT, 56, says, { class: 'faint' }),
    ...across.ticks.flatMap((tick) => {
      const [cx] = point([tick, up.low]);
      return [
        element('line', { x1: cx, y1: TOP, x2: cx, y2: HEIGHT - BOTTOM, class: 'hair' }),
        label(cx, HEIGHT - BOTTOM + 16, told(x, tick), { class: 'tick', 'text-anchor': 'middle' }),
      ];
    }),
    ...up.ticks.flatMap((tick) => {
      const [, cy] = point([across.low, tick]);
      return [
        element('line', { x1: LEFT, y1: cy, x2: WIDTH - RIGHT, y2: cy, class: 'hair' }),
        label(LEFT - 6, cy + 4, told(y, tick), { class: 'tick', 'text-anchor': 'end' }),
      ];
    }),
    ...cloud.filter(({ keeps }) => !keeps).map(({ at }) => circle(at, 2.6, 'broken')),
    ...cloud.filter(({ keeps }) => keeps).map(({ at }) => circle(at, 2.6, 'kept')),
    ...(members.length > 1 ? [element('path', { d: path, class: 'front' })] : []),
    ...members.map((at) => circle(at, 3.4, 'member')),
    ...named(study.base, 'as it stands', 6),
    ...named(study.winner, 'winner', 7),
    label(WIDTH - RIGHT, HEIGHT - 24, x.title, { 'text-anchor': 'end' }),
    label(LEFT, TOP - 10, y.title),
    '</svg>',
    '',
  ].join('\n');
}
