import { z } from 'zod';

/** A line of text as its letters stand beside each other, from the left. */
const shapeSchema = z.object({
  widthEm: z.number(),
  /** It is read from right to left, so it is cut at its left. */
  isRtl: z.boolean(),
  /** `outline`: which of the outlines. A mark over or under another letter has no width. */
  glyphs: z.array(
    z.object({ outline: z.number().int(), xEm: z.number(), yEm: z.number(), widthEm: z.number() }),
  ),
});
export type Shape = z.infer<typeof shapeSchema>;

/** Texts of scripts that the fonts do not have, shaped by a font engine, which only the machine has. */
export const shapesSchema = z.object({
  texts: z.record(z.string(), shapeSchema),
  /** SVG path data of letters, in 1/1000 em, y down from the baseline. */
  outlines: z.array(z.string()),
  /** Signs that no font has: a box is in the place of each. */
  missing: z.array(z.string()),
});
export type Shapes = z.infer<typeof shapesSchema>;

export const noShapes: Shapes = { texts: {}, outlines: [], missing: [] };

/** A shape that is no wider: letters are taken away at its end, each with its marks. */
export function cutShape(shape: Shape, maxEm: number): Shape {
  if (shape.widthEm <= maxEm) return shape;
  const { isRtl, glyphs, widthEm } = shape;
  const least = widthEm - maxEm;
  const stays = isRtl
    ? glyphs.filter(({ xEm }) => xEm >= least)
    : glyphs.filter(({ xEm, widthEm: own }) => xEm + own <= maxEm);
  if (stays.length === 0) return { isRtl, glyphs: [], widthEm: 0 };
  const fromEm = isRtl ? Math.min(...stays.map(({ xEm }) => xEm)) : 0;
  const toEm = Math.max(...stays.map(({ xEm, widthEm: own }) => xEm + own));
  return {
    isRtl,
    widthEm: toEm - fromEm,
    glyphs: stays.map((glyph) => ({ ...glyph, xEm: glyph.xEm - fromEm })),
  };
}
