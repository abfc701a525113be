// The fit slice of a cabinet: motion of each machine by its kind and style, hang of each door, tolerance of the carcass.

import { insideTolerance } from '@stillair/physics';
import type { Assumption } from './assumption.ts';
import type { Size } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import { defaults } from './defaults.ts';
import { candidates, noteOf, type TwoPlaces } from './fill-machines.ts';
import type { DoorHang, Fit, Motion } from './fit.ts';
import type { MotionSpec } from './fit-schema.ts';
import type { Candidate, Fallback, Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { DoorSpec, FileSpec, Given, Lengths, MachineKindSpec, MachineSpec } from './spec.ts';

const sizeOf = ([width, depth, height]: Lengths): Size => ({ width: width!, depth: depth!, height: height! });

export function fillFit(spec: FileSpec, ledger: Ledger): Fit {
  const { machines = {}, cabinet } = spec;
  const doors: [string, DoorSpec, FilePath][] = Object.entries(cabinet.doors ?? {}).map(([id, door]) => [
    id,
    door,
    ['cabinet', 'doors', id],
  ]);
  if (cabinet.door !== undefined) doors.unshift(['door', cabinet.door, ['cabinet', 'door']]);
  return {
    tolerance: ledger.number('fit.tolerance', [], toleranceOf(spec)),
    machines: Object.fromEntries(Object.entries(machines).map(([id, own]) => [id, fillMotion(id, own, spec, ledger)])),
    doors: Object.fromEntries(doors.map(([id, door, file]) => [id, fillHang(id, door, file, ledger)])),
  };
}

/** The file's own doubt, else that of two boards and a saw cut. */
function toleranceOf({ cabinet }: FileSpec): Assumption {
  const own = cabinet.tolerance?.value;
  const thickness = cabinet['made-of'].layers[0]!.thickness;
  const half = own ?? insideTolerance(thickness);
  return {
    value: 0,
    low: -half,
    high: half,
    shape: 'normal',
    why:
      own === undefined
        ? 'thickness of two boards (EN 315, sanded plywood, from memory) and a saw cut to 1 mm'
        : 'cabinet: tolerance of the file',
  };
}

function fillMotion(id: string, own: MachineSpec, spec: FileSpec, ledger: Ledger): Motion {
  const found = findPart(spec.parts, 'machines', own.kind)!;
  const kind: MachineKindSpec = found.spec;
  const at = `fit.machines.${id}`;
  const file: FilePath = ['machines', id];
  const places: TwoPlaces<MotionSpec> = {
    own: own.motion ?? {},
    kind: kind.motion ?? {},
    file: [...file, 'motion'],
    entry: found.own
      ? { file: ['parts', 'machines', own.kind, 'motion'] }
      : { part: `machines.${own.kind}`, source: found.source },
  };
  const number = (path: keyof Motion, key: keyof MotionSpec, fallback: Fallback): number =>
    ledger.number(
      `${at}.${path}`,
      candidates(places, (motion) => motion[key] as Given, key),
      fallback,
    );
  const lengths = (
    path: string,
    key: 'frame' | 'spool-size',
    otherwise: { readonly lengths: Lengths; readonly how: string },
  ): Lengths => {
    const mine = places.own[key];
    const its = places.kind[key];
    ledger.note(
      `${at}.${path}`,
      mine !== undefined
        ? ledger.given([...places.file, key])
        : its !== undefined
          ? noteOf(places)
          : { kind: 'derived', how: otherwise.how },
    );
    return mine ?? its ?? otherwise.lengths;
  };

  const style = own.style ?? kind.style ?? 'fixed-bed';
  const bed = own.bed?.size ?? kind.bed?.size ?? [0.235, 0.235];
  const size = own.size ?? kind.size ?? [0.5, 0.5, 0.5];
  // A size of one's own is, as often as not, that of the frame: what the bed sweeps is added to it, never taken out of it.
  const frame =
    own.size !== undefined && own.motion?.frame === undefined
      ? fromOwnSize(own.size, `${at}.frame`, ledger, file)
      : lengths('frame', 'frame', { lengths: size, how: 'the size of the machine' });
  const spool = lengths('spoolSize', 'spool-size', {
    lengths: [defaults.spoolDiameter.value, defaults.spoolWidth.value],
    how: `${defaults.spoolDiameter.why}`,
  });
  const moves = style === 'moving-bed';
  const still = (how: string): Fallback => ({ value: 0, how });
  const [only] = Object.keys(spec.machines ?? {});
  const bay = own.bay ?? Object.keys(spec.bays ?? { inside: {} })[0]!;
  const spools = Object.entries(spec.spools ?? {}).filter(([, { machine = only }]) => machine === id);
  const hangsElsewhere = spools.length > 0 && spools.every(([, { where }]) => where !== undefined && where !== bay);
  ledger.note(
    `${at}.spool`,
    own.motion?.spool !== undefined
      ? ledger.given([...places.file, 'spool'])
      : hangsElsewhere
        ? ledger.given(['spools', spools[0]![0], 'where'])
        : noteOf(places),
  );
  ledger.note(
    `${at}.placed`,
    own.at === undefined ? { kind: 'derived', how: 'the file does not say at' } : ledger.given([...file, 'at']),
  );
  return {
    frame: sizeOf(frame),
    bedTravel: number(
      'bedTravel',
      'bed-travel',
      moves
        ? { value: bed[1]!, how: 'a bed that moves in depth travels as far as it is deep' }
        : still('its bed does not move in depth'),
    ),
    bedOffset: number('bedOffset', 'bed-offset', still('the travel is centred on the frame')),
    clipFront: number('clipFront', 'clip-front', moves ? defaults.clipFront : still('its bed does not move in depth')),
    cableRear: number('cableRear', 'cable-rear', moves ? defaults.cableRear : still('its bed does not move in depth')),
    carriageLeft: number(
      'carriageLeft',
      'carriage-left',
      moves ? defaults.carriage : still('its carriage stays inside the frame'),
    ),
    carriageRight: number(
      'carriageRight',
      'carriage-right',
      moves ? defaults.carriage : still('its carriage stays inside the frame'),
    ),
    tubeArch: number('tubeArch', 'tube-arch', defaults.tubeArch),
    spool: own.motion?.spool ?? (hangsElsewhere ? 'away' : (kind.motion?.spool ?? (moves ? 'top' : 'back'))),
    spoolSize: { diameter: spool[0]!, width: spool[1]! },
    spoolLift: number('spoolLift', 'spool-lift', defaults.spoolLift),
    plug: number('plug', 'plug', defaults.plug),
    withoutTop: number('withoutTop', 'without-top', still('nothing of it comes off')),
    lid: number('lid', 'lid', still('it has no lid of its own')),
    placed: own.at !== undefined,
  };
}

function fromOwnSize(size: Lengths, at: string, ledger: Ledger, file: FilePath): Lengths {
  ledger.note(at, ledger.given([...file, 'size']));
  return size;
}

function fillHang(id: string, door: DoorSpec, file: FilePath, ledger: Ledger): DoorHang {
  const at = `fit.doors.${id}`;
  const number = (path: string, key: 'hinge-takes' | 'stands-in' | 'lip', fallback: Fallback): number => {
    const places: Candidate[] = [{ quantity: door[key], file: [...file, key] }];
    return ledger.number(`${at}.${path}`, places, fallback);
  };
  const hinge = door.hinge ?? 'left';
  ledger.note(
    `${at}.hinge`,
    door.hinge === undefined
      ? { kind: 'derived', how: 'a door hangs on the left unless said otherwise' }
      : ledger.given([...file, 'hinge']),
  );
  const free = hinge === 'slides' || hinge === 'lifts off';
  if (door.before !== undefined) ledger.note(`${at}.before`, ledger.given([...file, 'before']));
  return {
    hinge,
    takes: number('takes', 'hinge-takes', free ? { value: 0, how: 'it has no hinge' } : defaults.hingeTakes),
    standsIn: number('standsIn', 'stands-in', defaults.doorStandsIn),
    lip: number('lip', 'lip', { value: 0, how: 'the opening is as high as its bays' }),
    ...(door.before === undefined ? {} : { before: door.before.value }),
  };
}
