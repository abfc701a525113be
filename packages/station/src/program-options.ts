// Options that several commands have, and how their words are read.

import { InvalidArgumentError, Option } from 'commander';

export function help(...examples: readonly string[]): string {
  return `\nExamples:\n${examples.map((example) => `  stillair ${example}`).join('\n')}`;
}

export function unitsOption(): Option {
  return new Option('--units <system>', 'units to print in').choices(['metric', 'imperial']).default('metric');
}

export function samplesOption(usual = 24): Option {
  return new Option('--samples <count>', 'how many times to vary the uncertain inputs')
    .argParser((text) => wholeNumber(text, 0, 10_000))
    .default(usual);
}

export function workersOption(): Option {
  return new Option('--workers <count>', 'how many days to compute at once; one a core unless given').argParser(
    (text) => wholeNumber(text, 0, 256),
  );
}

export function wholeNumber(text: string, least: number, most: number): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value >= least && value <= most) return value;
  throw new InvalidArgumentError(`It takes a whole number from ${least} to ${most}.`);
}

export function numberList(text: string): number[] {
  const values = text.split(',').map((each) => (each.trim() === '' ? Number.NaN : Number(each)));
  if (values.every((value) => Number.isFinite(value) && value >= 0)) return values;
  throw new InvalidArgumentError('It takes seconds with commas between them, such as 0,3600.');
}
