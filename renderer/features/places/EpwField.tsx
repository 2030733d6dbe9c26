import { useState } from 'react';
import { epwYear, MOST_EPW_BYTES } from '../../../shared-core/wood/climate/epw.ts';
import { type Message, message } from '../../../shared-core/words/message.ts';
import { Field } from '../../form/Field.tsx';
import { useWords } from '../../words.ts';
import type { AirOfPlace } from './place-air.ts';
import { airSourceText } from './place-words.ts';

/** Opens a weather file, and says whose air will be saved: after a refusal still that of the file before it. */
export function EpwField({
  value: file,
  error,
  onValue,
}: {
  value: AirOfPlace | null;
  error: string | null;
  onValue: (file: AirOfPlace) => void;
}) {
  const { say } = useWords();
  const [refused, setRefused] = useState<Message | null>(null);

  async function open(picked: File): Promise<void> {
    const read =
      picked.size > MOST_EPW_BYTES
        ? ({ ok: false, problem: message('epw.too-large') } as const)
        : epwYear(await picked.text().catch(() => ''));
    setRefused(read.ok ? null : message('epw.refused', { fileName: picked.name, problem: read.problem }));
    if (!read.ok) return;
    const { air, ...source } = read.value;
    onValue({ air, airSource: { kind: 'file', ...source } });
  }

  return (
    <Field
      label={say('epw.label')}
      hint={say(
        file ? message('epw.to-save', { airSource: airSourceText(file.airSource) }) : message('epw.hint'),
      )}
      error={refused ? say(refused) : error}
    >
      {(wiring) => (
        <input
          {...wiring}
          type="file"
          accept=".epw"
          onChange={({ target }) => {
            const [picked] = target.files ?? [];
            if (picked) void open(picked);
          }}
        />
      )}
    </Field>
  );
}
