import { useState } from 'react';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Sheet } from '../../ui/Screen.tsx';
import { SourcesLink } from '../../ui/SourcesLink.tsx';
import { useWords } from '../../words.ts';
import { OvenCheckForm } from './OvenCheckForm.tsx';
import { OwnFitPart } from './OwnFitPart.tsx';
import css from './species.module.css';

/** Of the oven: 103 ± 2 °C (ASTM D4442 and EN 13183-1). */
const OVEN = { leastTempC: 101, limitTempC: 105 };

/** The person's own oven-dry checks of a species, what they show of the meter, and whether they correct its readings. */
export function OvenChecksSection({ species }: { species: Species }) {
  const { say } = useWords();
  const fits = useQuery('ovenChecks.ofSpecies', { speciesId: species.id });
  const [adding, setAdding] = useState(false);
  const add = () => setAdding(true);
  const pieces = fits.output?.flatMap((fit) => fit.checks.map((check) => check.piece)) ?? [];
  return (
    <Sheet title={say('oven.title')} actions={<Button onClick={add}>{say('oven.add')}</Button>}>
      <p className={css.lead}>
        {say('oven.lead-read')} {say('oven.lead-dry', OVEN)} {say('oven.lead-result')}
      </p>
      <Banner kind="caution">{say('oven.caution', OVEN)}</Banner>
      <SourcesLink part="shrinkage" />
      <Await of={[fits]}>
        {(all) =>
          all.length === 0 ? (
            <EmptyState sentence={say('oven.none', { speciesName: species.name })}>
              <Button kind="main" onClick={add}>
                {say('oven.add-first')}
              </Button>
            </EmptyState>
          ) : (
            all.map((fit) => <OwnFitPart key={fit.meterId ?? 'typed'} own={fit} species={species} />)
          )
        }
      </Await>
      {adding && <OvenCheckForm species={species} pieces={pieces} onClose={() => setAdding(false)} />}
    </Sheet>
  );
}
