import { useState } from 'react';
import { isMovedAway, isSlip } from '../../../shared-core/probing/readings/exclusion.ts';
import type { Depth, JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { readingName } from '../../../shared-core/record-words/reading-texts.ts';
import { Menu } from '../../ui/Menu.tsx';
import { useWords } from '../../words.ts';
import { NoteDialog } from '../notes/NoteDialog.tsx';
import { DepthForm } from './DepthForm.tsx';
import { MoveReadingForm } from './MoveReadingForm.tsx';
import { ReadingDetails } from './ReadingDetails.tsx';

const titles = {
  depth: 'depth.change',
  board: 'reading-move.button',
  note: 'note.open',
  details: 'reading-details.open',
} as const;
type ReadingMoreAction = keyof typeof titles;

/** A damaged reading cannot be corrected, nor one that is not of its board anymore. */
const isOffered = (action: ReadingMoreAction, { isDamaged, excluded }: JudgedReading): boolean => {
  if (action === 'depth') return !isDamaged && !isMovedAway(excluded);
  if (action === 'board') return !isDamaged && !isSlip(excluded);
  return true;
};

/** What is rarely done with a reading, behind one button: each opens its dialog. */
export function ReadingMore({
  reading,
  depth,
  actions,
}: {
  reading: JudgedReading;
  depth: Depth;
  actions: readonly ReadingMoreAction[];
}) {
  const words = useWords();
  const { say } = words;
  const [open, setOpen] = useState<ReadingMoreAction | null>(null);
  const close = () => setOpen(null);
  const recordName = readingName(reading, depth, words);
  const offered = actions.filter((action) => isOffered(action, reading));
  if (offered.length === 0 && open === null) return null;
  const { id, note = '' } = reading;
  return (
    <>
      <Menu
        kind="quiet"
        title={say('stacks.more')}
        label={say('reading-more.of', { recordName })}
        items={offered.map((action) => ({
          id: action,
          title: say(titles[action]),
          onPress: () => setOpen(action),
        }))}
      />
      {open === 'depth' && <DepthForm reading={reading} onClose={close} />}
      {open === 'board' && <MoveReadingForm reading={reading} recordName={recordName} onClose={close} />}
      {open === 'note' && (
        <NoteDialog
          on={{ subject: { kind: 'reading', id }, title: say('note.of-reading', { recordName }), note }}
          onClose={close}
        />
      )}
      {open === 'details' && <ReadingDetails reading={reading} recordName={recordName} onClose={close} />}
    </>
  );
}
