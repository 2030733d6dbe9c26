import { firmCall, openSpots, type RoundFinding } from '../../../shared-core/contract/round.ts';
import { CallBadge } from '../../ui/CallBadge.tsx';
import { Facts } from '../../ui/Facts.tsx';
import { averageText, mcOrDash } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { suspicionsOfAll } from '../records/ReadingRemarks.tsx';
import css from './BoardCall.module.css';
import type { Probing } from './useProbing.ts';

/** So many reasons have room here; the Board page has all. */
const MOST_REASONS = 3;

/** The call on a board, with its estimates and reasons; before there is one, how many of its spots are read. */
export function BoardCall({ board, probed, round: { endUseName } }: Probing) {
  const { say } = useWords();
  const { isRead, finding } = board;
  const open = openSpots(board);
  const call = firmCall(board);
  // What speaks against all readings is said in full above them.
  const saidOfAll = suspicionsOfAll(probed?.assessment?.readings ?? []).flatMap(({ why, whatToDo }) =>
    [why, whatToDo].map((each) => say(each)),
  );
  return (
    <section className={`sheet ${css.boardCall}`} aria-label={say('board-call.title')}>
      {finding === null ? (
        <small>{say(isRead ? 'board-call.being-judged' : 'call.no-readings')}</small>
      ) : call === null ? (
        <p className={css.progress}>
          {say('board.spots-read', { read: finding.filledSpots, planned: finding.filledSpots + open })}
        </p>
      ) : (
        <>
          <p className={css.call}>
            <CallBadge call={call} size="large" />
            <span className={css.use}>{say('board-call.for-use', { endUseName })}</span>
          </p>
          {open > 0 && (
            <p className="soft">
              {say('board-call.enough-read', {
                read: finding.filledSpots,
                planned: finding.filledSpots + open,
              })}
            </p>
          )}
          <Estimate finding={finding} />
          {finding.whyAverage && <p className="soft">{say(finding.whyAverage)}</p>}
          <ul className={css.reasons}>
            {/* While they are on their way, the one that decides. */}
            {(probed?.assessment?.reasons ?? [finding.reason])
              .map((reason) => say(reason))
              .filter((sentence) => !saidOfAll.includes(sentence))
              .slice(0, MOST_REASONS)
              .map((sentence) => (
                <li key={sentence}>{sentence}</li>
              ))}
          </ul>
        </>
      )}
    </section>
  );
}

/** The likely average with its interval, the shell and the core; nothing where too little was read for one. */
function Estimate({ finding }: { finding: RoundFinding }) {
  const { averagePct, averageIs, lowPct, highPct, shellPct, corePct, isQuestionable } = finding;
  const words = useWords();
  const { say, formats } = words;
  if (averagePct === null && shellPct === null) return null;
  return (
    <Facts
      of={[
        [
          say(averageIs === 'estimated' ? 'board.average-estimated' : 'board-call.average'),
          <>
            {averageText(finding, words)} {isQuestionable && <small>{say('board.questionable')}</small>}
            {lowPct !== null && highPct !== null && (
              <small>{formats.mcInterval({ minPct: lowPct, maxPct: highPct })}</small>
            )}
          </>,
        ],
        [say('board-call.shell'), mcOrDash(shellPct, formats)],
        [
          say('board-call.core'),
          corePct === null && shellPct !== null ? say('board.not-read') : mcOrDash(corePct, formats),
        ],
      ]}
    />
  );
}
