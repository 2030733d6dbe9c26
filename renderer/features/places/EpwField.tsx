import { useState } from 'react';
import { epwYear, MOST_EPW_BYTES } from '../../../shared-core/wood/climate/epw.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { Field } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import { airSourceText } from './air-source-text.ts';
import type { AirOfPlace } from './StationField.tsx';

/** Opens a weather file, and says whose air is in it. */
export function EpwField({
  file,
  missing,
  onFile,
}: {
  file: AirOfPlace | null;
  /** What is said where no file was opened. */
  missing: Message | null;
  onFile: (file: AirOfPlace) => void;
}) {
  const { say } = useWords();
  const [refused, setRefused] = useState<Message | null>(null);
  const problem = refused ?? (file === null ? missing : null);

  async function open(picked: File): Promise<void> {
    if (picked.size > MOST_EPW_BYTES) return setRefused(message('epw.too-large'));
    const read = epwYear(await picked.text());
    if (!read.ok) return setRefused(read.problem);
    const { air, ...source } = read.value;
    setRefused(null);
    onFile({ air, airSource: { kind: 'file', ...source } });
  }

  return (
    <Field
      label={say('epw.label')}
      hint={say(file ? airSourceText(file.airSource) : message('epw.hint'))}
      error={problem && say(problem)}
    >
      {(wiring) => (
        <input
          {...wiring}
          type="file"
          accept=".epw"
          onChange={({ target: { files } }) => files?.[0] && void open(files[0])}
        />
      )}
    </Field>
  );
}
