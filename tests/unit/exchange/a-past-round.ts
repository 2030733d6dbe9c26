import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { yard } from '../app/yard-of-two.ts';

/** Saves a round of May 2, 2026, with invented readings of the first board. */
export const savePastRound = (depths: RequestInput<'pastRounds.save'>['depths'], raws: number[]) =>
  yard.command('pastRounds.save', {
    stackId: yard.stack.id,
    startedAt: new Date('2026-05-02T12:00').toISOString(),
    isDayOnly: true,
    meterId: null,
    unit: 'pct',
    woodTempC: 20,
    airTempC: null,
    depths,
    lines: [{ boardId: yard.boards[0]!.id, raws }],
    work: null,
  });
