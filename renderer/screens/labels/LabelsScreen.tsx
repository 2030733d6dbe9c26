import { useState } from 'react';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Failed, Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { go, hrefOf } from '../../stores/navigation.ts';
import { useSettings } from '../../stores/settings.ts';
import { useAnswer } from '../../useAnswer.ts';
import { BoardsOneByOne, CallChoice, StackChoice, standings } from './BoardChoice.tsx';
import { LabelsToPrint } from './LabelsToPrint.tsx';
import { chosenBoards, MOST_LABELS, type Standing } from './label-choice.ts';
import { useLabelBoards } from './useLabelBoards.ts';
import './labels.css';

/** Labels of chosen boards: looked at, printed or saved. */
export function LabelsScreen({ boardIds, stackId }: { boardIds: readonly number[]; stackId: number | null }) {
  const settings = useSettings((store) => store.settings);
  return (
    <Screen title="Labels" lead="Choose the boards, look the sheet over, print.">
      {settings ? (
        <ChooseAndPrint boardIds={boardIds} stackId={stackId} layouts={settings.labelLayouts} />
      ) : (
        <Loading what="the label sizes" />
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
  const stacks = useAnswer('stacks.list', {});
  const { found, error, again } = useLabelBoards(boardIds, stackId);
  const [wanted, setWanted] = useState<Set<Standing>>(new Set(standings.map(({ value }) => value)));
  const [leftOut, setLeftOut] = useState<Set<number>>(new Set());
  const boards = found?.boards ?? [];
  const chosen = chosenBoards(boards, wanted, leftOut);

  if (error) return <Failed sentence={error} again={again} />;
  if (!found) return <Loading what="the boards" />;
  return (
    <div className="labels-screen">
      <Sheet title="Boards">
        {boardIds.length > 0 ? (
          <p>
            {boards.length === 1 ? 'One board was chosen' : `${boards.length} boards were chosen`} elsewhere.{' '}
            <a href={hrefOf({ name: 'labels', boardIds: [] })}>Choose from all instead</a>
          </p>
        ) : (
          <StackChoice
            stacks={stacks.output ?? []}
            stackId={stackId}
            onStack={(chosenId) => go({ name: 'labels', boardIds: [], stackId: chosenId })}
          />
        )}
        {boards.length === 0 ? (
          <EmptyState sentence="There are no boards here yet.">
            <ButtonLink href={hrefOf({ name: 'stacks' })}>Go to the stacks</ButtonLink>
          </EmptyState>
        ) : (
          <>
            <CallChoice boards={boards} wanted={wanted} onWanted={setWanted} />
            <BoardsOneByOne
              boards={boards.filter((board) => wanted.has(board.standing))}
              leftOut={leftOut}
              onLeftOut={setLeftOut}
            />
          </>
        )}
        {found.total > boards.length && (
          <p>
            Labels are made for at most {MOST_LABELS} boards at once; these are the first of {found.total}.
            Choose a stack to get at the others.
          </p>
        )}
      </Sheet>
      <LabelsToPrint boardIds={chosen.map((board) => board.id)} layouts={layouts} />
    </div>
  );
}
