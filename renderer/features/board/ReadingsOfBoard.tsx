import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { McValue } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingRemarks } from '../records/ReadingRemarks.tsx';
import { alongBoard } from './along-board.ts';

/** Every reading ever taken on the board, round by round, raw and corrected together; each can be excluded or included. */
export function ReadingsOfBoard({
  board,
  readings,
}: {
  board: BoardRow;
  /** Newest round first. */
  readings: readonly JudgedReading[];
}) {
  const { say } = useWords();
  const rounds = [...new Set(readings.map((reading) => reading.roundId))].map((roundId) => ({
    roundId,
    ofRound: readings.filter((reading) => reading.roundId === roundId),
  }));
  return (
    <>
      {rounds.map(({ roundId, ofRound }, index) => (
        <details key={roundId} className="round-readings" open={index === 0}>
          <summary>{roundWords(ofRound, say)}</summary>
          <ul>
            {ofRound.map((reading) => (
              <ReadingRow key={reading.id} board={board} reading={reading} />
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}

function roundWords(ofRound: readonly JudgedReading[], say: Say): string {
  const facts = { takenAt: ofRound[0]?.takenAt ?? '', readings: ofRound.length };
  const used = ofRound.filter((reading) => reading.counts).length;
  return used === ofRound.length
    ? say('board.round-readings', facts)
    : say('board.round-readings-used', { ...facts, used });
}

function ReadingRow({ board, reading }: { board: BoardRow; reading: JudgedReading }) {
  const { say } = useWords();
  const readingId = reading.id;
  const { woodTempC } = reading;
  return (
    <li className="reading-row">
      <span className="reading-spot">{spotWords(reading, board, say)}</span>
      <McValue
        mcPct={reading.corrected.mcPct}
        raw={reading.raw}
        unit={reading.unit}
        struck={!reading.counts}
      />
      <span className="reading-how">
        {say(`board.taken.${reading.how}`)}
        {' · '}
        {woodTempC === null ? say('board.wood-temp-unknown') : say('board.wood-temp', { woodTempC })}
      </span>
      <ExcludeReading
        reading={reading}
        onExclude={(why) => bridge().command('readings.exclude', { readingId, why })}
        onInclude={() => void attempt(bridge().command('readings.include', { readingId }))}
      />
      <ReadingRemarks reading={reading} />
    </li>
  );
}

/** "Shell · 5 mm deep · 60 cm from the left end". */
function spotWords(reading: JudgedReading, board: BoardRow, say: Say): string {
  const { depth, depthMm, face } = reading.spot;
  const parts = [say(`board.${depth}`)];
  if (depthMm !== null) parts.push(say('board.spot-deep', { depthMm }));
  const along = alongBoard(reading, board);
  if (along) parts.push(say(along));
  if (face !== 'face') parts.push(say(`board.spot-${face}`));
  return parts.join(' · ');
}
