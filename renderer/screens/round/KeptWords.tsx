import { pctWords, rawWords } from '../../parts/McValue.tsx';
import { Said } from '../../parts/Said.tsx';
import { useRound } from '../../stores/round.ts';
import { depthName, isDoubtful } from './suspicion-words.ts';

/** What was kept last, for the eye and for the screen reader: "Core 12.4 % kept". */
export function KeptWords() {
  const kept = useRound((store) => store.kept);
  const round = useRound((store) => store.round);
  const doubt = kept?.reading.suspicions.find((suspicion) => suspicion.weight !== 'note');
  const current = round?.boards[round.aim.boardIndex];
  return (
    <p
      className={`kept-words ${kept && isDoubtful(kept.reading) ? 'kept-words-doubtful' : ''}`}
      aria-live="polite"
      // A reading of the same value again is news too.
      key={kept?.reading.id}
    >
      {kept && current && (
        <>
          <strong>
            {kept.board.boardId !== current.boardId && `${kept.board.code}: `}
            {depthName(kept.reading)}{' '}
            {kept.reading.counts
              ? `${pctWords(kept.reading.corrected.mcPct)} % kept`
              : 'is on record, not counted'}
          </strong>{' '}
          <span className="kept-raw">(raw {rawWords(kept.reading.raw, kept.reading.unit)})</span>
          {doubt && (
            <span className="kept-doubt">
              {' '}
              Look at it: <Said>{doubt.why}</Said>
            </span>
          )}
        </>
      )}
    </p>
  );
}
