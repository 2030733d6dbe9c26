import { roundStep } from '../../../shared-core/probing/calls/round-step.ts';
import { thicknessOf } from '../../../shared-core/words/message.ts';
import { useQuery } from '../../data/useQuery.ts';
import { ScreenHeading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import css from './Probe.module.css';
import type { Probing } from './useProbing.ts';

/** The board in hand, and what to do next, to be read from two meters away. */
export function ProbeHead({
  round: { stackName, boards, isDated, startedAt },
  board,
  boardIndex,
  isLast,
  spotIndex,
  pinsAt,
  pinsSaved,
  secondsLeft,
  savesFor,
  waits,
  savedBoard,
  mayBeOther,
  by,
  isScreenLeft,
}: Probing) {
  const { say, formats } = useWords();
  const thickness = thicknessOf(board);
  const askedPins = (mayBeOther && savedBoard?.code) || null;
  const { output } = useQuery('notes.get', { subject: { kind: 'board', id: board.boardId } });
  return (
    <header className={css.head}>
      <small className={css.where}>
        <span>
          {say('round.progress', { stackName, board: boardIndex + 1, boards: boards.length })}
          {isDated && <strong> {say('round.dated', { startedOn: startedAt })}</strong>}
        </span>
        {/* What to do about it is in Keys and options. */}
        {isScreenLeft && <span className={css.aside}>{say('wake.refused')}</span>}
      </small>
      <div className={css.board}>
        <ScreenHeading title={say('round.window-title', { boardCode: board.code, stackName })}>
          <span className="spoken-only">{say('round.board')} </span>
          <span className={css.code} translate="no">
            {board.code}
          </span>
        </ScreenHeading>
        <p>
          <span translate="no">{formats.named(board.speciesName)}</span>
          <br />
          {board.lengthMm === null
            ? formats.thickness(thickness)
            : say('round.size-and-length', { thickness, lengthMm: board.lengthMm })}
        </p>
      </div>
      {output?.note && (
        <p className={css.note} translate="no">
          {output.note}
        </p>
      )}
      {/* A countdown is not read out second by second. */}
      <p className={css.next} aria-live={secondsLeft === null ? 'polite' : 'off'}>
        {say(
          roundStep({
            board,
            spotIndex,
            isLast,
            pinsAt,
            pinsSaved,
            askedPins,
            waits,
            secondsLeft,
            savesFor,
            by,
          }),
        )}
      </p>
    </header>
  );
}
