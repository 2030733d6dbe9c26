import { useState } from 'react';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import { useQuery } from '../../data/useQuery.ts';
import { go, hrefOf } from '../../stores/navigation.ts';
import { useSettings } from '../../stores/settings.ts';
import { ButtonLink } from '../../ui/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BoardsOneByOne, CallChoice, StackChoice } from './BoardChoice.tsx';
import { LabelsToPrint } from './LabelsToPrint.tsx';
import { type CallOrNone, callsAndNone, chosenBoards } from './label-choice.ts';
import { useLabelBoards } from './useLabelBoards.ts';
import './labels.css';

/** Labels of chosen boards: previewed, printed or saved. */
export function LabelsScreen({ boardIds, stackId }: { boardIds: readonly number[]; stackId: number | null }) {
  const settings = useSettings((store) => store.settings);
  const { say } = useWords();
  return (
    <Screen title={say('labels.title')} lead={say('labels.lead')}>
      {settings ? (
        <ChooseAndPrint boardIds={boardIds} stackId={stackId} layouts={settings.labelLayouts} />
      ) : (
        <Loading />
      )}
    </Screen>
  );
}

function ChooseAndPrint({
  boardIds,
  stackId,
  layouts,
}: {
  boardIds: readonly number[];
  stackId: number | null;
  layouts: Settings['labelLayouts'];
}) {
  const stacks = useQuery('stacks.list', {});
  const { found, error, again } = useLabelBoards(boardIds, stackId);
  const [calls, setCalls] = useState<Set<CallOrNone>>(new Set(callsAndNone));
  const [excluded, setExcluded] = useState<Set<number>>(new Set());
  const { say } = useWords();
  const boards = found?.boards ?? [];
  const chosen = chosenBoards(boards, calls, excluded);

  if (error) return <Failed sentence={error} again={again} />;
  if (!found) return <Loading />;
  return (
    <div className="labels-screen">
      <Sheet title={say('labels.boards')}>
        {boardIds.length > 0 ? (
          <p>
            {say('labels.selected-elsewhere', { boards: boards.length })}{' '}
            <a href={hrefOf({ name: 'labels', boardIds: [] })}>{say('labels.choose-from-all')}</a>
          </p>
        ) : (
          <StackChoice
            stacks={stacks.output ?? []}
            stackId={stackId}
            onStack={(chosenId) => go({ name: 'labels', boardIds: [], stackId: chosenId })}
          />
        )}
        {boards.length === 0 ? (
          <EmptyState sentence={say('labels.no-boards')}>
            <ButtonLink href={hrefOf({ name: 'stacks' })}>{say('stacks.go-to-stacks')}</ButtonLink>
          </EmptyState>
        ) : (
          <>
            <CallChoice boards={boards} calls={calls} onCalls={setCalls} />
            <BoardsOneByOne
              boards={boards.filter((board) => calls.has(board.call))}
              excluded={excluded}
              onExcluded={setExcluded}
            />
          </>
        )}
        {found.total > boards.length && (
          <p>{say('labels.first-boards-only', { first: boards.length, boards: found.total })}</p>
        )}
      </Sheet>
      <LabelsToPrint boardIds={chosen.map((board) => board.id)} layouts={layouts} />
    </div>
  );
}
