// What the filament itself bears: the strain of its tightest bend, and the push in the gap below the wheels when it is soft.

import { bendStrain, clampedBuckling, longestGap, rodMoment } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import type { Measure, Step } from '../measure.ts';
import { bendLimit, pushLimit } from './limits.ts';
import { shorterGap, widerBend } from './remedies.ts';

/** Stiffer filament yields before it gives way sideways, in any gap that a drive has, Pa. */
const SOFT = 0.5e9;

export function shape(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.spools).flatMap((id) => [...bend(cabinet, id), ...push(cabinet, id)]);
}

function bend(cabinet: Cabinet, id: string): Measure[] {
  const { machine, material: name, path } = cabinet.spools[id]!;
  const drive = cabinet.machines[machine]?.drive;
  const material = cabinet.materials[name];
  // What no guide leads bends as wide as it likes.
  if (drive === undefined || material === undefined || path.guide === 'open') return [];
  return [
    {
      trade: 'filament',
      quantity: 'filament-bend',
      part: id,
      title: 'strain in the tightest bend',
      value: bendStrain(drive.filament, path.radius),
      unit: 'share',
      limit: bendLimit(cabinet, name, material),
      get steps(): readonly Step[] {
        return [
          {
            text: 'smallest radius of its way',
            value: path.radius,
            unit: 'length',
            inputs: [`spools.${id}.path.radius`],
          },
          {
            text: 'strain of the outer fibre',
            value: bendStrain(drive.filament, path.radius),
            unit: 'share',
            formula: 'd/(2 R)',
            source: 'Euler and Bernoulli; Roark’s Formulas for Stress and Strain',
            inputs: [`machines.${machine}.drive.filament`],
          },
          { text: `radius that ${name} wants`, value: drive.filament / (2 * material.bendStrain), unit: 'length' },
        ];
      },
      get remedies() {
        return widerBend(cabinet, id);
      },
      cause: causes.tightBend,
      weight: 0.4,
      better: 'lower',
    },
  ];
}

/** Only soft filament gives way sideways. */
function push(cabinet: Cabinet, id: string): Measure[] {
  const { machine: machineId, material: name } = cabinet.spools[id]!;
  const machine = cabinet.machines[machineId];
  const material = cabinet.materials[name];
  if (machine === undefined || material === undefined || material.elasticModulus > SOFT) return [];
  const { gap, filament, push: asked } = machine.drive;
  const moment = rodMoment(filament);
  const longest = longestGap(material.elasticModulus, moment, asked);
  const value = clampedBuckling(material.elasticModulus, moment, gap);
  return [
    {
      trade: 'filament',
      quantity: 'filament-push',
      part: id,
      title: 'push that the filament bears in the gap below the wheels',
      value,
      unit: 'force',
      logarithmic: true,
      limit: pushLimit(cabinet, machine),
      get steps(): readonly Step[] {
        return [
          {
            text: `stiffness of ${name}`,
            value: material.elasticModulus,
            unit: 'stress',
            inputs: [`materials.${name}.elasticModulus`],
          },
          { text: 'unsupported gap', value: gap, unit: 'length', inputs: [`machines.${machineId}.drive.gap`] },
          {
            text: 'gives way sideways at',
            value,
            unit: 'force',
            formula: '4 π² E I/L²',
            source: 'Euler 1744; Timoshenko and Gere 1961, ends built in: an upper bound',
          },
          {
            text: 'longest gap for the push that is asked for',
            value: longest,
            unit: 'length',
            inputs: [`machines.${machineId}.drive.push`],
          },
        ];
      },
      get remedies() {
        return shorterGap(machineId, gap, longest);
      },
      cause: causes.softFilament,
      weight: 0.6,
      better: 'higher',
    },
  ];
}
