// What a job file comes to, as the queue takes it. It is read elsewhere and handed in: nothing here knows a disk.

/** On one of the machines on which it may run. */
export interface JobFileOn {
  /** From the start of its heating to its end, s. */
  readonly duration: number;
  /** kg; absent when nothing is fed. */
  readonly mass?: number;
  /** Why it does not go there, in words; empty when it does. */
  readonly outside: readonly string[];
}

export interface JobFileFacts {
  /** As the entry names it. */
  readonly path: string;
  /** It cannot take less: every move at full speed from end to end, s. */
  readonly least: number;
  /** K */
  readonly nozzle?: number;
  readonly bed?: number;
  /** Width and depth of all that is printed, and its largest side, m. */
  readonly base?: readonly [number, number];
  readonly partSize?: number;
  /** By machine. */
  readonly on: Readonly<Record<string, JobFileOn>>;
}

/** A file that is not there, or that nobody can read. */
export interface JobFileRefused {
  readonly path: string;
  readonly refused: { readonly code: string; readonly what: string; readonly allowed: string; readonly mend: string };
}

/** By id of the job. */
export type JobFiles = Readonly<Record<string, JobFileFacts | JobFileRefused>>;

/** What was read for an entry; undefined when nothing was, or of a file that it no longer names. */
export function readFor(
  files: JobFiles,
  id: string,
  path: string | undefined,
): JobFileFacts | JobFileRefused | undefined {
  const found = path !== undefined && Object.hasOwn(files, id) ? files[id] : undefined;
  return found?.path === path ? found : undefined;
}

export function factsFor(files: JobFiles, id: string, path: string | undefined): JobFileFacts | undefined {
  const found = readFor(files, id, path);
  return found === undefined || 'refused' in found ? undefined : found;
}

/** Of some machines those on which it stays within what they can reach. */
export function machinesFor({ on }: JobFileFacts, machines: readonly string[]): readonly string[] {
  return machines.filter((machine) => on[machine]?.outside.length === 0);
}

/** The longest that it takes on any of them, s: a plan is then never tighter than it says. */
export function longestOn({ on }: JobFileFacts, machines: readonly string[]): number {
  return Math.max(...machines.map((machine) => on[machine]!.duration));
}

/** The same for everybody who has the folder, on any disk: below it, with / between folders, nothing hidden. */
const PATH = /^(?:[^/\\.:\p{Cc}][^/\\:\p{Cc}]*\/)*[^/\\.:\p{Cc}][^/\\:\p{Cc}]*$/u;
const LONGEST_PATH = 400;

export function isJobPath(path: string): boolean {
  return path.length <= LONGEST_PATH && PATH.test(path);
}
