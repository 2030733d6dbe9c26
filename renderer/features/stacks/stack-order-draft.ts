import {
  positionInStack,
  type StackOrder,
  stackOrderSchema,
  whyNotLaid,
} from '../../../shared-core/contract/stack-order.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';

/** How boards are laid in layers, as typed. */
export interface StackOrderDraft {
  perLayer: number | null;
  firstLayer: number | null;
  firstColumn: number | null;
}

export const emptyStackOrderDraft: StackOrderDraft = { perLayer: null, firstLayer: null, firstColumn: null };

/**
 * How the boards are laid; null where all three are blank.
 *
 * @param firstLayer  the layer to begin in where none is typed
 * @returns           or what is wrong
 */
export function stackOrderOf(
  draft: StackOrderDraft,
  boards: number,
  firstLayer: number,
): { stackOrder: StackOrder | null } | { problem: Message } {
  if (draft.perLayer === null) {
    return draft.firstLayer === null && draft.firstColumn === null
      ? { stackOrder: null }
      : { problem: message('validation.per-layer-missing') };
  }
  const stackOrder = {
    perLayer: draft.perLayer,
    firstLayer: draft.firstLayer ?? firstLayer,
    firstColumn: draft.firstColumn ?? 1,
  };
  if (!stackOrderSchema.safeParse(stackOrder).success) {
    return { problem: message('validation.stack-order') };
  }
  const problem = whyNotLaid(stackOrder, boards);
  return problem === null ? { stackOrder } : { problem };
}

/** In which layers the boards will lie. */
export function layersOf(stackOrder: StackOrder, boards: number): Message {
  const { firstLayer } = stackOrder;
  const topLayer = positionInStack(stackOrder, boards - 1).layer;
  return topLayer === firstLayer
    ? message('stacks.in-one-layer', { layer: topLayer })
    : message('stacks.in-layers', { firstLayer, topLayer });
}
