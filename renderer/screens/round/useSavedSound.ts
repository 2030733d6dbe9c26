import { useEffect, useRef } from 'react';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { beep } from './beep.ts';
import { isQuestionableReading } from './suspicion-words.ts';

/** A sound whenever a reading is kept, another where it should be looked at; silent where the settings say so. */
export function useSavedSound(): void {
  const saved = useRound((store) => store.saved);
  const sounds = useSettings(({ settings }) => settings?.sound ?? false);
  const sound = saved && (isQuestionableReading(saved.reading) ? 'flagged' : 'kept');
  const heard = saved && `${saved.reading.id} ${sound}`;
  const sounded = useRef(heard);
  useEffect(() => {
    if (heard === sounded.current) return;
    sounded.current = heard;
    if (sound && sounds) beep(sound);
  }, [heard, sound, sounds]);
}
