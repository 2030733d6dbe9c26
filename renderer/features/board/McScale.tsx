import type { LatestFinding } from '../../../shared-core/contract/yard.ts';
import { widthOf } from '../../../shared-core/drawing/chart/place-words.ts';
import { niceTicks } from '../../../shared-core/drawing/chart/scale.ts';
import type { LowestEmc } from '../../../shared-core/probing/calls/call-here.ts';
import { toldDepths } from '../../../shared-core/probing/readings/told-depths.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { lineLook, PointMark, paint } from '../../chart/marks.tsx';
import { useWidth } from '../../chart/useWidth.ts';
import { useWords } from '../../words.ts';
import css from './board.module.css';

const TRACK = { top: 42, height: 16 };
const BESIDE = 8;
/** Marks nearer to each other than this would hide each other, px. */
const MARK_WIDTH = 14;

/** What a round found, against the target of the use and the driest that the place gets. */
export function McScale({
  found,
  endUse,
  lowestEmc: place,
}: {
  found: LatestFinding & { averagePct: number };
  /** Null where it is not known. */
  endUse: Pick<EndUse, 'minPct' | 'maxPct'> | null;
  /** Where the board is; null where it is not known. */
  lowestEmc: LowestEmc | null;
}) {
  const { say, formats } = useWords();
  const [frame, width] = useWidth<HTMLDivElement>(440);
  const { averagePct, averageIs, lowPct, highPct, isQuestionable } = found;
  const { shellPct, corePct } = toldDepths(found);
  const [low, most] = [lowPct ?? averagePct, highPct ?? averagePct];
  const shown = [most, shellPct, corePct, endUse?.maxPct, place?.emcPct].map((pct) => pct ?? 0);
  const ticks = niceTicks(0, Math.max(30, ...shown), 4);
  const isAbove = averageIs === 'above';
  // How much higher it is, nobody knows.
  const high = isAbove ? ticks.at(-1)! : most;
  const at = (pct: number) => BESIDE + (pct / ticks.at(-1)!) * (width - 2 * BESIDE);
  const middle = TRACK.top + TRACK.height / 2;
  const below = TRACK.top + TRACK.height + 10;
  const isClose = shellPct !== null && corePct !== null && Math.abs(at(shellPct) - at(corePct)) < MARK_WIDTH;
  const height = below + (isClose ? 48 : 34);
  const target = endUse && say('board.scale.target', { targetRange: endUse });
  const targetAt = endUse ? at(endUse.minPct) : 0;
  const [wide, floorAt] = [widthOf(target ?? ''), place ? at(place.emcPct) : 0];
  // The line of the lowest EMC would cut the target's word: it ends left of that line where it has room.
  const isCut = floorAt > targetAt && floorAt < targetAt + wide && floorAt - 6 > wide;
  const targetWord = isCut ? ({ x: floorAt - 6, textAnchor: 'end' } as const) : { x: targetAt };
  const lowest =
    place &&
    (place.month === null
      ? say('board.scale.emc-all-year', { placeName: place.placeName, emcPct: place.emcPct })
      : say('board.scale.lowest-emc', {
          placeName: place.placeName,
          driestMonth: place.month,
          emcPct: place.emcPct,
        }));
  return (
    <div ref={frame}>
      <svg
        className={css.scale}
        fill={paint('ink-soft')}
        width={width}
        height={height}
        role="img"
        aria-label={[
          isQuestionable
            ? say('board.scale.average-questionable', { averageIs, averagePct })
            : isAbove
              ? say('board.scale.average-above', { averagePct })
              : say(averageIs === 'estimated' ? 'board.scale.average-estimated' : 'board.scale.average', {
                  averagePct,
                  likelyInterval: { minPct: low, maxPct: high },
                }),
          shellPct !== null && say('board.scale.shell', { shellPct }),
          corePct !== null && say('board.scale.core', { corePct }),
          target && `${target}.`,
          lowest && `${lowest}.`,
        ]
          .filter(Boolean)
          .join(' ')}
      >
        <rect
          fill="var(--sheet-sunk)"
          x={at(0)}
          y={TRACK.top}
          width={at(ticks.at(-1)!) - at(0)}
          height={TRACK.height}
        />
        {endUse && (
          <rect
            fill={paint('ready-soft')}
            stroke={paint('ready')}
            x={at(endUse.minPct)}
            y={TRACK.top}
            width={at(endUse.maxPct) - at(endUse.minPct)}
            height={TRACK.height}
          />
        )}
        {place && <path d={`M${floorAt} 18V${below - 4}`} {...lineLook('bring-in', 'dashed')} />}
        {endUse && (
          <text fill={paint('ready')} fontWeight={650} {...targetWord} y={TRACK.top - 6}>
            {target}
          </text>
        )}
        {place && (
          <text
            fill={paint('bring-in')}
            x={floorAt}
            y="12"
            textAnchor={floorAt < width / 2 ? 'start' : 'end'}
          >
            {say('forecast.lowest-emc', { emcPct: place.emcPct })}
          </text>
        )}
        <path
          d={`M${at(low)} ${middle}H${at(high)}`}
          stroke={paint('line-strong')}
          strokeWidth="8"
          strokeLinecap="round"
        />
        {averageIs === 'read' && <circle fill={paint('ink')} cx={at(averagePct)} cy={middle} r="8" />}
        {shellPct !== null && <PointMark shape="square" color="keep-drying" x={at(shellPct)} y={below} />}
        {corePct !== null && (
          <PointMark shape="triangle" color="bring-in" x={at(corePct)} y={below + (isClose ? 14 : 0)} />
        )}
        {ticks.map((pct) => (
          <text
            key={pct}
            x={at(pct)}
            y={height - 4}
            textAnchor={pct === 0 ? 'start' : pct === ticks.at(-1) ? 'end' : 'middle'}
          >
            {formats.percent(pct)}
          </text>
        ))}
      </svg>
    </div>
  );
}
