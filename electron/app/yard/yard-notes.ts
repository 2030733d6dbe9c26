import type { SalvageReport } from '../../../shared-core/contract/salvage.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import type { Yard } from '../../store/yard.ts';
import type { Commands, Queries } from '../handlers.ts';
import { savedOf } from './salvaging.ts';

/** What a person must know of the open yard's file, until they dismiss it. */
export function createYardNotes() {
  let notes: Message[] = [];
  return {
    /** A yard was opened: what was found of its file on the way. */
    begin: ({ wal, missingActs }: Pick<Yard, 'wal' | 'missingActs'>): void => {
      notes = [];
      if (wal.kind === 'repaired')
        notes.push(message('yard-note.changes-repaired', { changes: wal.commits }));
      if (missingActs) {
        notes.push(
          message('yard-note.changes-missing', {
            changes: missingActs.acts,
            newestAt: missingActs.newestAt,
          }),
        );
      }
    },
    add: (note: Message): void => {
      notes.push(note);
    },
    forget: (): void => {
      notes = [];
    },
    /** What could be read of a damaged file was saved. */
    addSalvaged: (report: SalvageReport): void => {
      const [boards, readings] = [savedOf(report, 'boards'), savedOf(report, 'readings')];
      notes.push(message('yard-note.salvaged', { boards, readings }));
    },
    queries: { 'recovery.notes': () => notes } satisfies Partial<Queries>,
    commands: {
      'recovery.dismissNote': ({ code }) => {
        notes = notes.filter((note) => note.code !== code);
        return null;
      },
    } satisfies Partial<Commands>,
  };
}
