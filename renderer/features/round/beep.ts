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

/** One high tone: saved. Two low ones: saved, but questionable. Silent where the machine has no sound. */
export function beep(kind: 'sound' | 'questionable'): void {
  if (typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  void audio.resume();
  if (kind === 'sound') tone(audio, 1320, 0, 0.12);
  else {
    tone(audio, 440, 0, 0.16);
    tone(audio, 350, 0.2, 0.24);
  }
}
