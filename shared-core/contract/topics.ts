import { z } from 'zod';

/**
 * What can change. A query names what it shows, a command what it changed, and a window asks again where they meet.
 *
 * `yard`: everything, as where another yard was opened. `boards`, `stacks` …: the list, and any of its records.
 * `meter`: what the connected one does; `meters`: those of the yard.
 * `sensors`: thermometers and hygrometers, and what they measure.
 * `acts`: what was done, which every act changes.
 * `dates`: planned moves, projects, and what is reserved for them.
 * `outlooks`: what forecasts say of boards in lists, made in the background. `stack:3`: that stack and what is in it; `board:7` and `round:9`: that one alone.
 */
export type Topic =
  | 'yard'
  | 'stacks'
  | 'boards'
  | 'places'
  | 'species'
  | 'endUses'
  | 'outlooks'
  | 'dates'
  | 'settings'
  | 'backups'
  | 'labels'
  | 'printers'
  | 'acts'
  | 'meter'
  | 'meters'
  | 'sensors'
  | 'yardNotes'
  | `stack:${number}`
  | `board:${number}`
  | `round:${number}`
  | `ovenChecks:${string}`;

export const topicsSchema = z.array(z.custom<Topic>((value) => typeof value === 'string'));

/** More boards than this are not named one by one. */
const MOST_NAMED = 200;

/** The topics of boards that changed, their lists included. */
export const boardTopics = (ids: readonly number[]): Topic[] =>
  ids.length > MOST_NAMED ? ['yard'] : ['boards', ...ids.map((id): Topic => `board:${id}`)];

/** Whether what is shown may be another now. */
export function isTouched(shown: readonly Topic[], changed: ReadonlySet<Topic>): boolean {
  return changed.has('yard') || shown.some((topic) => changed.has(topic));
}
