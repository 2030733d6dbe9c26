import type { BoardRow } from '../../../shared-core/contract/yard.ts';
import { usualRingRadiusMm, type Warp } from '../../../shared-core/wood/movement/warp.ts';
import { useWords } from '../../words.ts';
import css from './board.module.css';

const WIDTH = 220;
const HEIGHT = 64;
const THICK = 16;
/** The drawing bends this much more than the board. */
const EXAGGERATION = 6;

/** How much the board cups now and when it is dry, on which assumptions, and what to do about it. */
export function CupSection({
  warp,
  board,
  widthMm,
  targetPct,
}: {
  warp: Warp;
  /** What is known of its rings. */
  board: Pick<BoardRow, 'sawing' | 'ringRadiusMm' | 'barkSide'>;
  widthMm: number;
  /** What it is dried to. */
  targetPct: number;
}) {
  const { say } = useWords();
  const isSideKnown = board.barkSide !== 'unknown';
  const isPithKnown = board.ringRadiusMm !== null;
  const figures = { widthMm, isSideKnown };
  return (
    <>
      <div className={css.cups}>
        <CupFigure when={say('cup.now')} cup={warp.now} {...figures} />
        <CupFigure when={say('cup.at-target', { targetPct })} cup={warp.atTarget} {...figures} />
      </div>
      <p className="soft">
        {say('cup.free')} {say('cup.why')} {say('cup.exaggerated')}
      </p>
      {(!isSideKnown || !isPithKnown) && (
        <ul className="soft list" aria-label={say('cup.assumptions')}>
          {!isSideKnown && <li>{say('cup.bark-side-unknown')}</li>}
          {!isPithKnown && (
            <li>
              {say('cup.pith-unknown', { radiusMm: usualRingRadiusMm })}
              {board.sawing !== 'quarter' && ` ${say('cup.pith-nearer')}`}
            </li>
          )}
          <li>{say('cup.see-end')}</li>
        </ul>
      )}
      {warp.advice.length === 0 ? (
        <p>{say('cup.nothing-to-do')}</p>
      ) : (
        <ul className={`list ${css.moves}`} aria-label={say('cup.advice')}>
          {warp.advice.map(({ about, message }) => (
            <li key={about}>
              <strong>{say(`cup.about.${about}`)}.</strong> {say(message)}
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
  isSideKnown,
}: {
  when: string;
  cup: Warp['now'];
  widthMm: number;
  /** Whether it is known which side will be hollow. */
  isSideKnown: boolean;
}) {
  const { say } = useWords();
  const depth = { cupMm: Math.abs(cup.totalMm), widthMm };
  const causes = { ringsMm: Math.abs(cup.ringsMm), facesMm: Math.abs(cup.facesMm) };
  const isAgainst = isSideKnown && cup.ringsMm * cup.facesMm < 0;
  return (
    <figure className={css.cup}>
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} aria-hidden="true">
        <path fill="var(--keep-drying-soft)" stroke="var(--keep-drying)" d={endPath(cup.totalMm, widthMm)} />
      </svg>
      <figcaption>
        <span>{when}</span>
        <strong>
          {isSideKnown
            ? say(`cup.hollow-${cup.totalMm < 0 ? 'down' : 'up'}`, depth)
            : say('cup.up-to', depth)}
        </strong>
        <small>
          {cup.facesMm === 0
            ? say('cup.cause-rings')
            : say(isAgainst ? 'cup.causes-against' : 'cup.causes-together', causes)}
        </small>
      </figcaption>
    </figure>
  );
}

/** The board's end, its upper face hollow where the cup is above 0. */
function endPath(cupMm: number, widthMm: number): string {
  const scale = (WIDTH - 20) / widthMm;
  const deep = Math.max(-40, Math.min(40, cupMm * EXAGGERATION * scale));
  const top = (HEIGHT - THICK - Math.abs(deep)) / 2 + Math.max(0, -deep);
  // A quadratic curve passes half way to its control point.
  const control = top + 2 * deep;
  return `M10 ${top}Q${WIDTH / 2} ${control} ${WIDTH - 10} ${top}v${THICK}Q${WIDTH / 2} ${control + THICK} 10 ${top + THICK}z`;
}
