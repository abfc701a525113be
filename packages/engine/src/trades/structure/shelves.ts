// Each board that carries a machine or a load: how far it sags now and after years, how strained it is, what its ends rest on.

import {
  type BeamAnswer,
  type BeamLoad,
  bendingSection,
  bendingStress,
  finalSag,
  GRAVITY,
  pinStress,
  simpleBeam,
} from '@stillair/physics';
import type { Cabinet, Machine } from '../../cabinet/cabinet.ts';
import { formatQuantity } from '../../units/format.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import {
  arealMass,
  type Carrier,
  carrierOf,
  carriers,
  FIXED,
  looseMass,
  pressesOn,
  type Stiffness,
  slabMass,
  spansOf,
  stiffnessOf,
} from '../standing-on.ts';
import { laterSagLimit, pinLimit, sagLimit, stressLimit } from './limits.ts';
import { cleats, stifferBoard } from './remedies.ts';

const BEAM = 'E I v″ = −M between two supports';
const BEAM_SOURCE = 'Euler-Bernoulli (Roark’s Formulas for Stress and Strain, table 8.1)';

interface Loaded {
  readonly carrier: Carrier;
  readonly machines: readonly string[];
  readonly loads: readonly BeamLoad[];
  /** N, of all that stands on it, without itself. */
  readonly on: number;
  /** kg */
  readonly loose: number;
  readonly own: number;
}

export function shelves(cabinet: Cabinet): Measure[] {
  const all = carriers(cabinet);
  const standing = new Map<Carrier, string[]>();
  for (const [id, machine] of Object.entries(cabinet.machines)) {
    const carrier = carrierOf(cabinet, machine, all);
    if (carrier !== undefined) standing.set(carrier, [...(standing.get(carrier) ?? []), id]);
  }
  return all
    .filter(({ onFloor }) => !onFloor)
    .map((carrier) => loaded(cabinet, carrier, standing.get(carrier) ?? [], all))
    .filter(({ on }) => on > 0)
    .flatMap((load) => measures(cabinet, load));
}

function loaded(cabinet: Cabinet, carrier: Carrier, machines: readonly string[], all: readonly Carrier[]): Loaded {
  const span = carrier.x[1] - carrier.x[0];
  const own = arealMass(carrier.build) * span * carrier.depth + lippingMass(carrier, span);
  const loose =
    carrier.hold.load +
    carrier.bays.reduce((sum, bay) => {
      const boards = all.filter(({ bays }) => bays.includes(bay));
      const whole = boards.reduce((length, { x }) => length + x[1] - x[0], 0);
      return sum + (looseMass(cabinet, bay) * span) / whole;
    }, 0);
  const pressed = machines.flatMap((id) => pressesOn(cabinet, carrier, cabinet.machines[id]!));
  const on = pressed.reduce((sum, { force }) => sum + force, 0) + GRAVITY * loose;
  return {
    carrier,
    machines,
    loads: [...pressed, { force: GRAVITY * (own + loose), from: 0, to: span }],
    on,
    loose,
    own,
  };
}

/** kg/m³ of a strip of wood; one of metal is thin, and as light. */
const STRIP_DENSITY = 500;

function lippingMass({ hold: { lipping } }: Carrier, span: number): number {
  return lipping === undefined ? 0 : lipping.height * lipping.breadth * lipping.edges * span * STRIP_DENSITY;
}

/** Of all spans between posts, the one that sags most. */
function worstSpan(carrier: Carrier, loads: readonly BeamLoad[], stiffness: number): BeamAnswer & { length: number } {
  const answers = spansOf(carrier).map(([from, to]) => ({
    ...simpleBeam(to - from, stiffness, cutTo(loads, from, to)),
    length: to - from,
  }));
  return answers.reduce((worst, answer) => (answer.sag > worst.sag ? answer : worst));
}

function cutTo(loads: readonly BeamLoad[], from: number, to: number): BeamLoad[] {
  return loads.flatMap((load): BeamLoad[] => {
    if ('at' in load) {
      const inside = load.at >= from && (load.at < to || (load.at === to && load.at > from));
      return inside ? [{ force: load.force, at: load.at - from }] : [];
    }
    const [start, end] = [Math.max(load.from, from), Math.min(load.to, to)];
    if (end <= start) return [];
    return [{ force: (load.force * (end - start)) / (load.to - load.from), from: start - from, to: end - from }];
  });
}

function measures(cabinet: Cabinet, load: Loaded): Measure[] {
  const { carrier, machines } = load;
  const stiffness = stiffnessOf(cabinet, carrier);
  const common = { trade: 'structure', part: carrier.id, steps: [], remedies: [] } as const;
  if (stiffness === undefined) {
    return [
      {
        ...common,
        quantity: 'shelf-sag',
        title: 'sag of the board when loaded',
        missing: whatIsMissing(cabinet, carrier),
        unit: 'length',
        weight: 0.5,
        better: 'lower',
      },
    ];
  }
  const beam = worstSpan(carrier, load.loads, stiffness.bending);
  const sag = beam.sag * (1 - FIXED * carrier.hold.endFixity);
  const later = finalSag(sag, stiffness.growth);
  const stress = bendingStress(beam.moment * stiffness.share, bendingSection(stiffness.section), stiffness.part);
  const end = Math.max(beam.left, beam.right);
  const inputs = [
    `${carrier.path}.layers`,
    `structure.boards.${stiffness.material}.along`,
    ...machines.flatMap((id) => [`machines.${id}.mass`, `machines.${id}.standsOn`]),
  ];
  const carries = (): Step[] => whatItCarries(cabinet, load, stiffness, beam.length);
  const stiffer = {
    get remedies() {
      return stifferBoard(cabinet, carrier, stiffness);
    },
  };
  return [
    withSteps(
      {
        ...common,
        quantity: 'shelf-sag',
        title: 'sag of the board when loaded',
        value: sag,
        unit: 'length',
        logarithmic: true,
        limit: sagLimit(cabinet, beam.length),
        cause: causes.weakShelf,
        weight: 0.5,
        better: 'lower',
      },
      () => [
        ...carries(),
        {
          text: `sag at ${formatQuantity('length', beam.sagAt)} from its left end: ${ratio(beam.length, sag)}`,
          value: sag,
          unit: 'length',
          formula: `${BEAM}, less what its ends hold (${carrier.hold.joint})`,
          source: BEAM_SOURCE,
          inputs,
        },
      ],
      stiffer,
    ),
    withSteps(
      {
        ...common,
        quantity: 'shelf-sag-years',
        title: 'sag of the board after years',
        value: later,
        unit: 'length',
        logarithmic: true,
        limit: laterSagLimit(cabinet, beam.length),
        cause: causes.weakShelf,
        weight: 0.5,
        better: 'lower',
      },
      () => [
        ...carries(),
        { text: 'sag when loaded', value: sag, unit: 'length', formula: BEAM, source: BEAM_SOURCE, inputs },
        {
          text: `in the end ${ratio(beam.length, later)}: dry boards under lasting load; a bay warmed daily creeps more`,
          value: later,
          unit: 'length',
          formula: 'sag (1 + k)',
          source: 'EN 1995-1-1, 2.2.3 and table 3.2',
          inputs: [`structure.boards.${stiffness.material}.creep`],
        },
      ],
      stiffer,
    ),
    withSteps(
      {
        ...common,
        quantity: 'shelf-stress',
        title: 'bending stress in the board',
        value: stress,
        unit: 'stress',
        logarithmic: true,
        limit: stressLimit(cabinet, stiffness.material, stiffness.stress),
        cause: causes.weakShelf,
        weight: 0.8,
        better: 'lower',
      },
      () => [
        ...carries(),
        {
          text: 'largest bending stress, in its stiffest layer',
          value: stress,
          unit: 'stress',
          formula: 'M E z/(E I)',
          source: 'theory of bending',
          inputs,
        },
      ],
      stiffer,
    ),
    carrier.hold.joint === 'pins' ? pins(cabinet, load, end) : ends(load, end),
  ];
}

function whatIsMissing({ structure }: Cabinet, { id, build, path }: Carrier): string {
  const thin = build.layers.find(({ material }) => structure.boards[material] !== undefined);
  if (thin === undefined) {
    const { material } = build.layers[0]!;
    return `how stiff ${material} is: parts.boards.${material}.bending, or another board`;
  }
  const key = path.startsWith('faces') ? 'cabinet.bottom.lipping' : `shelves.${id}.lipping`;
  return `${key}: how the edges of this thin sheet of ${thin.material} are folded, such as { size: 30 mm x 1 mm, edges: front and back, stiffness: 200 GPa }`;
}

/** Half of the pins carry when the board is warped. */
function pins(cabinet: Cabinet, { carrier, on, own }: Loaded, end: number): Measure {
  const { pins: given } = carrier.hold;
  const atEnd = Math.max(1, Math.floor(given.count / 2));
  const value = given.count <= 4 ? Math.max(end, (on + GRAVITY * own) / 2) : (2 * end) / atEnd;
  return {
    trade: 'structure',
    part: carrier.id,
    quantity: 'pin-load',
    title: 'load on one pin when half of them carry',
    value,
    unit: 'force',
    limit: pinLimit(cabinet),
    get steps(): readonly Step[] {
      const { shear, bearing } = pinStress(value, given.diameter, given.depth);
      const pin = `structure.shelves.${carrier.id}.pins`;
      return [
        { text: `load on the more loaded end`, value: end, unit: 'force', inputs: [carrier.path] },
        {
          text: 'a warped board rests on two of four pins: one of them then bears',
          value,
          unit: 'force',
          source: 'common practice, no source',
          inputs: [`${pin}.count`],
        },
        { text: 'shear in the pin', value: shear, unit: 'stress', formula: 'F/(π d²/4)', inputs: [`${pin}.diameter`] },
        {
          text: 'bearing on the board; plywood bears about 60 N/mm² for a moment, half of that for years',
          value: bearing,
          unit: 'stress',
          formula: 'F/(d t); f = 0.11 (1 − 0.01 d) ρ',
          source: 'EN 1995-1-1, equation (8.36)',
          inputs: [`${pin}.depth`],
        },
      ];
    },
    get remedies() {
      return cleats(cabinet, carrier);
    },
    cause: causes.onPins,
    weight: 0.8,
    better: 'lower',
  };
}

function ends({ carrier }: Loaded, end: number): Measure {
  return {
    trade: 'structure',
    part: carrier.id,
    quantity: 'support-load',
    title: 'load on the more loaded end',
    value: end,
    unit: 'force',
    steps: [
      {
        text: `what its ${carrier.hold.joint} must bear at that end`,
        value: end,
        unit: 'force',
        inputs: [carrier.path],
      },
    ],
    remedies: [],
    weight: 0.3,
    better: 'lower',
  };
}

function whatItCarries(cabinet: Cabinet, load: Loaded, { bending, material }: Stiffness, span: number): Step[] {
  const { carrier, machines, loose, own } = load;
  const parts = machines.map((id): Step => {
    const machine: Machine = cabinet.machines[id]!;
    const slab = slabMass(machine);
    return {
      text: slab > 0 ? `${id} with its slab of ${formatQuantity('mass', slab)}` : id,
      value: machine.mass + slab,
      unit: 'mass',
      inputs: [`machines.${id}.mass`, `machines.${id}.standsOn`],
    };
  });
  return [
    ...parts,
    ...(loose > 0 ? [{ text: 'what else lies on it', value: loose, unit: 'mass' } satisfies Step] : []),
    { text: 'the board itself', value: own, unit: 'mass', inputs: [`${carrier.path}.layers`] },
    { text: 'span between supports', value: span, unit: 'length' },
    {
      text: `bending stiffness E I of ${material} over the whole depth, in N·m²`,
      value: bending,
      unit: 'number',
      formula: 'Σ E b t³/12 of its layers; a strip under its edge works with the stiffest',
      inputs: [`structure.boards.${material}.along`],
    },
  ];
}

function ratio(span: number, sag: number): string {
  return sag > 0 ? `span/${Math.round(span / sag)}` : 'none';
}

function withSteps(
  measure: Omit<Measure, 'steps' | 'remedies'>,
  steps: () => readonly Step[],
  more: Pick<Measure, 'remedies'>,
): Measure {
  return {
    ...measure,
    get steps() {
      return steps();
    },
    get remedies() {
      return more.remedies;
    },
  };
}
