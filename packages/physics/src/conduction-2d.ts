// Steady conduction in a flat section cut through an edge, a frame or a bridge: finite volumes around the crossings of a
// rectangular grid, so that joints of materials and corners of the section are points of the grid themselves.

import { type BandedMatrix, solveBand } from './banded-equations.ts';

/** What lies behind a face of the section. */
export interface SectionSurface {
  /** W/(m²·K), above 0; Infinity holds the face at the temperature. */
  readonly film: number;
  /** Temperature of the air, or of the face; K, or °C throughout. */
  readonly temperature: number;
}

/** A section: a rectangular grid, some of whose cells are filled with materials. */
export interface Section {
  /** Positions of the grid lines across, m, rising. */
  readonly across: readonly number[];
  /** Positions of the grid lines downwards, m, rising. */
  readonly down: readonly number[];
  /** Conductivity of the cell around a point, W/(m·K); 0 where there is no material. */
  readonly conductivity: (x: number, y: number) => number;
  /** Behind the face of a filled cell at the middle of its edge; nothing means no heat passes. */
  readonly surface: (x: number, y: number) => SectionSurface | undefined;
}

/** Temperatures and heat of a section. */
export interface SectionResult {
  /** By row, then column of the grid's crossings; NaN where no material touches. */
  readonly temperatures: readonly (readonly number[])[];
  /** Heat that goes through, from all warmer surfaces to all colder ones, W for each metre of length. */
  readonly heat: number;
}

/** Conductances between neighbours and to the surfaces, W/(m·K), by crossing. Crossings are counted down each column. */
interface Assembly {
  readonly rows: number;
  readonly columns: number;
  readonly right: Float64Array;
  readonly below: Float64Array;
  readonly film: Float64Array;
  /** Film times temperature. */
  readonly inflow: Float64Array;
  readonly fixedSum: Float64Array;
  readonly fixedCount: Uint8Array;
  readonly touched: Uint8Array;
}

/**
 * Solves the steady temperatures of a section.
 *
 * A crossing takes a quarter of each filled cell around it; a crossing between two held faces takes their mean.
 *
 * @param section - Grid, materials and surfaces; at least one surface.
 * @returns Temperatures at the crossings and the heat through the section.
 * @throws RangeError when a grid has fewer than two lines or they do not rise, or when some material touches no surface.
 *
 * @remarks
 * Valid: properties that do not change with temperature. Errors fall with the square of the cells, near re-entrant corners
 *   more slowly: grade the grid there. Put the fewer lines downwards; the work grows with columns · rows³.
 * Source: finite volumes; ISO 10211:2017 annex C is what it is checked against.
 * Checked: cases 1 and 2 of ISO 10211 read as a table image.
 *
 * @example A board of 0.1 m and 0.2 W/(m·K) held at 20 and 0: 40 W through two metres
 * ```ts
 * const surface = (x) => ({ film: Infinity, temperature: x === 0 ? 20 : 0 });
 * solveSection({ across: [0, 0.05, 0.1], down: [0, 2], conductivity: () => 0.1, surface: (x, y) => (y > 0 && y < 2 ? surface(x) : undefined) }).heat; // => 40
 * ```
 */
export function solveSection(section: Section): SectionResult {
  mustRise('across', section.across);
  mustRise('down', section.down);
  const assembly = assemble(section);
  const temperatures = solve(assembly);
  const { rows, columns } = assembly;
  return {
    temperatures: Array.from({ length: rows }, (_, row) =>
      Array.from({ length: columns }, (_, column) => temperatures[column * rows + row]!),
    ),
    heat: heatThrough(assembly, temperatures),
  };
}

function assemble({ across, down, conductivity, surface }: Section): Assembly {
  const [columns, rows] = [across.length, down.length];
  const size = columns * rows;
  const real = () => new Float64Array(size);
  const assembly: Assembly = {
    rows,
    columns,
    right: real(),
    below: real(),
    film: real(),
    inflow: real(),
    fixedSum: real(),
    fixedCount: new Uint8Array(size),
    touched: new Uint8Array(size),
  };
  const filling = (column: number, row: number) => {
    if (column < 0 || row < 0 || column >= columns - 1 || row >= rows - 1) return 0;
    return conductivity(middle(across, column), middle(down, row));
  };
  for (let column = 0; column < columns - 1; column++) {
    for (let row = 0; row < rows - 1; row++) {
      const k = filling(column, row);
      if (!(k > 0)) continue;
      const [width, height] = [span(across, column), span(down, row)];
      const corner = column * rows + row;
      assembly.right[corner]! += (k * height) / width / 2;
      assembly.right[corner + 1]! += (k * height) / width / 2;
      assembly.below[corner]! += (k * width) / height / 2;
      assembly.below[corner + rows]! += (k * width) / height / 2;
      for (const at of [corner, corner + 1, corner + rows, corner + rows + 1]) assembly.touched[at] = 1;
      const [x, y] = [middle(across, column), middle(down, row)];
      if (filling(column - 1, row) === 0) expose(assembly, corner, corner + 1, height, surface(across[column]!, y));
      if (filling(column + 1, row) === 0)
        expose(assembly, corner + rows, corner + rows + 1, height, surface(across[column + 1]!, y));
      if (filling(column, row - 1) === 0) expose(assembly, corner, corner + rows, width, surface(x, down[row]!));
      if (filling(column, row + 1) === 0)
        expose(assembly, corner + 1, corner + rows + 1, width, surface(x, down[row + 1]!));
    }
  }
  return assembly;
}

/** Joins both ends of an edge to what lies behind it, each with half of its length. */
function expose(
  assembly: Assembly,
  first: number,
  second: number,
  length: number,
  behind: SectionSurface | undefined,
): void {
  if (behind === undefined) return;
  for (const at of [first, second]) {
    if (behind.film === Infinity) {
      assembly.fixedSum[at]! += behind.temperature;
      assembly.fixedCount[at]! += 1;
    } else {
      assembly.film[at]! += (behind.film * length) / 2;
      assembly.inflow[at]! += ((behind.film * length) / 2) * behind.temperature;
    }
  }
}

function solve(assembly: Assembly): Float64Array {
  const { rows, film, inflow, right, below, fixedCount, fixedSum, touched } = assembly;
  const size = film.length;
  const stride = rows + 1;
  const band: BandedMatrix = { size, width: rows, values: new Float64Array(size * stride) };
  const answer = new Float64Array(size);
  const free = (at: number) => touched[at] === 1 && fixedCount[at] === 0;
  for (let at = 0; at < size; at++) {
    if (free(at)) {
      band.values[at * stride]! += film[at]!;
      answer[at]! += inflow[at]!;
    } else {
      band.values[at * stride] = 1;
      if (fixedCount[at]! > 0) answer[at] = fixedSum[at]! / fixedCount[at]!;
    }
  }
  const join = (one: number, other: number, conductance: number) => {
    if (conductance === 0) return;
    if (free(one)) band.values[one * stride]! += conductance;
    if (free(other)) band.values[other * stride]! += conductance;
    if (free(one) && free(other)) band.values[other * stride + other - one] = -conductance;
    else if (free(one)) answer[one]! += conductance * answer[other]!;
    else if (free(other)) answer[other]! += conductance * answer[one]!;
  };
  for (let at = 0; at < size; at++) {
    if (right[at]! > 0) join(at, at + rows, right[at]!);
    if (below[at]! > 0) join(at, at + 1, below[at]!);
  }
  solveBand(band, answer);
  return answer.map((temperature, at) => (touched[at] === 1 ? temperature : Number.NaN));
}

/** Half of all that crossings take from their neighbours and give to them by way of a surface: in equals out. */
function heatThrough({ rows, right, below, touched }: Assembly, temperatures: Float64Array): number {
  const taken = new Float64Array(temperatures.length);
  const pass = (from: number, to: number, conductance: number) => {
    if (conductance === 0) return;
    const heat = conductance * (temperatures[from]! - temperatures[to]!);
    taken[from]! += heat;
    taken[to]! -= heat;
  };
  for (let at = 0; at < temperatures.length; at++) {
    if (right[at]! > 0) pass(at, at + rows, right[at]!);
    if (below[at]! > 0) pass(at, at + 1, below[at]!);
  }
  return taken.reduce((sum, heat, at) => (touched[at] === 1 ? sum + Math.abs(heat) : sum), 0) / 2;
}

/**
 * Grid lines that lie close at each break and wider in between.
 *
 * @param breaks - Positions that must be grid lines, m, rising; at least two.
 * @param finest - Cell beside a break, m, above 0.
 * @param growth - How many times wider each next cell is, 1 or more.
 * @returns Positions, rising, breaks included exactly.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: growth up to about 1.5 keeps the accuracy of an even grid.
 * Source: geometric series, scaled to fit.
 * Checked: exact.
 *
 * @example Three cells to each side of a metre
 * ```ts
 * gradedLines([0, 1], 0.1, 2).map((x) => x.toFixed(2)).join(' '); // => 0.00 0.07 0.21 0.50 0.79 0.93 1.00
 * ```
 */
export function gradedLines(breaks: readonly number[], finest: number, growth: number): number[] {
  mustRise('breaks', breaks);
  if (!(finest > 0)) throw new RangeError(`gradedLines: finest is ${finest}; it must be above 0`);
  if (!(growth >= 1)) throw new RangeError(`gradedLines: growth is ${growth}; it must be 1 or more`);
  const lines = [breaks[0]!];
  for (let at = 1; at < breaks.length; at++) {
    const [start, end] = [breaks[at - 1]!, breaks[at]!];
    const half: number[] = [0];
    for (let cell = finest; half.at(-1)! < (end - start) / 2; cell *= growth) half.push(half.at(-1)! + cell);
    const scale = (end - start) / 2 / half.at(-1)!;
    for (const reach of half.slice(1)) lines.push(start + reach * scale);
    for (const reach of half.slice(0, -1).reverse()) lines.push(end - reach * scale);
  }
  return lines;
}

function middle(lines: readonly number[], at: number): number {
  return (lines[at]! + lines[at + 1]!) / 2;
}

function span(lines: readonly number[], at: number): number {
  return lines[at + 1]! - lines[at]!;
}

function mustRise(name: string, lines: readonly number[]): void {
  const rises = lines.length >= 2 && lines.every((line, at) => at === 0 || line > lines[at - 1]!);
  if (!rises)
    throw new RangeError(`conduction-2d: ${name} is ${lines.join(', ')}; it must hold two or more rising positions`);
}
