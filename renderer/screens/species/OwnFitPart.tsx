import type { OwnFit } from '../../../shared-core/contract/oven-checks.ts';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Button } from '../../parts/Button.tsx';
import { attempt } from '../../stores/notices.ts';
import { CalibrationChart } from './CalibrationChart.tsx';
import { OvenCheckTable } from './OvenCheckTable.tsx';

/** The checks made with one meter: what they say, drawn and as a verdict, and each piece. */
export function OwnFitPart({ own, species }: { own: OwnFit; species: Species }) {
  return (
    <section className="own-fit" aria-label={`Read with ${own.meterName}`}>
      <h3>Read with {own.meterName}</h3>
      <Call own={own} species={species} />
      {own.fit && <CalibrationChart own={own} speciesName={species.name} />}
      <OvenCheckTable own={own} />
    </section>
  );
}

/** Whether the fit is worth using, in words, and the switch. */
function Call({ own, species }: { own: OwnFit; species: Species }) {
  const chooseFit = (chosen: boolean) =>
    attempt(
      bridge().command('ovenChecks.useFit', { speciesId: species.id, meterId: own.meterId, inUse: chosen }),
    );
  if (own.inUse) {
    return (
      <Banner
        kind={own.applied ? 'done' : 'caution'}
        actions={<Button onClick={() => void chooseFit(false)}>Stop using them</Button>}
      >
        {own.applied ? (
          <>
            <strong>In use.</strong> Readings of {species.name} with this meter are corrected by your checks.{' '}
          </>
        ) : (
          <>
            <strong>Chosen, but not in use.</strong> Readings are corrected as published until the checks are
            worth using again.{' '}
          </>
        )}
        {own.sentence}
      </Banner>
    );
  }
  if (own.fit?.worthUsing) {
    return (
      <Banner
        actions={
          <Button kind="main" onClick={() => void chooseFit(true)}>
            Use them
          </Button>
        }
      >
        <strong>Worth using.</strong> {own.sentence} Boards of {species.name} are judged again.
      </Banner>
    );
  }
  return (
    <Banner>
      <strong>{own.fit ? 'Not worth using.' : 'Too early to say.'}</strong> {own.sentence}
    </Banner>
  );
}
