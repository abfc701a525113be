// A first cabinet file from a few answers. What a person does not know yet is written down all the same, with a comment that
// says what is taken until they measure it.

import { isFault, parseQuantity, parseSizes } from '../units/quantity.ts';
import { kindsOf } from './catalogue.ts';

/** Answers as a person would write them into the file; every one may be missing. */
export interface NewCabinetAnswers {
  readonly title?: string;
  /** Inside size, `800 mm x 600 mm x 1750 mm`. */
  readonly inside?: string;
  /** Outside size, when that is what was measured; `inside` counts before it. */
  readonly outside?: string;
  /** `plywood 18 mm` */
  readonly madeOf?: string;
  /** `glass 4 mm`, or `none`. */
  readonly door?: string;
  /** `4 m x 3.5 m x 2.5 m` */
  readonly room?: string;
  /** `21 °C` */
  readonly temperature?: string;
  /** Kinds of the catalogue, one for each machine, from the lowest bay up. */
  readonly machines?: readonly string[];
  /** Most printed. */
  readonly material?: string;
  /** How the air goes today. */
  readonly air?: 'closed' | 'holes' | 'fan' | 'fan and filter';
  /** Where the air goes that leaves it. */
  readonly vents?: 'room' | 'outdoors';
  /** Where somebody sits, from the inside lower left front corner: right, back, up: `0.5 m, -1.5 m, 1.2 m`. */
  readonly desk?: string;
  /** `9:00` */
  readonly start?: string;
  /** `6 h` */
  readonly lasts?: string;
}

const usual = {
  title: 'My cabinet',
  inside: '800 mm x 600 mm x 1750 mm',
  madeOf: 'plywood 18 mm',
  door: 'glass 4 mm',
  room: '4 m x 3.5 m x 2.5 m',
  temperature: '21 °C',
  machine: 'moving bed 220',
  material: 'PLA',
  start: '9:00',
  lasts: '6 h',
} as const;

const SHELF = 0.02;

/** The commented text of a file that can be read at once, if the answers can. */
export function newCabinet(answers: NewCabinetAnswers): string {
  const machines = answers.machines === undefined || answers.machines.length === 0 ? [usual.machine] : answers.machines;
  const inside = answers.inside ?? insideOf(answers) ?? usual.inside;
  const bays = baysOf(inside, machines.length);
  const material = answers.material ?? usual.material;
  const known = (answer: string | undefined, measure: string): string =>
    answer === undefined ? ` # assumed: ${measure}` : '';
  const lines = [
    '# A cabinet with filament printers, for stillair. Write what is so; `stillair check` says what follows.',
    '# Every quantity carries its unit (mm, in, °C, °F, m3/h, cfm, W, h ...). Keys that begin with _ are your own notes.',
    'stillair: 1',
    `title: ${scalar(answers.title ?? usual.title)}`,
    '',
    'room:',
    `  size: ${scalar(answers.room ?? usual.room)}${known(answers.room, 'measure width x depth x height')}`,
    `  temperature: ${scalar(answers.temperature ?? usual.temperature)}${known(answers.temperature, 'what a thermometer shows; a course by time of day is possible')}`,
    `  # Not given, so assumed: 50 % humidity, 0.5 air changes per hour${answers.desk === undefined ? ', one person at a desk 1.5 m in front' : ''}.`,
    '',
    ...(answers.desk === undefined ? [] : ['people:', `  desk: { at: [${answers.desk}] }`, '']),
    'cabinet:',
    `  inside: ${scalar(inside)}${known(answers.inside ?? answers.outside, 'measure width x depth x height inside')}${answers.inside === undefined && answers.outside !== undefined ? ` # ${answers.outside} outside` : ''}`,
    `  made-of: ${scalar(answers.madeOf ?? usual.madeOf)}${known(answers.madeOf, 'board and thickness, from inside to outside')}`,
    ...(answers.door === 'none'
      ? ['  # No door: the front is closed with the board above.']
      : [`  door: ${scalar(answers.door ?? usual.door)}${known(answers.door, 'leaf of the door')}`]),
    ...(answers.door === 'none'
      ? []
      : ['  # The gap at its seal is assumed to be 0.7 mm; give seal: or seal-gap: in a map of its own under door:.']),
    '',
    'bays: # compartments, from floor to ceiling above the inside floor',
    ...bays.map(({ id, from, to }) => `  ${id}: { z: ${from} mm to ${to} mm }`),
    '',
    'machines:',
    ...machines.map(
      (kind, index) =>
        `  ${machineId(index)}: { kind: ${scalar(kind)}, bay: ${bays[index]!.id} }${answers.machines === undefined ? ' # assumed: the nearest kind; overrule any of its numbers here' : ''}`,
    ),
    '',
    ...airLines(
      answers,
      bays.map(({ id }) => id),
    ),
    'days:',
    '  usual:',
    '    jobs:',
    ...machines.map(
      (_, index) =>
        `      ${index === 0 ? 'bracket' : `bracket-${index + 1}`}: { machine: ${machineId(index)}, material: ${scalar(material)}, start: ${answers.start ?? usual.start}, for: ${scalar(answers.lasts ?? usual.lasts)} }${index === 0 ? known(answers.material, 'material, start and length of a usual job') : ''}`,
    ),
    '',
    '# Changes that you think of are compared without touching the rest:',
    '# options:',
    '#   larger hole: { set: { air.intake.hole: 120 mm round } }',
  ];
  return `${lines.join('\n')}\n`;
}

/** Kinds of machines and materials that an answer may name. */
export function knownKinds(): {
  readonly machines: readonly string[];
  readonly materials: readonly string[];
  readonly boards: readonly string[];
} {
  return {
    machines: kindsOf(undefined, 'machines'),
    materials: kindsOf(undefined, 'materials'),
    boards: kindsOf(undefined, 'boards'),
  };
}

/** Bays of equal height with a board between, in whole millimetres. */
function baysOf(inside: string, machines: number): { id: string; from: number; to: number }[] {
  const read = parseSizes(inside, 3);
  const height = isFault(read) ? 1.75 : read[2]!;
  const count = Math.max(1, machines);
  const each = (height - SHELF * (count - 1)) / count;
  const names =
    count === 1
      ? ['whole']
      : count === 2
        ? ['lower', 'upper']
        : Array.from({ length: count }, (_, index) => `bay-${index + 1}`);
  return names.map((id, index) => ({
    id,
    from: Math.round(index * (each + SHELF) * 1000),
    to: Math.floor((index * (each + SHELF) + each) * 1000 + 1e-6),
  }));
}

/** The inside that is left when the board is taken off on every side; in whole millimetres. */
function insideOf({ outside, madeOf = usual.madeOf, door = usual.door }: NewCabinetAnswers): string | undefined {
  const sizes = outside === undefined ? undefined : parseSizes(outside, 3);
  const thick = parseQuantity('length', /([\d.]+\s*[a-z"']+)\s*$/i.exec(madeOf)?.[1] ?? '');
  if (sizes === undefined || isFault(sizes) || isFault(thick)) return undefined;
  const leaf = door === 'none' ? thick : parseQuantity('length', /([\d.]+\s*[a-z"']+)\s*$/i.exec(door)?.[1] ?? '');
  const front = isFault(leaf) ? 0 : leaf.value;
  const [width = 0, depth = 0, height = 0] = sizes;
  const left = [width - 2 * thick.value, depth - thick.value - front, height - 2 * thick.value];
  return left.every((length) => length > 0)
    ? left.map((length) => `${Math.round(length * 1000)} mm`).join(' x ')
    : undefined;
}

function machineId(index: number): string {
  return ['first', 'second', 'third', 'fourth', 'fifth', 'sixth'][index] ?? `machine-${index + 1}`;
}

function airLines({ air, vents = 'room' }: NewCabinetAnswers, bays: readonly string[]): string[] {
  const first = bays[0]!;
  const last = bays.at(-1)!;
  const exhaust: Record<'holes' | 'fan' | 'fan and filter', string> = {
    holes: `  exhaust: { from: ${last}, to: ${vents}, hole: 80 mm round }`,
    fan: `  exhaust: { from: ${last}, to: ${vents}, parts: [ { fan: axial 92 mm quiet } ] }`,
    'fan and filter': `  exhaust: { from: ${last}, to: ${vents}, parts: [ { filter: pleated H13 200 mm }, { fan: axial 120 mm strong } ] }`,
  };
  if (air === 'closed') return ['# air: no holes yet; the cabinet breathes through its gaps alone', ''];
  const kind = air ?? 'holes';
  return [
    `air:${air === undefined ? ' # assumed: one hole low and one high; say what there is' : ''}`,
    `  intake: { from: room, to: ${first}, hole: 80 mm round }`,
    ...bays
      .slice(1)
      .map((bay, index) => `  through-${index + 1}: { from: ${bays[index]!}, to: ${bay}, hole: 80 mm round }`),
    exhaust[kind],
    '',
  ];
}

/** A text of the person's own as YAML that reads back as the same text. */
function scalar(text: string): string {
  const plain =
    /^[\p{L}\d][\p{L}\d .°%+()/²³-]*[\p{L}\d)%²³]$|^[\p{L}]$/u.test(text) &&
    !/^[\d.+-]+(?:e[+-]?\d+)?$|^0[xo]|^(?:true|false|null|yes|no)$/i.test(text);
  return plain ? text : JSON.stringify(text);
}
