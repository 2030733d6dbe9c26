import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';

/** Which board a reading was moved to, or from; nothing where it was not. */
export function MovedReading({
  reading: { movedTo, movedFrom },
}: {
  reading: Pick<JudgedReading, 'movedTo' | 'movedFrom'>;
}) {
  const { say } = useWords();
  const board = movedTo ?? movedFrom;
  if (board === undefined) return null;
  return (
    <a href={hrefOf({ name: 'board', id: board.boardId })}>
      {say(movedTo ? 'reading-move.to' : 'reading-move.came', { boardCode: board.code })}
    </a>
  );
}
