import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import type { AWindow } from './a-window.ts';
import { yard } from './yard-of-two.ts';

type SpotToSave = Omit<RequestInput<'rounds.saveTyped'>, 'raw'>;

/** The spot that a window aims at, as it names it with a value; the newest reading of it is the one it shows. */
export async function aimedSpot(roundId: number, window: Pick<AWindow, 'query'> = yard): Promise<SpotToSave> {
  const { aim, probed } = await window.query('rounds.get', { roundId });
  if (!aim) throw new Error('The round is finished.');
  const newest = probed?.assessment?.readings
    .filter((reading) => reading.spotIndex === aim.spotIndex && reading.excluded === null)
    .at(-1);
  return {
    roundId,
    boardId: aim.boardId,
    spotIndex: aim.spotIndex ?? 0,
    newestReadingId: newest?.id ?? null,
  };
}

/** Types a value where a window aims. */
export async function type(roundId: number, raw: number, window: AWindow = yard) {
  return window.command('rounds.saveTyped', { ...(await aimedSpot(roundId, window)), raw });
}

/** Presses Space in a window. */
export async function saveLive(roundId: number, window: AWindow = yard) {
  return window.command('rounds.saveLive', await aimedSpot(roundId, window));
}

/** Aims a window at a board by its place in the walk; with no spot, at its first open one. */
export async function aimAt(
  roundId: number,
  index: number,
  spotIndex: number | null = null,
  window: AWindow = yard,
) {
  const { boards } = await window.query('rounds.get', { roundId });
  const boardId = boards[index]?.boardId ?? 0;
  await window.command('rounds.aim', { roundId, boardId, spotIndex });
}

/** Where a window aims: the board by its place in the walk. */
export async function aimOf(roundId: number, window: Pick<AWindow, 'query'> = yard) {
  const { aim, boards } = await window.query('rounds.get', { roundId });
  return {
    board: boards.findIndex(({ boardId }) => boardId === aim?.boardId),
    spotIndex: aim?.spotIndex ?? null,
  };
}
