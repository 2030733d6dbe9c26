import { useEffect, useRef } from 'react';
import { isQuestionable } from '../../../shared-core/probing/suspicions/suspicion.ts';
import { useRound } from '../../stores/round.ts';
import { useSettings } from '../../stores/settings.ts';

let audio: AudioContext | null = null;

function tone(context: AudioContext, hertz: number, startS: number, lengthS: number): void {
  const oscillator = context.createOscillator();
  const volume = context.createGain();
  const start = context.currentTime + startS;
  oscillator.frequency.value = hertz;
  // A short rise and fall: a tone that is cut off clicks.
  volume.gain.setValueAtTime(0, start);
  volume.gain.linearRampToValueAtTime(0.25, start + 0.01);
  volume.gain.linearRampToValueAtTime(0, start + lengthS);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(start);
  oscillator.stop(start + lengthS);
}

/** Silent where the machine has no sound. */
function beep(kind: 'sound' | 'questionable'): void {
  if (typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  void audio.resume();
  if (kind === 'sound') tone(audio, 1320, 0, 0.12);
  else {
    tone(audio, 440, 0, 0.16);
    tone(audio, 350, 0.2, 0.24);
  }
}

/** One high tone whenever a reading is saved, two low ones where it is questionable; none where the settings say so. */
export function useSavedSound(): void {
  const saved = useRound((store) => store.saved);
  const sounds = useSettings(({ settings }) => settings?.sound ?? false);
  const sound = saved && (isQuestionable(saved.reading.suspicions) ? 'questionable' : 'sound');
  const heard = saved && `${saved.reading.id} ${sound}`;
  const sounded = useRef(heard);
  useEffect(() => {
    if (heard === sounded.current) return;
    sounded.current = heard;
    if (sound && sounds) beep(sound);
  }, [heard, sound, sounds]);
}
