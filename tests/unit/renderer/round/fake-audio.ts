import { vi } from 'vitest';
import { soundNames, sounds } from '../../../../shared-core/hands-free/sounds.ts';

/** Of all that was played: the window makes its `AudioContext` once. */
const pitches: number[] = [];

/** Takes the place of the computer's sound: what was played, by the pitches of its notes. */
export function fakeAudio(): { heard: () => (string | undefined)[] } {
  pitches.length = 0;
  const audio = {
    currentTime: 0,
    destination: {},
    resume: async () => undefined,
    createGain: () => ({
      gain: { setValueAtTime: () => undefined, linearRampToValueAtTime: () => undefined },
      connect: () => undefined,
    }),
    createOscillator: () => {
      const frequency = { value: 0 };
      return {
        frequency,
        connect: (next: unknown) => next,
        start: () => pitches.push(frequency.value),
        stop: () => undefined,
      };
    },
  };
  // Called with `new`, which gives back the object that a function returns.
  vi.stubGlobal(
    'AudioContext',
    vi.fn(function make() {
      return audio;
    }),
  );
  /** What was played since it was asked for last. */
  const heard = () => {
    const names: (string | undefined)[] = [];
    while (pitches.length > 0) {
      // The longest that fits: one sound may begin as another does.
      const name = soundNames
        .toSorted((a, b) => sounds[b].length - sounds[a].length)
        .find((each) => sounds[each].every(({ hertz }, index) => pitches[index] === hertz));
      names.push(name);
      pitches.splice(0, name === undefined ? 1 : sounds[name].length);
    }
    return names;
  };
  return { heard };
}

/** Takes the place of the computer's voices: what is being said, and is to be said next. */
export function fakeVoice(voices: { lang: string; localService: boolean }[]): { said: () => string[] } {
  let queue: string[] = [];
  vi.stubGlobal('speechSynthesis', {
    getVoices: () => voices,
    speak: ({ text }: { text: string }) => queue.push(text),
    cancel: () => {
      queue = [];
    },
    addEventListener: () => undefined,
    removeEventListener: () => undefined,
  });
  vi.stubGlobal(
    'SpeechSynthesisUtterance',
    class {
      text: string;
      constructor(text: string) {
        this.text = text;
      }
    },
  );
  return { said: () => queue };
}
