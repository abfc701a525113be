// How a machine looks on the sheet: its frame by the way it moves, its bed, and dashed what it sweeps.

import type { Cabinet } from '@stillair/engine';
import type { Area } from './projection.ts';

type Style = Cabinet['machines'][string]['style'];

export function MachineFigure({
  style,
  body,
  bed,
  swept,
  stack,
  fromAbove,
}: {
  readonly style: Style;
  readonly body: Area;
  readonly bed: Area;
  /** Everything that moves or sticks out, in each position. */
  readonly swept: readonly Area[];
  /** Slab and foam. */
  readonly stack: Area | undefined;
  readonly fromAbove: boolean;
}) {
  return (
    <g className="machine">
      {stack !== undefined && (
        <rect className="stack" x={stack.left} y={stack.top} width={stack.width} height={stack.height} />
      )}
      {swept.map(({ left, top, width, height }, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a machine come in one order.
        <rect key={at} className="swept" x={left} y={top} width={width} height={height} />
      ))}
      {fromAbove ? <FromAbove style={style} body={body} /> : <Elevation style={style} body={body} bed={bed} />}
      <rect className="bed" x={bed.left} y={bed.top} width={bed.width} height={Math.max(bed.height, 3)} />
    </g>
  );
}

function Elevation({ style, body, bed }: { readonly style: Style; readonly body: Area; readonly bed: Area }) {
  const { left, top, width, height } = body;
  const [right, bottom] = [left + width, top + height];
  const x = (share: number): number => left + share * width;
  const y = (share: number): number => top + share * height;
  const head = { x: x(0.5), y: Math.min(bed.top - 0.06 * height, y(0.55)) };
  switch (style) {
    case 'moving-bed':
      return (
        <>
          <path
            className="frame"
            d={`M${x(0.12)} ${bottom}V${y(0.08)}H${x(0.88)}V${bottom}M${x(0.12)} ${head.y - 8}H${x(0.88)}M${x(0.06)} ${bottom}H${x(0.94)}`}
          />
          <Head {...head} size={0.09 * width} />
        </>
      );
    case 'fixed-bed':
    case 'chambered':
      return (
        <>
          <rect className="frame" x={x(0.03)} y={y(0.03)} width={0.94 * width} height={0.97 * height} rx={3} />
          {style === 'chambered' && (
            <rect className="frame thin" x={x(0.09)} y={y(0.09)} width={0.82 * width} height={0.8 * height} rx={2} />
          )}
          <path className="frame thin" d={`M${x(0.09)} ${head.y - 8}H${x(0.91)}`} />
          <Head {...head} size={0.08 * width} />
        </>
      );
    case 'delta':
      return (
        <>
          <path
            className="frame"
            d={`M${x(0.05)} ${bottom}V${top}M${right - 0.05 * width} ${bottom}V${top}M${x(0.5)} ${bottom}V${top}M${x(0.02)} ${y(0.02)}H${x(0.98)}M${x(0.02)} ${bottom - 2}H${x(0.98)}`}
          />
          <path className="frame thin" d={`M${x(0.05)} ${y(0.35)}L${head.x} ${head.y}L${x(0.95)} ${y(0.35)}`} />
          <Head {...head} size={0.09 * width} />
        </>
      );
  }
}

function Head({ x, y, size }: { readonly x: number; readonly y: number; readonly size: number }) {
  const half = Math.max(4, size / 2);
  return (
    <path className="head" d={`M${x - half} ${y - half * 1.6}H${x + half}V${y}L${x} ${y + half}L${x - half} ${y}Z`} />
  );
}

function FromAbove({ style, body }: { readonly style: Style; readonly body: Area }) {
  const { left, top, width, height } = body;
  const [x, y] = [(share: number) => left + share * width, (share: number) => top + share * height];
  if (style === 'delta') return <path className="frame" d={`M${x(0.5)} ${y(0.03)}L${x(0.97)} ${y(0.9)}H${x(0.03)}Z`} />;
  if (style === 'moving-bed')
    return (
      <path
        className="frame"
        d={`M${x(0.12)} ${y(0.42)}H${x(0.88)}V${y(0.58)}H${x(0.12)}ZM${x(0.3)} ${y(0.05)}V${y(0.95)}M${x(0.7)} ${y(0.05)}V${y(0.95)}`}
      />
    );
  return <rect className="frame" x={x(0.03)} y={y(0.03)} width={0.94 * width} height={0.94 * height} rx={3} />;
}
