// How bright and how even it is on each print.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { type Cause, causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { brighter } from './edits.ts';
import { brightnessLimit, evennessLimit } from './limits.ts';
import { type Lit, litPrint } from './lit.ts';

/** Where the inside throws back less than this, paint does more than lamps. */
const DARK = 0.3;

export const THROWN = 'radiosity of 24 patches, F from Lambert’s contour integral';
const LEFT_OUT =
  'the frame takes its share of what is thrown to and fro (mean hits of random lines, Crofton 1868), but casts no shadow of its own';

export function printLight(cabinet: Cabinet): Measure[] {
  const machines = Object.keys(cabinet.machines);
  const dark = machines.filter((id) => litPrint(cabinet, id).space.lamps.length === 0);
  if (machines.length > 1 && dark.length === machines.length) return [noLamp(cabinet, 'cabinet', 'in the cabinet')];
  return machines.flatMap((id) => {
    const lit = litPrint(cabinet, id);
    return lit.space.lamps.length === 0
      ? [noLamp(cabinet, id, `in ${lit.space.name}`)]
      : [brightness(cabinet, id, lit), evenness(cabinet, id, lit)];
  });
}

function noLamp(cabinet: Cabinet, part: string, where: string): Measure {
  const chamber = cabinet.machines[part]?.chamber !== undefined;
  return {
    trade: 'light',
    quantity: 'print-light',
    part,
    title: 'light on the print',
    missing: chamber
      ? `no lamp burns ${where}: give chamber: lamp: of the machine and its power`
      : `no lamp burns ${where}: add one under heats:, such as { kind: LED strip 10 W, at: [400 mm, 60 mm, 800 mm] }`,
    unit: 'illuminance',
    limit: brightnessLimit(cabinet),
    steps: [],
    remedies: part === 'cabinet' ? [] : brighter(cabinet, part),
    weight: 0.3,
    better: 'higher',
  };
}

function brightness(cabinet: Cabinet, id: string, lit: Lit): Measure {
  return {
    trade: 'light',
    quantity: 'print-light',
    part: id,
    title: 'light on the print',
    value: lit.mean,
    unit: 'illuminance',
    logarithmic: true,
    limit: brightnessLimit(cabinet),
    get steps(): readonly Step[] {
      return stepsOf(id, lit);
    },
    get remedies(): readonly Remedy[] {
      return brighter(cabinet, id);
    },
    get cause(): Cause {
      return causeOf(lit);
    },
    weight: 0.3,
    better: 'higher',
    compared: true,
  };
}

function stepsOf(id: string, lit: Lit): Step[] {
  const { space, direct, thrown, mean, least } = lit;
  return [
    ...space.lamps.map(
      (lamp, at): Step => ({
        text: `straight from ${lamp.id}, mean over the bed`,
        value: direct[at]!,
        unit: 'illuminance',
        formula: 'E = Σ Φ cos a cos b/(π r²) over the pieces of the lamp',
        source: 'Lambert’s cosine law; the lamp taken as diffuse',
        inputs: [lamp.path],
      }),
    ),
    {
      text: `thrown back by the inside, which throws back ${Math.round(100 * meanReflectance(lit))} % of what meets it`,
      value: thrown,
      unit: 'illuminance',
      formula: THROWN,
      source: LEFT_OUT,
      inputs: space.finishes,
    },
    { text: 'together, mean over the bed', value: mean, unit: 'illuminance', inputs: [`machines.${id}.bed.size`] },
    { text: 'its darkest place', value: least, unit: 'illuminance' },
  ];
}

/** Share of the light of a first hit, spread evenly over the faces, that is thrown back. */
export function meanReflectance({ space }: Lit): number {
  const [width, depth, height] = space.size;
  const areas = { floor: width * depth, ceiling: width * depth, front: width * height, back: width * height };
  const all = { ...areas, left: depth * height, right: depth * height };
  const whole = Object.values(all).reduce((sum, area) => sum + area, 0);
  return Object.entries(all).reduce(
    (sum, [face, area]) => sum + (area / whole) * space.reflectances[face as keyof typeof all],
    0,
  );
}

export function causeOf(lit: Lit): Cause {
  return meanReflectance(lit) < DARK ? causes.darkInside : causes.littleLight;
}

/** Held against a limit only where pictures are judged by a program or by an eye that looks closely. */
function evenness(cabinet: Cabinet, id: string, lit: Lit): Measure {
  const watched = Object.values(cabinet.cameras).some(({ looksAt, task }) => looksAt === id && task === 'watching');
  return {
    trade: 'light',
    quantity: 'light-evenness',
    part: id,
    title: 'evenness of the light on the print',
    value: lit.mean > 0 ? lit.least / lit.mean : 1,
    unit: 'share',
    ...(watched || cabinet.limits['light-evenness'] !== undefined ? { limit: evennessLimit(cabinet) } : {}),
    steps: [
      { text: 'the darkest place of the bed', value: lit.least, unit: 'illuminance' },
      { text: 'mean over the bed', value: lit.mean, unit: 'illuminance' },
      {
        text: 'darkest over mean',
        value: lit.mean > 0 ? lit.least / lit.mean : 1,
        unit: 'share',
        formula: 'U0 = Emin/Emean',
      },
    ],
    get remedies(): readonly Remedy[] {
      return brighter(cabinet, id);
    },
    cause: causes.littleLight,
    weight: 0.2,
    better: 'higher',
  };
}
