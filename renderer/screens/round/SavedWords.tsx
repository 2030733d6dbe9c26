import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { useRound } from '../../stores/round.ts';
import { useWords } from '../../words.ts';
import { depthName, isQuestionableReading } from './suspicion-words.ts';

/** What was kept last, for the eye and for the screen reader: "Core 12.4 % kept". */
export function SavedWords() {
  const { say } = useWords();
  const saved = useRound((store) => store.saved);
  const round = useRound((store) => store.round);
  const suspicion = saved?.reading.suspicions.find((suspicion) => suspicion.severity !== 'note');
  const current = round?.boards[round.aim.boardIndex];
  return (
    <p
      className={`saved-words ${saved && isQuestionableReading(saved.reading) ? 'saved-words-questionable' : ''}`}
      aria-live="polite"
      // A reading of the same value again is news too.
      key={saved?.reading.id}
    >
      {saved && current && (
        <>
          <strong>
            {saved.board.boardId !== current.boardId && `${saved.board.code}: `}
            {depthName(saved.reading)}{' '}
            {saved.reading.counts
              ? `${pctWords(saved.reading.corrected.mcPct)} % kept`
              : 'is on record, not counted'}
          </strong>{' '}
          <span className="saved-raw">(raw {rawWords(saved.reading.raw, saved.reading.unit)})</span>
          {suspicion && <span className="saved-doubt"> Look at it: {say(suspicion.why)}</span>}
        </>
      )}
    </p>
  );
}
