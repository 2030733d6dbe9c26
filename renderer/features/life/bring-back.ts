import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import type { NamedBoard } from './LeaveForm.tsx';

/** Archived boards come back under their own IDs. */
export const bringBack = (
  boards: readonly NamedBoard[],
  work: string | null,
): Promise<RequestOutput<'boards.bringBack'>> =>
  bridge().command('boards.bringBack', { boards: boards.map(({ id }) => ({ id })), work });
