import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';

/** Takes back a hand meter that was just added. @param typedFromBefore the meter that was typed from before; null for none */
export const undoAdding = (
  { act, meterId }: RequestOutput<'meters.add'>,
  typedFromBefore: number | null,
): Promise<unknown> => bridge().command('meters.undoAdd', { act, meterId, typedFromBefore });
