import { readingsBySpot } from '../../../shared-core/probing/readings/open-spot.ts';
import { placeAlong } from '../../../shared-core/probing/readings/place-along.ts';
import { planSpots } from '../../../shared-core/probing/readings/spots.ts';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import css from './SpotDrawing.module.css';
import type { Probing } from './useProbing.ts';

const LENGTH = 300;
const THICKNESS = 60;
/** The two pins of a meter, as far apart as can be told on the drawing. */
const PINS_APART = 9;
const ROOM = { above: 52, beside: 4, below: 34 };

/** The board from its edge, with the pins in it as deep as they are to go. The words beside it say the same. */
export function SpotDrawing({ board, probed, spotIndex, pinsAt, isByOffMeter }: Probing) {
  const { plan } = planSpots(board);
  const readings = readingsBySpot(board, probed?.assessment?.readings ?? []);
  const current = pinsAt ?? spotIndex;
  return (
    <svg
      className={css.drawing}
      viewBox={`${-ROOM.beside} ${-ROOM.above} ${LENGTH + 2 * ROOM.beside} ${ROOM.above + THICKNESS + ROOM.below}`}
      aria-hidden="true"
    >
      <rect className={css.board} width={LENGTH} height={THICKNESS} rx="3" />
      {[...plan.entries()].map(([index, planned]) => {
        const share = placeAlong(planned, board.lengthMm);
        if (share === null) return null;
        const { depthMm, face } = planned.spot;
        const depth = THICKNESS * Math.min(1, (depthMm ?? board.thicknessMm / 2) / board.thicknessMm);
        // Those of one place side by side, by their depth.
        const x = share * LENGTH + (planned.spot.depth === 'core' ? PINS_APART * 1.3 : -PINS_APART * 1.3);
        const isCurrent = index === current;
        const reading = readings[index];
        const look = isCurrent ? css.current : reading ? css.read : css.open;
        return (
          <g key={index} className={look} data-spot={index}>
            {face === 'fresh-cut' && <path className={css.cut} d={`M${x} -6V${THICKNESS + 6}`} />}
            {[-PINS_APART / 2, PINS_APART / 2].map((aside) => (
              <path key={aside} d={`M${x + aside} -12V${depth}`} />
            ))}
            {isCurrent && <path className={css.arrow} d={`M${x} -16l-12 -16h7v-16h10v16h7z`} />}
            {reading &&
              (isByOffMeter(reading) || isQuestionable(reading.suspicions) ? (
                <text className={css.doubt} x={x} y={THICKNESS + 28} data-mark="questionable">
                  ?
                </text>
              ) : (
                <path className={css.check} d={`M${x - 8} ${THICKNESS + 18}l6 7l11 -15`} data-mark="sound" />
              ))}
          </g>
        );
      })}
    </svg>
  );
}
