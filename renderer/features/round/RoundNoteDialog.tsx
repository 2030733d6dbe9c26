import { useState } from 'react';
import { newestOf } from '../../../shared-core/contract/round.ts';
import { depthRead } from '../../../shared-core/probing/readings/depth-read.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { useEach } from '../../data/useQuery.ts';
import { useRound } from '../../stores/round.ts';
import { shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { type ChosenNote, NoteDialog } from '../notes/NoteDialog.tsx';
import { Pictures } from '../pictures/Pictures.tsx';
import type { Probing } from './useProbing.ts';

/** A note or a picture of the board in hand, of the last reading, or of the round, which goes on where it was. */
export function RoundNoteDialog({ round, board, probed, onClose }: Probing) {
  const words = useWords();
  const { say } = words;
  // Whatever is saved while this is open.
  const [{ last, of }] = useState(() => {
    const { saved } = useRound.getState();
    return saved ? { last: saved.reading, of: saved.board } : { last: newestOf(probed), of: board };
  });
  const shownValue = last && shownText(last, words);
  const reading = last && readingName(last, depthRead(last, of.thicknessMm), words);
  const subjects: readonly Omit<ChosenNote, 'note'>[] = [
    {
      subject: { kind: 'board', id: board.boardId },
      title: say('note.of-board', { boardCode: board.code }),
      name: say('note.on-board', { boardCode: board.code }),
    },
    ...(last && reading && shownValue
      ? [
          {
            subject: { kind: 'reading' as const, id: last.id },
            title: say('note.of-reading', { recordName: reading }),
            name:
              of.boardId === board.boardId
                ? say('note.on-reading', { shownValue })
                : say('note.on-reading-of', { shownValue, boardCode: of.code }),
          },
        ]
      : []),
    { subject: { kind: 'round', id: round.id }, title: say('note.of-round'), name: say('note.on-round') },
  ];
  const found = useEach(
    'notes.get',
    subjects.map(({ subject }) => ({ subject })),
  );
  const notes = subjects.flatMap((each, at) => {
    const output = found[at]?.output;
    return output ? [{ ...each, note: output.note }] : [];
  });
  const onBoard = notes.find(({ subject }) => subject.kind === 'board');
  if (!onBoard) return null;
  const nameOf = { board: board.code, reading: reading ?? '', round: say('pictures.this-round') };
  return (
    <NoteDialog
      on={onBoard}
      others={notes}
      below={(subject) => (
        <section className="column">
          <h3>{say('pictures.title')}</h3>
          <Pictures
            key={subject.kind}
            subject={subject}
            recordName={subject.kind === 'stack' ? round.stackName : nameOf[subject.kind]}
          />
        </section>
      )}
      onClose={onClose}
    />
  );
}
