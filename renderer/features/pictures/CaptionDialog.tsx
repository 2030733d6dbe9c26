import { useState } from 'react';
import { z } from 'zod';
import { Conflict } from '../../../shared-core/contract/answer.ts';
import { captionSchema, type Picture, type ShownPicture } from '../../../shared-core/contract/pictures.ts';
import { bridge } from '../../data/bridge.ts';
import { TextField } from '../../form/Field.tsx';
import { FormDialog } from '../../form/FormDialog.tsx';
import { useDraft } from '../../form/useDraft.ts';
import { useWords } from '../../words.ts';

const schema = z.object({ caption: captionSchema });

/** Writes what a picture shows. */
export function CaptionDialog({ picture, onClose }: { picture: ShownPicture; onClose: () => void }) {
  const { say } = useWords();
  const { field, read, refill } = useDraft(schema, { caption: picture.caption });
  const [basedOn, setBasedOn] = useState(picture.version);
  const [theirs, setTheirs] = useState<Picture | null>(null);
  async function save(): Promise<void> {
    const { caption } = read();
    try {
      await bridge().command('pictures.edit', {
        id: picture.id,
        basedOn: theirs?.version ?? basedOn,
        changed: { caption },
      });
    } catch (error) {
      if (error instanceof Conflict) setTheirs(error.current as Picture);
      throw error;
    }
  }
  return (
    <FormDialog
      title={say('pictures.edit-caption')}
      saveWords={say('common.save')}
      onSave={save}
      onClose={onClose}
      conflict={
        theirs && {
          shown: (
            <p translate="no">
              {theirs.caption === ''
                ? say('pictures.theirs-none')
                : say('pictures.theirs', { caption: theirs.caption })}
            </p>
          ),
          takeTheirs: () => {
            setBasedOn(theirs.version);
            setTheirs(null);
            refill({ caption: theirs.caption });
          },
        }
      }
    >
      <TextField
        label={say('pictures.caption')}
        hint={say('pictures.caption-hint')}
        autoFocus
        {...field('caption')}
      />
    </FormDialog>
  );
}
