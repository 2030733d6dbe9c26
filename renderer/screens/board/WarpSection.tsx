import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { type DisplayUnits, shortLengthText } from '../../../shared-core/units/length.ts';
import { usualRingRadiusMm, type Warp, type WarpAdvice } from '../../../shared-core/wood/movement/warp.ts';
import { Said } from '../../parts/Said.tsx';
import './warp.css';

const WIDTH = 220;
const HEIGHT = 64;
const THICK = 16;
/** The drawing bends this much more than the board. */
const EXAGGERATION = 6;

const aboutWords: Record<WarpAdvice['about'], string> = {
  bark: 'Bark',
  flip: 'Turn it over',
  weight: 'Weight',
  stickers: 'Stickers',
  'end-seal': 'Ends',
  casehardening: 'Casehardening',
};

/** How much the board cups now and when it is dry, what was taken for granted, and what to do about it. */
export function WarpSection({
  warp,
  board,
  widthMm,
  units,
  targetWords,
}: {
  warp: Warp;
  /** What was said of its rings. */
  board: Pick<BoardRow, 'sawing' | 'ringRadiusMm' | 'barkSide'>;
  widthMm: number;
  units: DisplayUnits;
  /** What it is dried to: "7.0 %". */
  targetWords: string;
}) {
  const isSideKnown = board.barkSide !== 'unknown';
  const figures = { widthMm, units, isSideKnown };
  return (
    <>
      <div className="warp-pair">
        <CupFigure when="Now" cup={warp.now} {...figures} />
        <CupFigure when={`At ${targetWords}`} cup={warp.atTarget} {...figures} />
      </div>
      <p className="warp-hint">
        If nothing held it flat. Its rings make the bark side hollow; unlike faces, the drier one. Drawn more
        bent than it is.
      </p>
      {(!isSideKnown || board.ringRadiusMm === null) && (
        <ul className="warp-granted" aria-label="Taken for granted">
          {!isSideKnown && (
            <li>
              Nobody said which face was nearer the bark, so its rings are taken to pull the same way as its
              drier face: the worse case.
            </li>
          )}
          {board.ringRadiusMm === null && (
            <li>
              Nobody said how far the pith is from its middle: {shortLengthText(usualRingRadiusMm, units)} is
              taken, as in a middling log (common practice, no source).
              {board.sawing !== 'quarter' && ' Nearer the pith it cups more.'}
            </li>
          )}
          <li>Both can be seen on its end, and given under “Change”.</li>
        </ul>
      )}
      {warp.advice.length === 0 ? (
        <p>Nothing needs doing about it beyond good stickering.</p>
      ) : (
        <ul className="warp-advice" aria-label="What to do about it">
          {warp.advice.map(({ about, sentence, source }) => (
            <li key={about}>
              <strong>{aboutWords[about]}.</strong> <Said>{sentence}</Said> <small>{source}</small>
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

function CupFigure({
  when,
  cup,
  widthMm,
  units,
  isSideKnown,
}: {
  when: string;
  cup: Warp['now'];
  widthMm: number;
  units: DisplayUnits;
  /** Whether it is known which side will be hollow. */
  isSideKnown: boolean;
}) {
  const deep = (mm: number) => depthText(Math.abs(mm), units);
  const isAgainst = isSideKnown && cup.ringsMm * cup.facesMm < 0;
  return (
    <figure className="warp-figure">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path className="warp-board" d={endPath(cup.totalMm, widthMm)} />
      </svg>
      <figcaption>
        {when}: {!isSideKnown && 'up to '}
        <strong>{deep(cup.totalMm)} hollow</strong>{' '}
        {isSideKnown && `on its ${cup.totalMm < 0 ? 'lower' : 'upper'} side `}over{' '}
        {shortLengthText(widthMm, units)}
        <small>
          {deep(cup.ringsMm)} from its rings, {isAgainst && 'against '}
          {deep(cup.facesMm)} from unlike faces
        </small>
      </figcaption>
    </figure>
  );
}

/** Finer than a tape shows: a cup of a millimetre matters. */
const depthText = (mm: number, units: DisplayUnits) =>
  units === 'metric' ? `${mm.toFixed(1)} mm` : `${(mm / 25.4).toFixed(2)} in`;

/** The board's end, its upper face hollow where the cup is above 0. */
function endPath(cupMm: number, widthMm: number): string {
  const scale = (WIDTH - 20) / widthMm;
  const deep = Math.max(-40, Math.min(40, cupMm * EXAGGERATION * scale));
  const top = (HEIGHT - THICK - Math.abs(deep)) / 2 + Math.max(0, -deep);
  // A quadratic curve passes half way to its control point.
  const control = top + 2 * deep;
  return `M10 ${top}Q${WIDTH / 2} ${control} ${WIDTH - 10} ${top}v${THICK}Q${WIDTH / 2} ${control + THICK} 10 ${top + THICK}z`;
}
