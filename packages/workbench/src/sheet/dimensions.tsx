// Width and height of the carcass, with lines and arrow heads beside it.

import { formatQuantity } from '@stillair/engine';
import { type Area, axesOf } from './projection.ts';
import type { DrawingProps } from './sheet-props.ts';
import { outsideBox } from './solids.ts';

/** Width and height of the carcass from outside, as a drawing office gives them. */
export function Dimensions({ cabinet, view, units, outside }: DrawingProps & { readonly outside: Area }) {
  const { right, up } = axesOf[view];
  const box = outsideBox(cabinet);
  const text = (axis: 'x' | 'y' | 'z'): string => formatQuantity('length', box[axis][1] - box[axis][0], units);
  const { left, top, width, height } = outside;
  const below = top + height + 32;
  const beside = left - 32;
  return (
    <g className="dimensions" aria-hidden="true">
      <path
        d={`M${left} ${top + height + 6}V${below + 6}M${left + width} ${top + height + 6}V${below + 6}M${left} ${below}H${left + width}`}
      />
      <path
        className="ends"
        d={`M${left + 9} ${below - 3}L${left} ${below}L${left + 9} ${below + 3}ZM${left + width - 9} ${below - 3}L${left + width} ${below}L${left + width - 9} ${below + 3}Z`}
      />
      <text x={left + width / 2} y={below - 6} textAnchor="middle">
        {text(right)}
      </text>
      <path
        d={`M${left - 6} ${top}H${beside - 6}M${left - 6} ${top + height}H${beside - 6}M${beside} ${top}V${top + height}`}
      />
      <path
        className="ends"
        d={`M${beside - 3} ${top + 9}L${beside} ${top}L${beside + 3} ${top + 9}ZM${beside - 3} ${top + height - 9}L${beside} ${top + height}L${beside + 3} ${top + height - 9}Z`}
      />
      <text transform={`translate(${beside - 6} ${top + height / 2}) rotate(-90)`} textAnchor="middle">
        {text(up)}
      </text>
    </g>
  );
}
