// Sound: levels, boards and wishes, with what is assumed where the file says nothing.

import { octaveBands } from '@stillair/physics';
import type { Profile } from '../units/profile.ts';
import { type Assumption, decades, normal } from './assumption.ts';
import type { Cabinet, Layer } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import type { Candidate, Ledger } from './ledger.ts';
import { octavesFrom } from './octaves.ts';
import type { BoardSound, CabinetSound, MachineSound, Muffler, Octaves } from './sound.ts';
import type { FittingSoundSpec, MachineNoiseSpec } from './sound-spec.ts';
import type { FileSpec, LayerSpec, PartsSpec } from './spec.ts';

const MEMORY = 'common practice, from memory';

export const soundDefaults: Readonly<
  Record<
    'machine' | 'idle' | 'reverberation' | 'background' | 'panels' | 'lowBands' | 'builtIn' | 'coincidence' | 'damping',
    Assumption
  >
> = {
  machine: normal(48, 45, 53, `a printer on a table, 1 m away; no printed source, ${MEMORY}`),
  idle: normal(30, 20, 38, `fans of its supply and board; ${MEMORY}`),
  reverberation: decades(0.5, 0.35, 0.9, `a furnished room; ${MEMORY}`),
  background: normal(30, 24, 38, `a quiet room by day; ${MEMORY}`),
  panels: normal(0, -5, 5, 'published rows and models of boards differ by 5 dB an octave (rms, seven boards)'),
  lowBands: normal(0, -6, 6, 'a bay is too small for a diffuse field below 250 Hz: own judgement'),
  builtIn: normal(5.5, 3, 8, `a guard, grille or filter close to the blades; ${MEMORY}`),
  coincidence: decades(23, 18, 30, `a board of wood; ${MEMORY}`),
  damping: decades(0.03, 0.015, 0.06, `a mounted board; ${MEMORY}`),
};

/** Shape of a printer's octave levels, dB: motors and part fan. From memory, no source: a level of one's own tells more. */
const PRINTER: Profile = [
  [63, -8],
  [125, -6],
  [250, -4],
  [500, -3],
  [1000, -5],
  [2000, -7],
  [4000, -11],
  [8000, -17],
];

/** A bare board about which nothing is known. */
export const BARE: Octaves = [0.1, 0.1, 0.1, 0.08, 0.06, 0.06, 0.06, 0.06];

/** dB an octave by which a board lets more through below the lowest octave that was measured: the law of mass. */
const MASS_LAW = 6;

/** Every layer of the shell, of doors and of shelves. */
export function shellLayers({ faces, doors, partitions }: Pick<Cabinet, 'faces' | 'doors' | 'partitions'>): Layer[] {
  return [...Object.values(faces), ...Object.values(doors), ...partitions].flatMap(({ build }) => build.layers);
}

export function fillSound(
  spec: FileSpec,
  layers: readonly Layer[],
  people: readonly string[],
  ledger: Ledger,
): CabinetSound {
  const { room = {} } = spec;
  const absorption = room.absorption;
  return {
    machines: Object.fromEntries(
      Object.keys(spec.machines ?? {}).map((id) => [id, fillMachineSound(id, spec, ledger)]),
    ),
    boards: Object.fromEntries(
      [...new Set(layers.map(({ material }) => material))].map((board) => [
        board,
        fillBoard(board, spec.parts, ledger),
      ]),
    ),
    people: Object.fromEntries(
      people.map((id) => [
        id,
        (spec.people?.[id]?.quiet ?? []).map(({ written, hours, limit }, index) => {
          const at = `sound.people.${id}.${index}`;
          const file = ['people', id, 'quiet', written];
          ledger.note(at, ledger.given(file));
          return {
            hours,
            limitDbA: ledger.number(`${at}.limitDbA`, [{ quantity: limit, file }], { value: 0, how: 'given' }),
          };
        }),
      ]),
    ),
    room: {
      reverberation: ledger.number(
        'sound.room.reverberation',
        [{ quantity: room.reverberation, file: ['room', 'reverberation'] }],
        absorption === undefined ? soundDefaults.reverberation : { value: 0.5, how: 'its absorption is given instead' },
      ),
      ...(absorption === undefined
        ? {}
        : {
            absorption: ledger.number(
              'sound.room.absorption',
              [{ quantity: absorption, file: ['room', 'absorption'] }],
              { value: 0, how: 'given' },
            ),
          }),
      backgroundDbA: ledger.number(
        'sound.room.backgroundDbA',
        [{ quantity: room['background-noise'], file: ['room', 'background-noise'] }],
        soundDefaults.background,
      ),
    },
    doubt: {
      panelsDb: ledger.number('sound.doubt.panelsDb', [], soundDefaults.panels),
      lowBandsDb: ledger.number('sound.doubt.lowBandsDb', [], soundDefaults.lowBands),
      builtInDb: ledger.number('sound.doubt.builtInDb', [], soundDefaults.builtIn),
    },
  };
}

function fillMachineSound(id: string, spec: FileSpec, ledger: Ledger): MachineSound {
  const own = spec.machines![id]!;
  const found = findPart(spec.parts, 'machines', own.kind)!;
  const kind = found.spec.noise ?? {};
  const at = `sound.machines.${id}`;
  const candidates = (key: keyof MachineNoiseSpec & ('level' | 'idle')): Candidate[] => [
    { quantity: own.noise?.[key], file: ['machines', id, 'noise', key] },
    found.own
      ? { quantity: kind[key], file: ['parts', 'machines', own.kind, 'noise', key] }
      : { quantity: kind[key], part: `machines.${own.kind}`, source: found.source },
  ];
  const octaves = own.noise?.octaves ?? kind.octaves;
  ledger.note(
    `${at}.octavesDb`,
    own.noise?.octaves !== undefined
      ? ledger.given(['machines', id, 'noise', 'octaves'])
      : octaves === undefined
        ? { kind: 'derived', how: 'the shape of a usual printer, from memory' }
        : { kind: 'catalogue', part: `machines.${own.kind}`, source: found.source },
  );
  return {
    printingDbA: ledger.number(`${at}.printingDbA`, candidates('level'), soundDefaults.machine),
    idleDbA: ledger.number(`${at}.idleDbA`, candidates('idle'), soundDefaults.idle),
    octavesDb: octavesFrom(octaves ?? PRINTER),
  };
}

function fillBoard(board: string, parts: PartsSpec | undefined, ledger: Ledger): BoardSound {
  const { spec, own, source, kind } = findPart(parts, 'boards', board)!;
  const at = `sound.boards.${board}`;
  ledger.note(
    at,
    own ? ledger.given(['parts', 'boards', kind]) : { kind: 'catalogue', part: `boards.${kind}`, source },
  );
  return {
    coincidence: spec.coincidence?.value ?? soundDefaults.coincidence.value,
    damping: spec.damping?.value ?? soundDefaults.damping.value,
    transmission: (spec.transmission ?? []).map(({ thickness, points }) => ({
      thickness,
      octavesDb: octavesFrom(points, MASS_LAW),
    })),
    absorption: absorptionRows(board, parts),
  };
}

function absorptionRows(board: string, parts: PartsSpec | undefined): BoardSound['absorption'] {
  const { spec } = findPart(parts, 'boards', board)!;
  return (spec.absorption ?? []).map(({ thickness, points }) => ({ thickness, octaves: octavesFrom(points) }));
}

/** Light boards are porous: with half the thickness they swallow at twice the frequency. */
const POROUS = 200;

/** Absorption of a face by its innermost board. */
export function absorptionOf(
  { thickness, density }: Pick<Layer, 'thickness' | 'density'>,
  rows: BoardSound['absorption'],
): Octaves {
  const nearest = [...rows].sort(
    (a, b) => Math.abs(Math.log(a.thickness / thickness)) - Math.abs(Math.log(b.thickness / thickness)),
  )[0];
  if (nearest === undefined) return BARE;
  if (density > POROUS || nearest.thickness === thickness) return nearest.octaves;
  const shift = nearest.thickness / thickness;
  return octavesFrom(nearest.octaves.map((value, band): [number, number] => [octaveBands[band]! * shift, value]));
}

/** How a fitting muffles, if it does. */
export function fillMuffler(
  own: FittingSoundSpec,
  kind: FittingSoundSpec,
  parts: PartsSpec | undefined,
): Muffler | undefined {
  const quietens = own.quietens ?? kind.quietens;
  if (quietens !== undefined) return { how: 'measured', octavesDb: octavesFrom(quietens, MASS_LAW) };
  const lining = own['lined-with'] ?? kind['lined-with'];
  const size = own.box ?? kind.box;
  const length = (own.length ?? kind.length)?.value;
  const absorption = lining === undefined ? undefined : absorptionOfLining(lining, parts);
  if (size !== undefined)
    return absorption === undefined ? { how: 'expansion box', size } : { how: 'lined box', size, absorption };
  return length === undefined || absorption === undefined ? undefined : { how: 'lined duct', length, absorption };
}

function absorptionOfLining({ board, thickness }: LayerSpec, parts: PartsSpec | undefined): Octaves {
  const density = findPart(parts, 'boards', board)!.spec.density.value;
  return absorptionOf({ thickness, density }, absorptionRows(board, parts));
}
