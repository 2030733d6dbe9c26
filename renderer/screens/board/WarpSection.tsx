import { type DisplayUnits, shortLengthText } from '../../../shared-core/units/length.ts';
import type { Warp, WarpAdvice } from '../../../shared-core/wood/warp.ts';
import './warp.css';

const WIDTH = 220;
const HEIGHT = 64;
const THICK = 16;
/** The drawing bends this much more than the board. */
const EXAGGERATION = 6;

const aboutWords: Record<WarpAdvice['about'], string> = {
  flip: 'Turn it over',
  weight: 'Weight',
  stickers: 'Stickers',
  'end-seal': 'Ends',
  casehardening: 'Casehardening',
};

/** How much the board cups now and when it is dry, and what to do about it. */
export function WarpSection({
  warp,
  widthMm,
  units,
  targetWords,
}: {
  warp: Warp;
  widthMm: number;
  units: DisplayUnits;
  /** What it is dried to: "7.0 %". */
  targetWords: string;
}) {
  return (
    <>
      <div className="warp-pair">
        <CupFigure when="Now" cup={warp.now} widthMm={widthMm} units={units} />
        <CupFigure when={`At ${targetWords}`} cup={warp.atTarget} widthMm={widthMm} units={units} />
      </div>
      <p className="warp-hint">
        If nothing held it flat. Its rings make the bark side hollow; unlike faces, the drier one. Drawn more
        bent than it is.
      </p>
      {warp.advice.length === 0 ? (
        <p>Nothing needs doing about it beyond good stickering.</p>
      ) : (
        <ul className="warp-advice">
          {warp.advice.map(({ about, sentence, source }) => (
            <li key={about}>
              <strong>{aboutWords[about]}.</strong> {sentence} <small>{source}</small>
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
}: {
  when: string;
  cup: Warp['now'];
  widthMm: number;
  units: DisplayUnits;
}) {
  const deep = (mm: number) => depthText(Math.abs(mm), units);
  return (
    <figure className="warp-figure">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path className="warp-board" d={endPath(cup.totalMm, widthMm)} />
      </svg>
      <figcaption>
        {when}: <strong>{deep(cup.totalMm)} hollow</strong> over {shortLengthText(widthMm, units)}
        <small>
          {deep(cup.ringsMm)} from its rings, {deep(cup.facesMm)} from unlike faces
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
