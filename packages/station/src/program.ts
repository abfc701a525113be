// The words of the command line: which commands there are, what they take, and what is said when a word is wrong.
// Commands are loaded when they are called, so that each starts as quickly as it can.

import { Command, CommanderError, Option } from 'commander';
import type { CareOptions } from './commands/care.ts';
import type { CheckOptions } from './commands/check.ts';
import type { CompareOptions } from './commands/compare.ts';
import type { CostOptions } from './commands/cost.ts';
import type { DayOptions } from './commands/day.ts';
import type { ExplainOptions } from './commands/explain.ts';
import type { FaultsOptions } from './commands/faults.ts';
import type { JobOptions } from './commands/job.ts';
import type { NetworkOptions } from './commands/network.ts';
import type { NewOptions } from './commands/new.ts';
import type { PapersOptions } from './commands/papers.ts';
import type { PareOptions } from './commands/pare.ts';
import type { PartsOptions } from './commands/parts.ts';
import type { PlanCommandOptions } from './commands/plan.ts';
import type { SearchOptions } from './commands/search.ts';
import type { ShutOffCommandOptions } from './commands/shut-off.ts';
import type { SpreadOptions } from './commands/spread.ts';
import type { WorkbenchOptions } from './commands/workbench.ts';
import type { ExitCode, Io } from './io.ts';
import { addLogs } from './program-logs.ts';
import { help, numberList, samplesOption, unitsOption, wholeNumber, workersOption } from './program-options.ts';
import { hanging } from './text.ts';
import { tradeNames } from './trade-names.ts';
import { VERSION } from './version.ts';

const statusHelp =
  'Exit status: 0 all holds; 1 something fails; 2 the command or a file is wrong; 3 nothing fails, but something is ' +
  'tight or unknown; 130 stopped. Computed limits are no substitute for local codes and licensed practice.';

/** Runs one command line; `words` are those behind the program's name. */
export async function runProgram(words: readonly string[], io: Io): Promise<ExitCode> {
  let status: ExitCode = 0;
  const program = describeProgram(io, async (command) => {
    status = await command;
  });
  try {
    await program.parseAsync(words, { from: 'user' });
  } catch (error) {
    if (!(error instanceof CommanderError)) throw error;
    return error.exitCode === 0 ? 0 : 2;
  }
  return status;
}

type Act = (command: Promise<ExitCode>) => Promise<void>;

function describeProgram(io: Io, act: Act): Command {
  const program = new Command('stillair')
    .description('Computes a cabinet with filament printers from one cabinet file: heat, air, what people breathe.')
    .version(VERSION, '--version', 'print the version')
    .helpOption('-h, --help', 'print this')
    .helpCommand('help [command]', 'print what a command does')
    .addHelpText('after', help('new > cabinet.yaml', 'check cabinet.yaml'));
  addStudies(program, io, act);
  addTrials(program, io, act);
  addSpread(program, io, act);
  addPapers(program, io, act);
  addSearch(program, io, act);
  addLogs(program, io, act);
  addJob(program, io, act);
  addRunning(program, io, act);
  addCare(program, io, act);
  addFiles(program, io, act);
  addWorkbench(program, io, act);
  for (const command of [program, ...program.commands]) {
    speakPlainly(command, io);
    command.addHelpText('after', `\n${hanging('', statusHelp, io.columns)}`);
  }
  return program;
}

/** Commands that ask something of a cabinet. */
function addStudies(program: Command, io: Io, act: Act): void {
  program
    .command('check')
    .description('judges a cabinet: what holds, what fails, by how much, how surely, and what might mend it')
    .argument('<file>', 'cabinet file')
    .option('--all', 'print every finding, not only the remarks that matter most')
    .option('--trade <trade>', `only findings of one trade: ${tradeNames.join(', ')}`)
    .option('--day <day>', 'only this day of the file')
    .option('--json', 'print the findings as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help('check cabinet.yaml', 'check cabinet.yaml --all --trade heat', 'check cabinet.yaml --json'),
    )
    .action((file: string, options: CheckOptions) =>
      act(import('./commands/check.ts').then(({ check }) => check(file, options, io))),
    );
  program
    .command('compare')
    .description('sets the options of a cabinet file beside the cabinet as it is, on the same uncertain inputs')
    .argument('<file>', 'cabinet file with options')
    .option('--all', 'print every finding of every option, not only the worst for each question')
    .option('--bands', 'print the band of each number and the chance that its limit is kept')
    .option('--json', 'print the comparison as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText('after', help('compare cabinet.yaml', 'compare cabinet.yaml --samples 100'))
    .action((file: string, options: CompareOptions) =>
      act(import('./commands/compare.ts').then(({ compare }) => compare(file, options, io))),
    );
  program
    .command('explain')
    .description('tells one finding from its inputs to its number: formulas, sources, where each input came from')
    .argument('<file>', 'cabinet file')
    .argument('<finding>', 'id of the finding, as check prints it: trade/quantity/part/day')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText('after', help('explain cabinet.yaml heat/peak-air/lower/usual'))
    .action((file: string, finding: string, options: ExplainOptions) =>
      act(import('./commands/explain.ts').then(({ explain }) => explain(file, finding, options, io))),
    );
  program
    .command('day')
    .description('tells a day hour by hour, as a table, as data or as a picture')
    .argument('<file>', 'cabinet file')
    .option('--day <day>', 'which day of the file; its first unless given')
    .option('--at <time>', 'only this time of day, such as 14:30')
    .option('--csv <out>', 'write every step of the record as CSV into this file; - prints it')
    .option('--json', 'print the hourly table as JSON for other programs')
    .option('--svg <out>', 'draw the day as an SVG picture into this file; - prints it')
    .option('--network', 'print the network that the cabinet becomes, as a network file')
    .addOption(unitsOption())
    .addHelpText('after', help('day cabinet.yaml', 'day cabinet.yaml --at 14:30', 'day cabinet.yaml --svg day.svg'))
    .action((file: string, options: DayOptions) =>
      act(import('./commands/day.ts').then(({ day }) => day(file, options, io))),
    );
}

/** Commands that change a cabinet in many ways and say what came of it. */
function addTrials(program: Command, io: Io, act: Act): void {
  program
    .command('faults')
    .description(
      'runs every single fault (a fan that stops, a bed stuck on, a door left open) and says what catches it',
    )
    .argument('<file>', 'cabinet file')
    .option('--day <day>', 'only this day of the file')
    .option('--all', 'print up to three effects of each fault, not only its worst')
    .option('--json', 'print the faults with all their effects as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText('after', help('faults cabinet.yaml', 'faults cabinet.yaml --day usual --all'))
    .action((file: string, options: FaultsOptions) =>
      act(import('./commands/faults.ts').then(({ faults }) => faults(file, options, io))),
    );
  program
    .command('pare')
    .description('takes out each part alone, then several together, and says which of them no finding would miss')
    .argument('<file>', 'cabinet file')
    .option('--option <option>', 'of the cabinet with this option of the file done to it')
    .option('--json', 'print the parts as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText('after', help('pare cabinet.yaml', 'pare cabinet.yaml --option quiet'))
    .action((file: string, options: PareOptions) =>
      act(import('./commands/pare.ts').then(({ pare }) => pare(file, options, io))),
    );
}

/** What is taken to the bench. */
function addPapers(program: Command, io: Io, act: Act): void {
  program
    .command('papers')
    .description('writes what is cut, bought, drilled, wired and checked: drawings and lists as PDF, SVG and DXF')
    .argument('<file>', 'cabinet file')
    .requiredOption('-o, --out <folder>', 'folder to write into; it is made where it is missing')
    .option('--option <option>', 'of the cabinet with this option of the file done to it')
    .option('--only <papers>', 'only these papers, with commas between them; the list is printed with a name it lacks')
    .addOption(
      new Option('--angle <angle>', 'where views stand round the front').choices(['first', 'third']).default('first'),
    )
    .addOption(new Option('--paper <format>', 'what is printed on').choices(['a4', 'letter']).default('a4'))
    .option('--date <date>', 'print this date on every sheet; none unless given')
    .option('--force', 'replace files in the folder that were changed, or did not come from here')
    .option('--json', 'print what was written as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText('after', help('papers cabinet.yaml -o papers', 'papers cabinet.yaml -o papers --only cut-list'))
    .action((file: string, options: PapersOptions) =>
      act(import('./commands/papers.ts').then(({ papers }) => papers(file, options, io))),
    );
}

/** What runs for years. */
function addCare(program: Command, io: Io, act: Act): void {
  program
    .command('care')
    .description('says what is due, overdue and next, from a diary, and what overdue care does to the findings')
    .argument('<file>', 'cabinet file')
    .option('--diary <file>', 'its diary; beside it, with .diary.yaml in place of .yaml, unless given')
    .option('--today <date>', 'the day that it is; the clock says unless given')
    .option('--all', 'print everything that wants care, not only what comes next')
    .option('--ics <out>', 'write the dates as a calendar (RFC 5545) into this file; - prints it')
    .option('--done <words>', 'enter what was done, such as "filter exhaust changed"')
    .option('--reading <pressure>', 'with it, a pressure loss that was read, such as "41 Pa"')
    .option('--note <words>', 'with it, anything else')
    .option('--ran <job>', 'enter a job that ran; one of the days of the file brings its length and mass with it')
    .option('--machine <name>', 'with it, the machine')
    .option('--material <name>', 'with it, the material')
    .option('--start <time>', 'with it, when its heating began, such as 9:00')
    .option('--for <duration>', 'with it, how long it took, such as "6 h"')
    .option('--mass <mass>', 'with it, the filament used, such as "130 g"')
    .option('--times <count>', 'with it, how often')
    .option('--failed <count>', 'with it, how many of them failed')
    .option('--on <date>', 'when that was, or from when to when; today unless given')
    .option('--began <date>', 'for a first entry: since when the cabinet is used')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help(
        'care cabinet.yaml',
        'care cabinet.yaml --done "filter exhaust changed" --on 2026-11-28',
        'care cabinet.yaml --ran bracket --on 2026-11-28 --start 9:00',
      ),
    )
    .action((file: string, options: CareOptions) =>
      act(import('./commands/care.ts').then(({ care }) => care(file, options, io))),
    );
  program
    .command('cost')
    .description(
      'says what parts really cost: a job file, the jobs of the days, a planned week, or a month of the diary',
    )
    .argument('<file>', 'cabinet file')
    .argument('[jobfile]', 'job file of RS-274 words, put in place of what its machine prints on that day')
    .option('--machine <name>', 'which machine prints it; the only one unless given')
    .option('--material <name>', 'of what; the one with the nearest set-points unless given')
    .option('--start <time>', 'when its heating begins; 9:00 unless given')
    .option('--parts <count>', 'how many parts one job makes; 1 unless given')
    .option('--job <name>', 'only this job of the file')
    .option('--day <day>', 'only this day of the file; for a job file its first unless given')
    .option('--queue', 'the jobs of the queue: planned first, then each of them and the week')
    .option('--plan <plan>', 'the same by an earlier plan, as plan --json printed it')
    .option('--month <month>', 'what the diary says of a month, such as 2026-11')
    .option('--diary <file>', 'its diary; beside the file, with .diary.yaml in place of .yaml, unless given')
    .option('--today <date>', 'the day that it is; the clock says unless given')
    .option('--csv <out>', 'write the rows as CSV into this file; - prints them')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help(
        'cost cabinet.yaml',
        'cost cabinet.yaml bracket.gcode --machine left --parts 4',
        'cost cabinet.yaml --queue --csv week.csv',
        'cost cabinet.yaml --month 2026-11',
      ),
    )
    .action((file: string, jobFile: string | undefined, options: CostOptions) =>
      act(import('./commands/cost.ts').then(({ cost }) => cost(file, jobFile, options, io))),
    );
}

/** How sure everything is. */
function addSpread(program: Command, io: Io, act: Act): void {
  program
    .command('spread')
    .description('says how sure everything is: what the options change, which verdicts are open, what to measure')
    .argument('<file>', 'cabinet file')
    .option('--day <day>', 'only this day of the file')
    .option('--option <option>', 'only this option of the file beside the cabinet as it stands')
    .addOption(
      new Option('--seed <number>', 'another number draws other samples')
        .argParser((text) => wholeNumber(text, 0, 4_294_967_295))
        .default(1),
    )
    .addOption(
      new Option('--shares <sets>', 'also what inputs do together, from so many more sets of runs')
        .argParser((text) => wholeNumber(text, 0, 64))
        .default(0),
    )
    .option('--svg <out>', 'draw it as an SVG picture into this file; - prints it')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption(128))
    .addOption(workersOption())
    .addHelpText(
      'after',
      help('spread cabinet.yaml', 'spread cabinet.yaml --samples 512 --option quiet', 'spread cabinet.yaml --shares 6'),
    )
    .action((file: string, options: SpreadOptions) =>
      act(import('./commands/spread.ts').then(({ spread }) => spread(file, options, io))),
    );
}

/** Commands that look for something better than what was thought of. */
function addSearch(program: Command, io: Io, act: Act): void {
  program
    .command('search')
    .description('finds the variant that keeps every limit and is best by what you want, or the front of the best')
    .argument('<file>', 'cabinet file; its search: says what may change')
    .addOption(
      new Option('--want <wants...>', 'what to look for; several give a front')
        .choices(['quiet', 'cheap', 'cool', 'clean', 'still'])
        .makeOptionMandatory(),
    )
    .option('--free <path=values...>', 'what else may change, such as "air.exhaust.parts.0.speed=[60 %, 80 %]"')
    .addOption(
      new Option('--most <count>', 'variants to run at most')
        .argParser((text) => wholeNumber(text, 1, 100_000))
        .default(400),
    )
    .addOption(
      new Option('--seed <number>', 'another seed searches another way')
        .argParser((text) => wholeNumber(text, 0, 1e9))
        .default(1),
    )
    .option('--write [option]', 'add the winner to the file as an option of this name')
    .option('--svg <out>', 'draw what was run as an SVG picture into this file; - prints it')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help(
        'search cabinet.yaml --want quiet',
        'search cabinet.yaml --want quiet cheap --svg front.svg',
        'search cabinet.yaml --want cool --write',
      ),
    )
    .action((file: string, options: SearchOptions) =>
      act(import('./commands/search.ts').then(({ search }) => search(file, options, io))),
    );
}

/** What a job file comes to. */
function addJob(program: Command, io: Io, act: Act): void {
  program
    .command('job')
    .description('reads a job file of a machine: how long, how much, how hot, and whether it stays on the machine')
    .argument('<file>', 'job file of RS-274 words, such as G1 X12.5 E0.4')
    .option('--cabinet <file>', 'cabinet file in which the machine stands')
    .option('--machine <name>', 'which machine of it runs the job; its only one unless given')
    .option('--material <name>', 'what is printed; the one with the nearest set-points unless given')
    .option('--diameter <length>', 'of the filament; that of the machine, or 1.75 mm, unless given')
    .option('--acceleration <value>', 'such as "1500 mm/s2"; that of the machine, or 1.5 m/s², unless given')
    .addOption(
      new Option('--dwell <unit>', 'what P of a dwell (G4) counts')
        .choices(['milliseconds', 'seconds'])
        .default('milliseconds'),
    )
    .option('--diary <file>', 'enter it into this diary as a job that ran, instead of printing it')
    .option('--on <date>', 'when it ran; today unless given')
    .option('--start <time>', 'when its heating began, such as 9:00')
    .option('--json', 'print all of it as JSON for other programs')
    .addOption(unitsOption())
    .addHelpText('after', help('job bracket.gcode', 'job bracket.gcode --cabinet cabinet.yaml --machine left'))
    .action((file: string, options: JobOptions) =>
      act(import('./commands/job.ts').then(({ job }) => job(file, options, io))),
    );
}

/** Commands for whoever runs the cabinet. */
function addRunning(program: Command, io: Io, act: Act): void {
  program
    .command('plan')
    .description(
      'says when to start each job of the queue: done in time, quiet, below the circuit’s and the bays’ limits',
    )
    .argument('<file>', 'cabinet file with a queue')
    .option('--now <moment>', 'plan from then on, such as "Tue 14:00"; what has started stays')
    .option('--keep <plan>', 'an earlier plan, as --json printed it: what has started by now is kept as it says')
    .option('--svg <out>', 'draw the plan as an SVG picture into this file; - prints it')
    .option('--ics <out>', 'write the plan as a calendar (RFC 5545) into this file; - prints it')
    .option('--json', 'print the plan as JSON for other programs')
    .addOption(
      new Option('--nodes <count>', 'how far to search for each aim; 4000 unless given').argParser((text) =>
        wholeNumber(text, 1, 10_000_000),
      ),
    )
    .addOption(unitsOption())
    .addOption(samplesOption())
    .addOption(workersOption())
    .addHelpText(
      'after',
      help(
        'plan cabinet.yaml',
        'plan cabinet.yaml --ics week.ics',
        'plan cabinet.yaml --now "Tue 14:00" --keep plan.json',
      ),
    )
    .action((file: string, options: PlanCommandOptions) =>
      act(import('./commands/plan.ts').then(({ planCommand }) => planCommand(file, options, io))),
    );
  program
    .command('shut-off')
    .description('says when the socket of each machine may go off after a job: as a time, and as a rule for a switch')
    .argument('<file>', 'cabinet file')
    .option('--day <day>', 'only this day of the file')
    .option('--queue', 'each job that waits in the queue, alone, in place of the days')
    .option('--json', 'print the times and rules as JSON for other programs')
    .addOption(unitsOption())
    .addHelpText(
      'after',
      help('shut-off cabinet.yaml', 'shut-off cabinet.yaml --day usual --json', 'shut-off cabinet.yaml --queue'),
    )
    .action((file: string, options: ShutOffCommandOptions) =>
      act(import('./commands/shut-off.ts').then(({ shutOff }) => shutOff(file, options, io))),
    );
}

/** Commands that write files or look something up. */
function addFiles(program: Command, io: Io, act: Act): void {
  program
    .command('new')
    .description('writes a commented first cabinet file, from answers on the terminal or from these options')
    .option('--title <title>', 'what to call the cabinet')
    .option('--inside <size>', 'its inside, such as "800 mm x 600 mm x 1750 mm"')
    .option('--outside <size>', 'its outside instead, from which the inside follows')
    .option('--made-of <board>', 'board and thickness, such as "plywood 18 mm"')
    .option('--door <leaf>', 'such as "glass 4 mm", or none')
    .option('--room <size>', 'size of the room, such as "4 m x 3.5 m x 2.5 m"')
    .option('--temperature <temperature>', 'of the room, such as "21 °C"')
    .option('--machines <kinds...>', 'kinds of the machines, from the lowest up; "stillair parts machines" lists them')
    .option('--material <material>', 'what is printed most')
    .addOption(new Option('--air <air>', 'how the air goes').choices(['closed', 'holes', 'fan', 'fan and filter']))
    .addOption(new Option('--vents <where>', 'where that air goes').choices(['room', 'outdoors']))
    .option('--desk <place>', 'where somebody sits: right, back, up, such as "0.5 m, -1.5 m, 1.2 m"')
    .option('--start <time>', 'when a usual job starts, such as 9:00')
    .option('--lasts <duration>', 'how long a usual job takes, such as "6 h"')
    .option('--out <file>', 'write into this file instead of printing; one that is there already is left alone')
    .addHelpText('after', help('new > cabinet.yaml', 'new --inside "800 mm x 600 mm x 900 mm" --out cabinet.yaml'))
    .action((options: NewOptions) => act(import('./commands/new.ts').then(({ newFile }) => newFile(options, io))));
  program
    .command('parts')
    .description('lists the catalogue: boards, fans, filters, machines, materials ... by name or by a word of it')
    .argument('[words...]', 'only parts whose kind or name has all these words')
    .option('--json', 'print the parts as JSON for other programs')
    .addHelpText('after', help('parts', 'parts fan 92', 'parts ABS'))
    .action((words: string[], options: PartsOptions) =>
      act(import('./commands/parts.ts').then(({ parts }) => parts(words, options, io))),
    );
  program
    .command('schema')
    .description('prints the JSON Schema of cabinet files, for editors')
    .addHelpText('after', help('schema > cabinet.schema.json'))
    .action(() => act(import('./commands/schema.ts').then(({ schema }) => schema(io))));
  program
    .command('network')
    .description('solves a bare network file: temperatures, pressures, flows')
    .argument('<file>', 'network file')
    .option('--at <times>', 'report at these times only, s, such as 0,3600,7200', numberList)
    .option('--json', 'print the answer as JSON for other programs')
    .addHelpText('after', help('network rooms.yaml', 'network rooms.yaml --at 3600 --json'))
    .action((file: string, options: NetworkOptions) =>
      act(import('./commands/network.ts').then(({ network }) => network(file, options, io))),
    );
}

/** What a person works at in a browser. */
function addWorkbench(program: Command, io: Io, act: Act): void {
  program
    .command('workbench')
    .description('opens the workbench on a cabinet file, or on those of a folder, for a browser on this machine')
    .argument('[path]', 'cabinet file, or a folder with some; without it the examples, read-only')
    .addOption(
      new Option('--port <number>', 'port to open it at; 4180, or the next that is free, unless given').argParser(
        (text) => wholeNumber(text, 0, 65_535),
      ),
    )
    .addHelpText('after', help('workbench cabinet.yaml', 'workbench .', 'workbench'))
    .action((path: string | undefined, options: WorkbenchOptions) =>
      act(import('./commands/workbench.ts').then(({ workbench }) => workbench(path, options, io))),
    );
}

/** Sends what the parser says through `io`, in the words of this house, and stops it from leaving the process. */
function speakPlainly(command: Command, io: Io): void {
  command
    .exitOverride()
    .helpOption('-h, --help', 'print this')
    .configureHelp({ helpWidth: io.columns, sortOptions: false })
    .configureOutput({
      writeOut: (text) => io.out(text.trimEnd()),
      writeErr: (text) => io.err(text.trimEnd()),
      outputError: (text) => io.err(complaint(text, command)),
    });
}

function complaint(text: string, command: Command): string {
  const name = command.parent === null ? 'stillair' : `stillair ${command.name()}`;
  const said = text
    .trim()
    .replace(/^error: /, '')
    .replace(' is invalid.', ' is not right.')
    .replace("missing required argument 'file'", 'no file was named');
  const file = /^unknown command '(.+\.ya?ml)'/.exec(said)?.[1];
  const advice = file === undefined ? `see: ${name} --help` : `to check a cabinet file: stillair check ${file}`;
  return `${name}: ${said}\n${advice}`;
}
