// Do air paths lead from somewhere to somewhere, through parts that exist, switched by what exists?

import { formatQuantity } from '../units/format.ts';
import type { Section } from './cabinet.ts';
import { findPart, kindsOf } from './catalogue.ts';
import { type Check, keysOf, mustBeKnown } from './check.ts';
import { bayIds, itemPath } from './check-carcass.ts';
import { quoted } from './complaint.ts';
import { groupOf } from './fill-prices.ts';
import { chamberOf, OUTSIDE } from './places.ts';
import type { FilePath } from './source-tree.ts';
import type { ControlSpec, FanSpec, HeatSpec, PartSpec, PathSpec } from './spec.ts';

const mm = (length: number): string => formatQuantity('length', length);

export function checkAir(check: Check): void {
  const { air = {}, sensors = {}, heats = {}, shelves = {} } = check.spec;
  for (const [id, path] of Object.entries(air)) checkPath(check, ['air', id], path);
  for (const [shelf, { between, holes = {} }] of Object.entries(shelves)) {
    for (const [id, { hole }] of Object.entries(holes)) {
      const path: FilePath = ['shelves', shelf, 'holes', id];
      if (Object.hasOwn(air, `${shelf}-${id}`)) {
        check.say(
          path,
          {
            code: 'id-taken',
            what: `there is an air path ${quoted(`${shelf}-${id}`)} already, the name of this hole's path`,
            allowed: 'ids of which no two make the same name',
            mend: 'give the hole another id',
          },
          { key: true },
        );
      }
      checkHoleSize(check, [...path, 'hole'], hole, [between[0] ?? '', between[1] ?? '']);
    }
  }
  for (const [id, sensor] of Object.entries(sensors)) {
    const path: FilePath = ['sensors', id];
    if (!mustBeKnown(check, [...path, 'bay'], 'bay', sensor.bay, bayIds(check))) continue;
    const height = bayHeight(check, sensor.bay);
    if (sensor.height !== undefined && height !== undefined && sensor.height.value > height + 1e-9) {
      check.say([...path, 'height'], {
        code: 'place-outside',
        what: `it hangs above the ceiling of ${quoted(sensor.bay)}, which is ${mm(height)} high`,
        allowed: `from 0 mm to ${mm(height)}`,
        mend: 'measure from the floor of the bay',
      });
    }
  }
  for (const [id, heat] of Object.entries(heats)) {
    const path: FilePath = ['heats', id];
    if (heat.kind !== undefined)
      mustBeKnown(check, [...path, 'kind'], 'source of heat', heat.kind, kindsOf(check.spec.parts, 'heats'));
    else if (heat.power === undefined && heat.water === undefined) {
      check.say(
        path,
        {
          code: 'key-missing',
          what: `there is no "power" in ${quoted(path.join('.'))}`,
          allowed: 'kind: of the catalogue, or power:',
          mend: 'add power: and its value',
        },
        { key: true },
      );
    }
    mustNameBay(check, path, heat.bay);
    checkHeatControl(check, path, heat);
  }
}

/** The bay of something must exist; it may be left out when there is only one. */
export function mustNameBay(check: Check, path: FilePath, bay: string | undefined): void {
  const bays = bayIds(check);
  if (bay !== undefined) mustBeKnown(check, [...path, 'bay'], 'bay', bay, bays);
  else if (bays.length > 1) {
    check.say(
      path,
      {
        code: 'key-missing',
        what: `there is no "bay" in ${quoted(path.join('.'))}, and there are ${bays.length} bays`,
        allowed: bays.join(', '),
        mend: 'add bay: and the bay in which it stands',
      },
      { key: true },
    );
  }
}

function checkPath(check: Check, path: FilePath, spec: PathSpec): void {
  const chambers = Object.entries(check.spec.machines ?? {})
    .filter(
      ([, machine]) =>
        machine.chamber !== undefined ||
        findPart(check.spec.parts, 'machines', machine.kind)?.spec.chamber !== undefined,
    )
    .map(([id]) => chamberOf(id));
  const ends = [...bayIds(check), ...OUTSIDE, ...chambers];
  const known = [
    mustBeKnown(check, [...path, 'from'], 'place', spec.from, ends),
    mustBeKnown(check, [...path, 'to'], 'place', spec.to, ends),
  ];
  const parts = spec.parts ?? [];
  const written = rawAt(check, path);
  if (!written.includes('hole') && (!written.includes('parts') || spec.parts?.length === 0)) {
    check.say(
      path,
      {
        code: 'path-empty',
        what: `nothing lets air through ${quoted(path.join('.'))}`,
        allowed: 'hole:, or a list of parts:',
        mend: 'add hole: and its size, such as 80 mm round',
      },
      { key: true },
    );
  }
  if (!known.includes(false)) {
    if (OUTSIDE.includes(spec.from) && OUTSIDE.includes(spec.to)) {
      check.say([...path, 'to'], {
        code: 'path-misses',
        what: `it leads from ${quoted(spec.from)} to ${quoted(spec.to)} past the cabinet`,
        allowed: 'one end in a bay at least',
        mend: 'name the bay that it opens',
      });
    } else if (spec.from === spec.to && !parts.some(({ part }) => part === 'fan')) {
      check.say([...path, 'to'], {
        code: 'path-misses',
        what: `it turns the air of ${quoted(spec.from)} round without a fan`,
        allowed: 'two different ends, or a fan among its parts',
        mend: 'name the other end, or add a fan',
      });
    }
  }
  if (spec.hole !== undefined) checkHoleSize(check, [...path, 'hole'], spec.hole, [spec.from, spec.to], spec.at?.face);
  for (const [index, part] of parts.entries()) checkPart(check, [...path, 'parts', index], part, spec);
  if (spec.at?.z !== undefined) checkHeight(check, [...path, 'at', 'z'], spec.at.z.value);
}

/** Keys that stand in the text at a path, readable or not. */
function rawAt(check: Check, path: FilePath): readonly string[] {
  let value: unknown = check.tree.plain;
  for (const segment of path) value = (value as Record<string | number, unknown> | undefined)?.[segment];
  return keysOf(value);
}

function checkHeight(check: Check, path: FilePath, z: number): void {
  const height = check.spec.cabinet?.inside[2];
  if (height === undefined || (z >= 0 && z <= height)) return;
  check.say(path, {
    code: 'place-outside',
    what: `it lies ${z < 0 ? 'below the floor' : 'above the ceiling'} of the cabinet`,
    allowed: `from 0 mm to ${mm(height)}`,
    mend: 'measure from the inside floor of the cabinet',
  });
}

function checkPart(check: Check, path: FilePath, part: PartSpec, spec: PathSpec): void {
  if (part.part === 'hole') checkHoleSize(check, [...path, 'hole'], part.hole, [spec.from, spec.to], spec.at?.face);
  if (!('kind' in part)) return;
  const group = groupOf(part.part);
  const { parts } = check.spec;
  const known =
    group === 'fittings'
      ? kindsOf(parts, group).filter((kind) => findPart(parts, 'fittings', kind)!.spec.what === part.part)
      : kindsOf(parts, group);
  if (!mustBeKnown(check, [...path, part.part], nameOf(part.part), part.kind, known)) return;
  if (part.part === 'fan') {
    const entry = findPart(parts, 'fans', part.kind)!.spec;
    if (part.curve !== undefined) checkCurve(check, [...path, 'curve'], part.curve);
    else if (entry.curve === undefined)
      missing(check, path, 'curve', 'a map of flows and pressures: { 0 m3/h: 30 Pa, 40 m3/h: 0 Pa }');
    checkControl(check, [...path, 'control'], part.control);
  }
  if ((part.part === 'filter' || part.part === 'carbon') && part.resistance === undefined) {
    const entry =
      part.part === 'filter'
        ? findPart(parts, 'filters', part.kind)!.spec
        : findPart(parts, 'carbons', part.kind)!.spec;
    if (entry.resistance === undefined)
      missing(check, path, 'resistance', 'a map of flows and pressures: { 30 m3/h: 20 Pa }');
  }
}

function nameOf(part: string): string {
  return part === 'carbon' ? 'carbon stage' : part;
}

function missing(check: Check, path: FilePath, key: string, allowed: string): void {
  check.say(path, {
    code: 'key-missing',
    what: `neither this part nor its kind has a "${key}"`,
    allowed,
    mend: `add ${key}: here or to the kind`,
  });
}

/** A fan's pressure falls as its flow rises; another curve has several operating points. */
export function checkCurve(check: Check, path: FilePath, curve: NonNullable<FanSpec['curve']>): void {
  const rises = curve.findIndex(([, pressure], index) => index > 0 && pressure > curve[index - 1]![1]);
  if (rises < 0 && curve.length >= 2 && curve[0]![0] === 0) return;
  const what =
    curve.length < 2
      ? 'one point makes no curve'
      : rises >= 0
        ? `the pressure rises at ${formatQuantity('flow', curve[rises]![0])}`
        : 'it does not begin at a flow of 0';
  check.say(
    path,
    {
      code: 'curve-wrong',
      what,
      allowed: 'two points or more from a flow of 0 on, with falling pressure',
      mend: rises >= 0 ? 'draw a straight line over the dip' : 'add the point 0 m3/h',
    },
    { key: true },
  );
}

function checkHoleSize(
  check: Check,
  path: FilePath,
  section: Section,
  ends: readonly [string, string],
  face?: string,
): void {
  const { cabinet } = check.spec;
  if (cabinet === undefined) return;
  const bays = bayIds(check);
  const bay = ends.find((end) => bays.includes(end));
  const [width = 0, depth = 0, height = 0] = cabinet.inside;
  const spansOf = (id: string) => {
    const { x = [0, width], z = [0, height] } = check.spec.bays?.[id] ?? {};
    return { x, z };
  };
  const { x, z } = spansOf(bay ?? '');
  const next = ends.find((end) => end !== bay && bays.includes(end));
  // A board between two bays is as large as what they share: a shelf a width, an upright board a height.
  const [sharedWidth, sharedHeight] =
    next === undefined ? [0, 0] : [shareOf(x, spansOf(next).x), shareOf(z, spansOf(next).z)];
  const upright = sharedHeight > 0 || face === 'left' || face === 'right';
  const level = !upright && (sharedWidth > 0 || face === 'top' || face === 'bottom');
  const across = level && sharedWidth > 0 ? sharedWidth : upright ? depth : x[1] - x[0];
  const up = level ? depth : sharedHeight > 0 ? sharedHeight : z[1] - z[0];
  const [wide, high] =
    section.shape === 'round' ? [section.diameter, section.diameter] : [section.width, section.height];
  if (wide <= across && high <= up) return;
  check.say(path, {
    code: 'hole-too-large',
    what: `it is larger than ${next === undefined ? 'the face of ' : 'the board between '}${[bay, next]
      .filter((id) => id !== undefined)
      .map(quoted)
      .join(' and ')}, ${mm(across)} x ${mm(up)}`,
    allowed: `a hole within ${mm(across)} x ${mm(up)}`,
    mend: 'check its unit',
  });
}

/** Length that two ranges share; 0 or less where they touch or lie apart. */
function shareOf(one: readonly [number, number], other: readonly [number, number]): number {
  return Math.min(one[1], other[1]) - Math.max(one[0], other[0]);
}

function bayHeight(check: Check, bay: string): number | undefined {
  const z = check.spec.bays?.[bay]?.z;
  return z === undefined ? check.spec.cabinet?.inside[2] : z[1] - z[0];
}

function checkControl(check: Check, path: FilePath, control: ControlSpec | undefined): void {
  if (control === undefined) return;
  const thermometer = (key: string, sensor: string): boolean =>
    mustBeKnown(check, [...path, key], 'sensor', sensor, [...check.ids('sensors'), ...bayIds(check)]);
  switch (control.kind) {
    case 'job':
      for (const [index, machine] of (control.machines ?? []).entries()) {
        if (machine !== 'any')
          mustBeKnown(check, itemPath(check, [...path, 'job'], index), 'machine', machine, check.ids('machines'));
      }
      return;
    case 'thermostat':
      thermometer('thermostat', control.sensor);
      checkSwitch(check, path, control.on.value, control.off.value);
      return;
    case 'air-quality':
      mustBeKnown(check, [...path, 'at'], 'place', control.place, ['room', ...bayIds(check)]);
      checkSwitch(check, path, control.on.value, control.off.value);
      return;
    case 'proportional':
      thermometer('proportional', control.sensor);
      if (control.to.value <= control.from.value) backwards(check, [...path, 'to'], 'to', 'from');
      if ((control.high?.value ?? 1) < (control.low?.value ?? 0)) backwards(check, [...path, 'high'], 'high', 'low');
      return;
    case 'stages':
      thermometer('stages', control.sensor);
      for (const [index, { on, off }] of control.steps.entries())
        checkSwitch(check, [...path, 'steps', index], on.value, off.value);
      return;
    case 'always':
    case 'never':
    case 'timer':
      return;
  }
}

/** What cools or cleans goes off below where it goes on. */
function checkSwitch(check: Check, path: FilePath, on: number, off: number): void {
  if (off < on) return;
  check.say([...path, 'off'], {
    code: 'switch-backwards',
    what: `it goes off ${off === on ? '' : 'above '}where it goes on`,
    allowed: 'off below on',
    mend: off === on ? 'leave half a kelvin or more between them' : 'turn the two round',
  });
}

/** A thermostat of this file cools; what heats holds a temperature of its own. */
function checkHeatControl(check: Check, path: FilePath, heat: HeatSpec): void {
  const kind = heat.kind === undefined ? undefined : findPart(check.spec.parts, 'heats', heat.kind)?.spec;
  if ((heat.what ?? kind?.what) === 'heater' && heat.control?.kind === 'thermostat') {
    check.say([...path, 'control'], {
      code: 'heater-control',
      what: 'a thermostat here switches on when it gets warm, which no heater should',
      allowed: 'holds: and the air temperature that the heater keeps; control: says in which hours',
      mend: 'write holds: instead of this control',
    });
    return;
  }
  checkControl(check, [...path, 'control'], heat.control);
}

function backwards(check: Check, path: FilePath, high: string, low: string): void {
  check.say(path, {
    code: 'switch-backwards',
    what: `"${high}" is not above "${low}"`,
    allowed: `${high} above ${low}`,
    mend: 'turn the two round',
  });
}
