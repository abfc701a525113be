// Where the day's electricity and heat go: each print's bed, every user, what the exhaust blows away, how much the room warms.

import { bedLoss } from '@stillair/physics';
import { describedBed } from '../../cabinet/bed-description.ts';
import { courseValue } from '../../day/course.ts';
import { repeatDaily } from '../../network/repeat-daily.ts';
import { formatClock } from '../../units/format.ts';
import { fanShares, massFlow, piecesOf, temperatureOf } from '../air-ways.ts';
import { causes } from '../causes.ts';
import { courseOf, integralOf, largest, meanOf, within } from '../course.ts';
import type { DayRun, Measure, Step } from '../measure.ts';
import { ownLimit } from '../person-limit.ts';
import { fansIn, OUTSIDE } from '../plant.ts';
import { type Print, printsOf } from '../prints.ts';
import { timeOn } from '../switched.ts';
import { zeros } from '../zeros.ts';

export function energy(run: DayRun): Measure[] {
  return [...bedEnergies(run), dayEnergy(run), ...exhaustHeats(run), roomRise(run)];
}

function bedEnergies(run: DayRun): Measure[] {
  const { record, assembly } = run;
  return printsOf(run)
    .filter(({ machineId }) => record.bedPowers.names.includes(machineId))
    .map((print) => {
      const power = within(courseOf(record, record.bedPowers, print.machineId), print.start, print.end);
      const air = within(temperatureOf(run, assembly.machines[print.machineId]!.printAir), print.start, print.end);
      return {
        trade: 'heat',
        quantity: 'bed-energy',
        part: print.part,
        title: 'electricity for the bed over the job',
        value: integralOf(power),
        unit: 'energy',
        get steps(): readonly Step[] {
          return [
            {
              text: 'bed set to',
              value: print.job.bed,
              unit: 'temperature',
              inputs: [`days.${run.day}.jobs.${print.id}.bed`],
            },
            { text: 'mean of the air around it', value: meanOf(air), unit: 'temperature' },
            {
              text: 'mean power: the warmer the air, the less',
              value: meanOf(power),
              unit: 'power',
              inputs: ['factors.bedLoss'],
            },
            ...savedSteps(run, print, meanOf(air)),
          ];
        },
        remedies: [],
        weight: 0.1,
        better: 'lower',
      } satisfies Measure;
    });
}

/** What holding the bed would take in the open room, against the air that it stands in. */
function savedSteps(run: DayRun, { job, machine, start, end }: Print, air: number): Step[] {
  const room = meanOf(within(temperatureOf(run, run.assembly.room), start, end));
  if (job.bed <= Math.max(air, room) + 1) return [];
  const bed = describedBed(machine.bed);
  const here = bedLoss(bed, job.bed, air, air).total;
  const open = bedLoss(bed, job.bed, room, room).total;
  return [
    {
      text:
        air > room
          ? 'share of its holding power that the warm bay saves'
          : 'share of its holding power that the bay costs more',
      value: Math.abs(1 - here / open),
      unit: 'share',
      formula: '1 − loss(bay)/loss(room), convection and radiation at the mean temperatures',
      source: 'McAdams 1954, Churchill and Chu 1975; single fits differ by ±30 %, their ratio far less',
    },
  ];
}

/** J of all users inside and at the cabinet over the day. */
export function energyByUser(run: DayRun): { beds: number; machines: number; fans: number; others: number } {
  const { record, cabinet } = run;
  const { network, bedPowers } = record;
  // What holds air instead of a bed is a heater.
  const held = (isBed: boolean): number =>
    bedPowers.names
      .filter((name) => (cabinet.machines[name] !== undefined) === isBed)
      .reduce((sum, name) => sum + integralOf(courseOf(record, bedPowers, name)), 0);
  const beds = held(true);
  const end = record.times[record.times.length - 1]!;
  const modes = network.machines.map(({ name, modes: of }) => {
    const powerOf = (mode: string): number =>
      of.find((candidate) => candidate.name === mode)?.powers.reduce((sum, { watts }) => sum + watts, 0) ?? 0;
    const entries = network.schedule.filter(({ machine }) => machine === name);
    const busy = entries.reduce((sum, entry) => sum + Math.max(Math.min(entry.end, end) - entry.start, 0), 0);
    return entries.reduce(
      (sum, entry) => sum + powerOf(entry.mode) * Math.max(Math.min(entry.end, end) - entry.start, 0),
      powerOf('idle') * Math.max(end - busy, 0),
    );
  });
  const supplies = network.machines.reduce((sum, { name, bed }) => {
    if (bed?.supply === undefined || !bedPowers.names.includes(name)) return sum;
    return sum + bed.supply.share * integralOf(courseOf(record, bedPowers, name));
  }, 0);
  const fans = Object.entries(cabinet.paths).reduce((sum, [id, path]) => {
    const shares = fanShares(run, id);
    // Affinity laws: power follows the cube of speed.
    const each = fansIn(path).map(({ watts, speed }, at) => {
      const { times, values: share } = shares[at]!;
      const cubes = zeros(share.length);
      for (let row = 0; row < cubes.length; row += 1) cubes[row] = (speed * share[row]!) ** 3;
      return watts * integralOf({ times, values: cubes });
    });
    return sum + each.reduce((a, b) => a + b, 0);
  }, 0);
  const others = Object.keys(cabinet.heats).reduce((sum, id) => {
    const source = network.heatSources.find(({ name }) => name === id);
    return source === undefined ? sum : sum + source.watts * timeOn(run, source.active);
  }, held(false));
  return { beds, machines: modes.reduce((a, b) => a + b, 0) + supplies, fans, others };
}

function dayEnergy(run: DayRun): Measure {
  const { beds, machines, fans, others } = energyByUser(run);
  const own = ownLimit(run.cabinet, 'energy-day', 'at-most');
  return {
    trade: 'heat',
    quantity: 'energy-day',
    part: 'cabinet',
    title: 'electricity of the whole day',
    value: beds + machines + fans + others,
    unit: 'energy',
    ...(own === undefined ? {} : { limit: own }),
    get steps(): readonly Step[] {
      return [
        { text: 'beds', value: beds, unit: 'energy', inputs: ['factors.bedLoss'] },
        { text: 'nozzles, motors, electronics and supplies, standby included', value: machines, unit: 'energy' },
        { text: 'fans of the cabinet', value: fans, unit: 'energy' },
        { text: 'lamps, driers and heaters', value: others, unit: 'energy' },
      ];
    },
    remedies: [],
    weight: 0.2,
    better: 'lower',
    compared: true,
  };
}

/** Heat that leaves with each path that blows out of the cabinet, against the air that takes its place. */
function exhaustHeats(run: DayRun): Measure[] {
  const { cabinet, record, assembly } = run;
  return Object.entries(cabinet.paths)
    .filter(
      ([id, { from, to }]) => OUTSIDE.includes(to) && !OUTSIDE.includes(from) && assembly.paths[id]?.kind === 'path',
    )
    .map(([id, { to }]) => {
      const outer = temperatureOf(run, to).values;
      const { heatCapacity } = record.network.constants;
      const heat = { times: record.times, values: zeros(record.times.length) };
      for (const { name, from } of piecesOf(run, id)) {
        const [flow, inner] = [massFlow(run, name).values, temperatureOf(run, from).values];
        for (let row = 0; row < flow.length; row += 1)
          heat.values[row]! += Math.max(flow[row]!, 0) * heatCapacity * (inner[row]! - outer[row]!);
      }
      const peak = largest(heat);
      return {
        trade: 'heat',
        quantity: 'exhaust-heat',
        part: `air.${id}`,
        title: to === 'outdoors' ? 'heat blown outdoors over the day' : 'heat blown into the room over the day',
        value: integralOf(heat),
        unit: 'energy',
        get steps(): readonly Step[] {
          return [
            { text: 'mean over the day', value: meanOf(heat), unit: 'power', formula: 'ṁ cp (T_bay − T_outside)' },
            { text: `most, at ${formatClock(peak.time)}`, value: peak.value, unit: 'power' },
            {
              text:
                to === 'outdoors'
                  ? 'lost: the air that takes its place comes in from outdoors and the room must warm it'
                  : 'not lost: it warms the room, welcome in winter and not in summer',
            },
          ];
        },
        remedies: [],
        cause: causes.lostHeat,
        weight: 0.1,
        ...(to === 'outdoors' ? { better: 'lower' as const, compared: true } : {}),
      } satisfies Measure;
    });
}

function roomRise(run: DayRun): Measure {
  const { cabinet, day, assembly } = run;
  const { roomTemperature, length } = cabinet.days[day]!;
  const given = repeatDaily(roomTemperature ?? cabinet.room.temperature, length);
  const { times, values: room } = temperatureOf(run, assembly.room);
  const rise = { times, values: zeros(times.length) };
  for (let row = 0; row < times.length; row += 1) rise.values[row] = room[row]! - courseValue(given, times[row]!);
  const peak = largest(rise);
  const own = ownLimit(cabinet, 'room-rise', 'at-most');
  return {
    trade: 'heat',
    quantity: 'room-rise',
    part: 'room',
    title: 'how much the cabinet warms the room, at most',
    value: peak.value,
    unit: 'temperature-difference',
    ...(own === undefined ? {} : { limit: own }),
    at: peak.time,
    get steps(): readonly Step[] {
      return [
        {
          text: cabinet.room.held
            ? 'the file says that the room is held at its own temperature'
            : `against the room without the cabinet, at ${formatClock(peak.time)}`,
          value: peak.value,
          unit: 'temperature-difference',
          formula: 'C dθ/dt = Q − (UA + ρ cp V n) θ',
          inputs: ['room.heatLoss', 'room.heatCapacity', 'room.airChangesPerHour', 'room.held'],
        },
        { text: 'mean of the day', value: meanOf(rise), unit: 'temperature-difference' },
      ];
    },
    remedies: [],
    weight: 0.2,
    better: 'lower',
    compared: true,
  };
}
