import { useState } from 'react';
import type { Settings } from '../../../shared-core/contract/settings.ts';
import type { YardInfo } from '../../../shared-core/contract/yard.ts';
import { Actions, Button } from '../../parts/Button.tsx';
import { Choice } from '../../parts/Choice.tsx';
import { Checkbox } from '../../parts/Field.tsx';
import { RemoveDemoDialog } from '../../parts/RemoveDemoDialog.tsx';
import { Loading, Screen, Sheet } from '../../parts/Screen.tsx';
import { go } from '../../stores/navigation.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { saveSettings, useSettings } from '../../stores/settings.ts';
import { openDemoYard, openOwnYard, removeDemoYard, useYard } from '../../stores/yard.ts';
import { LayoutForm } from './LayoutForm.tsx';
import './settings.css';

/** How Pintally shows and keeps things. Every choice holds at once. */
export function SettingsScreen() {
  const settings = useSettings((store) => store.settings);
  const info = useYard((yard) => yard.info);
  const save = (changed: Settings) => attempt(saveSettings(changed));
  return (
    <Screen title="Settings">
      {settings ? (
        <>
          <Showing settings={settings} onSettings={save} />
          <Probing settings={settings} onSettings={save} />
          <Labels
            settings={settings}
            onSettings={async (changed) => {
              await attempt(saveSettings(changed).then(() => tellDone('The label sizes are saved.')));
            }}
          />
        </>
      ) : (
        <Loading what="the settings" />
      )}
      {info && <Yard info={info} />}
    </Screen>
  );
}

interface SettingsPart {
  settings: Settings;
  onSettings: (settings: Settings) => void;
}

function Showing({ settings, onSettings }: SettingsPart) {
  return (
    <Sheet title="Units">
      <Choice
        label="Lengths and temperatures"
        value={settings.units}
        options={[
          { value: 'metric', label: 'mm, m, °C' },
          { value: 'imperial', label: 'in, ft, °F' },
        ]}
        onValue={(units) => onSettings({ ...settings, units })}
      />
    </Sheet>
  );
}

function Probing({ settings, onSettings }: SettingsPart) {
  return (
    <Sheet title="Probing">
      <Checkbox
        label="Keep a reading by itself when it settles"
        hint="Otherwise only Space, or a pedal set to it, keeps the value."
        checked={settings.saveWhenSettled}
        onChecked={(saveWhenSettled) => onSettings({ ...settings, saveWhenSettled })}
      />
      <Checkbox
        label="A sound when a reading is kept"
        checked={settings.sound}
        onChecked={(sound) => onSettings({ ...settings, sound })}
      />
    </Sheet>
  );
}

function Labels({ settings, onSettings }: SettingsPart) {
  const { labelLayouts, units } = settings;
  return (
    <>
      <Sheet title="Sheet of labels">
        <LayoutForm
          key={`${units} ${JSON.stringify(labelLayouts.sheet)}`}
          layout={labelLayouts.sheet}
          units={units}
          onSave={(sheet) => onSettings({ ...settings, labelLayouts: { ...labelLayouts, sheet } })}
        />
      </Sheet>
      <Sheet title="Single label">
        <p>For a label printer: each page is one label.</p>
        <LayoutForm
          key={`${units} ${JSON.stringify(labelLayouts.single)}`}
          layout={labelLayouts.single}
          units={units}
          onSave={(single) => onSettings({ ...settings, labelLayouts: { ...labelLayouts, single } })}
        />
      </Sheet>
    </>
  );
}

/** Which yard is open, where its file is, and the way to and from the demo. */
function Yard({ info }: { info: YardInfo }) {
  const [asking, setAsking] = useState(false);
  const leaveBy = (way: () => Promise<void>) => attempt(way().then(() => go({ name: 'stacks' })));
  return (
    <Sheet title="Your data">
      <p>
        {info.kind === 'demo' ? 'The demo yard is open. ' : 'Your own yard is open. '}
        Everything is kept on this machine, in one file; nothing is sent anywhere. To back it up, close
        Pintally and copy the file.
      </p>
      <p className="data-file">
        <span className="spoken-only">The file: </span>
        {info.file}
      </p>
      <Actions>
        {info.kind === 'own' ? (
          <Button onClick={() => leaveBy(openDemoYard)}>Open the demo yard</Button>
        ) : (
          <>
            <Button onClick={() => leaveBy(openOwnYard)}>Go to my own yard</Button>
            <Button kind="danger" onClick={() => setAsking(true)}>
              Remove the demo yard
            </Button>
          </>
        )}
      </Actions>
      <p className="data-version">Pintally {info.version}</p>
      {asking && (
        <RemoveDemoDialog
          onRemove={() => {
            setAsking(false);
            void leaveBy(() => removeDemoYard().then(() => tellDone('The demo yard is removed.')));
          }}
          onClose={() => setAsking(false)}
        />
      )}
    </Sheet>
  );
}
