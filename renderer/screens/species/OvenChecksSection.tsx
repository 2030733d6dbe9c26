import { useState } from 'react';
import type { Species } from '../../../shared-core/wood/species/species.ts';
import { Banner } from '../../parts/Banner.tsx';
import { Button } from '../../parts/Button.tsx';
import { EmptyState, Failed, Loading, Sheet } from '../../parts/Screen.tsx';
import { useAnswer } from '../../useAnswer.ts';
import { OvenCheckForm } from './OvenCheckForm.tsx';
import { OwnFitPart } from './OwnFitPart.tsx';
import './oven-checks.css';

/** The person's own oven-dry checks of a wood, what they say of the meter, and whether they correct its readings. */
export function OvenChecksSection({ species }: { species: Species }) {
  const fits = useAnswer('ovenChecks.ofSpecies', { speciesId: species.id });
  const [adding, setAdding] = useState(false);
  const add = () => setAdding(true);
  const pieces = fits.output?.flatMap((fit) => fit.checks.map((check) => check.piece)) ?? [];
  return (
    <Sheet title="Your own oven-dry checks" actions={<Button onClick={add}>Add a check</Button>}>
      <p className="oven-lead">
        Read a piece with the meter, weigh it at once, dry it at 103 ± 2 °C until its mass is constant, and
        weigh it as it dries. The oven tells what the piece really held (ASTM D4442, EN 13183-1); five pieces
        or more, from damp to dry, tell what your meter shows on this wood.
      </p>
      <Banner kind="caution">
        The oven and the wood are hot: use gloves or tongs. Do not leave wood in a hot oven alone, nor go
        above 105 °C; resinous wood gives off vapours that burn, so air the room and dry such wood elsewhere
        than in a kitchen.
      </Banner>
      {fits.error && <Failed sentence={fits.error} again={fits.again} />}
      {fits.loading && <Loading what="the checks" />}
      {fits.output?.length === 0 && (
        <EmptyState sentence={`No piece of ${species.name} was checked yet.`}>
          <Button kind="main" onClick={add}>
            Add the first check
          </Button>
        </EmptyState>
      )}
      {fits.output?.map((fit) => (
        <OwnFitPart key={fit.meterId ?? 'typed'} own={fit} species={species} />
      ))}
      {adding && <OvenCheckForm species={species} pieces={pieces} onClose={() => setAdding(false)} />}
    </Sheet>
  );
}
