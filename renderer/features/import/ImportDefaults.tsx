import { useState } from 'react';
import type { ImportChoices } from '../../../shared-core/contract/import.ts';
import { typedLengthMm, typedQuarters } from '../../../shared-core/units/typed-length.ts';
import { useQuery } from '../../data/useQuery.ts';
import { Select, TextField } from '../../form/Field.tsx';
import { SpeciesField } from '../../form/SpeciesField.tsx';
import { attempt } from '../../stores/notices.ts';
import { useUnits } from '../../stores/settings.ts';
import { Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { endUseOptions } from '../stacks/end-use-options.ts';
import { NEW_PLACE, newOutdoors } from './new-place.ts';

/** What holds for rows that do not say it. */
export function ImportDefaults({
  choices,
  onChoices: set,
}: {
  choices: ImportChoices;
  onChoices: (changed: Partial<ImportChoices>) => void;
}) {
  const { say } = useWords();
  const units = useUnits();
  const species = useQuery('species.list', {});
  const places = useQuery('places.list', {});
  const uses = useQuery('endUses.list', {});
  const meters = useQuery('meters.list', {});
  const [thickness, setThickness] = useState('');
  const { kind, place } = choices;
  async function choosePlace(id: number | null): Promise<void> {
    if (id !== NEW_PLACE) return set({ place: id === null ? null : { placeId: id } });
    set({ place: { add: { ...(await newOutdoors()), name: say('places.kind.outdoors') } } });
  }
  const placeValue = place === null ? null : 'placeId' in place ? place.placeId : NEW_PLACE;
  const thicknessMm = typedLengthMm(thickness, units);
  return (
    <Sheet title={say('import.for-all')}>
      <div className="form-grid">
        {kind === 'boards' && !choices.columns.some(({ role }) => role === 'code') && (
          <TextField
            label={say('import.board-of-all')}
            value={choices.boardCode}
            maxLength={80}
            onValue={(boardCode) => set({ boardCode })}
          />
        )}
        {kind === 'boards' && (
          <TextField
            label={say('import.stack')}
            value={choices.stackName ?? ''}
            maxLength={80}
            onValue={(text) => set({ stackName: text.trim() === '' ? null : text })}
          />
        )}
        {kind !== 'oven' && (
          <Select<number | null>
            label={say('stacks.place')}
            value={placeValue}
            options={[
              { value: null, label: say('stacks.choose-place') },
              ...(places.output ?? []).map(({ id, name }) => ({ value: id, label: name, isName: true })),
              { value: NEW_PLACE, label: say('import.new-place') },
            ]}
            onValue={(id) => attempt(choosePlace(id))}
          />
        )}
        {kind === 'boards' && (
          <Select
            label={say('stacks.use')}
            value={choices.endUseId}
            options={endUseOptions(uses.output ?? [], say)}
            onValue={(endUseId) => endUseId && set({ endUseId })}
          />
        )}
        {kind !== 'air' && (
          <SpeciesField
            label={say('import.role.species')}
            allSpecies={species.output ?? []}
            value={choices.speciesId ?? ''}
            onValue={(id) => set({ speciesId: id === '' ? null : id })}
          />
        )}
        {kind === 'boards' && (
          <TextField
            label={say('import.role.thickness')}
            value={thickness}
            error={Number.isNaN(thicknessMm) ? say('import.no-length', { cellTypedText: thickness }) : null}
            onValue={(text) => {
              setThickness(text);
              const mm = typedLengthMm(text, units);
              const isRight = mm !== null && mm >= 3 && mm <= 400;
              set({
                thicknessMm: isRight ? mm : null,
                thicknessQuarters: isRight ? typedQuarters(text) : null,
              });
            }}
          />
        )}
        {kind !== 'air' && (meters.output?.length ?? 0) > 0 && (
          <Select<number | null>
            label={say('import.meter')}
            value={choices.meterId}
            options={[
              { value: null, label: say('import.meter-unknown') },
              ...(meters.output ?? []).map(({ id, name }) => ({ value: id, label: name, isName: true })),
            ]}
            onValue={(meterId) => set({ meterId })}
          />
        )}
      </div>
    </Sheet>
  );
}
