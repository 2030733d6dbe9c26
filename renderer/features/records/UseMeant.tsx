import { shownValueOf } from '../../../shared-core/contract/requests/rounds.ts';
import type { JudgedReading } from '../../../shared-core/probing/readings/reading.ts';
import { meantBy } from '../../../shared-core/probing/readings/typing-slip.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Button } from '../../ui/Button.tsx';
import { shownText } from '../../ui/McValue.tsx';
import { useWords } from '../../words.ts';

/** Corrects a saved typing slip to the value that was meant; nothing where a reading is none. */
export function UseMeant({ reading }: { reading: JudgedReading }) {
  const words = useWords();
  const { say } = words;
  const { id: readingId, how } = reading;
  const raw = meantBy(reading);
  if (raw === null || how !== 'typed') return null;
  const [shownValue, newValue] = [shownText(reading, words), shownText({ ...reading, raw }, words)];
  async function use(meant: number): Promise<void> {
    const shown = shownValueOf(reading);
    const corrected = { raw: meant, isAbove: shown.isAbove };
    const correction = { readingId, corrected, shown, isAsMeant: true };
    const command = bridge().command('readings.correct', correction);
    if (await attempt(command)) tellDone(say('reading-edit.changed', { shownValue, newValue }));
  }
  return <Button onClick={() => void use(raw)}>{say('saved.use-meant', { shownValue: newValue })}</Button>;
}
