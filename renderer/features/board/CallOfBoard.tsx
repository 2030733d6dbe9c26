import type { ReactNode } from 'react';
import type { BoardRow, LatestFinding } from '../../../shared-core/contract/yard.ts';
import type { Color, Shape } from '../../../shared-core/drawing/chart/description.ts';
import { isGradientOfDrying } from '../../../shared-core/probing/calls/gradient-of-drying.ts';
import type { Judgement } from '../../../shared-core/probing/calls/judgement.ts';
import { readAtUnknown } from '../../../shared-core/probing/readings/told-depths.ts';
import { shownPoints } from '../../../shared-core/wood/moisture/shown-points.ts';
import type { EndUse } from '../../../shared-core/wood/species/end-use.ts';
import { PointMark } from '../../chart/marks.tsx';
import { CallOrSpots } from '../../ui/CallOrSpots.tsx';
import { averageText, mcOrDash } from '../../ui/McValue.tsx';
import { ReadyCautions } from '../../ui/ReadyCautions.tsx';
import { useWords } from '../../words.ts';
import css from './board.module.css';
import { McScale } from './McScale.tsx';

/** The latest round's call with its one sentence, and the figures under it against the target. */
export function CallOfBoard({
  board: { latest },
  endUse,
  judgement: { call, reasons, lowestEmc },
}: {
  board: BoardRow;
  /** Null where it is not known. */
  endUse: EndUse | null;
  judgement: Judgement;
}) {
  const { say } = useWords();
  const [reason] = reasons;
  if (!latest || !reason) return <p className={css.sentence}>{say('board.not-probed')}</p>;
  return (
    <>
      <p className={css.call}>
        <CallOrSpots finding={{ ...latest, call }} size="large" />
        <span className="soft">
          {say('board.probed-on', { probedOn: latest.at })}
          <br />
          {endUse && say('board.use', { useName: endUse.name })}
        </span>
      </p>
      <p className={css.sentence}>{say(reason)}</p>
      {call === 'ready' && endUse && <ReadyCautions useId={endUse.id} />}
      {isMeasured(latest) && <McScale found={latest} endUse={endUse} lowestEmc={lowestEmc} />}
      {(isMeasured(latest) || latest.shellPct !== null) && <Figures found={latest} endUse={endUse} />}
      {latest.whyAverage && <p className="soft">{say(latest.whyAverage)}</p>}
    </>
  );
}

type Measured = LatestFinding & { averagePct: number };
const isMeasured = (found: LatestFinding): found is Measured => found.averagePct !== null;

function Figures({ found, endUse }: { found: LatestFinding; endUse: EndUse | null }) {
  const { averagePct, averageIs, lowPct, highPct, shellPct, corePct, isQuestionable, isDepthUnknown } = found;
  const words = useWords();
  const { say, formats } = words;
  return (
    <dl className={css.figures}>
      <Figure
        label={say(averageIs === 'estimated' ? 'board.average-estimated' : 'board.average')}
        {...(averageIs === 'read' && { mark: ['disc', 'ink'] as const })}
        note={
          isQuestionable
            ? say('board.questionable')
            : averageIs === 'above'
              ? say('board.above-scale')
              : averagePct === null
                ? say(isDepthUnknown ? 'board.average-depth-unknown' : 'board.average-unknown')
                : lowPct !== null &&
                  highPct !== null &&
                  say('board.likely', { likelyInterval: { minPct: lowPct, maxPct: highPct } })
        }
      >
        {averageText(found, words)}
      </Figure>
      {isDepthUnknown ? (
        <Figure label={say('board.mc-depth-unknown')}>{mcOrDash(readAtUnknown(found), formats)}</Figure>
      ) : (
        <>
          <Figure label={say('board.shell')} mark={['square', 'keep-drying']}>
            {mcOrDash(shellPct, formats)}
          </Figure>
          <Figure label={say('board.core')} mark={['triangle', 'bring-in']}>
            {corePct === null && shellPct !== null ? say('board.not-read') : mcOrDash(corePct, formats)}
          </Figure>
        </>
      )}
      {!isDepthUnknown && shellPct !== null && corePct !== null && (
        <Figure
          label={say('board.difference')}
          note={
            averagePct !== null &&
            endUse?.maxShellCorePct != null &&
            (isGradientOfDrying({ averagePct, shellPct, corePct }, endUse)
              ? say('board.difference-of-drying')
              : say('board.difference-allowed', { allowedPoints: endUse.maxShellCorePct }))
          }
        >
          {shownPoints(shellPct, corePct) > 0
            ? say('board.shell-wetter', { differencePoints: shownPoints(shellPct, corePct) })
            : formats.points(shownPoints(corePct, shellPct))}
        </Figure>
      )}
    </dl>
  );
}

/** A figure under its label, with how the drawing marks it. */
export function Figure({
  label,
  mark,
  note,
  children,
}: {
  label: string;
  mark?: readonly [Shape, Color];
  note?: ReactNode;
  children: ReactNode;
}) {
  return (
    <div>
      <dt>
        {mark && (
          <svg viewBox="0 0 20 20" aria-hidden="true">
            <PointMark shape={mark[0]} color={mark[1]} x={10} y={10} />
          </svg>
        )}
        {label}
      </dt>
      <dd className={css.figure}>{children}</dd>
      {note && <dd className="soft">{note}</dd>}
    </div>
  );
}
