import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Button } from '../../parts/Button.tsx';
import { attempt } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

/** The newest round's doubt about what wood the board is, with both ways to settle it; nothing where there is none. */
export function SpeciesSuspicion({
  board,
  readings,
  onChange,
}: {
  board: BoardRow;
  readings: readonly JudgedReading[];
  onChange: () => void;
}) {
  const { say } = useWords();
  const suspicion = readings
    .filter(({ roundId }) => roundId === board.latest?.roundId)
    .flatMap(({ suspicions }) => suspicions)
    .find(({ rule }) => rule === 'species-unlike-stack');
  if (suspicion === undefined) return null;
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={onChange}>Change the wood</Button>
          <Button onClick={() => void attempt(bridge().command('boards.confirmSpecies', { id: board.id }))}>
            It is {board.speciesName}
          </Button>
        </>
      }
    >
      Is it {board.speciesName}? {say(suspicion.why)} Look at its end grain and bark.
    </Banner>
  );
}
