// A printed part as binary STL: 80 bytes of heading, a count, and 50 bytes for each triangle, low byte first.

import { cornersOf, type Mesh, normalOf, triangleCount } from './mesh.ts';

const HEADING = 80;
const EACH = 50;

export function binaryStl(name: string, mesh: Mesh): Uint8Array {
  const count = triangleCount(mesh);
  const bytes = new Uint8Array(HEADING + 4 + EACH * count);
  const view = new DataView(bytes.buffer);
  // A heading that begins with "solid" would be taken for the written form.
  const heading = `stillair ${name}`.replaceAll(/[^ -~]/g, '?').slice(0, HEADING);
  for (let at = 0; at < heading.length; at += 1) bytes[at] = heading.charCodeAt(at);
  view.setUint32(HEADING, count, true);
  for (let at = 0; at < count; at += 1) {
    const corners = cornersOf(mesh, at);
    const normal = normalOf(corners);
    const size = Math.hypot(...normal) || 1;
    const values = [...normal.map((part) => part / size), ...corners.flat()];
    for (const [place, value] of values.entries()) view.setFloat32(HEADING + 4 + EACH * at + 4 * place, value, true);
  }
  return bytes;
}
