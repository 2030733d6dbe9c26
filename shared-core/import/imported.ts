import { z } from 'zod';
import { type ImportCounts, importCountsSchema } from '../contract/requests/imports.ts';
import { type Message, message } from '../words/message.ts';

/** What an import came to, as its act has it. */
const importActSchema = z.object({
  /** What the person calls the file; null for pasted cells, and of acts from before it was saved. */
  fileName: z.string().nullable().default(null),
  counts: importCountsSchema,
});

/** What came in, without what there is none of. */
export const importedParts = ({
  boards,
  readings,
  stacks,
  places,
  airValues,
  ovenChecks,
}: ImportCounts): Message[] => {
  const parts = { boards, readings, stacks, places, 'air-values': airValues, 'oven-checks': ovenChecks };
  return (Object.keys(parts) as (keyof typeof parts)[])
    .filter((kind) => parts[kind] > 0)
    .map((kind) => message(`restore.part.${kind}`, { count: parts[kind] }));
};

/** How the history tells of an import; null where nothing tells what it came to. */
export function importedLine(outcome: unknown): Message | null {
  const act = importActSchema.safeParse(outcome).data;
  if (act === undefined) return null;
  const { fileName } = act;
  const parts = importedParts(act.counts);
  if (parts.length === 0) return null;
  return fileName === null
    ? message('act.imported-table', { parts })
    : message('act.imported', { fileName, parts });
}
