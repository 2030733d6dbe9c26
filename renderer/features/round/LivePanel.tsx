import { newestInsertion } from '../../../shared-core/probing/readings/insertion.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { Trace } from '../../chart/Trace.tsx';
import { isLinkLost, useLink } from '../../stores/link.ts';
import { useMeter } from '../../stores/meter.ts';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { McValue } from '../../ui/McValue.tsx';
import { PhaseMark } from '../../ui/PhaseMark.tsx';
import { useWords } from '../../words.ts';
import { UnusedAfar } from './UnusedAfar.tsx';
import type { Probing } from './useProbing.ts';
import css from './ValuePanel.module.css';

/** So many values fill the picture at least: a lively meter's first seconds. */
const LEAST_SLOTS = 40;

/**
 * The live value: corrected and raw, what the pins are doing, and how it got there. With the pins out, the board's
 * last saved reading stays in sight, and says so.
 */
export function LivePanel({ board: { boardId }, isFar, isDoubtful: isDoubtfulOf }: Probing) {
  const { say } = useWords();
  const live = useMeter((meter) => meter.live);
  const trace = useMeter((meter) => meter.trace);
  const isLost = useLink(isLinkLost);
  const saved = useRound((store) => store.saved);
  const { wasAway, isMissed } = useMeter();
  const savesItself = useSettings(({ settings }) => settings?.saveWhenSettled ?? false);
  const phase = live?.phase ?? 'pins-out';
  const shown = phase === 'pins-out' && saved?.board.boardId === boardId ? saved.reading : null;
  const isDoubtful = shown !== null && isDoubtfulOf(shown);
  const unit = shown?.unit ?? live?.unit ?? 'pct';
  const silentS = live?.silentS ?? null;
  const unsaved = silentS === null && (wasAway || isMissed) && savesItself && phase !== 'pins-out';
  // While the pins are still in, something can still be done about it.
  const warning = live?.corrected?.warnings[0];
  return (
    <div className={`sheet ${css.live}`}>
      <p className={css.phase}>
        {isLost ? (
          <span className={`${css.warning} ${css.afar}`}>
            {say(isFar ? 'round.nothing-saved.far' : 'round.nothing-saved')}
          </span>
        ) : (
          // From far away there is room for one of the two.
          !(isFar && unsaved) && silentS === null && <PhaseMark phase={phase} />
        )}
        {silentS !== null && !isLost && (
          <span className={`${css.warning} ${css.afar}`}>{say('live.silent', { seconds: silentS })}</span>
        )}
        {shown && (
          <span className={isDoubtful ? `${css.saved} ${css.questionable}` : css.saved}>
            {say(stateOf(shown, isDoubtful), { depth: shown.spot.depth })}
          </span>
        )}
        {isFar && shown && <UnusedAfar reading={shown} className={`${css.warning} ${css.afar}`} />}
        {unsaved && (
          <span className={`${css.warning} ${css.afar}`}>
            {say(`${wasAway ? 'live.was-away' : 'live.missed'}${isFar ? '.far' : ''}`)}
          </span>
        )}
        {warning && (
          <span className={css.warning}>
            {isFar && warning === 'above-fiber-saturation'
              ? say('live.warning.above-fiber-saturation.far')
              : say(`live.warning.${warning}`)}
          </span>
        )}
      </p>
      <div className={shown && !isDoubtful ? `${css.number} ${css.sound}` : css.number}>
        <McValue
          corrected={(shown ?? live)?.corrected ?? null}
          raw={shown ? shown.raw : (live?.raw ?? null)}
          unit={unit}
          size="huge"
        />
      </div>
      <Trace values={newestInsertion(trace)} unit={unit} slots={LEAST_SLOTS} />
    </div>
  );
}

function stateOf(
  { counts }: JudgedReading,
  isDoubtful: boolean,
): 'live.saved' | 'live.questionable' | 'live.not-used' {
  if (!counts) return 'live.not-used';
  return isDoubtful ? 'live.questionable' : 'live.saved';
}
