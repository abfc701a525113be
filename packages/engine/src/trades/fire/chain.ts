// What cuts the power, whether it works with every processor dead, and what an alarm leaves running.

import { statesThatStayOn } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { ChainWhat } from '../../cabinet/protection.ts';
import { causes } from '../causes.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { openContact, setLatch, setOnAlarm } from '../remedy-edits.ts';
import { caution, chainLimit, leftRunningLimit, overheatLimit, restartLimit } from './limits.ts';

/** Devices that feel too much heat. */
const FEEL_HEAT: ReadonlySet<ChainWhat> = new Set(['thermal link', 'reset thermostat', 'heat relay']);

const base = { trade: 'fire', part: 'cabinet' } as const;

export function chain(cabinet: Cabinet): Measure[] {
  return [...chainMeasures(cabinet), restart(cabinet), leftRunning(cabinet)];
}

function chainMeasures(cabinet: Cabinet): Measure[] {
  const { chain: devices } = cabinet.protection;
  const shared = {
    ...base,
    quantity: 'chain-states',
    title: 'states of the cut-off chain in which the load stays on',
    unit: 'number',
    limit: chainLimit(cabinet),
    cause: causes.noCutOff,
    weight: 1,
    better: 'lower',
  } as const;
  if (devices === undefined)
    return [
      {
        ...shared,
        cause: causes.protectionUntold,
        missing:
          'what opens the circuit is not said: give protection.chain with its devices (stop button, thermal link, smoke relay, …); {} when there is none',
        steps: [
          { text: 'a heater whose switch fails closed heats on until something else opens the circuit' },
          caution('chain'),
        ],
        remedies: [],
      },
    ];
  const members = Object.entries(devices);
  const unsaid = members.filter(([, { contact }]) => contact === undefined).map(([id]) => id);
  const closing = members.filter(([, { contact }]) => contact === 'closes').map(([id]) => id);
  const heat = members.filter(
    ([, { what, through, contact }]) => FEEL_HEAT.has(what) && through === 'wire' && contact === 'opens',
  );
  const states: Measure =
    unsaid.length > 0
      ? {
          ...shared,
          missing: `whether the contact opens when it trips: give ${unsaid.map((id) => `protection.chain.${id}.contact`).join(', ')}`,
          steps: [caution('chain')],
          remedies: [],
        }
      : {
          ...shared,
          value: statesThatStayOn(members.map(([, { contact }]) => contact!)),
          get steps(): readonly Step[] {
            return [
              { text: 'members in series with the coil of the contactor', value: members.length, unit: 'number' },
              {
                text: 'states, each member well or not (tripped, wire broken, supply dead)',
                value: 2 ** members.length,
                unit: 'number',
                formula: '2^n',
              },
              ...(closing.length > 0
                ? [{ text: `a broken wire goes unnoticed at ${closing.join(', ')}: its contact closes when it trips` }]
                : [{ text: 'every member opens when it trips, and when its wire breaks' }]),
              ...members
                .filter(([, { through }]) => through === 'program')
                .map(([id]) => ({
                  text: `${id} needs a running program: it may open the chain, never hold it closed alone`,
                })),
              ...members
                .filter(([, { what }]) => what === 'self-reset thermostat')
                .map(([id]) => ({
                  text: `${id} closes again by itself, cycles for years and may weld in the end: take one with manual reset`,
                })),
              caution('chain'),
            ];
          },
          get remedies(): readonly Remedy[] {
            return closing.length === 0
              ? []
              : [
                  {
                    says: `take contacts that open for ${closing.join(' and ')}`,
                    edits: closing.map((id) => openContact(id)),
                  },
                ];
          },
        };
  return [
    // Without any member there is no chain to speak of; that nothing cuts the power is said below.
    ...(members.length === 0 ? [] : [states]),
    {
      ...base,
      quantity: 'overheat-devices',
      title: 'devices that cut the power when it gets too hot, with every processor dead',
      value: heat.length,
      unit: 'number',
      limit: overheatLimit(cabinet),
      get steps(): readonly Step[] {
        return [
          ...heat.map(([id, { what }]) => ({ text: `${id}: ${what}`, inputs: [`protection.chain.${id}`] })),
          { text: 'a switching transistor or relay that fails closed heats on whatever software says' },
          {
            text: 'add a thermal link or a thermostat with manual reset where the fault would be, in series with the contactor',
          },
          caution('chain'),
        ];
      },
      remedies: [],
      cause: causes.noCutOff,
      weight: 1,
      better: 'higher',
    },
  ];
}

function restart(cabinet: Cabinet): Measure {
  const { latch } = cabinet.protection;
  const shared = {
    ...base,
    quantity: 'restart',
    title: 'machines start by themselves when the power comes back',
    unit: 'number',
    limit: restartLimit(cabinet),
    cause: causes.noCutOff,
    weight: 0.8,
    better: 'lower',
  } as const;
  const steps: readonly Step[] = [
    { text: 'a contactor that holds itself and is started by a button stays off after a cut, and after any trip' },
    { text: 'camera, alarm and logger stay on, from a small supply of their own with its own fuse' },
    caution('chain'),
  ];
  if (latch === undefined)
    return {
      ...shared,
      cause: causes.protectionUntold,
      missing: 'whether the circuit stays off until somebody switches it on: give protection.latch',
      steps,
      remedies: [],
    };
  return {
    ...shared,
    value: latch ? 0 : 1,
    steps,
    get remedies(): readonly Remedy[] {
      return latch ? [] : [{ says: 'a contactor that holds itself and is started by a button', edits: [setLatch()] }];
    },
  };
}

/** What must stop or shut: as the file has it, what is right, and in words. */
const onAlarm = [
  {
    key: 'fans',
    right: 'stop',
    says: 'fans run on: they bring air, thin the smoke and carry fire into filter and duct',
  },
  { key: 'heaters', right: 'cut', says: 'beds, nozzles and heaters stay on: what lit it goes on heating' },
  { key: 'flaps', right: 'shut', says: 'flaps stay open' },
] as const;

function leftRunning(cabinet: Cabinet): Measure {
  const said = cabinet.protection.onAlarm;
  const hasFlap = Object.values(cabinet.paths).some(({ parts }) => parts.some(({ part }) => part === 'flap'));
  const hasFan = Object.values(cabinet.paths).some(({ parts }) => parts.some(({ part }) => part === 'fan'));
  const asked = onAlarm.filter(({ key }) => (key === 'fans' ? hasFan : key === 'flaps' ? hasFlap : true));
  const unsaid = asked.filter(({ key }) => said[key] === undefined);
  const wrong = asked.filter(({ key, right }) => said[key] !== undefined && said[key] !== right);
  const shared = {
    ...base,
    quantity: 'left-running',
    title: 'what an alarm leaves running or open',
    unit: 'number',
    limit: leftRunningLimit(cabinet),
    cause: causes.fedOnAlarm,
    weight: 1,
    better: 'lower',
  } as const;
  // One thing that is known to run on is enough to fail.
  if (unsaid.length > 0 && wrong.length === 0)
    return {
      ...shared,
      cause: causes.protectionUntold,
      missing: `what an alarm stops is not said: give ${unsaid.map(({ key }) => `protection.on-alarm.${key}`).join(', ')}`,
      steps: [
        { text: 'fans stop, heaters are cut, flaps shut: the loss of cooling is harmless for minutes' },
        caution('fire'),
      ],
      remedies: [],
    };
  return {
    ...shared,
    value: wrong.length,
    get steps(): readonly Step[] {
      return [
        ...wrong.map(({ says, key }) => ({ text: says, inputs: [`protection.onAlarm.${key}`] })),
        ...unsaid.map(({ key }) => ({ text: `of the ${key} the file says nothing: protection.on-alarm.${key}` })),
        { text: 'a hot end without its fan may jam: accept it' },
        caution('fire'),
        caution('chain'),
      ];
    },
    get remedies(): readonly Remedy[] {
      return wrong.length === 0
        ? []
        : [
            {
              says: `let the alarm ${wrong.map(({ key, right }) => `${right} the ${key}`).join(' and ')}`,
              edits: wrong.map(({ key, right }) => setOnAlarm(key, right)),
            },
          ];
    },
  };
}
