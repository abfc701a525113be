// What a run of many cabinets comes to, in numbers and as a page.

import { regimes } from './regimes.mjs';

/** Situations that must be met in 500 of 20,000 cabinets. */
const MUST_MEET = ['reversal', 'sealed', 'stall', 'starved', 'events'];
const OFTEN_ENOUGH = 500 / 20_000;
/** K */
const PEAK_LIMIT = 0.02;

/** @param {readonly object[]} outcomes - What `tryCabinet` said, in any order. */
export function totalsOf(outcomes) {
  const most = (of) => outcomes.reduce((largest, outcome) => Math.max(largest, of(outcome) ?? 0), 0);
  const faults = outcomes.filter(({ faults: some }) => some.length > 0).sort((a, b) => a.number - b.number);
  const apart = outcomes.flatMap(({ apart: kelvin }) => (kelvin === undefined ? [] : [kelvin])).sort((a, b) => a - b);
  return {
    count: outcomes.length,
    faults,
    met: Object.fromEntries(
      Object.keys(regimes).map((name) => [name, outcomes.filter(({ met }) => met.includes(name)).length]),
    ),
    closures: Object.fromEntries(
      ['heat', 'air', 'contaminant'].map((what) => [what, most(({ closures }) => closures?.[what])]),
    ),
    steps: most(({ steps }) => steps),
    events: most(({ events }) => events),
    seconds: outcomes.reduce((sum, { seconds = 0 }) => sum + seconds, 0) / outcomes.length,
    apart,
  };
}

/** Situations met too seldom for the run to say anything about them. */
export function tooSeldom({ met, count }) {
  return MUST_MEET.filter((name) => met[name] < OFTEN_ENOUGH * count);
}

export function report(totals, { seed, date, commits }) {
  const { count, faults, met, closures, steps, events, seconds, apart } = totals;
  const kinds = groups(faults);
  const share = (part) => `${((100 * part) / count).toFixed(1)} %`;
  const lines = [
    '# Cabinets drawn at random',
    '',
    'Random but valid cabinet files, each read, assembled and run through its day: `npm run fuzz -- --count 20000 --seed 1`.',
    'Any one can be seen again: `npm run fuzz -- --seed 1 --only 28`, and with `--smallest` without whatever its fault does not need.',
    'The file refuses fan curves with a dip; one cabinet in twelve therefore gets its dip in the assembled network.',
    '',
    `Run of ${date}, seed ${seed}, ${count} cabinets, commit ${commits}; ${seconds.toFixed(2)} s of the processor a cabinet on average.`,
    '',
    '| what | result |',
    '| --- | --- |',
    `| without a fault | ${count - faults.length} of ${count} |`,
    `| largest miss of the heat balance | ${closures.heat.toExponential(1)} of what moved |`,
    `| largest miss of an air balance | ${closures.air.toExponential(1)} of the largest flow (at least 0.03 m³/h) |`,
    `| largest miss of a contaminant balance | ${closures.contaminant.toExponential(1)} of what moved or was held |`,
    `| most steps, most events in a day | ${steps}, ${events} |`,
    '',
    '| situation | cabinets that met it | share |',
    '| --- | --- | --- |',
    ...Object.entries(regimes).map(([name, about]) => `| ${about} | ${met[name]} | ${share(met[name])} |`),
    '',
  ];
  if (faults.length > 0) {
    lines.push(
      '| fault | cabinets | numbers |',
      '| --- | --- | --- |',
      ...[...kinds].map(([kind, numbers]) => `| ${kind} | ${numbers.length} | ${numbers.slice(0, 12).join(', ')} |`),
      '',
    );
  }
  if (apart.length > 0) {
    const at = (u) => apart[Math.min(apart.length - 1, Math.floor(u * apart.length))].toFixed(4);
    const within = apart.filter((kelvin) => kelvin <= PEAK_LIMIT).length;
    lines.push(
      `Peaks of every temperature against a run at a hundredth of the tolerance, largest difference of each of ${apart.length} cabinets:`,
      `${within} are within ${PEAK_LIMIT} K.`,
      '',
      '| median | 90 % | 95 % | 99 % | largest |',
      '| --- | --- | --- | --- | --- |',
      `| ${at(0.5)} K | ${at(0.9)} K | ${at(0.95)} K | ${at(0.99)} K | ${apart.at(-1).toFixed(4)} K |`,
      '',
    );
  }
  return lines.join('\n');
}

/** Numbers of the cabinets by kind of fault. */
function groups(faults) {
  const kinds = new Map();
  for (const { faults: some, number } of faults) {
    for (const fault of new Set(some.map(kindOf))) kinds.set(fault, [...(kinds.get(fault) ?? []), number]);
  }
  return kinds;
}

function kindOf(fault) {
  return fault.replace(/ to [\d.e+-]+ only/, ' less well than to 1e-9');
}
