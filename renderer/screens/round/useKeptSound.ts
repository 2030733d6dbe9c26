import { useEffect, useRef } from 'react';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';
import { beep } from './beep.ts';
import { isDoubtful } from './suspicion-words.ts';

/** A sound whenever a reading is kept, another where it should be looked at; silent where the settings say so. */
export function useKeptSound(): void {
  const kept = useRound((store) => store.kept);
  const sounds = useSettings(({ settings }) => settings?.sound ?? false);
  const sounded = useRef(kept);
  useEffect(() => {
    if (kept === sounded.current) return;
    sounded.current = kept;
    if (kept && sounds) beep(isDoubtful(kept.reading) ? 'flagged' : 'kept');
  }, [kept, sounds]);
}
