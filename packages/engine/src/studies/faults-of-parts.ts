// Faults of what the air meets and of what switches it: fans, filters, carbon, flaps, openings, sensors, lamps and heaters.

import type { Cabinet, CabinetPath, Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import { OUTSIDE } from '../trades/plant.ts';
import { partPath } from '../trades/remedy-edits.ts';
import { type Fault, type FaultKind, faultId } from './fault.ts';
import { controlledIn, misread, sensorOf } from './fault-controls.ts';

/** Share of its dust capacity that a clogged filter has used: its loss is then 2² times that of the clean one. */
const CLOGGED = '200 %';
/** A seat whose seal is missing, a sensor that is off, and an opening with a cloth over it: judgement. */
const OPEN_SEAT = '2 mm';
export const SENSOR_OFF = 3;
const BLOCKED = '1 mm2';
/** A heater that is stuck on asks for a temperature that it does not come to. */
const NEVER_HELD = '200 °C';

const set = (path: readonly (string | number)[], value: unknown): Edit => ({ set: { [joinPath(path)]: value } });

export function faultsOfPaths(cabinet: Cabinet): Fault[] {
  return Object.entries(cabinet.paths).flatMap(([id, path]) => [
    ...path.parts.flatMap((_, at) => faultsOfPart(id, path, at)),
    ...reversed(id, path),
    ...blocked(id, path),
  ]);
}

function faultsOfPart(id: string, path: CabinetPath, at: number): Fault[] {
  const part = path.parts[at]!;
  const several = path.parts.filter((other) => other.part === part.part).length > 1;
  const name = several ? `${id}.${at + 1}` : id;
  const place = partPath(id, path, at);
  const fault = (kind: FaultKind, says: string, edit: Edit): Fault => ({
    id: faultId(kind, name),
    kind,
    part: id,
    says,
    edits: [edit],
  });
  const control = [...place, 'control'];
  switch (part.part) {
    case 'fan':
      return [
        ...(part.control.kind === 'never'
          ? []
          : [
              fault(
                'fan stopped',
                `the fan of ${name} stands still${switchWords(part.control.kind, 'off')}`,
                set(control, 'never'),
              ),
            ]),
        ...(part.control.kind === 'always'
          ? []
          : [
              fault(
                'fan never stops',
                `the fan of ${name} runs on and on${switchWords(part.control.kind, 'on')}`,
                set(control, 'always'),
              ),
            ]),
      ];
    case 'filter':
      return [
        fault(
          'filter clogged',
          `the filter of ${name} is clogged: four times its clean pressure loss`,
          set([...place, 'loading'], CLOGGED),
        ),
        fault(
          'filter seat leaks',
          `the filter of ${name} sits without a seal: a gap of ${OPEN_SEAT} all round`,
          set([...place, 'seat-gap'], OPEN_SEAT),
        ),
      ];
    case 'carbon': {
      const nothing = Object.fromEntries(Object.keys(part.efficiency).map((vapour) => [vapour, '0 %']));
      return [
        fault(
          'carbon spent',
          `the carbon of ${name} is spent: it holds nothing back`,
          set([...place, 'efficiency'], nothing),
        ),
      ];
    }
    case 'flap':
      return [
        fault('flap stuck shut', `the flap of ${name} does not open`, set([...place, 'opens-at'], '1000 Pa')),
        {
          ...fault('flap stuck open', `the flap of ${name} does not shut`, {}),
          edits: [{ remove: [joinPath(place)] }],
        },
      ];
    default:
      return [];
  }
}

function switchWords(kind: string, stuck: 'on' | 'off'): string {
  return kind === 'always'
    ? ''
    : `, or ${kind === 'job' || kind === 'timer' ? 'its relay' : 'its thermostat'} is stuck ${stuck}`;
}

/** A path with a flap is left out: air that comes the wrong way shuts it, and that is a fan that stands still. */
function reversed(id: string, { from, to, parts }: CabinetPath): Fault[] {
  const fans = parts.filter(({ part }) => part === 'fan').length;
  if (fans !== 1 || from === to || parts.some(({ part }) => part === 'flap')) return [];
  return [
    {
      id: faultId('fan reversed', id),
      kind: 'fan reversed',
      part: id,
      says: `the fan of ${id} is built in the wrong way round: it blows from ${to} to ${from}`,
      edits: [{ set: { [joinPath(['air', id, 'from'])]: to, [joinPath(['air', id, 'to'])]: from } }],
    },
  ];
}

/** A hole to the outside without a fan, that something lies before. */
function blocked(id: string, { from, to, parts }: CabinetPath): Fault[] {
  const outside = OUTSIDE.includes(from) !== OUTSIDE.includes(to);
  if (!outside || !parts.some(({ part }) => part === 'hole') || parts.some(({ part }) => part === 'fan')) return [];
  return [
    {
      id: faultId('opening blocked', id),
      kind: 'opening blocked',
      part: id,
      says: `something lies before ${id}`,
      edits: [set(['overrides', `air.${id}.effective-area`], BLOCKED)],
    },
  ];
}

export function faultsOfSensors(cabinet: Cabinet): Fault[] {
  const asked = [...new Set(controlledIn(cabinet).flatMap(({ control }) => sensorOf(control) ?? []))];
  return asked.flatMap((name): Fault[] => {
    const sensor = cabinet.sensors[name];
    const off = (wrong: number): Edit =>
      sensor === undefined
        ? misread(cabinet, name, wrong)
        : set(['sensors', name, 'offset'], `${Math.round(100 * (sensor.offset + wrong)) / 100} K`);
    const wrong = (kind: FaultKind, says: string, edit: Edit): Fault => ({
      id: faultId(kind, name),
      kind,
      part: name,
      says,
      edits: [edit],
    });
    const what = sensor === undefined ? `the thermometer in ${name}` : `the sensor ${name}`;
    const high = wrong('sensor reads high', `${what} reads ${SENSOR_OFF} K too much`, off(SENSOR_OFF));
    const low = wrong('sensor reads low', `${what} reads ${SENSOR_OFF} K too little`, off(-SENSOR_OFF));
    if (sensor === undefined || !(sensor.height > 0) || cabinet.bays[sensor.bay]?.airZones !== 2) return [high, low];
    const down = wrong(
      'sensor fallen down',
      `${what} lies on the floor of ${sensor.bay}`,
      set(['sensors', name, 'height'], '0 mm'),
    );
    return [high, low, down];
  });
}

export function faultsOfHeats({ heats }: Cabinet): Fault[] {
  return Object.entries(heats).flatMap(([id, { what, control, holds }]): Fault[] => {
    const place = ['heats', id];
    const fault = (kind: FaultKind, says: string, edits: readonly Edit[]): Fault => ({
      id: faultId(kind, id),
      kind,
      part: id,
      says,
      edits,
    });
    const dead =
      control.kind === 'never'
        ? []
        : [fault('heat source dead', `${what} ${id} stays off`, [set([...place, 'control'], 'never')])];
    if (holds !== undefined)
      return [
        fault('heater stuck on', `${what} ${id} heats at full power whatever its thermostat says`, [
          { set: { [joinPath([...place, 'control'])]: 'always', [joinPath([...place, 'holds'])]: NEVER_HELD } },
        ]),
        ...dead,
      ];
    return control.kind === 'always'
      ? dead
      : [
          fault('heat source left on', `${what} ${id} stays on day and night`, [set([...place, 'control'], 'always')]),
          ...dead,
        ];
  });
}
