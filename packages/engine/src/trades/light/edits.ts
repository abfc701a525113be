// Changes that might mend findings about light. The judge tries them.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Camera } from '../../cabinet/light.ts';
import type { Remedy } from '../measure.ts';
import { addLamp, millimetres, setCamera, setCarcassFinish, setLamp, setLampControl } from '../remedy-edits.ts';
import { litPrint } from './lit.ts';

const WHITE = 'matt white paint';
const PANEL = 'LED panel 20 W';

/** A bay whose boards throw back less than this is worth painting. */
const WORTH_PAINT = 0.65;

/** Brighter prints: paint, a flood of light in place of a strip, one lamp more. */
export function brighter(cabinet: Cabinet, machineId: string): Remedy[] {
  const { bay, chamber } = cabinet.machines[machineId]!;
  if (chamber !== undefined) return [];
  const { space } = litPrint(cabinet, machineId);
  const remedies: Remedy[] = [];
  const boards = Object.entries(space.reflectances).filter(([face]) => face !== 'front');
  if (boards.some(([, reflectance]) => reflectance < WORTH_PAINT))
    remedies.push({ says: 'paint the inside matt white', edits: [setCarcassFinish(WHITE)] });
  const [weak] = space.lamps.filter(({ flux }) => flux < 1500);
  if (weak !== undefined) {
    const says = `a panel of 20 W and 2000 lm in place of ${weak.id}`;
    remedies.push({
      says,
      edits: [
        setLamp(weak.id, {
          kind: PANEL,
          power: '20 W',
          flux: '2000 lm',
          shape: 'panel 300 mm x 300 mm',
        }),
      ],
    });
  }
  const id = ['flood', 'flood-2', 'flood-3'].find((name) => cabinet.heats[name] === undefined);
  if (id !== undefined)
    remedies.push({ says: `a further panel of 20 W under the ceiling of ${bay}`, edits: [addLamp(id, PANEL, bay)] });
  return remedies;
}

/** Steady light. */
export function steadier(lampId: string): Remedy[] {
  return [
    { says: `drive ${lampId} with steady current`, edits: [setLamp(lampId, { dimming: { by: 'dc' } })] },
    {
      says: `pulse ${lampId} at 25 kHz`,
      edits: [setLamp(lampId, { dimming: { by: 'pwm', frequency: '25 kHz', duty: '50 %' } })],
    },
  ];
}

/** A shutter that stays open for whole periods of a lamp: as long as is needed, or a little longer. */
export function wholePeriods(cameraId: string, { frequency }: { readonly frequency: number }, time: number): Remedy[] {
  const periods = Math.max(Math.ceil(time * frequency - 1e-6), 1);
  const shutter = `${Number(((1000 * periods) / frequency).toPrecision(6))} ms`;
  return [{ says: `fix the shutter of ${cameraId} at ${shutter}`, edits: [setCamera(cameraId, { shutter })] }];
}

export function moreSensitive(cameraId: string, { iso }: Camera): Remedy[] {
  const more = Math.round(2 * iso);
  return [{ says: `let ${cameraId} use ISO ${more}, with more grain`, edits: [setCamera(cameraId, { iso: more })] }];
}

/** More of the print in the picture: a wide lens, or the farthest upper corner at the front. */
export function widerView(cabinet: Cabinet, cameraId: string, camera: Camera): Remedy[] {
  const bay = cabinet.bays[camera.bay]!;
  const machine = cabinet.machines[camera.looksAt];
  const [width, height] = [bay.x[1] - bay.x[0], bay.z[1] - bay.z[0]];
  const left = (machine?.at[0] ?? width / 2) > width / 2;
  const corner = [millimetres(left ? 0.03 : width - 0.03), '30 mm', millimetres(height - 0.05)];
  return [
    { says: `a wide lens on ${cameraId}, 102° x 77°`, edits: [setCamera(cameraId, { view: '102° x 77°' })] },
    {
      says: `hang ${cameraId} in the upper ${left ? 'left' : 'right'} corner at the front`,
      edits: [setCamera(cameraId, { at: corner })],
    },
    {
      says: `hang ${cameraId} there, with a wide lens`,
      edits: [setCamera(cameraId, { at: corner, view: '102° x 77°' })],
    },
  ];
}

/** Lamps that burn while the machine prints. */
export function litWithJob(lampIds: readonly string[], machineId: string): Remedy[] {
  return lampIds.slice(0, 1).map((id) => ({
    says: `switch ${id} with the jobs of ${machineId}`,
    edits: [setLampControl(id, { kind: 'job', machines: [machineId], lead: 300, runOn: 300 })],
  }));
}
