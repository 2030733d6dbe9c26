import type { RoundBoard, RoundState } from '../../../shared-core/contract/round.ts';
import { verdictMarks } from '../../../shared-core/labels/verdict-mark.ts';
import type { Verdict } from '../../../shared-core/probing/assessment.ts';
import { ButtonLink } from '../../parts/Button.tsx';
import { pctWords } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { EmptyState, Screen, Sheet } from '../../parts/Screen.tsx';
import { VerdictBadge, VerdictShape, verdictsInOrder } from '../../parts/VerdictBadge.tsx';
import { hrefOf } from '../../stores/navigation.ts';

/** What a finished round found: how many of each call, then board by board with the reason that decides. */
export function RoundSummaryPage({ round }: { round: RoundState }) {
  const probed = round.boards.filter((board) => board.assessment !== null);
  const ready = probed.filter((board) => board.assessment?.call.verdict === 'ready');
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
          <div className="table-frame">
            <table className="table findings-table">
              <thead>
                <tr>
                  <th scope="col">Board</th>
                  <th scope="col" className="findings-wood">
                    Wood
                  </th>
                  <th scope="col" className="number">
                    Average, % MC
                  </th>
                  <th scope="col" className="number">
                    Shell / core
                  </th>
                  <th scope="col">Call</th>
                  <th scope="col">Why</th>
                </tr>
              </thead>
              <tbody>
                {round.boards.map((board) => (
                  <FindingRow key={board.boardId} board={board} />
                ))}
              </tbody>
            </table>
          </div>
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

function FindingRow({ board }: { board: RoundBoard }) {
  const { assessment } = board;
  const estimate = assessment?.estimate;
  return (
    <tr>
      <th scope="row">
        <a href={hrefOf({ name: 'board', id: board.boardId })}>{board.code}</a>
      </th>
      <td className="findings-wood">{board.woodName}</td>
      <td className="number">
        {estimate ? (
          <>
            <strong>{pctWords(estimate.averagePct)}</strong>{' '}
            <small>
              ({pctWords(estimate.lowPct)} to {pctWords(estimate.highPct)})
            </small>
          </>
        ) : (
          '–'
        )}
      </td>
      <td className="number">
        {estimate ? `${pctWords(estimate.shellPct)} / ${pctWords(estimate.corePct)}` : '–'}
      </td>
      <td>{assessment ? <VerdictBadge verdict={assessment.call.verdict} /> : 'Not probed'}</td>
      <td className="findings-why">{assessment && <Said>{assessment.call.reasons[0] ?? ''}</Said>}</td>
    </tr>
  );
}
