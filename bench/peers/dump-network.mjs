// Turns a bare network file into the flat text that the peers' C program reads: node dump-network.mjs FILE > DUMP
// Only the laws that the frozen days use are known here; anything else stops the dump with its name.

import { readFileSync } from 'node:fs';
import { readNetwork } from '../../packages/engine/dist/network/read-network.js';

const [file] = process.argv.slice(2);
const read = readNetwork(file, readFileSync(file, 'utf8'));
if ('complaints' in read) {
  for (const { what, where } of read.complaints) console.error(`${where.file}:${where.line}: ${what}`);
  process.exit(1);
}
const { network } = read;
for (const key of ['convections', 'stars', 'airChanges', 'sensors', 'recirculations', 'emissions', 'contaminants']) {
  if (network[key].length > 0) refuse(`a network with ${key}`);
}

const lines = [];
const say = (...words) => lines.push(words.join(' '));
const { constants } = network;
say('duration', network.duration);
say(
  'constants',
  constants.gravity,
  constants.atmosphere,
  constants.gasConstant,
  constants.heatCapacity,
  constants.referenceDensity,
  constants.stefanBoltzmann,
);
say('density', network.density.model === 'constant' ? network.density.value : 0);
say('scaling', Number(network.fanDensityScaling));

const walls = network.walls.map(slices);
const states = [
  ...network.zones
    .filter(({ temperature }) => temperature.kind === 'free')
    .map(({ name, temperature }) => ({ name, ...temperature })),
  ...network.nodes,
  ...walls.flatMap(({ nodes }) => nodes),
];
const fixed = network.zones
  .filter(({ temperature }) => temperature.kind === 'fixed')
  .map(({ name, temperature: { profile } }) => {
    if (profile.length !== 1) refuse('a changing fixed temperature');
    return { name, heatCapacity: 0, initial: profile[0][1] };
  });
const all = [...states, ...fixed];
const places = new Map(all.map(({ name }, index) => [name, index]));
const place = (name) => places.get(name) ?? refuse(`a place called ${name}`);
say('states', states.length, 'fixed', fixed.length);
for (const { heatCapacity, initial } of all) say(heatCapacity, initial);

const links = [
  ...network.conductances.map(({ a, b, conductance, active }) => {
    if (active !== undefined && active !== 'always') refuse('a conductance that comes and goes');
    return [a, b, conductance];
  }),
  ...walls.flatMap((wall) => wall.links),
];
say('links', links.length);
for (const [a, b, conductance] of links) say(place(a), place(b), conductance);
say('rays', network.radiation.length);
for (const { a, b, area, emissivity, factor } of network.radiation) say(place(a), place(b), area * emissivity * factor);

const zone = (name) => network.zones.findIndex((other) => other.name === name);
say('zones', network.zones.length);
for (const { name, pressure, zRef } of network.zones) {
  const solved = pressure.kind === 'solved';
  say(place(name), Number(solved), solved ? 0 : pressure.value, zRef);
}

const machineNames = network.machines.map(({ name }) => name);
const thermostatNames = network.thermostats.map(({ name }) => name);
say('paths', network.paths.length);
for (const path of network.paths) {
  const head = [zone(path.from), zone(path.to), path.z, when(path.open)];
  if (path.type === 'orifice') {
    say('orifice', ...head, path.count * path.dischargeCoefficient * path.area, path.linearBelow);
  } else if (path.type === 'crack') {
    say('crack', ...head, path.coefficient, path.exponent, path.linearBelow);
  } else if (path.type === 'fan-path' && path.fans.length === 1 && path.flap === undefined) {
    const [fan] = path.fans;
    if (fan.curve.kind !== 'poly' || fan.speed !== undefined) refuse('a fan curve of points, or a fan with speeds');
    const sum = (parts, key) => parts.reduce((total, part) => total + part[key], 0);
    const minor = (parts) => parts.reduce((total, { loss, area }) => total + loss / (2 * area * area), 0);
    say('fan', ...head, when(fan.control), fan.curve.p0, fan.curve.a, fan.curve.b);
    say(sum(path.resistances, 'linear'), sum(path.resistances, 'quadratic'), minor(path.minor));
    say(fan.stopped.linear, fan.stopped.quadratic, minor(fan.stopped.minor));
  } else refuse(`a path like ${path.name}`);
}

say('exchanges', network.exchanges.length);
for (const { a, b, law, active } of network.exchanges) {
  if (law.kind !== 'vertical-opening') refuse(`an exchange by ${law.kind}`);
  say(place(a), place(b), law.dischargeCoefficient, law.width, law.height, when(active));
}
say('sources', network.heatSources.length);
for (const { node, watts, active, profile } of network.heatSources) {
  if (profile !== undefined) refuse('a heat source with a profile');
  say(place(node), watts, when(active));
}

say('machines', network.machines.length);
for (const { bed, modes } of network.machines) {
  if (bed?.supply !== undefined) refuse('a bed whose supply loses heat');
  const withIdle = modes.some(({ name }) => name === 'idle') ? modes : [...modes, { name: 'idle', powers: [] }];
  const idle = withIdle.findIndex(({ name }) => name === 'idle');
  say(bed === undefined ? -1 : place(bed.node), bed?.powerMax ?? 0, withIdle.length, idle);
  for (const { bedSet, powers } of withIdle) {
    say(bedSet ?? 0, powers.length, ...powers.flatMap(({ node, watts }) => [place(node), watts]));
  }
}
say('schedule', network.schedule.length);
for (const { machine, mode, start, end } of network.schedule) {
  const at = machineNames.indexOf(machine);
  say(
    at,
    network.machines[at].modes.findIndex(({ name }) => name === mode),
    start,
    end,
  );
}
say('thermostats', network.thermostats.length);
for (const { sensor, on, off, sense, initial } of network.thermostats) {
  if (typeof sensor !== 'string' || sense !== 'above') refuse('a thermostat that heats or smells');
  say(place(sensor), on, off, Number(initial));
}
say('end');
console.log(lines.join('\n'));

/** A wall as nodes in the middles of its slices, with films and half slices in series to the air. */
function slices({ name, a, b, area, layers, filmA, filmB, grid, initial }) {
  if (grid !== 'middles') refuse('a wall with nodes on its faces');
  const cut = layers.flatMap(({ thickness, conductivity, density, heatCapacity, nodes }) =>
    Array.from({ length: nodes }, () => ({
      half: thickness / nodes / 2 / (conductivity * area),
      heatCapacity: ((density * heatCapacity * thickness) / nodes) * area,
    })),
  );
  const nodes = cut.map(({ heatCapacity }, index) => ({ name: `${name}.${index + 1}`, heatCapacity, initial }));
  const between = cut
    .slice(1)
    .map(({ half }, index) => [nodes[index].name, nodes[index + 1].name, 1 / (cut[index].half + half)]);
  const links = [
    [a, nodes[0].name, 1 / (1 / (filmA * area) + cut[0].half)],
    ...between,
    [nodes.at(-1).name, b, 1 / (1 / (filmB * area) + cut.at(-1).half)],
  ];
  return { nodes, links };
}

function when(condition) {
  if (condition === 'always') return 'always';
  if ('windows' in condition) return `windows ${condition.windows.length} ${condition.windows.flat().join(' ')}`;
  if ('thermostat' in condition) return `thermostat ${thermostatNames.indexOf(condition.thermostat)}`;
  if ('machine' in condition && condition.modes === undefined)
    return `machine ${machineNames.indexOf(condition.machine)}`;
  return refuse('a combined condition');
}

function refuse(what) {
  console.error(`dump-network: the peers do not know ${what}`);
  process.exit(1);
}
