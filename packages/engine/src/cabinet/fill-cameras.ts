// Cameras: a kind of the catalogue, with whatever the file overrules.

import type { Cabinet } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { noted } from './fill-room.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import type { Camera } from './light.ts';
import type { CameraKindSpec, CameraSpec } from './light-spec.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec } from './spec.ts';

const DEGREE = Math.PI / 180;
/** Angles of view and pixels of a small camera of which nothing is said. */
const USUAL_VIEW: readonly number[] = [62 * DEGREE, 49 * DEGREE];
const USUAL_PIXELS: readonly number[] = [1920, 1080];

export function fillCameras(
  spec: FileSpec,
  machines: Cabinet['machines'],
  ledger: Ledger,
): Readonly<Record<string, Camera>> {
  return Object.fromEntries(
    Object.entries(spec.cameras ?? {}).map(([id, own]) => [id, fillCamera(id, own, spec, machines, ledger)]),
  );
}

function fillCamera(
  id: string,
  own: CameraSpec,
  spec: FileSpec,
  machines: Cabinet['machines'],
  ledger: Ledger,
): Camera {
  const at = `cameras.${id}`;
  const file: FilePath = ['cameras', id];
  const found = own.kind === undefined ? undefined : findPart(spec.parts, 'cameras', own.kind);
  const kind: CameraKindSpec = found?.spec ?? {};
  const number = (name: keyof Camera, key: 'aperture' | 'iso' | 'readout', fallback: Fallback): number => {
    const ofKind: Candidate =
      found?.own === true
        ? { quantity: kind[key], file: ['parts', 'cameras', found.kind, key] }
        : { quantity: kind[key], part: `cameras.${own.kind}`, source: found?.source ?? '' };
    return ledger.number(`${at}.${name}`, [{ quantity: own[key], file: [...file, key] }, ofKind], fallback);
  };
  const pair = (key: 'view' | 'pixels', usual: readonly number[]): readonly [number, number] => {
    ledger.note(
      `${at}.${key}`,
      own[key] !== undefined
        ? ledger.given([...file, key])
        : found !== undefined && kind[key] !== undefined
          ? { kind: 'catalogue', part: `cameras.${found.kind}`, source: found.source }
          : { kind: 'derived', how: 'as of a small camera, from memory' },
    );
    const [across = 1, up = 1] = own[key] ?? kind[key] ?? usual;
    return [across, up];
  };
  const bay = own.bay ?? machineBay(own, machines) ?? Object.keys(spec.bays ?? { inside: {} })[0]!;
  const looksAt = own['looks-at'] ?? Object.keys(machines).find((machine) => machines[machine]!.bay === bay) ?? '';
  if (own.at !== undefined) ledger.note(`${at}.at`, ledger.given([...file, 'at']));
  const bedMotion = machines[looksAt]?.bed.motion ?? 0;
  return {
    bay,
    ...(own.at === undefined ? {} : { at: [own.at[0]!, own.at[1]!, own.at[2]!] as const }),
    looksAt,
    view: pair('view', USUAL_VIEW),
    aperture: number('aperture', 'aperture', defaults.cameraAperture),
    iso: number('iso', 'iso', defaults.cameraIso),
    shutter: ledger.number(`${at}.shutter`, [{ quantity: own.shutter, file: [...file, 'shutter'] }], {
      value: 0,
      how: 'the camera chooses it',
    }),
    readout: number('readout', 'readout', defaults.cameraReadout),
    pixels: pair('pixels', USUAL_PIXELS),
    task: noted(ledger, `${at}.task`, own.task, [...file, 'task'], 'live', 'seen now and then unless said otherwise'),
    subjectSpeed: ledger.number(
      `${at}.subjectSpeed`,
      [{ quantity: own['subject-speed'], file: [...file, 'subject-speed'] }],
      bedMotion > defaults.subjectSpeed.value
        ? { value: bedMotion, how: 'the bed of the machine moves so fast' }
        : defaults.subjectSpeed,
    ),
  };
}

function machineBay(own: CameraSpec, machines: Cabinet['machines']): string | undefined {
  return own['looks-at'] === undefined ? undefined : machines[own['looks-at']]?.bay;
}
