import {
  amplitudes,
  type Note,
  type SoundLevel,
  type SoundName,
  sounds,
} from '../../shared-core/hands-free/sounds.ts';

/** A tone that is cut off clicks: it rises and falls within this, s. */
const EDGE_S = 0.008;

/** Made at the first sound: browsers let a page sound only once a person did something on it. */
let audio: AudioContext | null = null;

function play({ hertz, startS, lengthS }: Note, amplitude: number, context: AudioContext): void {
  const oscillator = context.createOscillator();
  const volume = context.createGain();
  const start = context.currentTime + startS;
  const end = start + lengthS;
  oscillator.frequency.value = hertz;
  volume.gain.setValueAtTime(0, start);
  volume.gain.linearRampToValueAtTime(amplitude, start + EDGE_S);
  volume.gain.setValueAtTime(amplitude, end - EDGE_S);
  volume.gain.linearRampToValueAtTime(0, end);
  oscillator.connect(volume).connect(context.destination);
  oscillator.start(start);
  oscillator.stop(end);
}

/** Silent where the machine has no sound. */
export function playSound(name: SoundName, level: SoundLevel): void {
  if (typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  void audio.resume();
  for (const note of sounds[name]) play(note, amplitudes[level], audio);
}
