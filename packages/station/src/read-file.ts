// Reading a text file that a person named: whatever is wrong with it is said in words, never thrown.

import { open, readdir, stat } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { nearest } from '@stillair/engine';
import type { Reading } from './io.ts';

/** Cabinet files are a few kilobytes, network files and logs a few hundred: more than this was not meant. */
export const LARGEST_FILE: number = 8 * 1024 * 1024;
export const TOO_LARGE: string = 'it is larger than 8 MB, which no text file here is';

export async function readTextFile(path: string): Promise<Reading> {
  let bytes: Uint8Array;
  try {
    bytes = await firstBytes(path, LARGEST_FILE + 1);
  } catch (error) {
    return { ok: false, problem: await pathProblem(error, path) };
  }
  if (bytes.length > LARGEST_FILE) return { ok: false, problem: TOO_LARGE };
  return textOf(bytes);
}

/** The text that the bytes of a file are, or why they are none. */
export function textOf(bytes: Uint8Array): Reading {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { ok: false, problem: 'it is UTF-16 text; save it again as UTF-8 in your editor' };
  if (bytes.includes(0)) return { ok: false, problem: 'it is not text: it holds zero bytes' };
  try {
    return { ok: true, text: new TextDecoder('utf-8', { fatal: true }).decode(bytes) };
  } catch {
    const line = lineOfFault(bytes);
    return { ok: false, problem: `it is not UTF-8 text (line ${line}); save it again as UTF-8 in your editor` };
  }
}

/** Never reads more than `most`, so that an endless device ends too. */
async function firstBytes(path: string, most: number): Promise<Uint8Array> {
  if ((await stat(path)).isDirectory()) throw Object.assign(new Error('folder'), { code: 'EISDIR' });
  const file = await open(path, 'r');
  try {
    const chunks: Uint8Array[] = [];
    let length = 0;
    while (length < most) {
      const { bytesRead, buffer } = await file.read(new Uint8Array(Math.min(65536, most - length)));
      if (bytesRead === 0) break;
      chunks.push(buffer.subarray(0, bytesRead));
      length += bytesRead;
    }
    return Buffer.concat(chunks);
  } finally {
    await file.close();
  }
}

/** What a refusal to open `path` means to the person who named it. */
export async function pathProblem(error: unknown, path: string, like: RegExp = /\.ya?ml$/): Promise<string> {
  const code = codeOf(error);
  if (code === 'ENOENT' || code === 'ENOTDIR') {
    const near = nearest(basename(path), await namesBeside(path, like));
    return near === undefined ? 'there is no such file' : `there is no such file (did you mean ${near}?)`;
  }
  return fileProblem(error);
}

/** What the operating system's refusal means to a person. */
export function fileProblem(error: unknown): string {
  const words: Readonly<Record<string, string>> = {
    EISDIR: 'it is a folder, not a file',
    EEXIST: 'it is there already',
    EACCES: 'you have no permission',
    EPERM: 'you have no permission',
    EROFS: 'the disk is read-only',
    ENOSPC: 'the disk is full',
    ENOENT: 'its folder does not exist',
    ENOTDIR: 'its folder does not exist',
    ENAMETOOLONG: 'the name is too long',
  };
  return words[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
}

export function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error ? String(error.code) : '';
}

async function namesBeside(path: string, like: RegExp): Promise<string[]> {
  try {
    return (await readdir(dirname(path))).filter((name) => like.test(name));
  } catch {
    return [];
  }
}

function lineOfFault(bytes: Uint8Array): number {
  const decoder = new TextDecoder('utf-8', { fatal: true });
  let line = 1;
  let start = 0;
  for (let at = 0; at < bytes.length; at++) {
    if (bytes[at] !== 10) continue;
    try {
      decoder.decode(bytes.subarray(start, at));
    } catch {
      return line;
    }
    line++;
    start = at + 1;
  }
  return line;
}
