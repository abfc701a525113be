// The drawing as a picture of its own: SVG with its looks written in, PNG, or shared as a file.

import { download } from '../files/browser-store.ts';

/** What the style sheet gives and a picture on its own must carry. */
const LOOKS = [
  'fill',
  'stroke',
  'stroke-width',
  'stroke-opacity',
  'paint-order',
  'stroke-dasharray',
  'stroke-linejoin',
  'font-size',
  'font-family',
  'font-weight',
  'font-style',
  'letter-spacing',
  'text-anchor',
  'visibility',
] as const;

export function drawingAsSvg(): string | undefined {
  const drawn = document.querySelector<SVGSVGElement>('.sheet svg');
  if (drawn === null) return undefined;
  const copy = drawn.cloneNode(true) as SVGSVGElement;
  const [from, to] = [drawn.querySelectorAll('*'), copy.querySelectorAll<SVGElement>('*')];
  for (const [at, element] of [...to].entries()) {
    const look = getComputedStyle(from[at]!);
    for (const name of LOOKS) element.style.setProperty(name, look.getPropertyValue(name));
    for (const name of ['tabindex', 'role', 'aria-pressed', 'class']) element.removeAttribute(name);
  }
  const paper = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  paper.setAttribute('width', '100%');
  paper.setAttribute('height', '100%');
  paper.setAttribute('fill', getComputedStyle(document.body).backgroundColor);
  copy.prepend(paper);
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  return new XMLSerializer().serializeToString(copy);
}

export function takeSvg(name: string): void {
  const text = drawingAsSvg();
  if (text !== undefined) download(`${stemOf(name)}.svg`, new Blob([text], { type: 'image/svg+xml' }));
}

/** Twice as fine as the screen. */
const FINENESS = 2;

export async function takePng(name: string): Promise<void> {
  const space = document.querySelector<HTMLCanvasElement>('.space canvas');
  const canvas = space ?? (await painted());
  canvas?.toBlob((blob) => {
    if (blob !== null) download(`${stemOf(name)}.png`, blob);
  });
}

async function painted(): Promise<HTMLCanvasElement | undefined> {
  const text = drawingAsSvg();
  const drawn = document.querySelector<SVGSVGElement>('.sheet svg');
  if (text === undefined || drawn === null) return undefined;
  const { width, height } = drawn.getBoundingClientRect();
  const picture = new Image();
  picture.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(text)}`;
  await picture.decode();
  const canvas = document.createElement('canvas');
  canvas.width = Math.round(width * FINENESS);
  canvas.height = Math.round(height * FINENESS);
  canvas.getContext('2d')!.drawImage(picture, 0, 0, canvas.width, canvas.height);
  return canvas;
}

/** Hands the cabinet file to whatever the system shares with, or saves it where there is nothing of the kind. */
export async function share(name: string, text: string): Promise<void> {
  const file = new File([text], name, { type: 'text/plain' });
  if (navigator.canShare?.({ files: [file] }) === true) await navigator.share({ files: [file], title: name });
  else download(name, file);
}

function stemOf(name: string): string {
  return name.replace(/\.ya?ml$/i, '') || 'cabinet';
}
