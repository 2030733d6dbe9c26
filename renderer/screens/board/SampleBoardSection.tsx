import { useState } from 'react';
import type { SampleBoardState } from '../../../shared-core/contract/sample-board.ts';
import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { weightText } from '../../../shared-core/units/weight.ts';
import { Button } from '../../parts/Button.tsx';
import { Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { useAnswer } from '../../useAnswer.ts';
import { CutSectionsForm } from './CutSectionsForm.tsx';
import { SampleRecords } from './SampleRecords.tsx';
import { WeighBoardForm } from './WeighBoardForm.tsx';
import { WeightChart } from './WeightChart.tsx';
import './sample-board.css';

/** A board followed by its mass alone, beside what the meter found on it. */
export function SampleBoardSection({
  board,
  findings,
  units,
}: {
  board: BoardRow;
  /** What the meter found, oldest first. */
  findings: readonly LatestFinding[];
  units: DisplayUnits;
}) {
  const sample = useAnswer('samples.get', { boardId: board.id });
  const [open, setOpen] = useState<'nothing' | 'cut' | 'weigh'>('nothing');
  const close = () => setOpen('nothing');
  const state = sample.output;
  const begun = state !== null && state.cuts.length > 0;
  return (
    <Sheet
      title="By its mass"
      actions={
        <>
          {begun && <Button onClick={() => setOpen('weigh')}>Weigh the board</Button>}
          <Button onClick={() => setOpen('cut')}>{begun ? 'Cut sections again' : 'Cut sections'}</Button>
        </>
      }
    >
      {sample.error && <Failed sentence={sample.error} again={sample.again} />}
      {sample.loading && <Loading />}
      {state && !begun && (
        <p>
          A board can be followed without a meter: cut a section near each end, weigh sections and board, and
          dry the sections in the oven. They tell what the board would weigh oven-dry; from then on its mass
          alone tells its moisture content, above fibre saturation too.
        </p>
      )}
      {state && begun && <Followed state={state} board={board} findings={findings} units={units} />}
      {open === 'cut' && <CutSectionsForm board={board} units={units} onClose={close} />}
      {open === 'weigh' && <WeighBoardForm board={board} units={units} onClose={close} />}
    </Sheet>
  );
}

function Followed({
  state,
  board,
  findings,
  units,
}: {
  state: SampleBoardState;
  board: BoardRow;
  findings: readonly LatestFinding[];
  units: DisplayUnits;
}) {
  const { wanted } = state;
  return (
    <>
      <p>
        <strong>{state.sentence}</strong>
        {wanted &&
          ` For ${wanted.endUseName} the scale must show ${weightText(wanted.minKg, units)} to ${weightText(wanted.maxKg, units)}.`}
      </p>
      <WeightChart code={board.code} state={state} findings={findings} units={units} />
      <SampleRecords state={state} units={units} />
    </>
  );
}
