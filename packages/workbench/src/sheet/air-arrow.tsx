// A way for air: an arrow as wide as its flow with the number on it; seen end on, a ring with a point or a cross.

import { formatQuantity, type UnitSystem } from '@stillair/engine';

export interface AirArrowProps {
  readonly x: number;
  readonly y: number;
  /** Direction on the paper of positive flow; zero when it runs towards the viewer or away. */
  readonly dx: number;
  readonly dy: number;
  /** Positive flow comes towards the viewer. */
  readonly nearer: boolean;
  /** m³/s, along the direction. */
  readonly flow: number;
  readonly turning: boolean;
  readonly units: UnitSystem;
  /** Of its usual size. */
  readonly grown: number;
}

/** Below this a flow is told as none, m³/s: 0.1 m³/h. */
const STILL = 3e-5;
const LENGTH = 46;

export function AirArrow({ x, y, dx, dy, nearer, flow, turning, units, grown }: AirArrowProps) {
  const still = Math.abs(flow) < STILL;
  const thick = still ? 1.5 : grown * Math.min(14, 2 + 0.22 * Math.abs(flow) * 3600);
  const text = still ? 'no flow' : formatQuantity('flow', Math.abs(flow), units);
  if (turning) return <Turning x={x} y={y} thick={thick} text={text} grown={grown} />;
  if (dx === 0 && dy === 0) {
    const radius = 6 * grown + thick / 2;
    const towards = nearer === flow >= 0;
    const arm = radius * 0.6;
    return (
      <g className={still ? 'air still' : 'air'}>
        <circle className="ring" cx={x} cy={y} r={radius} />
        {still ? null : towards ? (
          <circle className="point" cx={x} cy={y} r={2 + thick / 5} />
        ) : (
          <path
            className="cross"
            d={`M${x - arm} ${y - arm}L${x + arm} ${y + arm}M${x + arm} ${y - arm}L${x - arm} ${y + arm}`}
          />
        )}
        <text x={x} y={y - radius - 5} textAnchor="middle">
          {text}
        </text>
      </g>
    );
  }
  const sign = flow < 0 ? -1 : 1;
  const [ux, uy] = [dx * sign, dy * sign];
  const half = (grown * LENGTH) / 2;
  const tip = 5 * grown + thick * 0.8;
  const end = { x: x + ux * half, y: y + uy * half };
  const neck = { x: end.x - ux * tip, y: end.y - uy * tip };
  const flank = 4 * grown + thick * 0.7;
  const beside =
    dx === 0 ? { x: x + thick / 2 + 8, y: y + 4, anchor: 'start' } : { x, y: y - thick / 2 - 8, anchor: 'middle' };
  return (
    <g className={still ? 'air still' : 'air'}>
      <line className="shaft" x1={x - ux * half} y1={y - uy * half} x2={neck.x} y2={neck.y} strokeWidth={thick} />
      {still ? null : (
        <path
          className="tip"
          d={`M${end.x} ${end.y}L${neck.x - uy * flank} ${neck.y + ux * flank}L${neck.x + uy * flank} ${neck.y - ux * flank}Z`}
        />
      )}
      <text x={beside.x} y={beside.y} textAnchor={beside.anchor as 'start' | 'middle'}>
        {text}
      </text>
    </g>
  );
}

function Turning({
  x,
  y,
  thick,
  text,
  grown,
}: {
  readonly x: number;
  readonly y: number;
  readonly thick: number;
  readonly text: string;
  readonly grown: number;
}) {
  return (
    <g className="air">
      <g transform={`translate(${x} ${y}) scale(${grown})`}>
        <path className="round" d="M13 0A13 13 0 1 1 6 -11" strokeWidth={Math.min(thick / grown, 6)} />
        <path className="tip" d="M14 -12L2 -16L4 -5Z" />
      </g>
      <text x={x} y={y + 16 * grown + 13} textAnchor="middle">
        {text}
      </text>
    </g>
  );
}
