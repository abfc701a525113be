// Which inputs can move a finding at all. With few samples chance alone makes some input look like a driver; what nature rules
// out is not even asked: what the air carries moves neither heat nor air, one contaminant does not move another, what
// carries and shakes moves no air, and how loud a machine is moves nothing else.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Measure } from '../trades/measure.ts';

/** Paths of inputs that belong to one contaminant, with its name. */
const OF_CONTAMINANT = [
  /^(?:room|outdoors)\.background\.(.+)$/,
  /^materials\..+\.emissions\.([^.]+(?:\.5)?)\.p\d\d$/,
  /\.(?:efficiency|exhaustFilter|recirculationFilter)\.(.+)$/,
] as const;

/** Inputs of all particles: they settle, and share one factor. */
const OF_PARTICLES: ReadonlySet<string> = new Set(['room.deposition', 'factors.emissionParticles']);
const OF_VAPOURS: ReadonlySet<string> = new Set(['factors.emissionVapours']);

/** Inputs of what carries and shakes, and trades that ask for nothing else, or for nothing of it. */
const OF_STRUCTURE = /^structure\.|^machines\.[^.]+\.(?:mass$|shaking\.|standsOn\.)/;
const STRUCTURE_ALONE: ReadonlySet<string> = new Set(['structure', 'vibration']);
const WITHOUT_STRUCTURE: ReadonlySet<string> = new Set(['heat', 'airflow', 'draught', 'air-quality', 'sound']);
/** Inputs that only some trades read: how things are plugged in and what a spool hangs on moves neither air nor heat. */
const READ_BY: readonly (readonly [RegExp, ReadonlySet<string>])[] = [
  [/^power\.|^machines\..+\.mains\./, new Set(['power', 'cost'])],
  [/^spools\.|^machines\..+\.drive\./, new Set(['filament', 'fit', 'fire'])],
];

/** What no day changes in these trades comes from their own inputs alone. */
const OF_NO_DAY: ReadonlySet<string> = new Set([
  'sockets',
  'plug-chain',
  'strip-breaker',
  'inrush',
  'earth-leakage',
  'fuse-place',
  'filament-pull',
  'filament-start',
  'filament-bend',
  'filament-push',
]);
const OWN_INPUTS = /^(?:power|spools)\.|\.(?:mains|drive)\.|\.(?:elasticModulus|bendStrain)$/;

const plain = (name: string): string => name.toLowerCase().replaceAll(/[^a-z0-9]/g, '');

/** How machines move and doors hang, how true the carcass is. */
const ONLY_FIT = /^fit\./;
const FIT_TOO = /^(?:room\.size|machines\..+\.(?:mass|standsOn))\b/;

/** What light asks beside its own numbers; only when lamps burn depends on the day. */
const LIT_TOO = /^heats\.|\.partSize$|^machines\.[^.]+\.(?:frameArea|bed\.)/;
const LAMP_HOURS = 'lit-while-printing';

/** Trades that look at the shape of things. */
const GEOMETRIC: ReadonlySet<string> = new Set(['fit', 'fittings', 'light', 'structure', 'vibration', 'filament']);

/** A test for one cabinet; where a fan is switched by what the air carries, everything may matter. */
export function relevanceIn(cabinet: Cabinet): (path: string, finding: Pick<Measure, 'trade' | 'quantity'>) => boolean {
  const fed = Object.values(cabinet.paths).some(({ parts }) =>
    parts.some((part) => part.part === 'fan' && part.control.kind === 'air-quality'),
  );
  const names = new Set(
    [
      ...Object.keys(cabinet.room.background),
      ...Object.values(cabinet.materials).flatMap(({ emissions }) => Object.keys(emissions)),
    ].map(plain),
  );
  const known = new Map<string, InputKind>();
  return (path, { trade, quantity }) => {
    const kind = known.get(path) ?? kindOf(path);
    known.set(path, kind);
    if (kind.alone !== undefined) return kind.alone === trade;
    if (OF_NO_DAY.has(quantity) && !kind.own) return false;
    if (kind.readers !== undefined) return kind.readers.has(trade);
    if (STRUCTURE_ALONE.has(trade)) return kind.structural;
    if (kind.structural && WITHOUT_STRUCTURE.has(trade)) return false;
    if (trade === 'light' && quantity !== LAMP_HOURS) return kind.lit;
    // What fit alone asks moves no day; and no day moves what fits.
    if (kind.onlyFit) return GEOMETRIC.has(trade);
    if (trade === 'fit') return kind.fitToo;
    if (fed) return true;
    const { contaminant } = kind;
    const grouped = OF_PARTICLES.has(path) || OF_VAPOURS.has(path);
    if (contaminant === undefined && !grouped) return true;
    if (trade !== 'air-quality') return false;
    const about = quantity.split('-').find((word) => names.has(word));
    if (about === undefined) return true;
    const particles = about === 'particles' || about === 'pm25';
    return contaminant === undefined ? OF_PARTICLES.has(path) === particles : contaminant === about;
  };
}

/** What a path alone tells of an input: hundreds of findings ask it of the same ones. */
interface InputKind {
  readonly alone: string | undefined;
  readonly readers: ReadonlySet<string> | undefined;
  readonly own: boolean;
  readonly structural: boolean;
  readonly lit: boolean;
  readonly onlyFit: boolean;
  readonly fitToo: boolean;
  readonly contaminant: string | undefined;
}

function kindOf(path: string): InputKind {
  return {
    alone: ofOneTrade(path),
    readers: READ_BY.find(([own]) => own.test(path))?.[1],
    own: OWN_INPUTS.test(path),
    structural: OF_STRUCTURE.test(path),
    lit: LIT_TOO.test(path),
    onlyFit: ONLY_FIT.test(path),
    fitToo: FIT_TOO.test(path),
    contaminant: contaminantOf(path),
  };
}

/** Inputs that only one trade reckons with. */
const OF_ONE_TRADE: readonly (readonly [start: string, trade: string])[] = [
  ['protection.', 'fire'],
  ['costs.', 'cost'],
  ['fittings.', 'fittings'],
  ['sound.', 'sound'],
  ['light.', 'light'],
  ['cameras.', 'light'],
];

function ofOneTrade(path: string): string | undefined {
  return OF_ONE_TRADE.find(([start]) => path.startsWith(start))?.[1];
}

function contaminantOf(path: string): string | undefined {
  for (const pattern of OF_CONTAMINANT) {
    const name = pattern.exec(path)?.[1];
    if (name !== undefined) return plain(name);
  }
  return undefined;
}
