// Programs of others that tests of printed parts read with: the 3MF consortium's own library, a schema checker for XML, a mender of STL.

import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** A machine that builds must have each of them; elsewhere what needs one is left out. */
const builds = process.env['CI'] !== undefined;
const libraries = existsSync('/usr/lib')
  ? readdirSync('/usr/lib')
      .filter((name) => name.endsWith('-linux-gnu'))
      .map((name) => `/usr/lib/${name}/lib3MF.so.1`)
  : [];
const library = libraries.find((path) => existsSync(path));

export const reads3mf: boolean = library !== undefined || builds;
export const readsSchema: boolean = existsSync('/usr/bin/xmllint') || builds;
export const readsStl: boolean = existsSync('/usr/bin/admesh') || builds;

/** What the consortium's library says of one file, opened strictly. */
export interface ReadModel {
  /** Its number of a fault; 0 when it opened the file. */
  readonly fault: number;
  readonly warnings: readonly string[];
  /** 1 is the millimetre. */
  readonly unit: number;
  /** Objects that are built. */
  readonly items: number;
  readonly meshes: readonly ReadMesh[];
}

export interface ReadMesh {
  readonly name: string;
  /** Every edge is passed once each way, and the object may be built. */
  readonly closed: boolean;
  readonly volume: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
}

export function read3mf(paths: readonly string[]): readonly ReadModel[] {
  const { stdout, stderr, status } = spawnSync('/usr/bin/python3', ['-c', READER, library ?? '', ...paths], {
    encoding: 'utf8',
    maxBuffer: 1 << 26,
  });
  if (status !== 0) throw new Error(`the reader of 3MF stopped: ${stderr}`);
  return JSON.parse(stdout) as readonly ReadModel[];
}

/** What is wrong with model parts by the schema of the core specification; empty when nothing is. */
export function schemaFaults(paths: readonly string[]): string {
  const schema = join(import.meta.dirname, 'three-mf-core.xsd');
  const words = ['--noout', '--nonet', '--huge', '--schema', schema, ...paths];
  const { stderr, status, error } = spawnSync('/usr/bin/xmllint', words, { encoding: 'utf8', maxBuffer: 1 << 26 });
  if (error !== undefined) throw error;
  return status === 0 ? '' : stderr;
}

/** What a mender of STL measures before it mends, and how much it had to. */
export interface ReadStl {
  readonly volume: number;
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** Facets whose three edges do not meet those of others, and what was changed of the file. */
  readonly unconnected: number;
  readonly mended: number;
}

export function readStl(path: string): ReadStl {
  const { stdout, status, error } = spawnSync('/usr/bin/admesh', [path], { encoding: 'utf8' });
  if (error !== undefined) throw error;
  if (status !== 0) throw new Error(`the reader of STL stopped at ${path}`);
  const numbers = (pattern: RegExp): readonly number[] => [...(pattern.exec(stdout)?.slice(1) ?? [])].map(Number);
  const reach = (axis: string): readonly number[] =>
    numbers(new RegExp(`Min ${axis} =\\s*(\\S+), Max ${axis} =\\s*(\\S+)`));
  const reaches = ['X', 'Y', 'Z'].map(reach);
  // After "Total disconnected facets" come the counts at the beginning and after mending.
  const [unconnected] = numbers(/Total disconnected facets\s*:\s*(\d+)/);
  const changes = [
    'Edges fixed',
    'Facets removed',
    'Facets added',
    'Facets reversed',
    'Backwards edges',
    'Normals fixed',
  ];
  return {
    volume: numbers(/Volume\s*:\s*(\S+)/)[0]!,
    low: reaches.map(([low]) => low!),
    high: reaches.map(([, high]) => high!),
    unconnected: unconnected!,
    mended: changes.reduce((sum, words) => sum + numbers(new RegExp(`${words}\\s*:\\s*(\\d+)`))[0]!, 0),
  };
}

/** Through the library's functions in C: all that a program which opens the file for printing would be told. */
const READER = `
import ctypes, json, sys
from ctypes import byref, c_void_p, c_uint32, c_int32, c_char_p, create_string_buffer
library = ctypes.CDLL(sys.argv[1])
class Vertex(ctypes.Structure):
    _fields_ = [('at', ctypes.c_float * 3)]
class Triangle(ctypes.Structure):
    _fields_ = [('corner', c_uint32 * 3)]
def ask(name, *words):
    fault = getattr(library, 'lib3mf_' + name)(*words)
    if fault != 0:
        raise OSError(fault & 0xffffffff, name)
def number(name, handle, kind=c_uint32):
    value = kind()
    ask(name, handle, byref(value))
    return value.value
def handle(name, *words):
    value = c_void_p()
    ask(name, *words, byref(value))
    return value
def each(iterator, kind):
    while number(kind + '_movenext', iterator, c_int32):
        yield handle(kind + '_getcurrent', iterator)
def text(name, *words):
    buffer, needed = create_string_buffer(1000), c_uint32()
    ask(name, *words, buffer, c_uint32(1000), byref(needed))
    return buffer.value.decode()
def mesh(thing):
    count, faces = number('meshobject_getvertexcount', thing), number('meshobject_gettrianglecount', thing)
    vertices, triangles = (Vertex * count)(), (Triangle * faces)()
    ask('meshobject_getvertices', thing, vertices, c_uint32(count), None)
    ask('meshobject_gettriangleindices', thing, triangles, c_uint32(faces), None)
    places = [list(vertex.at) for vertex in vertices]
    six = 0
    for triangle in triangles:
        a, b, c = (places[corner] for corner in triangle.corner)
        six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0])
    return dict(name=text('object_getnameutf8', thing), closed=bool(number('meshobject_ismanifoldandoriented', thing, c_int32) and number('object_isvalidobject', thing, c_int32)), volume=six / 6, low=[min(axis) for axis in zip(*places)], high=[max(axis) for axis in zip(*places)])
def look(path):
    model = handle('createmodel')
    reader = handle('model_queryreader', model, c_char_p(b'3mf'))
    ask('reader_setstrictmodeactive', reader, c_int32(1))
    try:
        ask('reader_readfromfileutf8', reader, c_char_p(path.encode()))
    except OSError as fault:
        return dict(fault=fault.errno, warnings=[], unit=0, items=0, meshes=[])
    warnings = []
    for at in range(number('reader_getwarningcount', reader)):
        code = c_uint32()
        warnings.append(text('reader_getwarningutf8', reader, c_uint32(at), byref(code)))
    items = list(each(handle('model_getbuilditems', model), 'builditemiterator'))
    meshes = [mesh(thing) for thing in each(handle('model_getmeshobjects', model), 'resourceiterator')]
    return dict(fault=0, warnings=warnings, unit=number('model_getunit', model), items=len(items), meshes=meshes)
print(json.dumps([look(path) for path in sys.argv[2:]]))
`;
