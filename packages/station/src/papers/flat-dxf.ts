// Flat shapes as DXF, for a saw or cutter: millimetres, closed outlines, a layer for each purpose. The same shapes give the same bytes.

import type { FlatShape } from '@stillair/engine';
import { Colors, DxfWriter, LWPolylineFlags, point3d, Units } from '@tarikjabiri/dxf';

/** Colours by what a layer's name begins with, so that purposes are told apart on any screen. */
const colours: readonly (readonly [string, number])[] = [
  ['outline', Colors.White],
  ['hole', Colors.Red],
  ['cup', Colors.Magenta],
  ['housing', Colors.Green],
  ['rebate', Colors.Blue],
];
const OTHER = Colors.Cyan;

export function flatDxf(shapes: readonly FlatShape[]): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  for (const layer of new Set(shapes.map(({ layer: name }) => name)))
    dxf.addLayer(layer, colours.find(([purpose]) => layer.startsWith(purpose))?.[1] ?? OTHER, 'Continuous');
  for (const shape of shapes) {
    const on = { layerName: shape.layer };
    switch (shape.kind) {
      case 'outline':
        dxf.addLWPolyline(
          shape.points.map(([x, y]) => ({ point: { x, y } })),
          { ...on, flags: LWPolylineFlags.Closed },
        );
        break;
      case 'circle':
        dxf.addCircle(point3d(...shape.at, 0), shape.diameter / 2, on);
        break;
      case 'text':
        dxf.addText(point3d(...shape.at, 0), shape.height, shape.text, on);
    }
  }
  return dxf.stringify();
}
