import { useState } from 'react';
import type { BoardForecast } from '../../../shared-core/contract/forecast.ts';
import type { Origin } from '../../../shared-core/contract/origin.ts';
import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { whereWords } from '../../../shared-core/record-words/where-words.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { type Asked, useQuery } from '../../data/useQuery.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { Await } from '../../ui/Await.tsx';
import { Button, ButtonLink } from '../../ui/Button.tsx';
import { HelpLink } from '../../ui/HelpLink.tsx';
import { Failed, Loading, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { PlannedHere } from '../dates/PlannedHere.tsx';
import { PlannedMoveForm } from '../dates/PlannedMoveForm.tsx';
import { ReserveButton, ReservedFor } from '../dates/Reservation.tsx';
import { ArchivedBanner } from '../life/ArchivedBanner.tsx';
import { LifeMenu } from '../life/LifeMenu.tsx';
import { CameFrom } from '../life/Origins.tsx';
import { NoteSheet } from '../notes/NoteSheet.tsx';
import { PicturesSheet } from '../pictures/PicturesSheet.tsx';
import { MoveForm } from '../stacks/MoveForm.tsx';
import { BoardForm } from './BoardForm.tsx';
import { CallOfBoard } from './CallOfBoard.tsx';
import { DrynessSuspicion } from './DrynessSuspicion.tsx';
import { ForecastPlaces } from './ForecastPlaces.tsx';
import { HistoryChart } from './HistoryChart.tsx';
import { NextStepOfBoard } from './NextStepOfBoard.tsx';
import { NotesOfBoard } from './NotesOfBoard.tsx';
import { PartsOfBoard } from './PartsOfBoard.tsx';
import { roundOfBoard } from './round-of-board.ts';
import { SpeciesSuspicion } from './SpeciesSuspicion.tsx';

/** Everything known of one board: is it ready; if not, when, where, and why; and behind tabs, the rest. */
export function BoardScreen({ id, tab }: { id: number; tab: string | null }) {
  const { say } = useWords();
  const found = useQuery('boards.get', { id });
  // Asked at once: it takes longest.
  const forecast = useQuery('boards.forecast', { id });
  if (found.output) return <Found found={found.output} forecast={forecast} tab={tab} />;
  return (
    <Screen title={say('board.title')}>
      {found.loading && <Loading />}
      {found.error && (
        <>
          <Failed sentence={found.error} again={found.again} />
          <p>
            <a href={hrefOf({ name: 'boards' })}>{say('board.all')}</a>
          </p>
        </>
      )}
    </Screen>
  );
}

function Found({
  found,
  forecast,
  tab,
}: {
  found: RequestOutput<'boards.get'>;
  forecast: Asked<BoardForecast>;
  tab: string | null;
}) {
  const { board, moves, findings, readings, cameFrom, readBefore } = found;
  const records = new Set([
    board.id,
    ...readBefore.filter(({ isSame }) => isSame).map(({ boardId }) => boardId),
  ]);
  const { say } = useWords();
  const [isEditing, setEditing] = useState(false);
  const [isPlanning, setPlanning] = useState(false);
  /** Undefined: not moving. Null: to a place still to be chosen. */
  const [moveTo, setMoveTo] = useState<number | null>();
  const endUse = useEndUseOf(board.stackId);
  const details = forecast.output?.details ?? null;
  const judgement = forecast.output?.judgement ?? board.judgement;
  const { next } = judgement;
  const edit = () => setEditing(true);
  const history = (findings.length > 0 || details) && (
    <HistoryChart
      code={board.code}
      history={{
        findings,
        stays: moves.map(({ since, placeName }) => ({ fromMs: Date.parse(since), placeName })),
        endUse,
        forecast: details,
      }}
    />
  );
  const lead = <Lead board={board} cameFrom={cameFrom} />;
  const report = (
    <ButtonLink href={hrefOf({ name: 'report', kind: 'passport', id: board.id })}>
      {say('report.print')}
    </ButtonLink>
  );
  const subject = { kind: 'board' as const, id: board.id };
  const notes = (
    <>
      <NoteSheet subject={subject} title={say('note.of-board', { boardCode: board.code })} />
      <PicturesSheet subject={subject} recordName={board.code} />
    </>
  );
  const parts = <PartsOfBoard found={found} forecast={forecast} endUse={endUse} tab={tab} />;
  if (board.archived)
    return (
      <Screen title={board.code} isName lead={lead} actions={report}>
        <ArchivedBanner board={board} archived={board.archived} becameOf={found.becameOf} />
        {history}
        {notes}
        {parts}
      </Screen>
    );
  return (
    <Screen
      title={board.code}
      isName
      lead={lead}
      actions={
        <>
          {next.step !== 'probe' && next.step !== 'wait' && (
            <ButtonLink href={hrefOf(roundOfBoard(board))}>{say('board.probe')}</ButtonLink>
          )}
          <Button onClick={() => setMoveTo(null)}>{say('board.move')}</Button>
          {next.step !== 'label' && (
            <ButtonLink href={hrefOf({ name: 'labels', boardIds: [board.id] })}>
              {say('board.label')}
            </ButtonLink>
          )}
          {report}
          <ReserveButton boardId={board.id} />
          <Button onClick={edit}>{say('common.edit')}</Button>
          <LifeMenu
            boards={[board]}
            items={[{ id: 'plan-move', title: say('dates.plan-move'), onPress: () => setPlanning(true) }]}
            canDelete={readings.every(({ boardId }) => !records.has(boardId))}
            onDeleted={() => go({ name: 'stack', id: board.stackId })}
          />
        </>
      }
    >
      <div className="beside">
        <Sheet title={say('board.call')} actions={<HelpLink chapter="calls" />}>
          <SpeciesSuspicion board={board} readings={readings} onEdit={edit} />
          <DrynessSuspicion
            board={board}
            readings={readings}
            question="board.dryness-question"
            onEdit={edit}
          />
          <CallOfBoard board={board} endUse={endUse} judgement={judgement} />
          <Await of={[forecast]}>
            {(made) => (
              <NextStepOfBoard board={board} forecast={made} judgement={judgement} onMove={setMoveTo} />
            )}
          </Await>
        </Sheet>
        {history}
      </div>
      <div className="beside wide-first">
        {details && (
          <Sheet title={say('forecast.places')}>
            <ForecastPlaces details={details} onMove={setMoveTo} />
          </Sheet>
        )}
        <NotesOfBoard
          missing={found.missing}
          forecast={forecast.output}
          judgement={judgement}
          onEdit={edit}
        />
      </div>
      {notes}
      {parts}
      {isEditing && <BoardForm board={board} onClose={() => setEditing(false)} />}
      {isPlanning && (
        <PlannedMoveForm
          of={{ stackId: null, boardId: board.id, name: board.code }}
          onClose={() => setPlanning(false)}
        />
      )}
      {moveTo !== undefined && (
        <MoveForm target={{ board }} placeId={moveTo} onClose={() => setMoveTo(undefined)} />
      )}
    </Screen>
  );
}

/** What it is, how big, and where. */
function Lead({ board, cameFrom }: { board: BoardRow; cameFrom: readonly Origin[] }) {
  const { say, formats } = useWords();
  const { speciesName, widthMm, lengthMm, stackId, stackName } = board;
  const size = [
    formats.thickness(thicknessOf(board)),
    widthMm !== null && formats.shortLength(widthMm),
    lengthMm !== null && formats.longLength(lengthMm),
  ];
  return (
    <>
      <span translate="no">{formats.named(speciesName)}</span>
      {` · ${size.filter(Boolean).join(' × ')} · `}
      <a translate="no" href={hrefOf({ name: 'stack', id: stackId })}>
        {stackName}
      </a>
      {' · '}
      {whereWords(board, say)}
      <CameFrom origins={cameFrom} />
      <ReservedFor boardId={board.id} />
      <PlannedHere stackId={null} boardId={board.id} />
    </>
  );
}

/** What the stack of a board is for; null until known. */
function useEndUseOf(stackId: number) {
  const stack = useQuery('stacks.get', { id: stackId }).output;
  const endUses = useQuery('endUses.list', {}).output;
  return endUses?.find(({ id }) => id === stack?.endUseId) ?? null;
}
