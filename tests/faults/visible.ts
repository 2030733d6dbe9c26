import type { AnyWindow } from './streaming.ts';

/** What a person can see of a yard, by where it is seen. */
export type Visible = Map<string, string>;

/** Records, and what follows from them, as the pages show them. */
export async function visibleIn(window: Pick<AnyWindow, 'query'>): Promise<Visible> {
  const seen: Visible = new Map();
  const see = async (where: string, asked: Promise<unknown>): Promise<void> => {
    // What cannot be shown is refused with a sentence.
    const shown = await asked.catch((refusal: Error) => `refused: ${refusal.message}`);
    seen.set(where, JSON.stringify(shown));
  };
  await see('settings', window.query('settings.get', {}));
  await see('places', window.query('places.list', {}));
  await see('species', window.query('species.list', {}));
  await see('uses', window.query('endUses.list', {}));
  const everyBoard = { stackId: null, search: '', offset: 0, limit: 500 };
  const stacks = await window.query('stacks.list', {}).catch(() => []);
  for (const { id, lastRoundId, openRoundId } of stacks) {
    await see(`stack ${id}`, window.query('stacks.get', { id }));
    for (const roundId of [lastRoundId, openRoundId]) {
      if (roundId !== null) await see(`round ${roundId}`, window.query('rounds.get', { roundId }));
    }
  }
  await see('stacks', window.query('stacks.list', {}));
  await see('boards', window.query('boards.list', everyBoard));
  const boards = await window.query('boards.list', everyBoard).catch(() => ({ rows: [] }));
  for (const { id } of boards.rows) await see(`board ${id}`, window.query('boards.get', { id }));
  return seen;
}

/** Where two yards show something else. */
export function differencesOf(one: Visible, other: Visible): string[] {
  const places = new Set([...one.keys(), ...other.keys()]);
  return [...places].filter((where) => one.get(where) !== other.get(where));
}
