import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { newestSuspicion } from './newest-suspicion.ts';

/** The newest round's suspicion about the board's species, with both ways to settle it; nothing where there is none. */
export function SpeciesSuspicion({
  board,
  readings,
  onEdit,
}: {
  board: BoardRow;
  readings: readonly JudgedReading[];
  onEdit: () => void;
}) {
  const { say } = useWords();
  const { speciesName } = board;
  const suspicion = newestSuspicion(board, readings, ['species-unlike-stack']);
  if (suspicion === undefined) return null;
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={onEdit}>{say('board.change-species')}</Button>
          <Button onClick={() => void attempt(bridge().command('boards.confirmSpecies', { id: board.id }))}>
            {say('board.confirm-species', { speciesName })}
          </Button>
        </>
      }
    >
      {say('board.species-question', { speciesName })} {say(suspicion.why)} {say('board.species-check')}
    </Banner>
  );
}
