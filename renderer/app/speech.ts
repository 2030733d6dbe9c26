import { useSyncExternalStore } from 'react';
import { paceRates, type VoicePace } from '../../shared-core/hands-free/spoken.ts';
import { region } from '../region.ts';

/** Undefined where the system has no speech at all. */
const synthesis = (): SpeechSynthesis | undefined =>
  typeof speechSynthesis === 'undefined' ? undefined : speechSynthesis;

/** A voice of the catalog's language on this computer, that of the region first; others send what they say elsewhere. */
function voiceHere(): SpeechSynthesisVoice | undefined {
  const { locale } = region();
  const here = (synthesis()?.getVoices() ?? []).filter(({ localService }) => localService);
  const [language] = locale.split('-');
  const tagOf = ({ lang }: SpeechSynthesisVoice) => lang.replace('_', '-');
  return (
    here.find((voice) => tagOf(voice) === locale) ??
    here.find((voice) => tagOf(voice).split('-')[0] === language)
  );
}

/** Says a text after what is being said. Silent where the computer has no voice. */
export function sayAloud(text: string, pace: VoicePace): void {
  ifItCan(() => {
    const voice = voiceHere();
    if (!voice) return;
    const utterance = new SpeechSynthesisUtterance(text);
    utterance.voice = voice;
    utterance.lang = voice.lang;
    utterance.rate = paceRates[pace];
    synthesis()?.speak(utterance);
  });
}

export const stopSpeaking = (): void => ifItCan(() => synthesis()?.cancel());

/** The screen says all that a voice does: a fault of the system's voice stops nothing. */
function ifItCan(speak: () => void): void {
  try {
    speak();
  } catch (error) {
    console.warn(error);
  }
}

/** Voices come some time after the window is opened. */
function onVoices(changed: () => void): () => void {
  synthesis()?.addEventListener('voiceschanged', changed);
  return () => synthesis()?.removeEventListener('voiceschanged', changed);
}

/** Whether this computer has a voice of the window's language. */
export const useHasVoice = (): boolean => useSyncExternalStore(onVoices, () => voiceHere() !== undefined);
