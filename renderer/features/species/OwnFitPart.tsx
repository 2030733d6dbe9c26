import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt } from '../../stores/notices.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { useWords } from '../../words.ts';
import { CalibrationChart } from './CalibrationChart.tsx';
import { OvenCheckTable } from './OvenCheckTable.tsx';
import css from './species.module.css';

/** The checks made with one meter: whether they are worth using, a chart of them, and each piece. */
export function OwnFitPart({ own, species }: { own: OwnFit; species: Species }) {
  const { say } = useWords();
  const title =
    own.meterName === null ? say('oven.typed') : say('oven.read-with', { meterName: own.meterName });
  return (
    <section className={`column ${css.fit}`} aria-label={title}>
      <h3>{title}</h3>
      <Worth own={own} species={species} />
      {own.fit && <CalibrationChart own={own} speciesName={species.name} />}
      <OvenCheckTable own={own} />
    </section>
  );
}

/** Whether the fit is worth using, and the switch. */
function Worth({
  own: { inUse, applied, fit, meterId, status },
  species,
}: {
  own: OwnFit;
  species: Species;
}) {
  const { say } = useWords();
  const speciesName = species.name;
  const isOffered = !inUse && fit?.worthUsing === true;
  const choose = () =>
    attempt(bridge().command('ovenChecks.useFit', { speciesId: species.id, meterId, inUse: !inUse }));
  return (
    <Banner
      {...(inUse && { kind: applied ? 'done' : 'caution' })}
      actions={
        (inUse || isOffered) && (
          <Button kind={inUse ? 'plain' : 'main'} onClick={() => void choose()}>
            {say(inUse ? 'oven.stop' : 'oven.use')}
          </Button>
        )
      }
    >
      {inUse ? (
        <>
          <strong>{say(applied ? 'oven.in-use' : 'oven.waiting')}</strong>{' '}
          {applied ? say('oven.in-use-effect', { speciesName }) : say('oven.waiting-effect')}
        </>
      ) : (
        <strong>{say(isOffered ? 'oven.worth' : fit ? 'oven.not-worth' : 'oven.too-early')}</strong>
      )}{' '}
      {say(status)} {isOffered && say('oven.use-effect', { speciesName })}{' '}
      {!applied && say('oven.shift-effect')}
    </Banner>
  );
}
