// Keys that only sound asks for.

import * as z from 'zod';
import { parseWindow } from '../units/clock.ts';
import { isFault, parseQuantity } from '../units/quantity.ts';
import type { KindName } from '../units/unit-table.ts';
import {
  type Bounds,
  type FieldsOf,
  listOf,
  mapOf,
  points,
  quantity,
  type Schema,
  say,
  shortOr,
  sizes,
  thing,
  typeFault,
  word,
} from './shape.ts';
import type {
  BoardSoundSpec,
  ByThickness,
  FittingSoundSpec,
  LiningSpec,
  MachineNoiseSpec,
  QuietSpec,
  RoomSoundSpec,
} from './sound-spec.ts';
import { layerText } from './text-forms.ts';

const LEVEL = { from: -20, to: 120 };

const octaves = (kind: KindName, about: string, bounds: Bounds): ReturnType<typeof points> =>
  points('frequency', kind, about, bounds);

export function machineNoise(): Schema<MachineNoiseSpec> {
  const level = quantity('sound-level', 'free-standing on a table, 1 m away, while it prints', LEVEL);
  const full = thing(
    {
      level: level.optional(),
      idle: quantity('sound-level', 'the same while it is on and does not print', LEVEL).optional(),
      octaves: octaves('sound-level', 'its octave levels; only their shape counts', { from: -60, to: 150 }).optional(),
    },
    'how loud it is',
  );
  const short = level.transform((only): MachineNoiseSpec => ({ level: only }));
  return shortOr(short, full, 'how loud it is, free-standing, 1 m away') as Schema<MachineNoiseSpec>;
}

/** `{ 22:00 to 7:00: 30 dB(A) }` */
export function quietHours(): Schema<readonly QuietSpec[]> {
  const allowed = 'a map from hours to the loudest that they may be, such as { 22:00 to 7:00: 30 dB(A) }';
  return z
    .record(z.string(), quantity('sound-level', 'loudest at their place', LEVEL), { error: typeFault(allowed) })
    .transform((map, context) =>
      Object.entries(map).flatMap(([key, limit]): QuietSpec[] => {
        const hours = parseWindow(key);
        if (!isFault(hours)) return [{ written: key, hours, limit }];
        const message = say({ ...hours, onKey: true });
        context.issues.push({ code: 'custom', path: [key], message, input: key });
        return [];
      }),
    )
    .describe('how loud it may be at their place, by time of day') as unknown as Schema<readonly QuietSpec[]>;
}

export const roomSoundFields: FieldsOf<RoomSoundSpec> = {
  reverberation: quantity('duration', 'reverberation time of the room', { above: 0, to: 10 }).optional(),
  absorption: quantity('area', 'sound that the room swallows, in place of its reverberation time', {
    above: 0,
    to: 5000,
  }).optional(),
  'background-noise': quantity('sound-level', 'what is heard there without the cabinet', LEVEL).optional(),
};

export function liningSchema(): Schema<LiningSpec> {
  const of = layerText('what the inside is lined with, and its thickness');
  const full = thing(
    {
      of,
      faces: listOf(
        word(['front', 'back', 'left', 'right', 'top', 'bottom'], 'face of the cabinet'),
        'faces that are lined',
      ).optional(),
    },
    'lining of the inside',
  );
  const short = of.transform((only): LiningSpec => ({ of: only }));
  return shortOr(short, full, 'what swallows sound on the inside of the faces') as Schema<LiningSpec>;
}

/** `{ 18 mm: { 125 Hz: 24 dB, … } }` */
function byThickness(kind: KindName, about: string, bounds: Bounds): Schema<ByThickness> {
  return mapOf(octaves(kind, about, bounds), `${about}, by thickness`, 'thickness')
    .transform((map, context) =>
      Object.entries(map).flatMap(([key, profile]) => {
        const thickness = parseQuantity('length', key);
        if (!isFault(thickness)) return [{ thickness: thickness.value, points: profile }];
        const message = say({ ...thickness, onKey: true });
        context.issues.push({ code: 'custom', path: [key], message, input: key });
        return [];
      }),
    )
    .describe(`${about}, by thickness and octave`) as unknown as Schema<ByThickness>;
}

export const boardSoundFields: FieldsOf<BoardSoundSpec> = {
  coincidence: quantity('speed', 'critical frequency times thickness', { above: 0, to: 500 }).optional(),
  damping: quantity('number', 'loss factor as mounted', { above: 0, to: 1 }).optional(),
  transmission: byThickness('sound-level', 'measured transmission loss', { from: 0, to: 100 }).optional(),
  absorption: byThickness('number', 'share of sound that its face swallows', { from: 0, to: 1 }).optional(),
};

export const fittingSoundFields: FieldsOf<FittingSoundSpec> = {
  length: quantity('length', 'of a lined duct', { above: 0, to: 10 }).optional(),
  box: sizes(3, 'inside of a muffler box, the way through it first').optional(),
  'lined-with': layerText('what the duct or box is lined with').optional(),
  quietens: octaves('sound-level', 'what it takes off, as measured', { from: 0, to: 100 }).optional(),
};
