// A closed surface of triangles, and what can be measured of it without knowing how it was made. Millimetres.

export interface Mesh {
  /** x, y, z of each corner in turn. */
  readonly vertices: Float64Array;
  /** Three corners of each triangle, counter-clockwise seen from outside. */
  readonly triangles: Uint32Array;
}

export type Vector = readonly [number, number, number];

const vertexOf = ({ vertices }: Mesh, at: number): Vector => [
  vertices[3 * at]!,
  vertices[3 * at + 1]!,
  vertices[3 * at + 2]!,
];

export const triangleCount = ({ triangles }: Mesh): number => triangles.length / 3;

export function cornersOf(mesh: Mesh, triangle: number): readonly [Vector, Vector, Vector] {
  const corner = (at: number): Vector => vertexOf(mesh, mesh.triangles[3 * triangle + at]!);
  return [corner(0), corner(1), corner(2)];
}

/** Twice the area of a triangle, along its normal. */
export function normalOf([a, b, c]: readonly [Vector, Vector, Vector]): Vector {
  const [ux, uy, uz] = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
  const [vx, vy, vz] = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
  return [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
}

/** Enclosed volume, by the divergence theorem; below 0 when the surface is inside out. */
export function meshVolume(mesh: Mesh): number {
  let six = 0;
  for (let at = 0; at < triangleCount(mesh); at += 1) {
    const [a, b, c] = cornersOf(mesh, at);
    six += a[0] * (b[1] * c[2] - b[2] * c[1]) + a[1] * (b[2] * c[0] - b[0] * c[2]) + a[2] * (b[0] * c[1] - b[1] * c[0]);
  }
  return six / 6;
}

export function meshBox({ vertices }: Mesh): { readonly low: Vector; readonly high: Vector } {
  const low: [number, number, number] = [Infinity, Infinity, Infinity];
  const high: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let at = 0; at < vertices.length; at += 1) {
    const axis = (at % 3) as 0 | 1 | 2;
    low[axis] = Math.min(low[axis], vertices[at]!);
    high[axis] = Math.max(high[axis], vertices[at]!);
  }
  return { low, high };
}

/** Edges that are not passed exactly once each way: none, on a surface that is closed and has an inside. */
export function openEdges({ triangles }: Mesh): number {
  const passed = new Map<string, number>();
  for (let at = 0; at < triangles.length; at += 3) {
    for (const [from, to] of [
      [0, 1],
      [1, 2],
      [2, 0],
    ] as const) {
      const key = `${triangles[at + from]!} ${triangles[at + to]!}`;
      passed.set(key, (passed.get(key) ?? 0) + 1);
    }
  }
  let open = 0;
  for (const [key, times] of passed) {
    const back = passed.get(key.split(' ').reverse().join(' ')) ?? 0;
    if (times !== 1 || back !== 1) open += 1;
  }
  return open;
}

/** A face of exactly the limit counts as one that prints. */
const TOLERANCE = Math.PI / 180;

/** Area of faces that lean over air by more than an angle from upright and do not lie on the bed, mm². */
export function overhangArea(mesh: Mesh, degrees: number): number {
  const least = Math.sin((degrees * Math.PI) / 180 + TOLERANCE);
  let area = 0;
  for (let at = 0; at < triangleCount(mesh); at += 1) {
    const corners = cornersOf(mesh, at);
    const normal = normalOf(corners);
    const size = Math.hypot(...normal);
    const onBed = corners.every(([, , z]) => z < 0.01);
    if (size > 0 && -normal[2] / size > least && !onBed) area += size / 2;
  }
  return area;
}

/** So many rays at most tell how thin a part is. */
const RAYS = 300;

/**
 * Thinnest wall: from the middle of each triangle straight inwards to the surface behind it, mm. Grazing rays, which say nothing of
 * a wall, are left out: those that meet the other side at less than 30 degrees.
 */
export function thinnestWall(mesh: Mesh): number {
  const count = triangleCount(mesh);
  const faces = Array.from({ length: count }, (_, at) => {
    const corners = cornersOf(mesh, at);
    const normal = normalOf(corners);
    const size = Math.hypot(...normal);
    return { corners, size, unit: normal.map((part) => part / size) as unknown as Vector };
  });
  let thinnest = Infinity;
  const stride = Math.ceil(count / RAYS);
  for (let at = 0; at < count; at += stride) {
    const { corners, size, unit } = faces[at]!;
    if (size < 1e-3) continue;
    const [a, b, c] = corners;
    const middle = [0, 1, 2].map((axis) => (a[axis]! + b[axis]! + c[axis]!) / 3) as unknown as Vector;
    const inward = unit.map((part) => -part) as unknown as Vector;
    for (const other of faces) {
      const facing = inward[0] * other.unit[0] + inward[1] * other.unit[1] + inward[2] * other.unit[2];
      if (facing < 0.5 || other.size < 1e-6) continue;
      const distance = hitDistance(middle, inward, other.corners);
      if (distance !== undefined && distance > 1e-4 && distance < thinnest) thinnest = distance;
    }
  }
  return thinnest;
}

/** Where a ray meets a triangle (Möller and Trumbore 1997); undefined when it does not. */
function hitDistance(from: Vector, along: Vector, [a, b, c]: readonly [Vector, Vector, Vector]): number | undefined {
  const less = (p: Vector, q: Vector): Vector => [p[0] - q[0], p[1] - q[1], p[2] - q[2]];
  const cross = (p: Vector, q: Vector): Vector => [
    p[1] * q[2] - p[2] * q[1],
    p[2] * q[0] - p[0] * q[2],
    p[0] * q[1] - p[1] * q[0],
  ];
  const dot = (p: Vector, q: Vector): number => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
  const [one, two] = [less(b, a), less(c, a)];
  const p = cross(along, two);
  const determinant = dot(one, p);
  if (Math.abs(determinant) < 1e-12) return undefined;
  const s = less(from, a);
  const u = dot(s, p) / determinant;
  if (u < 0 || u > 1) return undefined;
  const q = cross(s, one);
  const v = dot(along, q) / determinant;
  if (v < 0 || u + v > 1) return undefined;
  return dot(two, q) / determinant;
}
