// Job files as fast as they can be read on one core: every word, every move timed. The file is made here, of short moves with filament
// as printers get them, and handed over from memory, so that no disk is measured.

import { endJob, openJob, takeBytes, usualRules } from '../packages/engine/dist/index.js';
import { calibrate } from './calibration.mjs';
import { cpuMilliseconds } from './clock.mjs';
import { line } from './measure.mjs';

const MEGABYTE = 1e6;
const BYTES = 50 * MEGABYTE;
const PIECE = 256 * 1024;
const SAMPLES = 5;
/** MB/s that a core must read. */
const LEAST = 40;

export function run() {
  const lines = straight();
  const arcs = turning();
  return [rowOf('straight moves of 2 mm', lines), rowOf('arcs, three quarters of all moves', arcs)];
}

function rowOf(what, bytes) {
  read(bytes);
  const before = calibrate();
  const spans = Array.from({ length: SAMPLES }, () => {
    const start = cpuMilliseconds();
    read(bytes);
    return cpuMilliseconds() - start;
  }).sort((a, b) => a - b);
  const reference = 0.5 * (before + calibrate());
  const each = spans[Math.floor(SAMPLES / 2)];
  const rate = (time) => (bytes.length / MEGABYTE / (time / 1e3)).toFixed(0);
  const { moves } = read(bytes).job;
  const note = `${rate(each)} MB/s, at best ${rate(spans[0])}; at least ${LEAST} wanted; ${moves} moves in ${bytes.length / MEGABYTE} MB`;
  return line(`a megabyte of a job file: ${what}`, each / (bytes.length / MEGABYTE), 'ms', {
    ratio: each / (bytes.length / MEGABYTE) / reference,
    limit: 1000 / LEAST,
    note,
  });
}

function read(bytes) {
  const job = openJob('bench.gcode', usualRules);
  for (let at = 0; at < bytes.length; at += PIECE) takeBytes(job, bytes.subarray(at, at + PIECE));
  const answer = endJob(job);
  if (!answer.ok) throw new Error(answer.complaints[0].what);
  return answer;
}

/** The same file every time: a wave round a circle, layer on layer. */
function straight() {
  return written((at) => {
    const angle = 0.05 * at;
    const radius = 30 + 5 * Math.sin(7 * angle);
    const [x, y] = [110 + radius * Math.cos(angle), 110 + radius * Math.sin(angle)];
    return `G1 X${x.toFixed(3)} Y${y.toFixed(3)} E${(0.05 + 0.01 * Math.sin(at)).toFixed(5)}\n`;
  });
}

/** Rounded corners round a square: an arc by its middle after every straight move but each fourth, as programs that fit arcs write them. */
function turning() {
  const corners = [
    [110, 100],
    [120, 100],
    [120, 110],
    [110, 110],
  ];
  const aside = 5.59; // from the middle of a chord of 10 mm to that of an arc of 7.5 mm
  return written((at) => {
    const [x, y] = corners[at % 4];
    if (at % 4 === 0) return `G1 X${x}.000 Y${y}.000 F3000\n`;
    const [fromX, fromY] = corners[(at + 3) % 4];
    const [across, up] = [(x - fromX) / 10, (y - fromY) / 10];
    const [i, j] = [5 * across - aside * up, 5 * up + aside * across];
    return `G3 X${x}.000 Y${y}.000 I${i.toFixed(3)} J${j.toFixed(3)} E${(0.4 + 0.01 * Math.sin(at)).toFixed(5)}\n`;
  });
}

function written(move) {
  const encoder = new TextEncoder();
  const bytes = new Uint8Array(BYTES);
  let [length, at, layer] = [0, 0, 0];
  let text = 'M140 S60\nM109 S210\nG28\nM83\nG1 F2400\n';
  for (;;) {
    text += `;layer ${layer}\nM106 S${layer % 256}\nG1 Z${(0.2 + 0.01 * layer).toFixed(2)} F600\n`;
    for (let count = 0; count < 1000; count += 1, at += 1) text += move(at);
    text += 'G1 E-0.8 F2100\nG1 E0.8 F2100\nG1 F2400\n';
    const piece = encoder.encode(text);
    if (length + piece.length > BYTES) return bytes.subarray(0, length);
    bytes.set(piece, length);
    length += piece.length;
    layer += 1;
    text = '';
  }
}
