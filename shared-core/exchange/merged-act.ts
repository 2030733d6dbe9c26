import { z } from 'zod';
import { type Message, message } from '../words/message.ts';
import { countsInWords } from './merge-counts.ts';

/** What bringing another yard in came to, as its act keeps it. */
export const mergedActSchema = z.object({
  /** What the person calls the file. */
  fileName: z.string(),
  /** How many records, by the tables of an export. */
  added: z.record(z.string(), z.number().int()),
  edited: z.number().int(),
  deleted: z.record(z.string(), z.number().int()),
  /** How many left the lists. */
  left: z.number().int(),
});
export type MergedAct = z.infer<typeof mergedActSchema>;

/** How the history tells of it. */
export function mergedLine({ fileName, added, edited, deleted, left }: MergedAct): Message {
  const gone = Object.values(deleted).reduce((sum, count) => sum + count, 0);
  const parts = [
    ...countsInWords(added),
    ...(edited > 0 ? [message('act.merged.edited', { count: edited })] : []),
    ...(gone > 0 ? [message('act.merged.deleted', { count: gone })] : []),
    ...(left > 0 ? [message('act.merged.left', { count: left })] : []),
  ];
  return parts.length === 0
    ? message('act.merged-nothing', { fileName })
    : message('act.merged', { fileName, parts });
}
