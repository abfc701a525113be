// Free areas of what air passes through, m².

import type { PathPart, Section } from '../cabinet/cabinet.ts';

export function sectionArea(section: Section): number {
  return section.shape === 'round' ? (Math.PI / 4) * section.diameter ** 2 : section.width * section.height;
}

/** Section through which a part lets its air out; a flap says nothing of its own. */
export function outletArea(part: PathPart): number | undefined {
  switch (part.part) {
    case 'hole':
      return sectionArea(part.section) * part.count;
    case 'loss':
      return part.area;
    case 'duct':
    case 'fan':
      return (Math.PI / 4) * part.diameter ** 2;
    case 'filter':
    case 'carbon':
      return part.faceArea;
    case 'flap':
      return undefined;
  }
}
