import { isToBeAsked } from '../../../shared-core/contract/meter.ts';
import { isBeyondScales } from '../../../shared-core/probing/suspicions/reading-suspicions.ts';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { useQuery } from '../../data/useQuery.ts';
import { useMeter } from '../../stores/meter.ts';
import { go } from '../../stores/navigation.ts';
import { useRound } from '../../stores/round.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';
import { AskProfile } from '../meter/AskProfile.tsx';
import { ConfirmMeter } from '../meter/ConfirmMeter.tsx';
import { SameInReach } from '../meter/SameInReach.tsx';
import { SpeciesSetting } from '../meter/SpeciesSetting.tsx';
import { LivePanel } from './LivePanel.tsx';
import { SavedNote } from './SavedNote.tsx';
import { TypedPanel } from './TypedPanel.tsx';
import { UnsavedValue } from './UnsavedValue.tsx';
import type { Probing } from './useProbing.ts';
import css from './ValuePanel.module.css';

/** The value at hand, live or typed, and under it what came of the last one or what must be decided about this one. */
export function ValuePanel(probing: Probing) {
  const { typing, filledBy, unsaved, nextSpot, savedBoard, mayBeOther, leaves, meterIsLive, by, act } =
    probing;
  const words = useWords();
  const { say } = words;
  const trouble = useRound((store) => store.trouble);
  const replace = (
    <Button shortcut="R" onClick={() => act('replace')}>
      {say('round.replace')}
    </Button>
  );
  const saveAtNext = nextSpot !== null && (
    <Button shortcut="N" onClick={() => act('save-at-next')}>
      {say('round.save-at-next')}
    </Button>
  );
  return (
    <section className={css.value} aria-label={say('round.reading')}>
      {typing === null ? <LivePanel {...probing} /> : <TypedPanel {...probing} />}
      {meterIsLive && <MeterToConfirm />}
      {filledBy !== null && (
        <Banner
          kind="caution"
          actions={
            <>
              {replace}
              {saveAtNext}
            </>
          }
        >
          {say('round.filled-meanwhile', {
            how: filledBy.how,
            shownValue: shownText(filledBy, words),
          })}
        </Banner>
      )}
      {savedBoard && (
        <Banner
          kind="caution"
          actions={
            <>
              {replace}
              {mayBeOther && (
                <Button shortcut={say('key.space')} onClick={() => act('take')}>
                  {say('round.save-here')}
                </Button>
              )}
            </>
          }
        >
          {say(mayBeOther ? 'round.pins-maybe-saved' : 'round.pins-saved', { boardCode: savedBoard.code })}
        </Banner>
      )}
      {unsaved && <UnsavedValue draft={unsaved} />}
      {trouble !== null && <Banner kind="problem">{trouble}</Banner>}
      {leaves !== null && <Banner kind="caution">{say('round.leaves-open', { spots: leaves, by })}</Banner>}
      {trouble === null && leaves === null && !unsaved && (
        <>
          <SavedNote {...probing} />
          <MeterQuestion {...probing} />
        </>
      )}
    </section>
  );
}

/** A meter that is not as it was, or not set as it was; where its display shows neither number, it is set up on its page. */
function MeterToConfirm() {
  const { say } = useWords();
  const state = useMeter((meter) => meter.state);
  if (state === null) return null;
  const otherwise = <Button onClick={() => go({ name: 'meter' })}>{say('meter.confirm.other')}</Button>;
  return (
    <>
      <SameInReach state={state} />
      <ConfirmMeter state={state} otherwise={otherwise} />
      <SpeciesSetting state={state} onlyWrong />
    </>
  );
}

/** What the meter is set to, asked once: at the first value that is typed, or when one is connected. */
function MeterQuestion({ round: { id: roundId }, meterIsLive }: Probing) {
  const { output } = useQuery('meters.list', {});
  const liveId = useMeter(({ state }) => (state?.toConfirm === null ? state.meterId : null));
  const reading = useRound(({ saved }) => saved?.reading);
  const isNameless = reading?.how === 'typed' && reading.roundId === roundId && reading.meterId === null;
  const isOhms = isNameless && reading.unit === 'pct' && isBeyondScales(reading.raw);
  // What is wrong with the reading comes first, but where the meter may be all that is.
  if (output === null || (!isOhms && isQuestionable(reading?.suspicions ?? []))) return null;
  const isLive = meterIsLive || (reading?.how === 'typed' && reading.meterId === liveId);
  const live = isLive && output.find((meter) => meter.id === liveId && isToBeAsked(meter));
  if (live) return <AskProfile meter={live} roundId={roundId} />;
  return isNameless && !output.some(({ isTypedFrom }) => isTypedFrom) ? (
    <AskProfile meter={null} roundId={roundId} isOhms={isOhms} />
  ) : null;
}
