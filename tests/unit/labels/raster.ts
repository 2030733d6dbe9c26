import type { DrawnPage, Operation } from '../../../shared-core/drawing/page.ts';

export interface Raster {
  width: number;
  height: number;
  rgba: Uint8ClampedArray;
}

type Point = [xMm: number, yMm: number];

/** A page of straight outlines as pixels, black on white. Text becomes the black box that its letters lie in. */
export function rasterise(page: DrawnPage, pixelsPerMm: number): Raster {
  const width = Math.ceil(page.widthMm * pixelsPerMm);
  const height = Math.ceil(page.heightMm * pixelsPerMm);
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255);
  for (const operation of page.operations) {
    for (const polygon of polygons(operation)) fill({ width, height, rgba }, polygon, pixelsPerMm);
  }
  return { width, height, rgba };
}

/** The corners of what an operation inks; a curve counts as its ends. */
export function polygons(operation: Operation): Point[][] {
  if (operation.kind === 'modules') {
    const { xMm, yMm, moduleMm } = operation;
    const at = (x: number, y: number): Point => [xMm + x * moduleMm, yMm + y * moduleMm];
    return operation.rectangles.map(([x, y, width, height]) => [
      at(x, y),
      at(x + width, y),
      at(x + width, y + height),
      at(x, y + height),
    ]);
  }
  if (operation.kind !== 'path') {
    const emMm = (operation.sizePt * 25.4) / 72;
    const { xMm, widthMm, baselineMm } = operation;
    // Ascent and descent of DejaVu Sans Condensed, from its hhea table: 1901 and 483 of 2048.
    const top = baselineMm - (emMm * 1901) / 2048;
    const bottom = baselineMm + (emMm * 483) / 2048;
    return [
      [
        [xMm, top],
        [xMm + widthMm, top],
        [xMm + widthMm, bottom],
        [xMm, bottom],
      ],
    ];
  }
  return operation.d
    .split('Z')
    .filter((outline) => outline !== '')
    .map((outline) =>
      outline
        .split(/[MLA]/)
        .slice(1)
        .map((numbers) => numbers.trim().split(/\s+/).map(Number).slice(-2) as Point),
    );
}

function fill(raster: Raster, polygon: Point[], pixelsPerMm: number): void {
  const corners = polygon.map(([x, y]) => [x * pixelsPerMm, y * pixelsPerMm] as const);
  const top = Math.max(0, Math.floor(Math.min(...corners.map(([, y]) => y))));
  const bottom = Math.min(raster.height, Math.ceil(Math.max(...corners.map(([, y]) => y))));
  for (let row = top; row < bottom; row++) {
    const middle = row + 0.5;
    const crossings: number[] = [];
    for (const [index, [x1, y1]] of corners.entries()) {
      const [x2, y2] = corners[(index + 1) % corners.length] ?? [x1, y1];
      if (y1 > middle !== y2 > middle) crossings.push(x1 + ((middle - y1) / (y2 - y1)) * (x2 - x1));
    }
    crossings.sort((a, b) => a - b);
    for (let pair = 0; pair + 1 < crossings.length; pair += 2) {
      const from = Math.max(0, Math.ceil((crossings[pair] ?? 0) - 0.5));
      const to = Math.min(raster.width, Math.ceil((crossings[pair + 1] ?? 0) - 0.5));
      for (let column = from; column < to; column++) {
        raster.rgba.set([0, 0, 0], (row * raster.width + column) * 4);
      }
    }
  }
}
