import type { RoundBoard, RoundState } from '../../../shared-core/contract/round.ts';
import { verdictMarks } from '../../../shared-core/labels/verdict-mark.ts';
import type { Verdict } from '../../../shared-core/probing/assessment.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { EmptyState, Screen, Sheet } from '../../parts/Screen.tsx';
import { VerdictShape, verdictsInOrder } from '../../parts/VerdictBadge.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { FindingsTable } from './FindingsTable.tsx';

/** What a finished round found: how many of each call, then board by board with the reason that decides. */
export function RoundSummaryPage({ round }: { round: RoundState }) {
  const probed = round.boards.filter((board) => board.isRead);
  const ready = probed.filter((board) => board.finding?.verdict === 'ready');
  const labelsFor = (boards: RoundBoard[]) =>
    hrefOf({ name: 'labels', boardIds: boards.map((board) => board.boardId) });
  return (
    <Screen
      title={`Round on ${round.stackName}`}
      lead={`${round.summary.sentence} For ${round.useName}, standing in ${round.placeName}.`}
      actions={
        <>
          {probed.length > 0 && (
            <ButtonLink kind="main" href={labelsFor(probed)}>
              Labels for {boardsWords(probed.length)} probed
            </ButtonLink>
          )}
          {ready.length > 0 && ready.length < probed.length && (
            <ButtonLink href={labelsFor(ready)}>Labels for {boardsWords(ready.length)} ready</ButtonLink>
          )}
          <ButtonLink href={hrefOf({ name: 'stack', id: round.stackId })}>Go to the stack</ButtonLink>
        </>
      }
    >
      <ul className="verdict-counts">
        {verdictsInOrder.map((verdict) => (
          <VerdictCount key={verdict} verdict={verdict} count={round.summary.verdicts[verdict]} />
        ))}
      </ul>
      {probed.length === 0 ? (
        <EmptyState sentence="No board was probed in this round, so there is nothing to call." />
      ) : (
        <Sheet title="Board by board">
          <FindingsTable boards={round.boards} />
        </Sheet>
      )}
    </Screen>
  );
}

const boardsWords = (count: number) => (count === 1 ? 'the one' : `all ${count}`);

function VerdictCount({ verdict, count }: { verdict: Verdict; count: number }) {
  return (
    <li className={`verdict-count verdict-soft-${verdict} verdict-${verdict}`}>
      <VerdictShape verdict={verdict} />
      <strong>{count}</strong>
      <span>{verdictMarks[verdict].word}</span>
    </li>
  );
}
