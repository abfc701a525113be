// The sheet: the cabinet drawn to scale from one side, its air washed by temperature at the time of the cursor.

import { type Cabinet, formatQuantity } from '@stillair/engine';
import { memo, useRef } from 'preact/compat';
import { momentOf } from '../day/moment.ts';
import { AirArrow } from './air-arrow.tsx';
import { Bay, BayWords, ROOM_FOR_WORDS } from './bay.tsx';
import { Dimensions } from './dimensions.tsx';
import { baysInView, isLying, leadsTo, sceneBox } from './in-view.ts';
import { MachineFigure } from './machine-figure.tsx';
import { Pickable } from './pickable.tsx';
import { type Area, axesOf, type Box, type FlatView, layPaper, type Margins, type Paper, plain } from './projection.ts';
import type { DrawingProps, SheetProps } from './sheet-props.ts';
import {
  airPlace,
  bayBox,
  bedBox,
  doorBox,
  frameBox,
  insideBox,
  machineBox,
  machineParts,
  outsideBox,
  outwards,
  partitionBox,
  sensorPlace,
  stackBox,
} from './solids.ts';
import { touchesIn } from './touching.ts';
import { Trace } from './trace.tsx';
import { useSize } from './use-size.ts';

/** Dimensions stand left and below, arrows and numbers around, the legend at the foot. */
const AROUND: Margins = { top: 48, right: 70, bottom: 92, left: 84 };
const AROUND_SMALL: Margins = { top: 50, right: 44, bottom: 80, left: 58 };
/** Pixels below which a sheet is small. */
const SMALL = 460;

export const Sheet = memo((props: SheetProps) => {
  const { cabinet, view, onPick } = props;
  const frame = useRef<HTMLDivElement>(null);
  const size = useSize(frame, { width: 820, height: 620 });
  const margins = Math.min(size.width, size.height) < SMALL ? AROUND_SMALL : AROUND;
  const paper = layPaper(view, sceneBox(cabinet, view), size, margins);
  return (
    <div className="sheet" ref={frame}>
      <svg
        width={size.width}
        height={size.height}
        viewBox={`0 0 ${size.width} ${size.height}`}
        className={paper.scale < ROOM_FOR_WORDS ? 'small' : undefined}
        role="group"
        aria-label={`${cabinet.title}, ${viewNames[view]}`}
        onPointerDown={(event) => {
          if (event.target === event.currentTarget) onPick(undefined);
        }}
      >
        <Hatches />
        <Drawing {...props} paper={paper} />
        {props.traced !== undefined && <Trace base={cabinet} option={props.traced} paper={paper} />}
        {props.heading !== undefined && (
          <text className="heading" x={size.width - 16} y={28} textAnchor="end">
            {props.heading}
          </text>
        )}
      </svg>
    </div>
  );
});

export const viewNames: Readonly<Record<FlatView, string>> = {
  front: 'seen from the front',
  side: 'seen from the right',
  plan: 'seen from above',
};

function Hatches() {
  return (
    <defs>
      <pattern id="wood" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line className="hatch" x1="0" y1="0" x2="0" y2="7" />
      </pattern>
      <pattern id="glass" width="10" height="10" patternUnits="userSpaceOnUse" patternTransform="rotate(-35)">
        <path className="hatch" d="M2 0V6M5 3V9" />
      </pattern>
    </defs>
  );
}

function Drawing(props: DrawingProps) {
  const { cabinet, view, paper } = props;
  const outside = paper.area(outsideBox(cabinet));
  const inside = paper.area(insideBox(cabinet));
  const bays = baysInView(cabinet, view, props.picked);
  return (
    <>
      <path className="carcass" d={`${ring(outside)}${ring(inside)}`} fillRule="evenodd" fill="url(#wood)" />
      {bays.map((bay) => (
        <Bay key={bay} {...props} bay={bay} />
      ))}
      {cabinet.partitions.map(({ id, bays: both }, at) =>
        both.some((bay) => bays.includes(bay)) && !(view === 'plan' && isLying(cabinet, at)) ? (
          <Pickable key={id} {...props} part={`partitions.${id}`} label={`board ${id}`}>
            <rect className="board" {...plain(paper.area(partitionBox(cabinet, at)))} fill="url(#wood)" />
          </Pickable>
        ) : null,
      )}
      {Object.keys(cabinet.machines)
        .filter((id) => bays.includes(cabinet.machines[id]!.bay))
        .map((id) => (
          <Pickable key={id} {...props} part={`machines.${id}`} label={`machine ${id}, ${cabinet.machines[id]!.kind}`}>
            <MachineFigure
              style={cabinet.machines[id]!.style}
              body={paper.area(frameBox(cabinet, id))}
              bed={paper.area(bedBox(cabinet, id))}
              swept={machineParts(cabinet, id).map(({ box }) => paper.area(box))}
              stack={areaOf(paper, stackBox(cabinet, id))}
              fromAbove={view === 'plan'}
            />
            <Name area={paper.area(machineBox(cabinet, id))} text={id} />
          </Pickable>
        ))}
      {Object.keys(cabinet.doors).map((id) => (
        <Door key={id} {...props} door={id} />
      ))}
      {Object.keys(cabinet.sensors)
        .filter((id) => bays.includes(cabinet.sensors[id]!.bay))
        .map((id) => (
          <Sensor key={id} {...props} sensor={id} />
        ))}
      {Object.keys(cabinet.paths)
        .filter((id) => leadsTo(cabinet, id, bays, view))
        .map((id) => (
          <Air key={id} {...props} path={id} />
        ))}
      {view === 'plan' && Object.keys(cabinet.people).map((id) => <Person key={id} {...props} person={id} />)}
      <g className="words" aria-hidden="true">
        {bays.map((bay) => (
          <BayWords key={bay} {...props} bay={bay} />
        ))}
      </g>
      <Touches {...props} bays={bays} />
      <Dimensions {...props} outside={outside} />
    </>
  );
}

function Door(props: DrawingProps & { readonly door: string }) {
  const { cabinet, door, paper, view } = props;
  const { face, build } = cabinet.doors[door]!;
  const facing = view === 'front' ? face === 'front' : view === 'side' ? face === 'right' : face === 'top';
  const area = paper.area(doorBox(cabinet, door));
  const clear = build.solarTransmittance > 0;
  return (
    <Pickable {...props} part={`doors.${door}`} label={`door ${door}`} outlineOnly={facing}>
      <rect
        className={facing ? 'door facing' : 'door'}
        {...plain(area)}
        fill={facing ? 'none' : `url(#${clear ? 'glass' : 'wood'})`}
      />
      {facing && <circle className="handle" cx={area.left + area.width - 12} cy={area.top + area.height / 2} r={3} />}
    </Pickable>
  );
}

function Air(props: DrawingProps & { readonly path: string }) {
  const { cabinet, path, day, time, view, paper, units } = props;
  const place = airPlace(cabinet, path);
  if (place === undefined) return null;
  const { from, to, place: on } = cabinet.paths[path]!;
  const { right, up } = axesOf[view];
  const index = { x: 0, y: 1, z: 2 } as const;
  const direction = flowDirection(cabinet, from, to, outwards[on.face]);
  const flow = day.sheet.flows[path]?.[momentOf(day, time)] ?? 0;
  const [dx, dy] = [direction[index[right]], -direction[index[up]]];
  const depth = view === 'front' ? -direction[1] : view === 'side' ? direction[0] : direction[2];
  return (
    <Pickable
      {...props}
      part={`air.${path}`}
      label={`air path ${path}, ${formatQuantity('flow', Math.abs(flow), units)}`}
    >
      <AirArrow
        x={paper.right(place[index[right]])}
        y={paper.up(place[index[up]])}
        dx={dx}
        dy={dy}
        nearer={depth > 0}
        flow={flow}
        turning={from === to}
        grown={grownWith(paper)}
        units={units}
      />
    </Pickable>
  );
}

/** Arrows grow with the drawing, within what can be read. */
function grownWith({ scale }: Paper): number {
  return Math.min(1.8, Math.max(0.6, scale / 300));
}

/** Unit vector of positive flow. */
function flowDirection(
  cabinet: Cabinet,
  from: string,
  to: string,
  outward: readonly [number, number, number],
): readonly [number, number, number] {
  const inside = (end: string): boolean => end in cabinet.bays;
  if (inside(from) && inside(to)) {
    const [a, b] = [bayBox(cabinet, from), bayBox(cabinet, to)];
    const apart = (axis: 'x' | 'z'): number => (b[axis][0] + b[axis][1] - a[axis][0] - a[axis][1]) / 2;
    const [x, z] = [apart('x'), apart('z')];
    const beside = Math.min(a.z[1], b.z[1]) - Math.max(a.z[0], b.z[0]) > 0;
    return beside ? [Math.sign(x), 0, 0] : [0, 0, Math.sign(z)];
  }
  const sign = inside(from) ? 1 : -1;
  return [outward[0] * sign, outward[1] * sign, outward[2] * sign];
}

function Sensor(props: DrawingProps & { readonly sensor: string }) {
  const { cabinet, sensor, paper, view } = props;
  const { right, up } = axesOf[view];
  const index = { x: 0, y: 1, z: 2 } as const;
  const place = sensorPlace(cabinet, sensor);
  const [x, y] = [paper.right(place[index[right]]), paper.up(place[index[up]])];
  return (
    <Pickable {...props} part={`sensors.${sensor}`} label={`thermometer ${sensor}`}>
      <path className="sensor" d={`M${x} ${y - 11}V${y + 2}`} />
      <circle className="sensor-bulb" cx={x} cy={y + 5} r={4} />
      <text x={x + 9} y={y + 8}>
        {sensor}
      </text>
    </Pickable>
  );
}

function Person(props: DrawingProps & { readonly person: string }) {
  const { cabinet, person, paper } = props;
  const [px, py] = cabinet.people[person]!.at;
  const scene = sceneBox(cabinet, 'plan');
  const [ex, ey] = [Math.min(Math.max(px, scene.x[0]), scene.x[1]), Math.min(Math.max(py, scene.y[0]), scene.y[1])];
  const [x, y] = [paper.right(ex), paper.up(ey)];
  const away = Math.hypot(px - ex, py - ey);
  return (
    <Pickable {...props} part={`people.${person}`} label={`place of ${person}`}>
      <ellipse className="person" cx={x} cy={y} rx={15} ry={8} />
      <circle className="person" cx={x} cy={y} r={6} />
      <text x={x} y={y + 22} textAnchor="middle">
        {person}
        {away > 0.05 ? `, ${formatQuantity('length', away, props.units)} further` : ''}
      </text>
    </Pickable>
  );
}

function areaOf(paper: Paper, box: Box | undefined): Area | undefined {
  return box === undefined ? undefined : paper.area(box);
}

/** What touches, where it touches, and by how much. */
function Touches({ cabinet, paper, units }: DrawingProps & { readonly bays: readonly string[] }) {
  return (
    <g className="touches">
      {touchesIn(cabinet).map(({ box, deep, says }) => {
        const { left, top, width, height } = paper.area(box);
        return (
          <g key={says}>
            <title>{`${says}, ${formatQuantity('length', deep, units)}`}</title>
            <rect x={left} y={top} width={Math.max(2, width)} height={Math.max(2, height)} />
            <text x={left + width / 2} y={top - 4} textAnchor="middle">
              {formatQuantity('length', deep, units)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function Name({ area, text }: { readonly area: Area; readonly text: string }) {
  return (
    <text className="machine-name" x={area.left + area.width / 2} y={area.top - 6} textAnchor="middle">
      {text}
    </text>
  );
}

function ring({ left, top, width, height }: Area): string {
  return `M${left} ${top}h${width}v${height}h${-width}Z`;
}
