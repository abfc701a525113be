// The words of the command line of what holds a log of the real cabinet against its file.

import type { Command } from 'commander';
import type { CalibrateOptions } from './commands/calibrate.ts';
import type { DriftOptions } from './commands/drift.ts';
import type { ExitCode, Io } from './io.ts';
import { help, unitsOption, workersOption } from './program-options.ts';

/** Commands that hold a log of the real cabinet against the file. */
export function addLogs(program: Command, io: Io, act: (command: Promise<ExitCode>) => Promise<void>): void {
  program
    .command('calibrate')
    .description('fits what the file only assumes to a log of the real cabinet, or to readings, and says how surely')
    .argument('<file>', 'cabinet file')
    .argument('[log]', 'log as CSV: a column of times, and columns named after sensors, bays, machines or the room')
    .option('--day <day>', 'day of the file that the log is of; its first unless given')
    .option('--readings <readings...>', 'readings typed by hand, such as "14:05 top 41 °C"')
    .option('--column <place...>', 'where a column hangs, such as "Temp 1=top"')
    .option('--shift <time>', 'added to the times of the log, such as "1 h" or "-30 min"')
    .option('--fit <unknowns...>', 'what to fit, such as leakage wall-loss heat.left; what the log shows unless given')
    .option('--prior', 'count what the file says of the unknowns as an observation; for few readings unless said')
    .option('--no-prior', 'do not count it')
    .option('--write', 'put the values into the file, with their spread; comments stay')
    .option('--svg <out>', 'draw the log beside the day before and after, as SVG, into this file; - prints it')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help(
        'calibrate cabinet.yaml log.csv --day usual',
        'calibrate cabinet.yaml log.csv --fit leakage bed-loss --write',
        'calibrate cabinet.yaml --readings "14:05 top 41 °C"',
      ),
    )
    .action((file: string, log: string | undefined, options: CalibrateOptions) =>
      act(import('./commands/calibrate.ts').then(({ calibrate }) => calibrate(file, log, options, io))),
    );
  program
    .command('drift')
    .description('says whether a newer log has drifted away from the file, since when, and what would explain it')
    .argument('<file>', 'cabinet file, best one that calibrate has put right')
    .argument('<log>', 'newer log as CSV, of one day or more')
    .option('--day <day>', 'day of the file that the log is of; that of its calibration, or its first, unless given')
    .option('--settled <time>', 'first part of the log in which all was well, such as "3 d"')
    .option('--column <place...>', 'where a column hangs, such as "Temp 1=top"')
    .option('--shift <time>', 'added to the times of the log, such as "1 h" or "-30 min"')
    .option('--svg <out>', 'draw what is off by the hour, as SVG, into this file; - prints it')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(workersOption())
    .addHelpText('after', help('drift cabinet.yaml november.csv', 'drift cabinet.yaml november.csv --settled "3 d"'))
    .action((file: string, log: string, options: DriftOptions) =>
      act(import('./commands/drift.ts').then(({ drift }) => drift(file, log, options, io))),
    );
}
