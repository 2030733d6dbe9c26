import { useState } from 'react';
import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { BackupChoice } from '../features/backups/BackupChoice.tsx';
import { RestoreNewest } from '../features/backups/RestoreNewest.tsx';
import { OpenLog } from '../features/log/OpenLog.tsx';
import { SalvageButton } from '../features/recovery/SalvageButton.tsx';
import { attempt } from '../stores/notices.ts';
import { openDemoYard, openOwnYard, openRescuedYard, startYardAfresh } from '../stores/yard.ts';
import { Banner } from '../ui/Banner.tsx';
import { Actions, Button } from '../ui/Button.tsx';
import { Dialog } from '../ui/Dialog.tsx';
import { ScreenHeading, Sheet } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';
import { Notices } from './Notices.tsx';

/** The yard's file cannot be used: what is wrong, what was saved, and the ways on. */
export function ProblemPage({ info }: { info: YardInfo }) {
  const { say } = useWords();
  const [asking, setAsking] = useState(false);
  const isOwn = info.kind === 'own';
  const [open, openOther] = isOwn ? [openOwnYard, openDemoYard] : [openDemoYard, openOwnYard];
  return (
    <main className={`column ${css.problem}`}>
      <ScreenHeading title={say('problem-page.title')} />
      <Banner kind="problem">{info.problem && say(info.problem)}</Banner>
      <p className="file" translate="no">
        {info.file}
      </p>
      <Actions>
        {info.rescuedFile !== null && (
          <Button kind="main" onClick={() => attempt(openRescuedYard())}>
            {say('problem-page.open-rescued')}
          </Button>
        )}
        {info.canStartAfresh && <SalvageButton />}
        {isOwn && info.canStartAfresh && <RestoreNewest />}
        <Button
          kind={info.rescuedFile === null && !info.canStartAfresh ? 'main' : undefined}
          onClick={() => attempt(open())}
        >
          {say('common.try-again')}
        </Button>
        <Button onClick={() => attempt(openOther())}>
          {say(isOwn ? 'problem-page.open-demo' : 'problem-page.open-own')}
        </Button>
        {info.canStartAfresh && (
          <Button onClick={() => setAsking(true)}>{say('problem-page.start-new')}</Button>
        )}
        <OpenLog />
      </Actions>
      {asking && (
        <Dialog title={say('problem-page.start-new-title')} onClose={() => setAsking(false)}>
          <p>{say('problem-page.start-new-effect')}</p>
          <Actions>
            <Button
              kind="main"
              onClick={() => {
                setAsking(false);
                void attempt(startYardAfresh());
              }}
            >
              {say('problem-page.start-new-yes')}
            </Button>
            <Button onClick={() => setAsking(false)}>{say('common.cancel')}</Button>
          </Actions>
        </Dialog>
      )}
      {isOwn && info.canStartAfresh && (
        <Sheet title={say('backups.title')}>
          <BackupChoice />
        </Sheet>
      )}
      <Notices />
    </main>
  );
}
