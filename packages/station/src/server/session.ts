// What a person has opened: one file, or the cabinet files of a folder. No name reaches outside that folder.

import { access, constants, readdir, realpath, stat } from 'node:fs/promises';
import { basename, dirname, isAbsolute, join, relative, sep } from 'node:path';
import { pathProblem, readTextFile } from '../read-file.ts';

export interface Session {
  /** The folder's real path, without links in it. */
  readonly folder: string;
  /** The one file that was opened; undefined when the whole folder was. */
  readonly only: string | undefined;
}

export interface ListedFile {
  readonly name: string;
  /** When it was last changed, ms since 1970. */
  readonly changed: number;
  readonly bytes: number;
}

export type Opening =
  | { readonly ok: true; readonly session: Session }
  | { readonly ok: false; readonly problem: string };

/** Opens the file or folder that a person named. A link that they named stands for what it leads to. */
export async function openSession(path: string): Promise<Opening> {
  try {
    const real = await realpath(path);
    if ((await stat(real)).isDirectory()) {
      await access(real, constants.R_OK | constants.X_OK);
      return { ok: true, session: { folder: real, only: undefined } };
    }
    const reading = await readTextFile(real);
    if (!reading.ok) return { ok: false, problem: `cannot read ${path}: ${reading.problem}` };
    return { ok: true, session: { folder: dirname(real), only: basename(real) } };
  } catch (error) {
    return { ok: false, problem: `cannot open ${path}: ${await pathProblem(error, path)}` };
  }
}

/** Whether a file of this name may belong to the session, be it there or not. */
export function belongs({ only }: Session, name: string): boolean {
  return only === undefined ? isCabinetFileName(name) : name === only;
}

/** Names of visible YAML files that are no diaries; none that could lead elsewhere or that a file system reads as another. */
function isCabinetFileName(name: string): boolean {
  if (/\.diary\.ya?ml$/u.test(name)) return false;
  return /^[^./\\:*?"<>|\p{Cc}][^/\\:*?"<>|\p{Cc}]*\.ya?ml$/u.test(name) && Buffer.byteLength(name) <= 255;
}

/** The session's files that are there now, by name. */
export async function listFiles(session: Session): Promise<ListedFile[]> {
  const names = session.only === undefined ? await readdir(session.folder).catch(() => []) : [session.only];
  const listed = await Promise.all(
    names.filter((name) => belongs(session, name)).map((name) => describe(session, name)),
  );
  return listed
    .filter((file) => file !== undefined)
    .sort((one, other) => (one.name < other.name ? -1 : Number(one.name > other.name)));
}

async function describe(session: Session, name: string): Promise<ListedFile | undefined> {
  try {
    const path = await placeOf(session, name);
    if (path === undefined) return undefined;
    const facts = await stat(path);
    return facts.isFile() ? { name, changed: Math.round(facts.mtimeMs), bytes: facts.size } : undefined;
  } catch {
    return undefined; // gone meanwhile, or not for this person to see
  }
}

/** The real path of one of the session's files; undefined when there is none, or when it is a link that leads out. */
export async function placeOf(session: Session, name: string): Promise<string | undefined> {
  if (!belongs(session, name)) return undefined;
  const path = await realpath(join(session.folder, name)).catch(() => undefined);
  return path !== undefined && isInside(session.folder, path) ? path : undefined;
}

/** Whether a real path lies somewhere below a folder's real path. */
export function isInside(folder: string, path: string): boolean {
  const way = relative(folder, path);
  return way !== '' && way !== '..' && !way.startsWith(`..${sep}`) && !isAbsolute(way);
}

/** Whether new files may be put into the folder, which is what saving one does. */
export async function isWritable({ folder }: Session): Promise<boolean> {
  return access(folder, constants.W_OK).then(
    () => true,
    () => false,
  );
}
