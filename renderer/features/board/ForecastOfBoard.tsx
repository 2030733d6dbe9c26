import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import type { Message } from '../../../shared-core/words/message.ts';
import type { Say } from '../../../shared-core/words/words.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Failed, Loading, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { CupSection } from './CupSection.tsx';
import { ForecastPlaces } from './ForecastPlaces.tsx';
import { MissingFacts } from './MissingFacts.tsx';
import { ProfileChart } from './ProfileChart.tsx';
import './forecast.css';

/** When a board is likely ready, and where; its profile today; and its cup. */
export function ForecastOfBoard({ board, missing }: { board: BoardRow; missing: readonly Message[] }) {
  const { say } = useWords();
  const asked = useQuery('boards.forecast', { id: board.id });
  const { details, whyNot } = asked.output ?? { details: null, whyNot: null };
  if (details) return <Expected board={board} details={details} missing={missing} />;
  return (
    <Sheet title={say('forecast.title')}>
      {asked.error && <Failed sentence={asked.error} again={asked.again} />}
      {asked.loading && <Loading />}
      {whyNot && <p>{say(whyNot)}</p>}
      <MissingFacts missing={missing} />
    </Sheet>
  );
}

function Expected({
  board,
  details,
  missing,
}: {
  board: BoardRow;
  details: ForecastDetails;
  missing: readonly Message[];
}) {
  const { say } = useWords();
  const { endUse, warp, whyNoWarp } = details;
  return (
    <>
      <Sheet title={say('forecast.title')}>
        <ol className="forecast-reasons">
          {details.reasons
            .map((reason) => say(reason))
            .map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
        </ol>
        <ForecastPlaces details={details} />
        <section className="forecast-basis" aria-label={say('forecast.based-on')}>
          <h3>{say('forecast.based-on')}</h3>
          <ul>
            {[basisOf(details, say), ...details.assumptions.map((each) => say(each))].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
          <MissingFacts missing={missing} />
        </section>
      </Sheet>
      <div className="board-columns">
        <Sheet title={say('cup.title')}>
          {warp && board.widthMm !== null ? (
            <CupSection
              warp={warp}
              board={board}
              widthMm={board.widthMm}
              targetPct={targetOfUsePct(endUse)}
            />
          ) : (
            <p>{whyNoWarp && say(whyNoWarp)}</p>
          )}
        </Sheet>
        <Sheet title={say('profile.title')}>
          <ProfileChart code={board.code} details={details} />
        </Sheet>
      </div>
    </>
  );
}

/** What the forecast was made from. */
function basisOf({ readings: { length: readings }, learnedFrom: others }: ForecastDetails, say: Say): string {
  return others === 0
    ? say('forecast.based-on-readings', { readings })
    : say('forecast.based-on-others', { readings, others });
}
