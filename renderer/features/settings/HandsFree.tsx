import { soundLevels, soundNames } from '../../../shared-core/hands-free/sounds.ts';
import { voicePaces } from '../../../shared-core/hands-free/spoken.ts';
import { message } from '../../../shared-core/words/message.ts';
import { playSound } from '../../app/sounds.ts';
import { sayAloud, stopSpeaking, useHasVoice } from '../../app/speech.ts';
import { Choice } from '../../form/Choice.tsx';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { Button } from '../../ui/Button.tsx';
import { Sheet } from '../../ui/Screen.tsx';
import { spokenWordsNow, useWords } from '../../words.ts';
import css from './hands-free.module.css';
import { PedalKeys } from './PedalKeys.tsx';

/** What helps a person whose hands are full, and whose eyes are on the wood. */
export function HandsFree() {
  const { say } = useWords();
  return (
    <Sheet title={say('hands-free.title')}>
      <SoundChoice />
      <VoiceChoice />
      <PedalKeys />
    </Sheet>
  );
}

/** Whether and how loud a round sounds, and what each sound is like. */
function SoundChoice() {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  const { sound, soundLevel } = settings;
  return (
    <>
      <Choice
        label={say('sounds.label')}
        value={sound ? soundLevel : 'off'}
        options={(['off', ...soundLevels] as const).map((value) => ({
          value,
          label: say(`sounds.${value}`),
        }))}
        onValue={(level) =>
          void attempt(
            saveSettings({
              ...settings,
              ...(level === 'off' ? { sound: false } : { sound: true, soundLevel: level }),
            }),
          )
        }
      />
      {sound && (
        <fieldset className={css.sounds}>
          <legend>{say('sounds.hear')}</legend>
          {soundNames.map((name) => (
            <Button key={name} kind="quiet" onClick={() => playSound(name, soundLevel)}>
              ♪ {say(`sound.${name}`)}
            </Button>
          ))}
        </fieldset>
      )}
    </>
  );
}

/** A value to try a voice on. Invented. */
const TRIED_PCT = 13.4;

/** Whether a voice speaks in a round, and how fast. */
function VoiceChoice() {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  const hasVoice = useHasVoice();
  const { voice } = settings;
  function hear(): void {
    if (voice === 'off') return;
    stopSpeaking();
    sayAloud(spokenWordsNow().say(message('spoken.value', { mcPct: TRIED_PCT })), voice);
  }
  return (
    <>
      <Choice
        label={say('voice.label')}
        value={voice}
        options={(['off', ...voicePaces] as const).map((value) => ({ value, label: say(`voice.${value}`) }))}
        onValue={(pace) => void attempt(saveSettings({ ...settings, voice: pace }))}
      />
      {voice !== 'off' &&
        (hasVoice ? (
          <p>
            <Button kind="quiet" onClick={hear}>
              ♪ {say('voice.try')}
            </Button>
          </p>
        ) : (
          <p>{say('voice.none')}</p>
        ))}
    </>
  );
}
