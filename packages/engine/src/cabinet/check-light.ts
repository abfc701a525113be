// Do finishes, lamps and cameras name what exists, and lie where they can?

import { formatQuantity } from '../units/format.ts';
import { findPart, kindsOf } from './catalogue.ts';
import { type Check, mustBeKnown } from './check.ts';
import { mustNameBay } from './check-air.ts';
import { bayIds } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import type { FilePath } from './source-tree.ts';
import type { HeatSpec } from './spec.ts';

/** lm/W of white light without any loss: no lamp gives more. Middle of 300 to 350, from memory. */
const WHITE_LIGHT = 350;

const AXES: Readonly<Record<string, string>> = { down: 'z', up: 'z', back: 'y', front: 'y', left: 'x', right: 'x' };

export function checkLight(check: Check): void {
  checkFinishes(check);
  for (const [id, heat] of Object.entries(check.spec.heats ?? {})) checkLamp(check, ['heats', id], heat);
  checkCameras(check);
}

function checkFinishes(check: Check): void {
  const { cabinet, shelves = {}, machines = {}, parts } = check.spec;
  const known = kindsOf(parts, 'finishes');
  const see = (path: FilePath, finish: string | undefined): void => {
    if (finish !== undefined) mustBeKnown(check, [...path, 'finish'], 'finish', finish, known);
  };
  see(['cabinet'], cabinet?.finish);
  for (const [name, face] of Object.entries(cabinet?.faces ?? {})) see(['cabinet', 'faces', name], face?.finish);
  see(['cabinet', 'door'], cabinet?.door?.finish);
  for (const [id, door] of Object.entries(cabinet?.doors ?? {})) see(['cabinet', 'doors', id], door.finish);
  for (const [id, shelf] of Object.entries(shelves)) see(['shelves', id], shelf.finish);
  for (const [id, machine] of Object.entries(machines)) see(['machines', id], machine.finish);
}

function checkLamp(check: Check, path: FilePath, heat: HeatSpec): void {
  const kind = heat.kind === undefined ? undefined : findPart(check.spec.parts, 'heats', heat.kind)?.spec;
  const what = heat.what ?? kind?.what ?? 'other';
  const key = (['flux', 'shape', 'at', 'faces', 'along', 'dimming'] as const).find((name) => heat[name] !== undefined);
  if (what !== 'lamp') {
    if (key !== undefined) {
      check.say(
        [...path, key],
        {
          code: 'lamp-key',
          what: `${quoted(key)} belongs to a lamp, and this is ${what === 'other' ? 'none' : `a ${what}`}`,
          allowed: 'what: lamp, or no such key',
          mend: 'write what: lamp if it is one',
        },
        { key: true },
      );
    }
    return;
  }
  const watts = heat.power?.value ?? kind?.power?.value;
  if (heat.flux !== undefined && watts !== undefined && heat.flux.value > WHITE_LIGHT * watts) {
    check.say([...path, 'flux'], {
      code: 'flux-beyond-nature',
      what: `${formatQuantity('luminous-flux', heat.flux.value)} from ${formatQuantity('power', watts)} is more light than power`,
      allowed: `at most ${WHITE_LIGHT} lm from each watt: white light without any loss`,
      mend: 'check flux and power; of strips, take those of the length in use',
    });
  }
  if (heat.at !== undefined) checkPlace(check, [...path, 'at'], heat.bay, heat.at);
  if (heat.faces !== undefined && heat.along !== undefined && AXES[heat.faces] === heat.along) {
    check.say([...path, 'along'], {
      code: 'lamp-along',
      what: `a strip along ${heat.along} sends no light ${heat.faces === 'down' || heat.faces === 'up' ? heat.faces : `to the ${heat.faces}`}`,
      allowed: `an axis across its light: ${['x', 'y', 'z'].filter((axis) => axis !== heat.along).join(' or ')}`,
      mend: 'turn the strip, or its light',
    });
  }
}

/** Places count from the left front lower corner of a bay. */
function checkPlace(check: Check, path: FilePath, bay: string | undefined, at: readonly number[]): void {
  const { cabinet, bays } = check.spec;
  const id = bay ?? (bayIds(check).length === 1 ? bayIds(check)[0] : undefined);
  if (cabinet === undefined || id === undefined || at.length !== 3) return;
  const [width = 0, depth = 0, height = 0] = cabinet.inside;
  const { x = [0, width], z = [0, height] } = bays?.[id] ?? {};
  const size = [x[1] - x[0], depth, z[1] - z[0]];
  if (at.every((value, axis) => value >= -1e-6 && value <= size[axis]! + 1e-6)) return;
  check.say(path, {
    code: 'place-outside',
    what: `it lies outside ${quoted(id)}`,
    allowed: `within ${size.map((length) => formatQuantity('length', length)).join(' x ')}, from the left front lower corner of the bay`,
    mend: 'measure from that corner: right, back, up',
  });
}

function checkCameras(check: Check): void {
  const { cameras = {}, machines = {}, parts } = check.spec;
  const ids = check.ids('machines');
  for (const [id, camera] of Object.entries(cameras)) {
    const path: FilePath = ['cameras', id];
    if (camera.kind !== undefined)
      mustBeKnown(check, [...path, 'kind'], 'kind of camera', camera.kind, kindsOf(parts, 'cameras'));
    const machine = camera['looks-at'];
    if (machine !== undefined) mustBeKnown(check, [...path, 'looks-at'], 'machine', machine, ids);
    else if (ids.length !== 1) {
      check.say(
        path,
        {
          code: 'key-missing',
          what: `there is no "looks-at" in ${quoted(path.join('.'))}, and there are ${ids.length} machines`,
          allowed: ids.length === 0 ? 'a machine, but there is none' : ids.join(', '),
          mend: ids.length === 0 ? 'add the machine first' : 'add looks-at: and the machine whose print it shows',
        },
        { key: true },
      );
    }
    const bay = camera.bay ?? (machine === undefined ? undefined : machines[machine]?.bay);
    if (camera.bay !== undefined) mustNameBay(check, path, camera.bay);
    const stands = machine === undefined ? undefined : machines[machine]?.bay;
    if (
      camera.bay !== undefined &&
      stands !== undefined &&
      bayIds(check).includes(camera.bay) &&
      stands !== camera.bay
    ) {
      check.say([...path, 'bay'], {
        code: 'camera-elsewhere',
        what: `it hangs in ${quoted(camera.bay)}, but ${quoted(machine!)} stands in ${quoted(stands)}`,
        allowed: `${stands}: a camera sees no print through a board`,
        mend: 'hang it beside its machine, or let it look at another one',
      });
    }
    if (camera.at !== undefined) checkPlace(check, [...path, 'at'], bay, camera.at);
  }
}
