// What burns: the boards, what is kept in the bays, and how much of it the air in the box alone can burn.

import { closedAirHeat, growingFire, timeToHeat } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { SpoolPart } from '../../cabinet/filament.ts';
import { formatQuantity } from '../../units/format.ts';
import { boardAreas } from '../board-areas.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { keepOutside } from '../remedy-edits.ts';
import { caution, storedLimit, vapourLimit } from './limits.ts';
import { spacesOf } from './spaces.ts';

/** Things whose vapour flashes; all others burn. */
const VAPOURS: ReadonlySet<string> = new Set(['aerosol', 'solvent', 'wipes']);
/** Of a filament whose heat nobody said, J/kg. */
const UNKNOWN_FILAMENT = 28e6;
const STORED = 'spare spools and other things that burn, kept in the bays';
const HUGGETT = 'Huggett, Fire and Materials 4 (1980) 61; Walters, Hackett, Lyon 2000';

/** J in the boards of the cabinet, all of them. */
export function boardHeat(cabinet: Cabinet): number {
  const { combustion } = cabinet.protection;
  return boardAreas(cabinet).reduce(
    (sum, { build, area }) =>
      sum +
      build.layers.reduce(
        (layers, { material, thickness, density }) => layers + area * thickness * density * (combustion[material] ?? 0),
        0,
      ),
    0,
  );
}

function keptInside({ protection }: Cabinet): { id: string; of: string; mass: number }[] {
  return Object.entries(protection.stored ?? {}).flatMap(([id, { of, mass = 0, where }]) =>
    where === 'outside' ? [] : [{ id, of, mass }],
  );
}

/** Spools that feed the machines from within the bays. */
function hungInside({ bays, spools }: Cabinet): SpoolPart[] {
  return Object.values(spools).filter(({ where }) => bays[where] !== undefined);
}

export function fuel(cabinet: Cabinet): Measure[] {
  return [fuelLoad(cabinet), ...ownOxygen(cabinet), ...stored(cabinet)];
}

function fuelLoad(cabinet: Cabinet): Measure {
  const { combustion } = cabinet.protection;
  const boards = boardHeat(cabinet);
  const kept = keptInside(cabinet).reduce((sum, { of, mass }) => sum + mass * (combustion[of] ?? 0), 0);
  const hung = hungInside(cabinet).reduce(
    (sum, { material, mass }) => sum + mass * (combustion[material] ?? UNKNOWN_FILAMENT),
    0,
  );
  return {
    trade: 'fire',
    quantity: 'fuel-load',
    part: 'cabinet',
    title: 'heat that lies in boards, spools and what is kept in the bays',
    value: boards + kept + hung,
    unit: 'fire-heat',
    get steps(): readonly Step[] {
      const spaces = spacesOf(cabinet);
      const closed = spaces.reduce((sum, { volume }) => sum + oxygenIn(cabinet, volume), 0);
      return [
        {
          text: 'boards, doors and shelves: mass times net heat of combustion',
          value: boards,
          unit: 'fire-heat',
          formula: 'Σ A t ρ q',
          source: 'wood 17 to 19 MJ/kg, from memory; plastics Walters, Hackett, Lyon 2000',
          inputs: ['protection.combustion'],
        },
        { text: 'kept in the bays', value: kept, unit: 'fire-heat', inputs: ['protection.stored'] },
        { text: 'spools that feed the machines, in the bays', value: hung, unit: 'fire-heat' },
        {
          text: `a closed box of boards does not make a fire in an unattended machine harmless: the box itself is fuel, and its own air burns ${formatQuantity('fire-heat', closed)} before any more comes in, which is enough to light the boards`,
        },
        caution('fire'),
      ];
    },
    remedies: [],
    weight: 0.4,
    better: 'lower',
    compared: true,
  };
}

/** J that the air of a closed volume gives until flames are weak. */
function oxygenIn({ protection }: Cabinet, volume: number): number {
  const { weakOxygen, oxygenHeat } = protection.figures;
  return closedAirHeat(volume, weakOxygen, oxygenHeat);
}

function ownOxygen(cabinet: Cabinet): Measure[] {
  const { figures, combustion } = cabinet.protection;
  const printed = [...new Set(Object.values(cabinet.days).flatMap(({ jobs }) => Object.values(jobs)))];
  const materials = [...new Set(printed.map(({ material }) => material))];
  return spacesOf(cabinet).flatMap(({ part, volume, bays }) => {
    const value = oxygenIn(cabinet, volume);
    const time = timeToHeat(figures.growth, value);
    const inputs = ['protection.figures.oxygenHeat', 'protection.figures.weakOxygen', 'inside'];
    return [
      {
        trade: 'fire',
        quantity: 'own-oxygen',
        part,
        title: 'heat that the air inside can burn with everything shut',
        value,
        unit: 'fire-heat',
        get steps(): readonly Step[] {
          return [
            { text: `air of ${bays.join(', ')}`, value: volume, unit: 'volume', inputs: ['inside'] },
            {
              text: 'all of its oxygen',
              value: closedAirHeat(volume, 0, figures.oxygenHeat),
              unit: 'fire-heat',
              formula: 'Q = ρ V 0.2314 · 13.1 MJ/kg',
              source: `${HUGGETT}; ± 7 %`,
              inputs: ['protection.figures.oxygenHeat'],
            },
            {
              text: 'until oxygen has fallen to the share at which flames are weak; at that share the risk of fire still exists',
              value,
              unit: 'fire-heat',
              source: 'review of hypoxic air, Fire and Materials 2013',
              inputs,
            },
            ...materials.map((material) => ({
              text: `as much as burning this mass of ${material}`,
              value: value / Math.max(combustion[material] ?? 36e6, 1),
              unit: 'mass',
              inputs: [`protection.combustion.${material}`],
            })),
            { text: 'it does not put a fire out: embers wait for air, which gaps, fans and the opened door bring' },
            caution('smoke'),
            caution('fire'),
          ];
        },
        remedies: [],
        weight: 0.4,
        better: 'lower',
      },
      {
        trade: 'fire',
        quantity: 'growth-time',
        part,
        title: 'time until a growing fire has used that air',
        value: time,
        unit: 'duration',
        logarithmic: true,
        get steps(): readonly Step[] {
          return [
            {
              text: 'growth with the square of time, medium; from slow to fast in its spread',
              formula: 'Q = a t², so E = a t³/3',
              source: 'classes of NFPA 204: 1055 kW after 600, 300 and 150 s',
              inputs: ['protection.figures.growth'],
            },
            { text: 'it has then this power', value: growingFire(figures.growth, time), unit: 'power' },
            {
              text: 'counted from open flame: smouldering before it may last minutes to hours, and only smoke tells of it',
            },
            caution('fire'),
          ];
        },
        remedies: [],
        weight: 0.4,
      },
    ] satisfies Measure[];
  });
}

function stored(cabinet: Cabinet): Measure[] {
  const { protection } = cabinet;
  const inside = keptInside(cabinet);
  const hung = hungInside(cabinet);
  const base = { trade: 'fire', part: 'cabinet', cause: causes.fuelKept, better: 'lower' } as const;
  const burns = inside.filter(({ of }) => !VAPOURS.has(of));
  const flash = inside.filter(({ of }) => VAPOURS.has(of));
  const outside = (things: readonly { id: string }[]): readonly Remedy[] =>
    things.length === 0
      ? []
      : [
          {
            says: `keep ${things.map(({ id }) => id).join(' and ')} outside the cabinet`,
            edits: things.map(({ id }) => keepOutside(id)),
          },
        ];
  if (protection.stored === undefined)
    return [
      {
        ...base,
        cause: causes.protectionUntold,
        quantity: 'stored-fuel',
        title: STORED,
        missing:
          'what is kept in the bays is not said: give protection.stored, with each thing and where it is; {} when nothing is',
        unit: 'mass',
        limit: storedLimit(cabinet),
        steps: [caution('fire')],
        remedies: [],
        weight: 0.8,
      },
    ];
  return [
    {
      ...base,
      quantity: 'stored-fuel',
      title: STORED,
      value: burns.reduce((sum, { mass }) => sum + mass, 0),
      unit: 'mass',
      limit: storedLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          ...burns.map(({ id, of, mass }) => ({
            text: `${id}, ${of}, gives off when it burns`,
            value: mass * (protection.combustion[of] ?? 0),
            unit: 'fire-heat',
            inputs: [`protection.stored.${id}.mass`, `protection.combustion.${of}`],
          })),
          ...(hung.length === 0
            ? []
            : [
                {
                  text: 'not counted here: spools in the bays that feed the machines; the heat in them is part of the fuel load',
                  value: hung.reduce((sum, { mass }) => sum + mass, 0),
                  unit: 'mass',
                },
              ]),
          caution('fire'),
        ];
      },
      get remedies(): readonly Remedy[] {
        return outside(burns);
      },
      weight: 0.7,
    },
    {
      ...base,
      quantity: 'stored-vapour',
      title: 'aerosols, solvents and wipes kept in the bays',
      value: flash.length,
      unit: 'number',
      limit: vapourLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          ...flash.map(({ id, of }) => ({ text: `${id}: ${of}`, inputs: [`protection.stored.${id}`] })),
          {
            text: 'vapour from one can or packet fills a bay between its limits of explosion; a relay or a motor lights it',
          },
          caution('fire'),
        ];
      },
      get remedies(): readonly Remedy[] {
        return outside(flash);
      },
      weight: 1,
    },
  ];
}
