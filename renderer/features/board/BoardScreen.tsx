import { useState } from 'react';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { hrefOf } from '../../stores/navigation.ts';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { MoveForm } from '../stacks/MoveForm.tsx';
import { AboutBoard } from './AboutBoard.tsx';
import { BoardForm } from './BoardForm.tsx';
import { CallOfBoard } from './CallOfBoard.tsx';
import { ForecastOfBoard } from './ForecastOfBoard.tsx';
import { HistoryOfBoard } from './HistoryOfBoard.tsx';
import { MovesOfBoard } from './MovesOfBoard.tsx';
import { ReadingsOfBoard } from './ReadingsOfBoard.tsx';
import { SampleBoardSection } from './SampleBoardSection.tsx';
import { ShrinkageSection } from './ShrinkageSection.tsx';
import { SpeciesSuspicion } from './SpeciesSuspicion.tsx';
import './board.css';

/** Everything known of one board. */
export function BoardScreen({ id }: { id: number }) {
  const { say } = useWords();
  const found = useQuery('boards.get', { id });
  if (found.output) return <Found found={found.output} />;
  return (
    <Screen title={say('board.title')}>
      {found.error && (
        <>
          <Failed sentence={found.error} again={found.again} />
          <p>
            <a href={hrefOf({ name: 'boards' })}>{say('board.all')}</a>
          </p>
        </>
      )}
      {found.loading && <Loading />}
    </Screen>
  );
}

function Found({ found }: { found: RequestOutput<'boards.get'> }) {
  const { board, moves, readings, findings, reasons, isSpeciesConfirmed, missing } = found;
  const [open, setOpen] = useState<'nothing' | 'edit' | 'move'>('nothing');
  const close = () => setOpen('nothing');
  const { say } = useWords();
  const { speciesName, stackId, stackName, placeName, placeSince } = board;
  const endUse = useEndUseOf(stackId);
  return (
    <Screen
      title={board.code}
      isName
      lead={
        <>
          {say('board.species-thickness', {
            speciesName,
            thickness: thicknessOf(board),
          })}
          {' · '}
          <a translate="no" href={hrefOf({ name: 'stack', id: stackId })}>
            {stackName}
          </a>
          {' · '}
          {say('board.at-place', { placeName, sinceOn: placeSince })}
        </>
      }
      actions={
        <>
          <ButtonLink href={hrefOf({ name: 'labels', boardIds: [board.id] })}>
            {say('board.label')}
          </ButtonLink>
          <Button onClick={() => setOpen('move')}>{say('board.move')}</Button>
          <Button onClick={() => setOpen('edit')}>{say('common.edit')}</Button>
        </>
      }
    >
      {board.latest ? (
        <div className="board-columns">
          <Sheet title={say('board.latest-call')}>
            <SpeciesSuspicion board={board} readings={readings} onEdit={() => setOpen('edit')} />
            <CallOfBoard latest={board.latest} reasons={reasons} endUseName={endUse?.name ?? null} />
          </Sheet>
          <HistoryOfBoard found={found} endUse={endUse} />
        </div>
      ) : (
        <>
          <EmptyState sentence={say('board.no-readings')}>
            <ButtonLink kind="main" href={hrefOf({ name: 'round-start', stackId })}>
              {say('board.probe-stack', { stackName })}
            </ButtonLink>
          </EmptyState>
          <HistoryOfBoard found={found} endUse={endUse} />
        </>
      )}
      <ForecastOfBoard board={board} missing={missing} />
      {readings.length > 0 && (
        <Sheet title={say('board.readings')}>
          <ReadingsOfBoard board={board} readings={readings} />
        </Sheet>
      )}
      <ShrinkageSection board={board} endUse={endUse} />
      <SampleBoardSection board={board} findings={findings} />
      <div className="board-columns">
        <Sheet title={say('board.about')}>
          <AboutBoard board={board} isSpeciesConfirmed={isSpeciesConfirmed} />
        </Sheet>
        <Sheet title={say('board.moves')}>
          <MovesOfBoard moves={moves} />
        </Sheet>
      </div>
      {open === 'edit' && <BoardForm board={board} onClose={close} />}
      {open === 'move' && <MoveForm target={{ board }} onClose={close} />}
    </Screen>
  );
}

/** What the stack of a board is for; null until known. */
function useEndUseOf(stackId: number) {
  const stacks = useQuery('stacks.list', {});
  const endUses = useQuery('endUses.list', {});
  const stack = stacks.output?.find((each) => each.id === stackId);
  return endUses.output?.find((endUse) => endUse.id === stack?.endUseId) ?? null;
}
