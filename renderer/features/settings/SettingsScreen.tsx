import { useState } from 'react';
import { type Settings, themeSchema } from '../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { languages } from '../../../shared-core/words/languages.ts';
import { RemoveDemoDialog } from '../../app/RemoveDemoDialog.tsx';
import { Choice } from '../../form/Choice.tsx';
import { Checkbox } from '../../form/Field.tsx';
import { hrefOf } from '../../stores/navigation.ts';
import { attempt } from '../../stores/notices.ts';
import { saveSettings, useSettings, useUnits } from '../../stores/settings.ts';
import { goToYard, openDemoYard, openOwnYard, useYard } from '../../stores/yard.ts';
import { Actions, Button, ButtonLink } from '../../ui/Button.tsx';
import { Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { OpenLog } from '../log/OpenLog.tsx';
import { SalvageReportButton } from '../recovery/SalvageReportButton.tsx';
import { HandsFree } from './HandsFree.tsx';
import { NextBoardChoice } from './NextBoardChoice.tsx';
import './settings.css';

/** How Pintally shows and saves things. Every choice takes effect at once. */
export function SettingsScreen() {
  const { say } = useWords();
  const settings = useSettings((store) => store.settings);
  const info = useYard((yard) => yard.info);
  const save = (changed: Settings) => attempt(saveSettings(changed));
  return (
    <Screen title={say('settings.title')}>
      <Showing settings={settings} onSettings={save} />
      <Probing settings={settings} onSettings={save} />
      <HandsFree />
      <Labels />
      {info && <Yard info={info} />}
      <Log />
      <Methods />
    </Screen>
  );
}

interface SettingsPart {
  settings: Settings;
  onSettings: (settings: Settings) => void;
}

function Showing({ settings, onSettings }: SettingsPart) {
  const { say } = useWords();
  const units = useUnits();
  return (
    <Sheet title={say('settings.showing')}>
      <Choice
        label={say('settings.language')}
        value={settings.language ?? 'system'}
        options={(['system', ...languages] as const).map((value) => ({
          value,
          label: say(`settings.language.${value}`),
        }))}
        onValue={(chosen) => onSettings({ ...settings, language: chosen === 'system' ? null : chosen })}
      />
      <Choice
        label={say('settings.units-of')}
        value={units}
        options={[
          { value: 'metric', label: say('settings.metric') },
          { value: 'imperial', label: say('settings.imperial') },
        ]}
        onValue={(chosen) => onSettings({ ...settings, units: chosen })}
      />
      <p>{say(settings.units === null ? 'settings.units-of-region' : 'settings.units-chosen')}</p>
      <Choice
        label={say('settings.theme')}
        value={settings.theme}
        options={themeSchema.options.map((value) => ({ value, label: say(`settings.theme.${value}`) }))}
        onValue={(theme) => onSettings({ ...settings, theme })}
      />
    </Sheet>
  );
}

function Probing({ settings, onSettings }: SettingsPart) {
  const { say } = useWords();
  return (
    <Sheet title={say('settings.probing')}>
      <Checkbox
        label={say('settings.save-when-settled')}
        hint={say('settings.save-when-settled-hint')}
        checked={settings.saveWhenSettled}
        onChecked={(saveWhenSettled) => onSettings({ ...settings, saveWhenSettled })}
      />
      <NextBoardChoice />
    </Sheet>
  );
}

/** Papers are edited where labels are seen. */
function Labels() {
  const { say } = useWords();
  return (
    <Sheet title={say('settings.label-papers')}>
      <p>
        <a href={hrefOf({ name: 'labels', boardIds: [] })}>{say('settings.edit-papers')}</a>
      </p>
    </Sheet>
  );
}

/** Which yard is open, where its file is, and the way to and from the demo. */
function Yard({ info }: { info: YardInfo }) {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  return (
    <Sheet title={say('settings.data')}>
      <p>{say(info.kind === 'demo' ? 'settings.demo-open' : 'settings.own-open')}</p>
      <p>
        {say('settings.where-saved')}{' '}
        {say(info.kind === 'demo' ? 'settings.demo-not-backed-up' : 'settings.backed-up')}
      </p>
      <p className="file" translate="no">
        <span className="spoken-only">{say('settings.file')} </span>
        {info.file}
      </p>
      <Actions>
        <ButtonLink href={hrefOf({ name: 'backups' })}>{say('backups.title')}</ButtonLink>
        <ButtonLink href={hrefOf({ name: 'history' })}>{say('act.title')}</ButtonLink>
        {info.kind === 'own' ? (
          <Button onClick={() => goToYard(openDemoYard)}>{say('settings.open-demo')}</Button>
        ) : (
          <>
            <Button onClick={() => goToYard(openOwnYard)}>{say('settings.open-own')}</Button>
            <Button kind="danger" onClick={() => setAsking(true)}>
              {say('demo.remove')}
            </Button>
          </>
        )}
      </Actions>
      <p className="soft">
        {say('settings.version', { version: info.version })}{' '}
        <a href={hrefOf({ name: 'licenses' })}>{say('licenses.title')}</a>
      </p>
      {asking && <RemoveDemoDialog onClose={() => setAsking(false)} />}
    </Sheet>
  );
}

/** The error report, to read or to save. */
function Methods() {
  const { say } = useWords();
  return (
    <Sheet title={say('methods.title')}>
      <p>{say('methods.lead')}</p>
      <Actions>
        <ButtonLink href={hrefOf({ name: 'methods' })}>{say('methods.read')}</ButtonLink>
      </Actions>
    </Sheet>
  );
}

function Log() {
  const { say } = useWords();
  return (
    <Sheet title={say('log.title')}>
      <p>
        {say('log.what')} {say('log.without')}
      </p>
      <Actions>
        <OpenLog />
        <SalvageReportButton />
      </Actions>
    </Sheet>
  );
}
