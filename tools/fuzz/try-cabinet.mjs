// One drawn cabinet through reading, assembling and simulating, and everything that must hold of the result.

import { assemble, DayStopped, readCabinet, simulateDay } from '@stillair/engine';
import { cabinetText } from './cabinet-text.mjs';
import { closuresOf } from './closures.mjs';
import { drawsOf } from './random.mjs';
import { regimesOf } from './regimes.mjs';
import { withDip } from './stall.mjs';

/** Heat, every contaminant and air must close to this share of what moved. */
export const CLOSURE = 1e-9;
/** The run that peaks are compared with has this tolerance, K: a hundredth of the usual one. */
const EXACT = 0.0002;
/** Share of the cabinets that get a fan with a dip. */
const DIPPED = 0.08;
/** Dips are drawn by a stream of their own, so that the text of a cabinet does not depend on them. */
const OTHER_STREAM = 0x5bd1;
/** A day that takes longer counts as a fault, s of the processor: how busy the machine is says nothing about a cabinet. */
const PATIENCE = 60;
const TABLES = [
  'temperatures',
  'slopes',
  'pressures',
  'flows',
  'counterFlows',
  'exchanges',
  'fanSpeeds',
  'bedPowers',
  'carbonLoads',
];

/** What became of cabinet `number` under `seed`; `peaks` also compares it with a run at a hundredth of the tolerance. */
export function tryCabinet(seed, number, { peaks = false } = {}) {
  const dip = drawsOf(seed ^ OTHER_STREAM, number).chance(DIPPED);
  return { number, ...tryText(cabinetText(seed, number), { peaks, dip }) };
}

/** What became of the day `day` of a file; `dip` puts a dip into the curve of one of its fans. */
export function tryText(text, { peaks = false, dip = false } = {}) {
  const started = process.cpuUsage();
  const spent = () => secondsSince(started);
  try {
    const answer = readCabinet('drawn.yaml', text);
    if (!answer.ok) return { faults: answer.complaints.map(({ code, what }) => `refused: ${code}, ${what}`), met: [] };
    const { cabinet } = answer;
    const assembly = assemble(cabinet, 'day');
    const late = () => spent() > PATIENCE;
    const options = { ledger: true, periodic: cabinet.days.day.repeated, stop: late };
    const plain = simulateDay(assembly.network, options);
    const dipped = dip ? withDip(plain) : undefined;
    const record = dipped === undefined ? plain : simulateDay(dipped, options);
    const closures = closuresOf(record);
    const seconds = spent();
    return {
      faults: [...closureFaults(closures), ...numberFaults(record)],
      met: regimesOf(assembly, record),
      closures,
      events: record.events.length,
      steps: record.work.steps,
      seconds,
      ...(peaks ? { apart: peaksApart(record, options) } : {}),
    };
  } catch (error) {
    if (error instanceof DayStopped) return { faults: [`slow: not done after ${PATIENCE} s`], met: [] };
    const { message, stack } = error instanceof Error ? error : new Error(String(error));
    const place = /\w+\.[jt]s:\d+/.exec(stack ?? '')?.[0] ?? '';
    return { faults: [`thrown: ${message} (${place})`], met: [] };
  }
}

function secondsSince(start) {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1e6;
}

function closureFaults(closures) {
  return Object.entries(closures).flatMap(([what, closure]) =>
    closure <= CLOSURE ? [] : [`${what} closes to ${closure.toExponential(2)} only`],
  );
}

function numberFaults(record) {
  const tables = [...TABLES.map((name) => [name, record[name]]), ...Object.entries(record.concentrations)];
  return tables.flatMap(([name, { values }]) =>
    values.every(Number.isFinite) ? [] : [`${name} holds what is no number`],
  );
}

/** Largest difference of any peak of air, solid or sensor from that of the exact run, K. */
function peaksApart(record, options) {
  const exact = peaksOf(simulateDay(record.network, { periodic: options.periodic, tolerance: EXACT }));
  return peaksOf(record).reduce((most, peak, column) => Math.max(most, Math.abs(peak - exact[column])), 0);
}

function peaksOf({ temperatures: { names, values } }) {
  const peaks = names.map(() => Number.NEGATIVE_INFINITY);
  for (let at = 0; at < values.length; at += 1)
    peaks[at % names.length] = Math.max(peaks[at % names.length], values[at]);
  return peaks;
}
