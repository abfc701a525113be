// A bare network file: the same shape that a cabinet is assembled into, written by hand, for cases with known answers.

import {
  AIR_HEAT_CAPACITY,
  ATMOSPHERE,
  GAS_CONSTANT_AIR,
  GRAVITY,
  REFERENCE_DENSITY,
  STEFAN_BOLTZMANN,
} from '@stillair/physics';
import type { Node } from 'yaml';
import { type Complaint, inFileOrder } from '../cabinet/complaint.ts';
import { readYaml, type YamlDocument } from '../cabinet/yaml-document.ts';
import { fileKeys } from './file-keys.ts';
import { type FileMap, openMap } from './file-map.ts';
import { complain, NOT_NEGATIVE, POSITIVE, type Reading, readNumber, scalarOf } from './file-value.ts';
import type { AirPath, Constants, DensityModel, Network } from './network.ts';
import { readAirChange, readExchange, readPath } from './read-air.ts';
import { readCarbonBed, readContaminant, readEmission, readRecirculation } from './read-contaminants.ts';
import {
  readConductance,
  readConvection,
  readHeatSource,
  readNode,
  readRadiantLink,
  readStar,
  readWall,
  readZone,
} from './read-heat.ts';
import { readMachine, readSchedule, readSensor, readThermostat } from './read-machines.ts';
import { readSweep, type Sweep } from './read-sweep.ts';

/** What the file asks for: the flows at the given temperatures, every operating point of its fans, or the course of time. */
export type Analysis = 'network' | 'operating-points' | 'transient';

/** A network with the paths that have no area, and so are none, but whose flow of nought somebody may ask for. */
export interface NetworkRun {
  readonly network: Network;
  readonly absentPaths: readonly string[];
}

export interface NetworkFile extends NetworkRun {
  readonly id: string;
  readonly analysis: Analysis;
  /** One run for each value of the sweep, in its order. */
  readonly sweep?: { readonly what: string; readonly runs: readonly (NetworkRun & { readonly value: number })[] };
}

/** Reads a network file; returns what it holds, or everything that is wrong with it in file order. Never throws. */
export function readNetwork(file: string, text: string): NetworkFile | { readonly complaints: readonly Complaint[] } {
  const document = readYaml(file, text);
  if ('complaints' in document) return document;
  const first = readOnce(document);
  const { sweep } = first;
  const unswept = sweep === undefined || sweep.values.length === 0;
  if (first.complaints.length > 0 && unswept) return { complaints: ordered(first.complaints) };
  if (sweep === undefined) return { ...first.run, id: first.id, analysis: first.analysis };

  const runs = sweep.values.map((value) => {
    sweep.set(value);
    return { value, ...readOnce(document) };
  });
  const complaints = runs.flatMap((run) => run.complaints);
  if (complaints.length > 0) return { complaints: ordered(complaints) };
  return {
    ...runs[0]!.run,
    id: first.id,
    analysis: first.analysis,
    sweep: { what: sweep.what, runs: runs.map(({ value, run }) => ({ value, ...run })) },
  };
}

/** In file order, and each only once: a fault may be met from several sides. */
function ordered(complaints: readonly Complaint[]): readonly Complaint[] {
  const key = ({ code, where, what }: Complaint): string => `${code} ${where.line}:${where.column} ${what}`;
  const seen = new Set<string>();
  return inFileOrder(complaints).filter((complaint) => {
    const fresh = !seen.has(key(complaint));
    seen.add(key(complaint));
    return fresh;
  });
}

interface Once {
  readonly run: NetworkRun;
  readonly id: string;
  readonly analysis: Analysis;
  readonly sweep: Sweep | undefined;
  readonly complaints: readonly Complaint[];
}

function readOnce(document: YamlDocument): Once {
  const reading: Reading = { document, complaints: [], later: [], names: new Map() };
  const map = openMap(reading, document.root, 'a network', fileKeys.top);
  const version = map.number('version', { whole: true }, 1);
  if (version !== 1 && map.has('version')) {
    complain(reading, map.at('version')!, 'version-unknown', `this is version ${version}`, '1', 'write version: 1');
  }
  const analysis = analysisOf(map);
  const sweepNode = map.at('sweep');
  const sweep = sweepNode === undefined ? undefined : readSweep(reading, sweepNode);
  const start = map.has('initial') ? map.number('initial', NOT_NEGATIVE) : undefined;
  const each = <Part>(key: keyof typeof fileKeys.top, read: (node: Node, index: number) => Part): readonly Part[] =>
    map.list(key).map(read);

  const paths = each('paths', (node) => readPath(reading, node));
  const network: Network = {
    title: map.text('title', map.text('id', '')),
    duration: map.number('duration', NOT_NEGATIVE, analysis === 'transient' ? undefined : 0),
    density: readDensity(reading, map.at('density')),
    fanDensityScaling: map.flag('fanDensityScaling', false),
    constants: readConstants(reading, map.at('constants')),
    zones: each('zones', (node) => readZone(reading, node, start)),
    nodes: each('nodes', (node) => readNode(reading, node, start)),
    conductances: each('conductances', (node) => readConductance(reading, node)),
    walls: each('walls', (node) => readWall(reading, node, start)),
    convections: each('convections', (node) => readConvection(reading, node)),
    radiation: each('radiation', (node) => readRadiantLink(reading, node)),
    stars: each('stars', (node) => readStar(reading, node)),
    heatSources: each('heatSources', (node, index) => readHeatSource(reading, node, index)),
    paths: paths.filter((path): path is AirPath => !('absent' in path)),
    exchanges: each('exchanges', (node, index) => readExchange(reading, node, index)),
    airChanges: map.list('airChanges', 'single').map((node) => readAirChange(reading, node)),
    machines: each('machines', (node) => readMachine(reading, node)),
    schedule: readSchedule(reading, map.list('schedule')),
    sensors: each('sensors', (node) => readSensor(reading, node)),
    thermostats: each('thermostats', (node) => readThermostat(reading, node)),
    contaminants: each('contaminants', (node) => readContaminant(reading, node)),
    recirculations: map.list('recirculations', 'single').map((node, index) => readRecirculation(reading, node, index)),
    carbonBeds: each('carbonBeds', (node) => readCarbonBed(reading, node)),
    emissions: each('emissions', (node) => readEmission(reading, node)),
    breaks: each('breaks', (node) => readNumber(reading, node, 'a break', {})),
  };
  if (network.zones.length === 0) {
    complain(
      reading,
      map.at('zones') ?? document.root,
      'list-empty',
      'the network has no zone',
      'at least one zone',
      'add zones: [...]',
    );
  }
  for (const ask of reading.later) ask();
  const absentPaths = paths.flatMap((path) => ('absent' in path ? [path.absent] : []));
  const id = map.text('id', network.title);
  return { run: { network, absentPaths }, id, analysis, sweep, complaints: reading.complaints };
}

function analysisOf(map: FileMap<'analysis'>): Analysis {
  const choice = map.choice('analysis', ['network', 'operating_points', 'transient'], 'transient');
  return choice === 'operating_points' ? 'operating-points' : choice;
}

function readDensity(reading: Reading, node: Node | undefined): DensityModel {
  if (node === undefined || scalarOf(reading, node) === 'ideal_gas') return { model: 'ideal-gas' };
  const map = openMap(reading, node, 'density', fileKeys.density);
  const model = map.choice('model', ['ideal_gas', 'constant']);
  if (model === 'constant') return { model, value: map.number('value', POSITIVE) };
  const value = map.at('value');
  if (value !== undefined) {
    complain(
      reading,
      value,
      'key-out-of-place',
      'the density of an ideal gas follows from its temperature',
      'a value beside model: constant',
      'take it out',
    );
  }
  return { model: 'ideal-gas' };
}

function readConstants(reading: Reading, node: Node | undefined): Constants {
  const usual: Constants = {
    gravity: GRAVITY,
    atmosphere: ATMOSPHERE,
    gasConstant: GAS_CONSTANT_AIR,
    heatCapacity: AIR_HEAT_CAPACITY,
    referenceDensity: REFERENCE_DENSITY,
    stefanBoltzmann: STEFAN_BOLTZMANN,
  };
  if (node === undefined) return usual;
  const map = openMap(reading, node, 'constants', fileKeys.constants);
  return {
    gravity: map.number('gravity', NOT_NEGATIVE, usual.gravity),
    atmosphere: map.number('atmosphere', POSITIVE, usual.atmosphere),
    gasConstant: map.number('gasConstant', POSITIVE, usual.gasConstant),
    heatCapacity: map.number('heatCapacity', POSITIVE, usual.heatCapacity),
    referenceDensity: map.number('referenceDensity', POSITIVE, usual.referenceDensity),
    stefanBoltzmann: map.number('stefanBoltzmann', NOT_NEGATIVE, usual.stefanBoltzmann),
  };
}
