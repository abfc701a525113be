// What feeds a fire: gaps and holes with everything shut, the door when it opens or its pane falls out, and fans left running.

import { airHeat, glassFallsOut, hotBoxAir, openingAir } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { formatClock, formatQuantity } from '../../units/format.ts';
import { massFlow, piecesOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { type Course, largest } from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { fansIn, OUTSIDE } from '../plant.ts';
import { zeros } from '../zeros.ts';
import { caution } from './limits.ts';
import { doorOpening, openingsOf, pathsOut, type Space, spacesOf } from './spaces.ts';

const KAWAGOE = 'Kawagoe 1958, second-hand; Rockett 1976 for openings at several heights';

/** W that openings and gaps can feed with doors shut and fans still. */
export function ventFires(cabinet: Cabinet): Measure[] {
  const { figures, onAlarm } = cabinet.protection;
  return spacesOf(cabinet).map((space) => {
    const openings = openingsOf(cabinet, space, onAlarm.flaps === 'shut');
    const air = hotBoxAir(openings, figures.openingAir);
    return {
      trade: 'fire',
      quantity: 'vent-fire',
      part: space.part,
      title: 'fire that gaps and holes can feed, doors shut and fans still',
      value: air * airHeat(figures.oxygenHeat),
      unit: 'power',
      logarithmic: true,
      get steps(): readonly Step[] {
        const each = new Map<string, number>();
        for (const { what, area } of openings) each.set(what, (each.get(what) ?? 0) + area);
        return [
          ...[...each].map(([what, area]) => ({
            text: `free area of ${what}${what === 'joints' ? ' of the boards' : ''}`,
            value: area,
            unit: 'area',
            inputs: what === 'joints' ? ['jointGap'] : what.startsWith('doors') ? [`${what}.sealGap`] : [],
          })),
          {
            text: 'filters are taken to have burnt away; flaps count as open unless the alarm shuts them',
            inputs: ['protection.onAlarm'],
          },
          {
            text: 'heat for each kilogram of the air that the fire draws through them',
            value: airHeat(figures.oxygenHeat),
            unit: 'specific-energy',
            formula: 'one opening: ṁ = 0.5 A √H kg/s; several share one level at which inside and outside press alike',
            source: KAWAGOE,
            inputs: ['protection.figures.openingAir', 'protection.figures.oxygenHeat'],
          },
          { text: 'a low and a high opening together draw far more than each by itself, as a chimney does' },
          caution('fire'),
        ];
      },
      remedies: [],
      weight: 0.5,
      better: 'lower',
      compared: true,
    } satisfies Measure;
  });
}

/** W through the largest door once it is open. */
export function doorFires(cabinet: Cabinet): Measure[] {
  const { figures } = cabinet.protection;
  return Object.entries(cabinet.doors)
    .filter(([, { face }]) => face !== 'top' && face !== 'bottom')
    .map(([id, door]) => {
      const { width, from, to } = doorOpening(cabinet, door);
      return { id, door, width, from, to, air: openingAir(width * (to - from), to - from, figures.openingAir) };
    })
    .sort((a, b) => b.air - a.air)
    .slice(0, 1)
    .map(({ id, door, width, from, to, air }) => {
      return {
        trade: 'fire',
        quantity: 'door-fire',
        part: `doors.${id}`,
        title: 'fire that the largest door can feed once it is open',
        value: air * airHeat(figures.oxygenHeat),
        unit: 'power',
        logarithmic: true,
        get steps(): readonly Step[] {
          return [
            { text: 'opening', value: width * (to - from), unit: 'area' },
            {
              text: 'air that a fully burning bay draws through it, as heat',
              value: air * airHeat(figures.oxygenHeat),
              unit: 'power',
              formula: 'ṁ = 0.5 A √H kg/s, about 1.5 A √H MW',
              source: KAWAGOE,
              inputs: ['protection.figures.openingAir'],
            },
            { text: 'do not open a cabinet that smokes: starved of air it may flare up in your face' },
            ...paneSteps(door.build.layers),
            caution('smoke'),
            caution('fire'),
          ];
        },
        remedies: [],
        weight: 0.4,
      } satisfies Measure;
    });
}

function paneSteps(layers: Cabinet['doors'][string]['build']['layers']): Step[] {
  const panes = layers.filter(({ material }) => material === 'glass');
  if (panes.length > 0)
    return [
      {
        text: 'gas temperature at which the pane falls out and the door is open by itself; it cracks far earlier',
        value: glassFallsOut(panes[0]!.thickness, panes.length > 1 ? 2 : 1),
        unit: 'temperature',
        source: 'Babrauskas, Glass breakage in fires, 1997',
      },
    ];
  const plastic = layers.find(({ material }) => material === 'acrylic' || material === 'polycarbonate');
  return plastic === undefined
    ? []
    : [{ text: `a pane of ${plastic.material} softens, falls and burns long before glass would fall out` }];
}

/** kg/s of air that fans bring to a space from outside, or draw after them, whichever is more. */
export function fanAir(run: DayRun, space: Space): Course {
  const { cabinet, record } = run;
  const ways = pathsOut(cabinet, space)
    .filter((id) => fansIn(cabinet.paths[id]!).length > 0 && run.assembly.paths[id]?.kind === 'path')
    .flatMap((id) =>
      piecesOf(run, id).map(({ name, to }) => ({ outward: OUTSIDE.includes(to), flow: massFlow(run, name).values })),
    );
  const { times } = record;
  const inward = zeros(times.length);
  const outward = zeros(times.length);
  for (const way of ways)
    for (let row = 0; row < times.length; row += 1) {
      const flow = way.flow[row]!;
      const sum = way.outward === flow > 0 ? outward : inward;
      sum[row]! += Math.abs(flow);
    }
  for (let row = 0; row < times.length; row += 1) if (outward[row]! > inward[row]!) inward[row] = outward[row]!;
  return { times, values: inward };
}

export function fanFires(run: DayRun): Measure[] {
  const { cabinet } = run;
  const { figures, onAlarm } = cabinet.protection;
  const open = ventValue(cabinet);
  return spacesOf(cabinet).flatMap((space) => {
    const blown = pathsOut(cabinet, space).filter((id) => fansIn(cabinet.paths[id]!).length > 0);
    if (blown.length === 0) return [];
    const { value: most, time } = largest(fanAir(run, space));
    return [
      {
        trade: 'fire',
        quantity: 'fan-fire',
        part: space.part,
        title: 'fire that fans left running can feed',
        value: most * airHeat(figures.oxygenHeat),
        unit: 'power',
        at: time,
        get steps(): readonly Step[] {
          return [
            {
              text: `air that ${blown.map((id) => `air.${id}`).join(', ')} move at most, at ${formatClock(time)}`,
              value: most / 1.2,
              unit: 'flow',
              source: 'the day as simulated',
            },
            {
              text: 'heat for each kilogram of it',
              value: airHeat(figures.oxygenHeat),
              unit: 'specific-energy',
              source: 'Huggett 1980, ± 7 %',
              inputs: ['protection.figures.oxygenHeat'],
            },
            {
              text: `therefore fans stop on alarm; openings alone can feed ${formatQuantity('power', open(space))} by their own draught`,
            },
            onAlarm.fans === 'stop'
              ? { text: 'the file says that they stop', inputs: ['protection.onAlarm'] }
              : { text: 'the file does not say that they stop: protection.on-alarm.fans' },
            caution('fire'),
          ];
        },
        remedies: [],
        cause: causes.fedOnAlarm,
        weight: 0.5,
        better: 'lower',
        compared: true,
      } satisfies Measure,
    ];
  });
}

function ventValue(cabinet: Cabinet): (space: Space) => number {
  const { figures, onAlarm } = cabinet.protection;
  return (space) =>
    hotBoxAir(openingsOf(cabinet, space, onAlarm.flaps === 'shut'), figures.openingAir) * airHeat(figures.oxygenHeat);
}
