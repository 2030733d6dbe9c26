import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { CalibrationChart } from './CalibrationChart.tsx';
import { OvenCheckTable } from './OvenCheckTable.tsx';

/** The checks made with one meter: whether they are worth using, a chart of them, and each piece. */
export function OwnFitPart({ own, species }: { own: OwnFit; species: Species }) {
  const { say } = useWords();
  const title =
    own.meterName === null ? say('oven.typed') : say('oven.read-with', { meterName: own.meterName });
  return (
    <section className="own-fit" aria-label={title}>
      <h3>{title}</h3>
      <Worth own={own} species={species} />
      {own.fit && <CalibrationChart own={own} speciesName={species.name} />}
      <OvenCheckTable own={own} />
    </section>
  );
}

/** Whether the fit is worth using, and the switch. */
function Worth({ own, species }: { own: OwnFit; species: Species }) {
  const { say } = useWords();
  const speciesName = species.name;
  const chooseFit = (chosen: boolean) =>
    attempt(
      bridge().command('ovenChecks.useFit', { speciesId: species.id, meterId: own.meterId, inUse: chosen }),
    );
  if (own.inUse) {
    return (
      <Banner
        kind={own.applied ? 'done' : 'caution'}
        actions={<Button onClick={() => void chooseFit(false)}>{say('oven.stop')}</Button>}
      >
        {own.applied ? (
          <>
            <strong>{say('oven.in-use')}</strong> {say('oven.in-use-effect', { speciesName })}{' '}
          </>
        ) : (
          <>
            <strong>{say('oven.waiting')}</strong> {say('oven.waiting-effect')}{' '}
          </>
        )}
        {say(own.status)}
      </Banner>
    );
  }
  if (own.fit?.worthUsing) {
    return (
      <Banner
        actions={
          <Button kind="main" onClick={() => void chooseFit(true)}>
            {say('oven.use')}
          </Button>
        }
      >
        <strong>{say('oven.worth')}</strong> {say(own.status)} {say('oven.use-effect', { speciesName })}
      </Banner>
    );
  }
  return (
    <Banner>
      <strong>{say(own.fit ? 'oven.not-worth' : 'oven.too-early')}</strong> {say(own.status)}
    </Banner>
  );
}
