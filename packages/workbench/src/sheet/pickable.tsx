// A part of the sheet as something to be picked and moved, with pointer or keyboard.

import type { KeyboardEvent, PointerEvent, ReactNode } from 'preact/compat';
import { useRef } from 'preact/compat';
import { canMove, type Shift, STILL } from './moves.ts';
import { axesOf } from './projection.ts';
import type { DrawingProps } from './sheet-props.ts';
import { boxOf } from './solids.ts';

type PickableProps = DrawingProps & {
  readonly part: string;
  readonly label: string;
  readonly outlineOnly?: boolean;
  readonly children: ReactNode;
};

/** A part that can be picked with pointer or keyboard, and moved if its kind can be. */
export function Pickable({
  part,
  label,
  picked,
  marked,
  onPick,
  onMove,
  paper,
  view,
  cabinet,
  outlineOnly,
  children,
}: PickableProps) {
  const grip = useRef<{ x: number; y: number; moved: boolean } | undefined>(undefined);
  const movable = canMove(part);
  const { right, up } = axesOf[view];
  const shiftOf = (rightwards: number, upwards: number): Shift => ({ ...STILL, [right]: rightwards, [up]: upwards });
  const snapped = (metres: number): number => Math.round(metres * 1000) / 1000;

  const down = (event: PointerEvent<SVGGElement>): void => {
    if (event.button !== 0) return;
    onPick(part);
    if (!movable) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    grip.current = { x: event.clientX, y: event.clientY, moved: false };
  };
  const move = (event: PointerEvent<SVGGElement>, phase: 'more' | 'last'): void => {
    const held = grip.current;
    if (held === undefined) return;
    const [dx, dy] = [event.clientX - held.x, held.y - event.clientY];
    if (!held.moved && Math.hypot(dx, dy) < 3) return;
    const shift = shiftOf(snapped(paper.metres(dx)), snapped(paper.metres(dy)));
    onMove(part, shift, held.moved ? phase : 'first');
    held.moved = true;
  };
  const key = (event: KeyboardEvent<SVGGElement>): void => {
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      onPick(part);
      return;
    }
    const step = (event.shiftKey ? 10 : 1) / 1000;
    const steps: Readonly<Record<string, readonly [number, number]>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowDown: [0, -step],
      ArrowUp: [0, step],
    };
    const by = steps[event.key];
    if (by === undefined || !movable || picked !== part) return;
    event.preventDefault();
    onMove(part, shiftOf(...by), 'first');
    onMove(part, STILL, 'last');
  };
  const box = picked === part ? boxOf(cabinet, part) : undefined;
  const outline = box === undefined ? undefined : paper.area(box);
  return (
    <g
      className={`part${movable ? ' movable' : ''}${outlineOnly === true ? ' outline-only' : ''}`}
      data-part={part}
      data-mark={marked[part]}
      role="button"
      // An attribute of SVG: written small, or it is none.
      tabindex={0}
      aria-label={marked[part] === undefined ? label : `${label}; ${marked[part]}`}
      aria-pressed={picked === part}
      onPointerDown={down}
      onPointerMove={(event) => move(event, 'more')}
      onPointerUp={(event) => {
        move(event, 'last');
        grip.current = undefined;
      }}
      onPointerCancel={() => {
        grip.current = undefined;
      }}
      onKeyDown={key}
    >
      {children}
      {outline && (
        <rect
          className="picked"
          x={outline.left - 4}
          y={outline.top - 4}
          width={outline.width + 8}
          height={outline.height + 8}
        />
      )}
    </g>
  );
}
