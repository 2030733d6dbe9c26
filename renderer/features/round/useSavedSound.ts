import { useEffect, useRef } from 'react';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { beep } from './beep.ts';
import { isQuestionable } from './questionable.ts';

/** A sound whenever a reading is saved, another where it is questionable; silent where the settings say so. */
export function useSavedSound(): void {
  const saved = useRound((store) => store.saved);
  const sounds = useSettings(({ settings }) => settings?.sound ?? false);
  const sound = saved && (isQuestionable(saved.reading) ? 'questionable' : 'sound');
  const heard = saved && `${saved.reading.id} ${sound}`;
  const sounded = useRef(heard);
  useEffect(() => {
    if (heard === sounded.current) return;
    sounded.current = heard;
    if (sound && sounds) beep(sound);
  }, [heard, sound, sounds]);
}
