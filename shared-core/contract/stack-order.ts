import { z } from 'zod';
import { type Message, message } from '../words/message.ts';

const MOST_LAYERS = 500;
/** Layers from the bottom, columns from the left, both counted from 1. */
export const layerSchema = z.number().int().min(1).max(MOST_LAYERS);
export const columnSchema = z.number().int().min(1).max(100);

/** How boards are laid one after the other: from a first place to the right, then on in the layer above. */
export const stackOrderSchema = z.object({
  perLayer: columnSchema,
  firstLayer: layerSchema,
  /** Not beyond `perLayer`. */
  firstColumn: columnSchema,
});
export type StackOrder = z.infer<typeof stackOrderSchema>;

/**
 * Where the nth board lies, counted from 0.
 *
 * @example positionInStack({ perLayer: 3, firstLayer: 1, firstColumn: 3 }, 1) // { layer: 2, column: 1 }
 */
export function positionInStack({ perLayer, firstLayer, firstColumn }: StackOrder, index: number) {
  const along = firstColumn - 1 + index;
  return { layer: firstLayer + Math.floor(along / perLayer), column: (along % perLayer) + 1 };
}

/** Why so many boards cannot be laid so; null where they can. */
export function whyNotLaid(order: StackOrder, boards: number): Message | null {
  const { firstColumn, perLayer } = order;
  if (firstColumn > perLayer) return message('validation.first-column-too-high', { firstColumn, perLayer });
  const layers = positionInStack(order, boards - 1).layer;
  return layers <= MOST_LAYERS
    ? null
    : message('validation.too-many-layers', { layers, mostLayers: MOST_LAYERS });
}

/**
 * How so many boards are laid, as a person answers it: what is left blank is the layer above what is there, and the
 * first column; all blank is null.
 *
 * @param nextLayer   the layer above what is there
 * @param mayBeBlank  whether they may be added without an order
 */
export const stackOrderAnswerSchema = (boards: number, nextLayer: number, mayBeBlank: boolean) =>
  z
    .object({
      perLayer: columnSchema.nullable(),
      firstLayer: layerSchema.nullable(),
      firstColumn: columnSchema.nullable(),
    })
    .transform(({ perLayer, firstLayer, firstColumn }, check): StackOrder | null => {
      const isBlank = mayBeBlank && perLayer === null && firstLayer === null && firstColumn === null;
      const order =
        perLayer === null
          ? null
          : { perLayer, firstLayer: firstLayer ?? nextLayer, firstColumn: firstColumn ?? 1 };
      const problem = order
        ? whyNotLaid(order, boards)
        : isBlank
          ? null
          : message(mayBeBlank ? 'validation.per-layer-missing' : 'validation.missing');
      if (problem) {
        check.addIssue({ code: 'custom', path: ['perLayer'], message: problem.code, params: problem.facts });
      }
      return order;
    });
