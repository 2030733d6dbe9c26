import type { RoundBoard, RoundState } from '../../../shared-core/contract/round.ts';
import { callMarks } from '../../../shared-core/labels/call-mark.ts';
import type { Call } from '../../../shared-core/probing/calls/assessment.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { CallShape, callsInOrder } from '../../parts/CallBadge.tsx';
import { EmptyState, Screen, Sheet } from '../../parts/Screen.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { useWords } from '../../words.ts';
import { FindingsTable } from './FindingsTable.tsx';

/** What a finished round found: how many of each call, then board by board with the reason that decides. */
export function RoundSummaryPage({ round }: { round: RoundState }) {
  const { say } = useWords();
  const probed = round.boards.filter((board) => board.isRead);
  const ready = probed.filter((board) => board.finding?.call === 'ready');
  const labelsFor = (boards: RoundBoard[]) =>
    hrefOf({ name: 'labels', boardIds: boards.map((board) => board.boardId) });
  return (
    <Screen
      title={`Round on ${round.stackName}`}
      lead={`${say(round.summary.message)} For ${round.endUseName}, standing in ${round.placeName}.`}
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
      <ul className="call-counts">
        {callsInOrder.map((call) => (
          <CallCount key={call} call={call} count={round.summary.calls[call]} />
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

function CallCount({ call, count }: { call: Call; count: number }) {
  return (
    <li className={`call-count call-soft-${call} call-${call}`}>
      <CallShape call={call} />
      <strong>{count}</strong>
      <span>{callMarks[call].word}</span>
    </li>
  );
}
