// Printed parts as 3MF: an OPC package (ISO/IEC 29500-2) with one model part, after the published 3MF core specification.
// Namespace, content types and relationship of the model part are those of the specification, from memory.

import { strToU8, zipSync } from 'fflate';
import { type Mesh, triangleCount } from './mesh.ts';

export interface NamedMesh {
  readonly name: string;
  readonly mesh: Mesh;
  /** How often it is printed. */
  readonly count: number;
}

const CORE = 'http://schemas.microsoft.com/3dmanufacturing/core/2015/02';
const MODEL = 'http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel';
const DECLARED = '<?xml version="1.0" encoding="UTF-8"?>\n';

const contentTypes = `${DECLARED}<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>\n`;

const relationships = `${DECLARED}<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/3D/3dmodel.model" Id="rel0" Type="${MODEL}"/></Relationships>\n`;

/** All parts of one file; those printed more than once stand in it once, with their number in the name. */
export function threeMf(title: string, parts: readonly NamedMesh[]): Uint8Array {
  const entries = {
    '[Content_Types].xml': strToU8(contentTypes),
    '_rels/.rels': strToU8(relationships),
    '3D/3dmodel.model': strToU8(modelXml(title, parts)),
  };
  // A zip holds a time without a zone; the earliest it can hold makes the same bytes everywhere.
  return zipSync(entries, { level: 6, mtime: new Date(1980, 0, 1) });
}

function modelXml(title: string, parts: readonly NamedMesh[]): string {
  const objects = parts.map(({ name, mesh, count }, at) =>
    objectXml(at + 1, count > 1 ? `${name}, ${count} times` : name, mesh),
  );
  const items = parts.map((_, at) => `<item objectid="${at + 1}"/>`);
  return `${DECLARED}<model unit="millimeter" xml:lang="en" xmlns="${CORE}"><metadata name="Title">${escaped(title)}</metadata><resources>\n${objects.join('\n')}\n</resources><build>${items.join('')}</build></model>\n`;
}

function objectXml(id: number, name: string, mesh: Mesh): string {
  const { vertices, triangles } = mesh;
  const points: string[] = [];
  for (let at = 0; at < vertices.length; at += 3)
    points.push(
      `<vertex x="${number(vertices[at]!)}" y="${number(vertices[at + 1]!)}" z="${number(vertices[at + 2]!)}"/>`,
    );
  const faces: string[] = [];
  for (let at = 0; at < triangleCount(mesh); at += 1)
    faces.push(`<triangle v1="${triangles[3 * at]!}" v2="${triangles[3 * at + 1]!}" v3="${triangles[3 * at + 2]!}"/>`);
  return `<object id="${id}" type="model" name="${escaped(name)}"><mesh><vertices>${points.join('')}</vertices><triangles>${faces.join('')}</triangles></mesh></object>`;
}

const number = (value: number): string => String(Math.round(value * 1e4) / 1e4);

/** Text of a file as an XML attribute or element; signs that XML forbids are left out. */
function escaped(text: string): string {
  return Array.from(text)
    .filter((sign) => sign >= ' ' && sign !== '\uFFFE' && sign !== '\uFFFF' && !/^[\uD800-\uDFFF]$/.test(sign))
    .join('')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
