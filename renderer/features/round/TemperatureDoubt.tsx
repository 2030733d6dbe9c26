import type { JudgedReading, Suspicion } from '../../../shared-core/probing/readings/reading.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { setWoodTemp } from '../../stores/round-opening.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import type { Probing } from './useProbing.ts';

/** The suspicion that the wood's temperature is unlikely; null where no reading raises it. */
export const temperatureDoubt = (readings: readonly JudgedReading[]): Suspicion | null =>
  readings
    .filter(({ excluded }) => excluded === null)
    .flatMap(({ suspicions }) => suspicions)
    .find(({ rule }) => rule === 'temperature-unlikely') ?? null;

/** The probe's own where it was measured; else the board's or the round's. */
const readingOf = ({ probed }: Probing, doubt: Suspicion): JudgedReading | undefined =>
  probed?.assessment?.readings.find(({ suspicions }) => suspicions.includes(doubt));

/** Whether what is unlikely is what the round gives all its boards: correcting one would leave the slip on the next. */
export function isRoundsTempDoubted(probing: Probing): boolean {
  const doubt = temperatureDoubt(probing.probed?.assessment?.readings ?? []);
  return doubt !== null && !probing.board.ownTemp && readingOf(probing, doubt)?.probeName === undefined;
}

/** Asks once whether the wood's temperature is right: given again, as it is, it is no longer questioned. */
export function TemperatureDoubt({ doubt, probing }: { doubt: Suspicion; probing: Probing }) {
  const { board, act } = probing;
  const { say } = useWords();
  const reading = readingOf(probing, doubt);
  const isMeasured = reading?.probeName !== undefined;
  const { woodTempC } = isMeasured ? reading : board;
  const scope = board.ownTemp || isMeasured ? board.boardId : null;
  async function confirm(): Promise<void> {
    if (woodTempC === null) return;
    // It is the board's only once a person gives it.
    if (isMeasured) await setWoodTemp(scope, woodTempC);
    await setWoodTemp(scope, woodTempC);
    tellUndoable(say('round-temp.confirmed', { woodTempC }), async () => {
      await setWoodTemp(scope, null);
      await setWoodTemp(scope, woodTempC);
    });
  }
  return (
    <Banner
      kind="caution"
      actions={
        <>
          <Button onClick={() => void confirm()}>{say('round-temp.right')}</Button>
          <Button kind="quiet" shortcut="T" onClick={() => act('temperature')}>
            {say('round-temp.correct')}
          </Button>
        </>
      }
    >
      {say(doubt.why)}
    </Banner>
  );
}
