// The air of a bay as a wash, and in words over all that is drawn in it: its name, and how warm it is low and high.

import { formatQuantity } from '@stillair/engine';
import { momentOf } from '../day/moment.ts';
import { Pickable } from './pickable.tsx';
import { plain } from './projection.ts';
import type { DrawingProps } from './sheet-props.ts';
import { bayBox } from './solids.ts';
import { washOf } from './wash.ts';

/** Pixels a metre below which words are shown only of the part that is pointed at. */
export const ROOM_FOR_WORDS = 200;

/** Pixels below which two labels of a bay would run into each other. */
const ROOM_FOR_TWO = 130;

export function Bay(props: DrawingProps & { readonly bay: string }) {
  const { cabinet, bay, dark, paper, units, view } = props;
  const temperatures = airOf(props);
  const [low = 293, high = low] = temperatures;
  const shown = view === 'plan' ? high : low;
  const wash = `wash-${bay.replaceAll(/\W/g, '-')}`;
  const label = temperatures.map((kelvin) => formatQuantity('temperature', kelvin, units));
  const says = label.length === 2 ? `${label[0]} low, ${label[1]} high` : (label[0] ?? '');
  return (
    <Pickable {...props} part={`bays.${bay}`} label={`bay ${bay}, air ${says}`}>
      <defs>
        <linearGradient id={wash} x1="0" y1="1" x2="0" y2="0">
          <stop offset="0.25" stopColor={washOf(shown, dark)} />
          <stop offset="0.75" stopColor={washOf(high, dark)} />
        </linearGradient>
      </defs>
      <rect className="bay" {...plain(paper.area(bayBox(cabinet, bay)))} fill={`url(#${wash})`} />
    </Pickable>
  );
}

/** K at the moment of the cursor, low then high. */
function airOf({ bay, day, time }: DrawingProps & { readonly bay: string }): readonly number[] {
  const at = momentOf(day, time);
  return (day.sheet.bays[bay] ?? []).map((zone) => zone[at]!);
}

/** What a bay is called and how warm it is, over all that is drawn in it. */
export function BayWords(props: DrawingProps & { readonly bay: string }) {
  const { cabinet, bay, paper, units } = props;
  const { left, top, width, height } = paper.area(bayBox(cabinet, bay));
  const label = airOf(props).map((kelvin) => formatQuantity('temperature', kelvin, units));
  // Where names have no room, the warm air stands in their place.
  if (paper.scale < ROOM_FOR_WORDS)
    return (
      <text className="air-temperature" x={left + 6} y={top + 17}>
        {label.at(-1)}
      </text>
    );
  const [warm, cool] = [label.at(-1), height < ROOM_FOR_TWO || label.length < 2 ? undefined : label[0]];
  return (
    <>
      <text className="bay-name" x={left + 9} y={top + 18}>
        {bay}
      </text>
      <text
        className="air-temperature"
        x={left + width - 9}
        y={top + (width < ROOM_FOR_TWO ? 34 : 18)}
        textAnchor="end"
      >
        {warm}
      </text>
      {cool !== undefined && (
        <text className="air-temperature" x={left + width - 9} y={top + height - 9} textAnchor="end">
          {cool}
        </text>
      )}
    </>
  );
}
