import { message } from '../../../shared-core/words/message.ts';
import { useRound } from '../../stores/round.ts';
import { rawText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { isQuestionable } from './questionable.ts';

/** What was saved last, for the eye and for the screen reader: "Core 12.4% saved". */
export function SavedNote() {
  const { say, formats } = useWords();
  const saved = useRound((store) => store.saved);
  const round = useRound((store) => store.round);
  if (!saved || !round?.aim) return <p className="saved-note" aria-live="polite" />;

  const { reading, board } = saved;
  const { depth } = reading.spot;
  const { mcPct } = reading.corrected;
  const what =
    reading.counts && mcPct !== null
      ? message('saved.used', { depth, mcPct })
      : message('saved.not-used', { depth });
  const suspicion = reading.suspicions.find(({ severity }) => severity !== 'note');
  return (
    <p
      className={`saved-note ${isQuestionable(reading) ? 'saved-note-questionable' : ''}`}
      aria-live="polite"
      // A reading of the same value again is news too.
      key={reading.id}
    >
      <strong>
        {board.boardId === round.aim.boardId
          ? say(what)
          : say('saved.on-board', { boardCode: board.code, what })}
      </strong>{' '}
      <span className="saved-raw">
        {say('saved.raw', { shownValue: rawText(reading.raw, reading.unit, formats) })}
      </span>
      {suspicion && (
        <span>
          {' '}
          {suspicion.severity === 'refused'
            ? say(suspicion.why)
            : say('saved.questionable', { why: suspicion.why })}
        </span>
      )}
    </p>
  );
}
