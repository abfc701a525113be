// Does each machine go through the opening of its bay, for service: as it stands, turned, or without its upper part?

import { narrowestOpening, turningWidth } from '@stillair/physics';
import type { Cabinet, Door } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { stackHeight } from '../machine-solids.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { millimetres } from '../remedy-edits.ts';
import { clearBay } from '../standing-machines.ts';
import { wayOut } from './limits.ts';
import { freerDoor } from './remedies.ts';

/** What of a machine cannot be taken off or pushed together: its frame with its carriage's motor, and the plate in it. */
export interface Rigid {
  readonly width: number;
  readonly depth: number;
  readonly height: number;
  /** Its upper part comes off. */
  readonly lower: boolean;
}

export function rigidOf(cabinet: Cabinet, id: string): Rigid {
  const { frame, carriageLeft, carriageRight, withoutTop } = cabinet.fit.machines[id]!;
  const { bed } = cabinet.machines[id]!;
  return {
    width: frame.width + Math.max(carriageLeft, carriageRight),
    depth: Math.max(frame.depth, bed.depth),
    height: withoutTop > 0 ? withoutTop : frame.height,
    lower: withoutTop > 0,
  };
}

export function waysOut(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.machines).map(([id, { bay }]): Measure => {
    const shared = {
      trade: 'fit',
      quantity: 'way-out',
      part: id,
      title: 'room to spare when the machine is brought out',
      unit: 'length',
      better: 'higher',
      cause: causes.openingTooSmall,
      weight: 0.7,
    } as const;
    const opening = openingOf(cabinet, bay);
    if (opening === undefined)
      return {
        ...shared,
        missing: `no door opens bay ${bay}: say under cabinet: door: or doors: which one does, so that it is known how ${id} gets in and out`,
        steps: [],
        remedies: [],
      };
    const { door, width, height } = opening;
    const rigid = rigidOf(cabinet, id);
    const clear = clearBay(cabinet, bay);
    const narrowest = narrowestOpening(rigid.width, rigid.depth, clear.width);
    const beside = width - narrowest;
    const over = height - stackHeight(cabinet.machines[id]!) - rigid.height;
    return {
      ...shared,
      value: Math.min(beside, over),
      limit: wayOut(cabinet),
      get steps(): readonly Step[] {
        const { takes, lip } = cabinet.fit.doors[door]!;
        return [
          {
            text: `clear width of the opening of ${door}: its bay less ${millimetres(takes)} for hinge and open leaf`,
            value: width,
            unit: 'length',
            inputs: [`fit.doors.${door}.takes`, 'fit.tolerance'],
          },
          {
            text: `clear height: its bay less a lip of ${millimetres(lip)}`,
            value: height,
            unit: 'length',
            inputs: [`fit.doors.${door}.lip`],
          },
          {
            text:
              narrowest < rigid.width
                ? `${id}, turned by a right angle (its diagonal of ${millimetres(turningWidth(rigid.width, rigid.depth))} turns in the bay), is wide`
                : `${id} is wide, spool and tube taken off`,
            value: narrowest,
            unit: 'length',
            formula: 'turning never makes it narrower than its shorter side',
            inputs: [`fit.machines.${id}.frame`],
          },
          {
            text: rigid.lower ? 'and high without its upper part' : 'and high',
            value: rigid.height,
            unit: 'length',
            inputs: [`fit.machines.${id}.${rigid.lower ? 'withoutTop' : 'frame'}`],
          },
          { text: 'room beside it', value: beside, unit: 'length' },
          { text: 'room over it', value: over, unit: 'length' },
        ];
      },
      get remedies(): readonly Remedy[] {
        return beside < over ? freerDoor(cabinet, door) : [];
      },
    };
  });
}

/** The widest opening of a bay: what its door leaves free. */
export function openingOf(
  cabinet: Cabinet,
  bay: string,
): { readonly door: string; readonly width: number; readonly height: number } | undefined {
  const openings = Object.entries(cabinet.doors)
    .filter(([, { bays }]) => bays.includes(bay))
    .map(([door, leaf]) => ({ door, ...clearOpening(cabinet, bay, door, leaf) }));
  return openings.sort((a, b) => b.width - a.width)[0];
}

function clearOpening(
  cabinet: Cabinet,
  bay: string,
  door: string,
  { face }: Door,
): { readonly width: number; readonly height: number } {
  const clear = clearBay(cabinet, bay);
  const { takes, lip } = cabinet.fit.doors[door]!;
  const across = face === 'left' || face === 'right' ? clear.back : clear.width;
  const along = face === 'top' || face === 'bottom' ? clear.back : clear.height;
  return { width: across - takes, height: along - lip };
}
