// One machine: how hard it shakes what it stands on, how its foam answers its strokes, what of its motors' steps gets through.

import { forcedAmplitude, reversalFrequency, stepFrequency, strokeAt, transmissibility } from '@stillair/physics';
import type { Cabinet, Machine } from '../../cabinet/cabinet.ts';
import { formatQuantity } from '../../units/format.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { reversalLimit, shakeLimit, slabShareLimit, stepLimit, strainLimit } from './limits.ts';
import { easierFoam, heavierSlab, stifferFoam, stifferStand } from './remedies.ts';
import { type Springs, type Stand, standOf } from './stand.ts';

const TRADE = 'vibration';
const GAIN = {
  trade: TRADE,
  quantity: 'reversal-gain',
  title: 'shaking of usual strokes that foam passes on, against standing without foam',
  unit: 'number',
  logarithmic: true,
  weight: 0.3,
  better: 'lower',
} as const;

const THROUGH = 'T = √((1 + (2 ζ r)²)/((1 − r²)² + (2 ζ r)²)), r = f/fn';
const TEXTS = 'theory of vibration; foam loses less to fast motion than this damper, which lets more through';

export function shaking(cabinet: Cabinet, id: string): Measure[] {
  const stand = standOf(cabinet, cabinet.machines[id]!);
  if (stand.machine.standsOn === undefined) return [shake(cabinet, id, stand), unsaid(id)];
  return [
    ...(stand.machine.style === 'moving-bed' ? [slabShare(cabinet, id, stand)] : []),
    shake(cabinet, id, stand),
    reversal(cabinet, id, stand),
    steps(cabinet, id, stand),
    ...(stand.springs === undefined ? [] : [strain(cabinet, id, stand, stand.springs)]),
    ...(stand.upright === undefined ? [] : [upright(id, stand, stand.upright)]),
  ];
}

/** What is not said cannot be judged: it may be a slab, or the bare board. */
function unsaid(id: string): Measure {
  return {
    ...GAIN,
    part: id,
    missing: `machines.${id}.stands-on: what it stands on, such as board, or { slab: 400 mm x 400 mm x 40 mm, foam: seating foam 20 mm }`,
    steps: [],
    remedies: [],
  };
}

function slabShare(cabinet: Cabinet, id: string, { machine, slab }: Stand): Measure {
  const common = {
    trade: TRADE,
    quantity: 'slab-share',
    part: id,
    title: 'paving slab against the machine',
    unit: 'share',
    weight: 0.3,
    better: 'higher',
  } as const;
  return {
    ...common,
    value: slab / machine.mass,
    limit: slabShareLimit(cabinet),
    get steps(): readonly Step[] {
      return [
        {
          text: 'the slab',
          value: slab,
          unit: 'mass',
          formula: 'width · depth · thickness · density',
          inputs: [`machines.${id}.standsOn`],
        },
        { text: 'the machine', value: machine.mass, unit: 'mass', inputs: [`machines.${id}.mass`] },
        { text: 'its bed travels, and what it pushes away moves the less the heavier it is' },
      ];
    },
    get remedies() {
      return heavierSlab(cabinet, id);
    },
    cause: causes.shakenStand,
  };
}

/** The heaviest of what is thrown to and fro. */
function thrown({ shaking: { bedMass, headMass } }: Machine): { readonly mass: number; readonly key: string } {
  return bedMass > headMass ? { mass: bedMass, key: 'bedMass' } : { mass: headMass, key: 'headMass' };
}

function shake(cabinet: Cabinet, id: string, { machine, mass }: Stand): Measure {
  const { acceleration } = machine.shaking;
  const { mass: moved, key } = thrown(machine);
  const value = (moved * acceleration) / mass;
  const limit = shakeLimit(cabinet);
  return {
    trade: TRADE,
    quantity: 'shake',
    part: id,
    title: 'shaking of machine and slab when it turns back, standing free',
    value,
    unit: 'acceleration',
    ...(limit === undefined ? {} : { limit }),
    get steps(): readonly Step[] {
      return [
        {
          text: 'force on what it stands on',
          value: moved * acceleration,
          unit: 'force',
          formula: 'moved mass · acceleration',
          inputs: [`machines.${id}.shaking.${key}`, `machines.${id}.shaking.acceleration`],
        },
        {
          text: 'machine and slab',
          value: mass,
          unit: 'mass',
          inputs: [`machines.${id}.mass`, `machines.${id}.standsOn`],
        },
        {
          text: 'a free body of that mass',
          value,
          unit: 'acceleration',
          formula: 'a = F/m',
          source: 'Newton’s second law',
        },
      ];
    },
    get remedies() {
      return heavierSlab(cabinet, id);
    },
    cause: causes.shakenStand,
    weight: 0.3,
    better: 'lower',
    compared: true,
  };
}

function reversal(cabinet: Cabinet, id: string, { machine, springs }: Stand): Measure {
  const { acceleration, speed, stroke } = machine.shaking;
  const hertz = reversalFrequency(stroke, speed, acceleration);
  return {
    ...GAIN,
    part: id,
    value: springs === undefined ? 1 : transmissibility(hertz / springs.swayHz, springs.damping),
    limit: reversalLimit(cabinet),
    get steps(): readonly Step[] {
      const inputs = ['stroke', 'speed', 'acceleration'].map((key) => `machines.${id}.shaking.${key}`);
      return [
        {
          text: `strokes of ${formatQuantity('length', stroke)} turn back and forth`,
          value: hertz,
          unit: 'frequency',
          formula: 't = L/v + v/a, or 2 √(L/a); f = 1/(2 t)',
          source: 'kinematics',
          inputs,
        },
        ...(springs === undefined
          ? [{ text: 'it stands on no foam: nothing swings with it, and all of it reaches the board' }]
          : swaySteps(id, machine, springs, hertz)),
      ];
    },
    get remedies() {
      return stifferStand(cabinet, id);
    },
    cause: causes.swingingFoam,
  };
}

function swaySteps(id: string, machine: Machine, springs: Springs, hertz: number): Step[] {
  const { acceleration, speed } = machine.shaking;
  const force = thrown(machine).mass * acceleration;
  const worst = strokeAt(springs.swayHz, speed, acceleration);
  return [
    {
      text: 'machine and slab sway on the foam, and rock',
      value: springs.swayHz,
      unit: 'frequency',
      formula: '1/k = 1/k_h + h²/(k_v b²); k_h = k_v/3',
      source: 'springs in series; shear a third of compression, from memory',
      inputs: [
        `machines.${id}.standsOn.foam.stiffness`,
        `machines.${id}.standsOn.foam.stiffening`,
        `machines.${id}.mass`,
      ],
    },
    {
      text: 'share of the force that gets through: above 1 it is made worse',
      value: transmissibility(hertz / springs.swayHz, springs.damping),
      unit: 'number',
      formula: THROUGH,
      source: TEXTS,
      inputs: [`machines.${id}.standsOn.foam.damping`],
    },
    {
      text: 'how far it sways to each side at these strokes',
      value: forcedAmplitude(force, springs.sway, hertz / springs.swayHz, springs.damping),
      unit: 'length',
      formula: 'X = (F/k)/√((1 − r²)² + (2 ζ r)²)',
      source: TEXTS,
    },
    { text: 'strokes that swing it most: zig-zags of about this length', value: worst, unit: 'length' },
  ];
}

function steps(cabinet: Cabinet, id: string, { machine, springs }: Stand): Measure {
  const { speed, travelPerTurn, stepsPerTurn } = machine.shaking;
  const hertz = stepFrequency(speed, travelPerTurn, stepsPerTurn);
  const common = {
    trade: TRADE,
    quantity: 'step-transmission',
    part: id,
    title: 'share of the motors’ humming that reaches the board',
    unit: 'share',
    logarithmic: true,
    weight: 0.3,
    better: 'lower',
    compared: true,
  } as const;
  const through = (at: number): number =>
    springs === undefined ? 1 : transmissibility(at / springs.uprightAlone, springs.damping);
  const value = through(hertz);
  return {
    ...common,
    value,
    ...(springs === undefined ? {} : { limit: stepLimit(cabinet) }),
    get steps(): readonly Step[] {
      return [
        {
          text: 'full steps of a motor at usual speed',
          value: hertz,
          unit: 'frequency',
          formula: 'v n/p',
          source: 'kinematics',
          inputs: ['speed', 'travelPerTurn', 'stepsPerTurn'].map((key) => `machines.${id}.shaking.${key}`),
        },
        ...(springs === undefined
          ? [
              {
                text: 'no foam is between machine and board: the board hums along; above its own frequency it is a drum, not a spring',
              },
            ]
          : [
              {
                text: 'machine and slab on the foam, on a floor that does not give',
                value: springs.uprightAlone,
                unit: 'frequency',
                formula: 'f = √(k/m)/(2π), k = E A/t times its stiffening',
                source: 'theory of vibration',
                inputs: [`machines.${id}.standsOn.foam.stiffness`, `machines.${id}.standsOn.foam.stiffening`],
              } satisfies Step,
              {
                text: `that is ${Math.round(20 * Math.log10(value))} dB; at 12, 35 and 125 Hz ${[12, 35, 125]
                  .map((at) => `${Math.round(20 * Math.log10(through(at)))} dB`)
                  .join(', ')}`,
                value,
                unit: 'share',
                formula: THROUGH,
                source: TEXTS,
                inputs: [`machines.${id}.standsOn.foam.damping`],
              } satisfies Step,
            ]),
      ];
    },
    get remedies() {
      return springs === undefined ? [] : easierFoam(cabinet, id);
    },
    cause: causes.shakenStand,
  };
}

function strain(cabinet: Cabinet, id: string, { machine, mass }: Stand, springs: Springs): Measure {
  const foam = machine.standsOn!.foam!;
  return {
    trade: TRADE,
    quantity: 'foam-strain',
    part: id,
    title: 'how far the foam is pressed together',
    value: springs.strain,
    unit: 'share',
    logarithmic: true,
    limit: strainLimit(cabinet, foam.usableStrain),
    get steps(): readonly Step[] {
      return [
        {
          text: 'machine and slab',
          value: mass,
          unit: 'mass',
          inputs: [`machines.${id}.mass`, `machines.${id}.standsOn`],
        },
        {
          text: `${foam.pads > 0 ? `${foam.pads} pads of` : 'sheet of'} ${foam.kind}, pressed by`,
          value: springs.pressed,
          unit: 'length',
          formula: 'm g t/(E A); flat pads that bulge E (1 + 2 S²)',
          source:
            'A. N. Gent, P. B. Lindley (1959), second-hand; stiffness in order of magnitude: load yours and measure',
          inputs: [`machines.${id}.standsOn.foam.stiffness`],
        },
        {
          text: 'and loses about this of its thickness in the first weeks',
          value: foam.creep * foam.thickness,
          unit: 'length',
          inputs: [`machines.${id}.standsOn.foam.creep`],
        },
      ];
    },
    get remedies() {
      return stifferFoam(cabinet, id);
    },
    cause: causes.pressedFoam,
    weight: 0.3,
    better: 'lower',
  };
}

function upright(id: string, { carrier, give = 0, springs, mass }: Stand, value: number): Measure {
  return {
    trade: TRADE,
    quantity: 'upright-frequency',
    part: id,
    title: 'machine and slab bounce on foam and board',
    value,
    unit: 'frequency',
    get steps(): readonly Step[] {
      const shelfIsSpring = springs !== undefined && give > 1 / springs.upright;
      return [
        {
          text: 'machine and slab',
          value: mass,
          unit: 'mass',
          inputs: [`machines.${id}.mass`, `machines.${id}.standsOn`],
        },
        ...(springs === undefined
          ? []
          : [
              {
                text: 'on the foam alone',
                value: springs.uprightAlone,
                unit: 'frequency',
                inputs: [`machines.${id}.standsOn.foam.stiffness`],
              } satisfies Step,
            ]),
        ...(give > 0 && carrier !== undefined
          ? [
              {
                text: `the board below gives way by, under each 100 N${shelfIsSpring ? ': it gives more than the foam, the shelf is the spring' : ''}`,
                value: 100 * give,
                unit: 'length',
                formula: 'P a² b²/(3 E I L) about',
                source: 'Euler-Bernoulli',
                inputs: [`${carrier.path}.layers`],
              } satisfies Step,
            ]
          : []),
        {
          text: 'both together',
          value,
          unit: 'frequency',
          formula: 'two masses upon one another',
          source: 'theory of vibration',
        },
      ];
    },
    remedies: [],
    weight: 0.2,
    better: 'higher',
  };
}
