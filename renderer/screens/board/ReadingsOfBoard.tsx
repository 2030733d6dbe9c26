import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { longLengthText, shortLengthText } from '../../../shared-core/units/length.ts';
import { temperatureText } from '../../../shared-core/units/temperature.ts';
import { bridge } from '../../bridge.ts';
import { dayTimeWords } from '../../parts/days.ts';
import { ExcludeReading } from '../../parts/ExcludeReading.tsx';
import { exclusionText } from '../../parts/exclusion-text.ts';
import { McValue } from '../../parts/McValue.tsx';
import { attempt } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';
import { severityWords } from '../round/suspicion-words.ts';

/** Every reading ever taken on the board, round by round, raw and corrected together; each can be excluded or included. */
export function ReadingsOfBoard({
  readings,
  units,
}: {
  /** Newest round first. */
  readings: readonly JudgedReading[];
  units: DisplayUnits;
}) {
  const rounds = [...new Set(readings.map((reading) => reading.roundId))].map((roundId) => ({
    roundId,
    ofRound: readings.filter((reading) => reading.roundId === roundId),
  }));
  return (
    <>
      {rounds.map(({ roundId, ofRound }, index) => (
        <details key={roundId} className="round-readings" open={index === 0}>
          <summary>
            {dayTimeWords(ofRound[0]?.takenAt ?? '')}: {countWords(ofRound)}
          </summary>
          <ul>
            {ofRound.map((reading) => (
              <ReadingRow key={reading.id} reading={reading} units={units} />
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}

function countWords(readings: readonly JudgedReading[]): string {
  const counted = readings.filter((reading) => reading.counts).length;
  const all = readings.length === 1 ? '1 reading' : `${readings.length} readings`;
  return counted === readings.length ? all : `${all}, ${counted} of them counted`;
}

function ReadingRow({ reading, units }: { reading: JudgedReading; units: DisplayUnits }) {
  const { say } = useWords();
  const readingId = reading.id;
  const isExcluded = reading.excluded !== null;
  return (
    <li className="reading-row">
      <span className="reading-spot">{spotWords(reading, units)}</span>
      <McValue
        mcPct={reading.corrected.mcPct}
        raw={reading.raw}
        unit={reading.unit}
        struck={!reading.counts}
      />
      <span className="reading-how">{howWords(reading, units)}</span>
      <ExcludeReading
        reading={reading}
        onExclude={(why) => bridge().command('readings.exclude', { readingId, why })}
        onInclude={() => void attempt(bridge().command('readings.include', { readingId }))}
      />
      {reading.excluded !== null && (
        <p className="reading-flag">
          {say('exclude.excluded', { reason: exclusionText(reading.excluded, say) })}
        </p>
      )}
      {!isExcluded &&
        reading.suspicions.map((suspicion) => (
          <p key={suspicion.rule} className={`reading-flag reading-flag-${suspicion.severity}`}>
            <strong>{severityWords[suspicion.severity]}.</strong> {say(suspicion.why)}{' '}
            {say(suspicion.whatToDo)}
          </p>
        ))}
    </li>
  );
}

/** "Shell, 5 mm deep, 60 cm from the end". */
function spotWords({ spot }: JudgedReading, units: DisplayUnits): string {
  const parts = [spot.depth === 'shell' ? 'Shell' : 'Core'];
  if (spot.depthMm !== null) parts.push(`${shortLengthText(spot.depthMm, units)} deep`);
  if (spot.fromEndMm !== null) parts.push(`${longLengthText(spot.fromEndMm, units)} from the end`);
  if (spot.face === 'fresh-cut') parts.push('on a fresh cut');
  if (spot.face === 'end-grain') parts.push('in end grain');
  return parts.join(', ');
}

function howWords(reading: JudgedReading, units: DisplayUnits): string {
  const how = { settled: 'settled', 'at-once': 'taken at once', typed: 'typed' }[reading.how];
  const temp =
    reading.woodTempC === null
      ? 'temperature not known'
      : `wood at ${temperatureText(reading.woodTempC, units)}`;
  return `${how}, ${temp}`;
}
