import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { shortLengthText } from '../../../shared-core/units/length.ts';
import { Button, ButtonLink } from '../../parts/Button.tsx';
import { dayWords } from '../../parts/days.ts';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useUnits } from '../../stores/settings.ts';
import { useAnswer } from '../../useAnswer.ts';
import { MoveForm } from '../stacks/MoveForm.tsx';
import { AboutBoard } from './AboutBoard.tsx';
import { BoardForm } from './BoardForm.tsx';
import { CallOfBoard } from './CallOfBoard.tsx';
import { FindingsChart } from './FindingsChart.tsx';
import { ForecastOfBoard } from './ForecastOfBoard.tsx';
import { MovesOfBoard } from './MovesOfBoard.tsx';
import { ReadingsOfBoard } from './ReadingsOfBoard.tsx';
import { SampleBoardSection } from './SampleBoardSection.tsx';
import { ShrinkageSection } from './ShrinkageSection.tsx';
import { SpeciesSuspicion } from './SpeciesSuspicion.tsx';
import './board.css';

/** Everything known of one board. */
export function BoardScreen({ id }: { id: number }) {
  const found = useAnswer('boards.get', { id });
  if (found.output) return <Found found={found.output} />;
  return (
    <Screen title="Board">
      {found.error && (
        <>
          <Failed sentence={found.error} again={found.again} />
          <p>
            <a href={hrefOf({ name: 'boards' })}>All boards</a>
          </p>
        </>
      )}
      {found.loading && <Loading />}
    </Screen>
  );
}

function Found({
  found: { board, moves, readings, findings, reasons, isSpeciesConfirmed },
}: {
  found: RequestOutput<'boards.get'>;
}) {
  const [open, setOpen] = useState<'nothing' | 'change' | 'move'>('nothing');
  const close = () => setOpen('nothing');
  const units = useUnits();
  const endUse = useEndUseOf(board.stackId);
  return (
    <Screen
      title={board.code}
      lead={
        <>
          {board.speciesName}, {shortLengthText(board.thicknessMm, units)} thick, in{' '}
          <a href={hrefOf({ name: 'stack', id: board.stackId })}>{board.stackName}</a>; at {board.placeName}{' '}
          since {dayWords(board.placeSince)}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'labels', boardIds: [board.id] })}>Label</ButtonLink>
          <Button onClick={() => setOpen('move')}>Move</Button>
          <Button onClick={() => setOpen('change')}>Change</Button>
        </>
      }
    >
      {board.latest ? (
        <div className="board-columns">
          <Sheet title="Latest call">
            <SpeciesSuspicion board={board} readings={readings} onChange={() => setOpen('change')} />
            <CallOfBoard latest={board.latest} reasons={reasons} endUseName={endUse?.name ?? null} />
          </Sheet>
          <Sheet title="History">
            <FindingsChart code={board.code} findings={findings} moves={moves} endUse={endUse} />
          </Sheet>
        </div>
      ) : (
        <EmptyState sentence="This board was never probed. Probe its stack, and its call and history show here.">
          <ButtonLink kind="main" href={hrefOf({ name: 'round-start', stackId: board.stackId })}>
            Probe {board.stackName}
          </ButtonLink>
        </EmptyState>
      )}
      <ForecastOfBoard board={board} units={units} />
      {readings.length > 0 && (
        <Sheet title="Readings">
          <ReadingsOfBoard readings={readings} units={units} />
        </Sheet>
      )}
      <ShrinkageSection board={board} endUse={endUse} />
      <SampleBoardSection board={board} findings={findings} units={units} />
      <div className="board-columns">
        <Sheet title="About it">
          <AboutBoard board={board} isSpeciesConfirmed={isSpeciesConfirmed} />
        </Sheet>
        <Sheet title="Where it stood">
          <MovesOfBoard moves={moves} />
        </Sheet>
      </div>
      {open === 'change' && <BoardForm board={board} units={units} onClose={close} />}
      {open === 'move' && <MoveForm what={board.code} target={{ boardIds: [board.id] }} onClose={close} />}
    </Screen>
  );
}

/** What the stack of a board is for; null until known. */
function useEndUseOf(stackId: number) {
  const stacks = useAnswer('stacks.list', {});
  const endUses = useAnswer('endUses.list', {});
  const stack = stacks.output?.find((each) => each.id === stackId);
  return endUses.output?.find((endUse) => endUse.id === stack?.endUseId) ?? null;
}
