import { useState } from 'react';
import { z } from 'zod';
import { says } from '../../../shared-core/contract/validation.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { bridge } from '../../data/bridge.ts';
import { Choice } from '../../form/Choice.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { LengthField } from '../../form/MeasureFields.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { tellUndoable } from '../../stores/notices.ts';
import { useWords } from '../../words.ts';

const schema = z.object({
  depthMm: z.number(says('depth.missing')).positive(says('depth.missing')).max(500),
});

/** Corrects how deep a reading was: of it alone, or of all of its round at that depth. */
export function DepthForm({ reading, onClose }: { reading: JudgedReading; onClose: () => void }) {
  const { say } = useWords();
  const { id: readingId, spot } = reading;
  const { draft: _, field, read } = useDraft(schema, { depthMm: spot.depthMm });
  const [scope, setScope] = useState<'this' | 'round'>('this');

  async function save(): Promise<void> {
    const { depthMm } = read();
    const wholeRound = scope === 'round';
    const { act, readings } = await bridge().command('readings.setDepth', { readingId, depthMm, wholeRound });
    tellUndoable(say('depth.changed', { readings, depthMm }), () =>
      bridge().command('readings.undoDepth', { act }),
    );
  }

  return (
    <FormDialog title={say('depth.title')} saveWords={say('common.save')} onSave={save} onClose={onClose}>
      <LengthField
        label={say(spot.face === 'face' || spot.face === 'end-grain' ? 'depth.of-tips' : 'depth.from-face')}
        hint={reading.depthFrom === 'plan' ? say('depth.only-planned') : undefined}
        autoFocus
        {...field('depthMm')}
      />
      <Choice
        label={say('depth.for')}
        value={scope}
        options={[
          { value: 'this', label: say('depth.for-this') },
          { value: 'round', label: say('depth.for-round', { depth: spot.depth }) },
        ]}
        onValue={setScope}
      />
    </FormDialog>
  );
}
