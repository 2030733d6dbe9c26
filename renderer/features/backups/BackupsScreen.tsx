import { useState } from 'react';
import { MOST_ONLY_COPIES } from '../../../shared-core/backups/rotation.ts';
import { bridge } from '../../data/bridge.ts';
import { useQuery } from '../../data/useQuery.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { goToYard, openOwnYard, useYard } from '../../stores/yard.ts';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Button } from '../../ui/Button.tsx';
import { EmptyState, Screen, Sheet } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { BackupChoice } from './BackupChoice.tsx';
import { BackupFolderForm } from './BackupFolderForm.tsx';
import { CopyButton } from './CopyButton.tsx';
import { LastRestore } from './LastRestore.tsx';
import { RestoreFromFile } from './RestoreFromFile.tsx';

/** Where the yard's backups are, and what can be done with them. */
export function BackupsScreen() {
  const { say } = useWords();
  const isDemo = useYard(({ info }) => info?.kind === 'demo');
  const state = useQuery('backups.state', {});
  if (isDemo) {
    return (
      <Screen title={say('backups.title')}>
        <EmptyState sentence={say('backups.demo')}>
          <Button onClick={() => goToYard(openOwnYard)}>{say('settings.open-own')}</Button>
        </EmptyState>
      </Screen>
    );
  }
  return (
    <Screen title={say('backups.title')} lead={say('backups.lead')}>
      <Await of={[state]}>
        {(now) => (
          <>
            <LastRestore state={now} />
            <Sheet title={say('backups.list')} actions={<MakeAndSave hasDialogs={now.hasDialogs} />}>
              <p>{say('backups.stay')}</p>
              {now.isFullOfOnlyCopies && (
                <Banner kind="caution">
                  {say('backups.only-copies-full', { backups: MOST_ONLY_COPIES })}
                </Banner>
              )}
              {now.picturesLeftOut > 0 && (
                <Banner kind="caution">
                  {say('backups.pictures-left-out', { pictures: now.picturesLeftOut })}
                </Banner>
              )}
              <BackupChoice none={say('backups.none')} />
            </Sheet>
            <Sheet title={say('backups.folder')}>
              <BackupFolderForm key={now.chosenFolder} state={now} />
            </Sheet>
          </>
        )}
      </Await>
    </Screen>
  );
}

function MakeAndSave({ hasDialogs }: { hasDialogs: boolean }) {
  const { say } = useWords();
  const [isBusy, setBusy] = useState(false);
  const make = async () => {
    if (isBusy) return;
    setBusy(true);
    const made = await attempt(bridge().command('backups.make', {}));
    setBusy(false);
    if (!made) return;
    const { elsewhere, chosenFolder, usualFolder } = made;
    const folder = elsewhere === null ? (chosenFolder ?? usualFolder) : usualFolder;
    tellDone(say('backups.made', { folder }));
  };
  return (
    <>
      <Button onClick={make}>{say(isBusy ? 'backups.making' : 'backups.make')}</Button>
      <CopyButton hasDialogs={hasDialogs} />
      <RestoreFromFile hasDialogs={hasDialogs} />
    </>
  );
}
