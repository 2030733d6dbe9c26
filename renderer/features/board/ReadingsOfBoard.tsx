import type { RequestOutput } from '../../../shared-core/contract/requests.ts';
import { depthRead, isDepthUnknown } from '../../../shared-core/probing/readings/depth-read.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { depthWords } from '../../../shared-core/record-words/depth-words.ts';
import { spotWords } from '../../../shared-core/record-words/spot-words.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { averageText, rawText, shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { ByCheck } from '../records/ByCheck.tsx';
import { EditReading } from '../records/EditReading.tsx';
import { ExcludeReading } from '../records/ExcludeReading.tsx';
import { ReadingMore } from '../records/ReadingMore.tsx';
import { RecordList, RecordValue } from '../records/RecordList.tsx';
import { UseMeant } from '../records/UseMeant.tsx';

/** Every reading ever taken of the board's wood, raw and corrected together; each can be excluded or included. */
export function ReadingsOfBoard({
  found: { board, readings, readBefore },
}: {
  found: Pick<RequestOutput<'boards.get'>, 'board' | 'readings' | 'readBefore'>;
}) {
  const words = useWords();
  const { say, formats } = words;
  const depthOf = (reading: JudgedReading) => depthRead(reading, board.thicknessMm);
  const spotOf = (reading: JudgedReading) => spotWords(reading, board, readings, readBefore, words);
  /** Another reading of its spot in that round is used: what was meant by a slip was typed since. */
  const isSpotRead = ({ id, roundId, spotIndex }: JudgedReading): boolean =>
    spotIndex !== null &&
    readings.some(
      (other) =>
        other.id !== id && other.roundId === roundId && other.spotIndex === spotIndex && other.counts,
    );
  return (
    <RecordList
      name={say('board.readings-of', { boardCode: board.code })}
      records={readings}
      keyOf={({ id }) => id}
      columns={[
        {
          id: 'spot',
          head: say('board.reading-spot'),
          cell: spotOf,
          // Where both are unknown, the spot has said so.
          below: (reading) => !isDepthUnknown(reading) && depthWords(reading, board.thicknessMm, words),
          widthRem: 12,
        },
        {
          id: 'taken',
          head: say('board.reading-date'),
          cell: ({ takenAt }) => formats.day(takenAt),
          below: ({ how }) => say(`board.taken.${how}`),
          sortBy: ({ takenAt }) => Date.parse(takenAt),
          widthRem: 7,
        },
        {
          id: 'mc',
          head: say('reading.mc'),
          cell: ({ corrected: { mcPct }, counts, isAbove, unit }) => (
            <RecordValue isUsed={counts}>
              {/* More ohms are drier wood, which is said below. */}
              {averageText(
                { averagePct: mcPct, averageIs: isAbove && unit === 'pct' ? 'above' : 'read' },
                words,
              )}
            </RecordValue>
          ),
          below: (reading) => {
            const { raw, savedRaw, unit, isAbove, corrected } = reading;
            return (
              <>
                {say('board.reading-raw', { shownValue: shownText({ raw, unit, isAbove }, words) })}
                {savedRaw !== undefined && (
                  <>
                    <br />
                    {say('reading-edit.by-hand', { shownValue: rawText(savedRaw, unit, formats) })}
                  </>
                )}
                {corrected.steps.some(({ step }) => step === 'meter-check') && (
                  <>
                    <br />
                    <ByCheck reading={reading} />
                  </>
                )}
                <br />
                {woodTempText(reading, say)}
              </>
            );
          },
          sortBy: ({ corrected }) => corrected.mcPct,
          widthRem: 8.5,
        },
      ]}
      actionsOf={(reading) => (
        <>
          <ExcludeReading
            reading={reading}
            depth={depthOf(reading)}
            onExclude={(why) => bridge().command('readings.exclude', { readingId: reading.id, why })}
            onInclude={() => void attempt(bridge().command('readings.include', { readingId: reading.id }))}
          />
          {!isSpotRead(reading) && <UseMeant reading={reading} />}
          <EditReading reading={reading} depth={depthOf(reading)} />
          <ReadingMore
            reading={reading}
            depth={depthOf(reading)}
            actions={['note', 'depth', 'board', 'details']}
          />
        </>
      )}
    />
  );
}

function woodTempText({ woodTempC, probeName }: JudgedReading, say: Say): string {
  if (woodTempC === null) return say('board.wood-temp-unknown');
  if (probeName === undefined) return say('board.wood-temp', { woodTempC });
  return say('board.wood-temp-probe', { woodTempC, sensorName: probeName });
}
