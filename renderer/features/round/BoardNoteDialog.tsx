import { useQuery } from '../../data/useQuery.ts';
import { useWords } from '../../words.ts';
import { NoteDialog } from '../notes/NoteDialog.tsx';
import type { Probing } from './useProbing.ts';

/** The note on the board in hand; the round goes on where it was. */
export function BoardNoteDialog({ board: { boardId, code }, onClose }: Probing) {
  const { say } = useWords();
  const subject = { kind: 'board' as const, id: boardId };
  const { output } = useQuery('notes.get', { subject });
  if (!output) return null;
  return (
    <NoteDialog
      subject={subject}
      title={say('note.of-board', { boardCode: code })}
      note={output.note}
      onClose={onClose}
    />
  );
}
