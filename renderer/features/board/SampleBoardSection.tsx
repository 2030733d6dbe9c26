import { useState } from 'react';
import type { SampleBoardState } from '../../../shared-core/contract/sample-board.ts';
import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { CutSectionsForm } from './CutSectionsForm.tsx';
import { SampleRecords } from './SampleRecords.tsx';
import { WeighBoardForm } from './WeighBoardForm.tsx';
import { WeightChart } from './WeightChart.tsx';

/** A board followed by its weight alone, beside what the meter found on it. */
export function SampleBoardSection({
  board,
  findings,
}: {
  board: BoardRow;
  /** What the meter found, oldest first. */
  findings: readonly LatestFinding[];
}) {
  const { say } = useWords();
  const sample = useQuery('samples.get', { boardId: board.id });
  const [open, setOpen] = useState<'nothing' | 'cut' | 'weigh'>('nothing');
  const close = () => setOpen('nothing');
  const begun = (sample.output?.cuts.length ?? 0) > 0;
  return (
    <Sheet
      title={say('weights.title')}
      actions={
        <>
          {begun && <Button onClick={() => setOpen('weigh')}>{say('weights.weigh')}</Button>}
          <Button onClick={() => setOpen('cut')}>{say(begun ? 'weights.cut-new' : 'weights.cut')}</Button>
        </>
      }
    >
      <Await of={[sample]}>
        {(state) =>
          begun ? (
            <Followed state={state} board={board} findings={findings} />
          ) : (
            <>
              <p>{say('weights.why')}</p>
              <ol className="list numbered">
                <li>{say('weights.how-cut')}</li>
                <li>{say('weights.how-dry')}</li>
                <li>{say('weights.how-follow')}</li>
              </ol>
            </>
          )
        }
      </Await>
      {open === 'cut' && <CutSectionsForm board={board} onClose={close} />}
      {open === 'weigh' && <WeighBoardForm board={board} onClose={close} />}
    </Sheet>
  );
}

function Followed({
  state,
  board,
  findings,
}: {
  state: SampleBoardState;
  board: BoardRow;
  findings: readonly LatestFinding[];
}) {
  const { say } = useWords();
  const { target } = state;
  return (
    <>
      <p>
        <strong>{say(state.status)}</strong>
        {target &&
          ` ${say('weights.target', { useName: target.endUseName, leastKg: target.minKg, mostKg: target.maxKg })}`}
      </p>
      <WeightChart code={board.code} state={state} findings={findings} />
      <SampleRecords state={state} />
    </>
  );
}
