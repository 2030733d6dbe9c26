import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { useRound } from '../../stores/round.ts';
import { Button } from '../../ui/Button.tsx';
import { rawText, shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';
import css from './ValuePanel.module.css';

/** Its figures are beside the reading. */
function inShort(why: Message): Message {
  if (why.code === 'suspicion.dry-too-soon') return message('saved.dry-too-soon');
  if (why.code === 'suspicion.frozen') return message('saved.frozen');
  return why.code === 'suspicion.dry-too-soon.later' ? message('saved.dry-too-soon.later') : why;
}

/** What was saved last, for the eye and for the screen reader: "Core 12.4% saved". A slip can be put right from here. */
export function SavedNote({
  board: { boardId },
  probed,
  typing,
  isFar,
  isByOffMeter,
  isDoubtful,
  act,
}: Probing) {
  const words = useWords();
  const { say, formats } = words;
  const { saved, done } = useRound();
  if (done || !saved) {
    return (
      <p className={css.note} aria-live="polite">
        {done && say(done)}
      </p>
    );
  }

  const { board } = saved;
  // As it is judged now: the board may have been corrected since.
  const reading = probed?.assessment?.readings.find(({ id }) => id === saved.reading.id) ?? saved.reading;
  const { depth } = reading.spot;
  const { mcPct } = reading.corrected;
  const what =
    reading.counts && mcPct !== null
      ? message('saved.used', { depth, mcPct })
      : message('saved.not-used', { depth });
  const suspicion = reading.suspicions.find(({ severity }) => severity !== 'note');
  const isOff = isByOffMeter(reading);

  const meant = meantBy(reading);
  // The large value beside it says it all.
  const isShownLarge = isFar && typing === null && board.boardId === boardId && !suspicion && !isOff;
  const look = isDoubtful(reading) ? `${css.note} ${css.questionable}` : css.note;
  return (
    <div className={css.noteAndUse}>
      <p
        className={isShownLarge ? 'spoken-only' : look}
        aria-live="polite"
        // A reading of the same value again is news too.
        key={reading.id}
      >
        <strong>
          {board.boardId === boardId ? say(what) : say('saved.on-board', { boardCode: board.code, what })}
        </strong>{' '}
        <small>{say('saved.raw', { shownValue: shownText(reading, words) })}</small>{' '}
        {suspicion &&
          (suspicion.severity === 'refused'
            ? say(inShort(suspicion.why))
            : say('saved.questionable', { why: inShort(suspicion.why) }))}
        {!suspicion && isOff && say('saved.questionable', { why: message('saved.meter-off') })}
      </p>
      {meant !== null && (
        <Button shortcut="U" onClick={() => act('use-meant')}>
          {say('saved.use-meant', { shownValue: rawText(meant, reading.unit, formats) })}
        </Button>
      )}
    </div>
  );
}
