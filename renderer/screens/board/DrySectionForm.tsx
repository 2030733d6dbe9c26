import { useState } from 'react';
import { Refusal } from '../../../shared-core/contract/answer.ts';
import type { SampleSection } from '../../../shared-core/contract/sample-board.ts';
import { message } from '../../../shared-core/words/message.ts';
import { bridge } from '../../bridge.ts';
import { Banner } from '../../parts/Banner.tsx';
import { FormDialog } from '../../parts/FormDialog.tsx';
import { isWeight, WeightField } from '../../parts/WeightField.tsx';

/** Asks what a section weighs out of the oven. */
export function DrySectionForm({
  section,
  name,
  onClose,
}: {
  section: SampleSection;
  /** "Section 1". */
  name: string;
  onClose: () => void;
}) {
  const [grams, setGrams] = useState<number | null>(null);
  const [shown, setShown] = useState(false);
  async function save(): Promise<void> {
    setShown(true);
    if (!isWeight(grams)) throw new Refusal(message('validation.weight-missing'));
    await bridge().command('samples.drySection', {
      sectionId: section.id,
      grams,
      at: new Date().toISOString(),
    });
  }
  return (
    <FormDialog title={`${name}, oven-dry`} saveWords="Keep the mass" onSave={save} onClose={onClose}>
      <p>
        At 103 ± 2 °C until its mass is constant: until it loses no more than 0.1 % in two hours (EN 13183-1).
        It weighed {section.wetGrams} g wet.
      </p>
      <Banner kind="caution">
        Oven and wood are hot: use gloves or tongs, and do not leave wood in a hot oven alone. Resinous wood
        gives off vapours that burn.
      </Banner>
      <WeightField
        label="Oven-dry mass"
        unit="g"
        autoFocus
        weight={grams}
        shown={shown}
        onWeight={setGrams}
      />
    </FormDialog>
  );
}
