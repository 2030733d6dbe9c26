import type { ForecastDetails } from '../../../shared-core/contract/forecast.ts';
import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { targetOfUsePct } from '../../../shared-core/probing/calls/target-of-end-use.ts';
import type { DisplayUnits } from '../../../shared-core/units/length.ts';
import { pctWords } from '../../parts/McValue.tsx';
import { Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { useAnswer } from '../../useAnswer.ts';
import { ForecastPlaces } from './ForecastPlaces.tsx';
import { ForecastPlot } from './ForecastPlot.tsx';
import { ProfilePlot } from './ProfilePlot.tsx';
import { WarpSection } from './WarpSection.tsx';
import './forecast.css';

/** What is to be expected of a board: when it will be fit, where; its profile today; and how it will warp. */
export function ForecastOfBoard({ board, units }: { board: BoardRow; units: DisplayUnits }) {
  const asked = useAnswer('boards.forecast', { id: board.id });
  const { details, whyNot } = asked.output ?? { details: null, whyNot: null };
  if (details) return <Expected board={board} units={units} details={details} />;
  return (
    <Sheet title="What to expect">
      {asked.error && <Failed sentence={asked.error} again={asked.again} />}
      {asked.loading && <Loading />}
      {whyNot && <p>{whyNot}</p>}
    </Sheet>
  );
}

function Expected({
  board,
  units,
  details,
}: {
  board: BoardRow;
  units: DisplayUnits;
  details: ForecastDetails;
}) {
  const { endUse, warp, whyNoWarp } = details;
  return (
    <>
      <Sheet title="What to expect">
        <ol className="forecast-reasons">
          {details.reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ol>
        <ForecastPlot code={board.code} details={details} />
        <ForecastPlaces details={details} />
        <section className="forecast-basis" aria-label="What it rests on">
          <h3>What it rests on</h3>
          <ul>
            {[basisOf(details), ...details.assumptions].map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      </Sheet>
      <div className="board-columns">
        <Sheet title="Warp">
          {warp && board.widthMm !== null ? (
            <WarpSection
              warp={warp}
              board={board}
              widthMm={board.widthMm}
              units={units}
              targetWords={`${pctWords(targetOfUsePct(endUse))} %`}
            />
          ) : (
            <p>{whyNoWarp}</p>
          )}
        </Sheet>
        <Sheet title="Through the thickness">
          <ProfilePlot code={board.code} details={details} units={units} />
        </Sheet>
      </div>
    </>
  );
}

/** What the forecast was made from. */
function basisOf({ readings, learntFrom }: ForecastDetails): string {
  const own = readings.length === 0 ? 'no reading of its own' : `${readings.length} readings of its own`;
  const others =
    learntFrom === 0
      ? ''
      : ` and on ${learntFrom === 1 ? 'another board' : `${learntFrom} other boards`} of its stack and log`;
  return `Made by a model of drying, resting on ${own}${others}.`;
}
