import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { newestSuspicion } from './newest-suspicion.ts';

/** The ways out where the newest round is drier than the board can be by its date and places; nothing where it is not. */
export function DrynessSuspicion({
  board,
  readings,
  question,
  onEdit,
}: {
  board: BoardRow;
  readings: readonly JudgedReading[];
  /** With the reason, where nothing beside it says that. */
  question: 'board.dryness-question' | 'round.dryness-question';
  onEdit: () => void;
}) {
  const { say } = useWords();
  if (!newestSuspicion(board, readings, ['dry-too-soon', 'drier-than-its-air'])) return null;

  const { id, code, version } = board;
  async function cameFromDrierAir(): Promise<void> {
    await bridge().command('boards.edit', { id, basedOn: version, changed: { driedBy: 'kiln' } });
    tellDone(say('board.came-drier.done', { boardCode: code }));
  }

  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={() => void attempt(cameFromDrierAir())}>{say('board.came-drier')}</Button>
          <Button onClick={onEdit}>{say('board.correct-dryness')}</Button>
        </>
      }
    >
      {say(question)}
    </Banner>
  );
}
