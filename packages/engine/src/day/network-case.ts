// A network case: a file with known answers, each under an id such as T_bay@600s. Runs the file and reads an answer by its id.

import { formatComplaint } from '../cabinet/complaint.ts';
import { type NetworkFile, readNetwork } from '../network/read-network.ts';
import { answerNetwork, type CrossingsAnswer, type RunAnswer } from './network-answer.ts';

export interface CaseAnswer {
  readonly id: string;
  readonly value: number;
  readonly unit: string;
  readonly method: string;
  readonly tolerance: number;
}

export interface NetworkCase {
  readonly id: string;
  readonly title: string;
  readonly yaml: string;
  readonly answers: readonly CaseAnswer[];
}

/** Runs a case once and gives a function from ids to numbers. */
export function runCase({ id, yaml, answers }: NetworkCase): (answer: string) => number {
  const file = readNetwork(`${id}.yaml`, yaml);
  if ('complaints' in file) throw new Error(file.complaints.map(formatComplaint).join('\n'));
  if (file.analysis === 'operating-points') {
    const crossings = answerNetwork(file) as CrossingsAnswer;
    return (answer) => crossingValue(crossings, answer);
  }
  const times = [...new Set([0, file.network.duration, ...answers.flatMap(timeOf)])].sort((a, b) => a - b);
  const answer = answerNetwork(file, file.analysis === 'network' ? undefined : times);
  if ('answers' in answer) {
    return (asked) => {
      const [own = '', index = '1'] = asked.split('#');
      return runValue(file, answer.answers[Number(index) - 1] as RunAnswer, own);
    };
  }
  return (asked) => runValue(file, answer as RunAnswer, asked);
}

function timeOf({ id }: CaseAnswer): readonly number[] {
  const [, time] = /@([\d.]+)s/.exec(id) ?? [];
  return time === undefined ? [] : [Number(time)];
}

function crossingValue({ operatingPoints }: CrossingsAnswer, id: string): number {
  const points = Object.values(operatingPoints).flat();
  if (id === 'count') return points.length;
  const [, index, kind] = /^Q_(\d+)_(stable|unstable)$/.exec(id) ?? [];
  const point = points[Number(index) - 1];
  return point !== undefined && point.stable === (kind === 'stable') ? point.m3_h : Number.NaN;
}

function runValue(file: NetworkFile, answer: RunAnswer, id: string): number {
  const [stem = '', time] = id.split('@');
  const at = time === undefined ? answer.times.length - 1 : answer.times.indexOf(Number.parseFloat(time));
  const [kind = '', ...words] = stem.split('_');
  const name = words.join('_');
  const thermostats = file.network.thermostats.map((thermostat) => thermostat.name);
  const switches = answer.events.filter(({ what }) => thermostats.includes(what));
  const holdings = answer.events.filter(({ to }) => to === 'holding');
  const nth = (list: readonly { readonly time: number }[], n: string | undefined): number => list[Number(n) - 1]!.time;
  switch (kind) {
    case 'T':
      return answer.temperatures[name.replace(/_steady$/, '')]![at]!;
    case 'p':
      return answer.pressures[name]![at]!;
    case 'dp':
      return answer.pressureDifferences[name]![at]!;
    case 'flow':
      return answer.flows[name]![at]!;
    case 'part': {
      const [path = '', part = ''] = name.split('/');
      return answer.partPressures[path]![part]![at]!;
    }
    case 'bedpower':
      return answer.bedPowers[name]![at]!;
    case 'energy': {
      const [of = '', ...rest] = words;
      if (time !== undefined) return energyUntil(file, Number.parseFloat(time));
      const energies = answer.energies[of as keyof typeof answer.energies];
      return energies[rest.join('_') || Object.keys(energies)[0]!]!;
    }
    case 'mean':
      return answer.means[words[0]!]![words.slice(1).join('_')]!;
    case 'runtime':
      return answer.runTimes[name]!;
    case 'peak':
      return answer.peaks[name]!.value;
    case 'peaktime':
      return answer.peaks[name]!.time;
    case 'switch':
      return name === 'count' ? switches.length : nth(switches, name);
    case 'holding':
      return nth(
        holdings.filter(({ what }) => what === words.slice(0, -1).join('_')),
        words.at(-1),
      );
    case 'duty':
      return (nth(switches, '2') - nth(switches, '1')) / (nth(switches, '3') - nth(switches, '1'));
    case 'time':
      return nth(holdings, id === 'time_reach_105C' ? '1' : '2');
    case 'P':
      return holdingPower(file, nth(holdings, id === 'P_hold_105C' ? '1' : '2'));
    case 'neutral':
      return neutralLevel(file, answer);
    case 'volume':
      return answer.volumeFlows['exhaust']![at]! * 3600;
    case 'filter':
      return answer.partPressures['exhaust']!['filter']![at]!;
    case 'silencer':
      return answer.partPressures['exhaust']!['silencer box']![at]!;
    default:
      return answer.concentrations[kind]![name.replace(/_steady$/, '')]![at]!;
  }
}

/** All heat sources together up to a time, J. */
function energyUntil(file: NetworkFile, duration: number): number {
  const shorter = { ...file, network: { ...file.network, duration } };
  const { energies } = answerNetwork(shorter) as RunAnswer;
  return Object.values(energies.source).reduce((sum, joules) => sum + joules, 0);
}

/** Power a moment after a bed began to hold, W. */
function holdingPower(file: NetworkFile, time: number): number {
  const { bedPowers } = answerNetwork(file, [time + 60]) as RunAnswer;
  return Object.values(bedPowers)[0]![0]!;
}

/** Height at which two openings between the same zones see no pressure difference, m. */
function neutralLevel({ network }: NetworkFile, { pressureDifferences }: RunAnswer): number {
  const [low, high] = ['low', 'high'].map((name) => network.paths.find((path) => path.name === name)!);
  const below = pressureDifferences['low']![0]!;
  const above = pressureDifferences['high']![0]! * (high!.from === low!.from ? 1 : -1);
  return low!.z + ((high!.z - low!.z) * below) / (below - above);
}
