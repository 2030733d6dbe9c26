import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { pastPage } from '../app/past-page.ts';
import { yard } from '../app/yard-of-two.ts';

/** Saves a round of May 2, 2026, with invented readings of the first board. */
export const savePastRound = (depths: RequestInput<'pastRounds.save'>['depths'], raws: number[]) =>
  yard.command(
    'pastRounds.save',
    pastPage({
      startedAt: new Date('2026-05-02T12:00').toISOString(),
      depths,
      lines: [{ boardId: yard.boards[0]!.id, raws }],
    }),
  );
