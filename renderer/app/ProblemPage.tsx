import type { YardInfo } from '../../shared-core/contract/yard.ts';
import { isUnopened, kindOfProblem } from '../../shared-core/contract/yard-problem.ts';
import type { Message } from '../../shared-core/words/message.ts';
import { useQuery } from '../data/useQuery.ts';
import { LastRestore } from '../features/backups/LastRestore.tsx';
import { OpenLog } from '../features/log/OpenLog.tsx';
import { BackupsToRestore } from '../features/recovery/BackupsToRestore.tsx';
import { DamagedWays } from '../features/recovery/DamagedWays.tsx';
import { NewestBackup } from '../features/recovery/NewestBackup.tsx';
import { RescuedCopy } from '../features/recovery/RescuedCopy.tsx';
import { StartNewButton } from '../features/recovery/StartNewButton.tsx';
import { useNewestBackup } from '../features/recovery/useNewestBackup.ts';
import { attempt } from '../stores/notices.ts';
import { openDemoYard, openOwnYard, openRescuedYard } from '../stores/yard.ts';
import { Banner } from '../ui/Banner.tsx';
import { Actions, Button } from '../ui/Button.tsx';
import { ScreenHeading } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import css from './frame.module.css';
import { Notices } from './Notices.tsx';

/** The yard's file cannot be used: what is wrong, what was saved, and the ways on that help with this problem. */
export function ProblemPage({ info, problem }: { info: YardInfo; problem: Message }) {
  const { say } = useWords();
  const kind = kindOfProblem(problem);
  const isOwn = info.kind === 'own';
  const [open, openOther] = isOwn ? [openOwnYard, openDemoYard] : [openDemoYard, openOwnYard];
  const isMissing = kind === 'missing';
  const newestOfOwn = useNewestBackup();
  // The demo yard has no backups: those in the list are of the person's own.
  const newest = isOwn ? newestOfOwn : null;
  const isNewestShown = kind === 'damaged' || isMissing;
  const { rescuedFile } = info;
  const backups = useQuery('backups.state', {}).output;
  const isFileLeft = problem.facts?.state === 'replaced';
  const isRescued = rescuedFile !== null && (kind === 'gone' || kind === 'cut' || kind === 'spoiled');
  const canRestore = isOwn && (info.canStartAfresh || isUnopened(problem) || (isRescued && !isFileLeft));
  return (
    <main className={`column ${css.problem}`}>
      <ScreenHeading title={say(`problem-page.title.${kind}`)} />
      <Banner kind={kind === 'elsewhere' || kind === 'newer' ? 'caution' : 'problem'}>{say(problem)}</Banner>
      {rescuedFile !== null && <RescuedCopy file={rescuedFile} />}
      {kind === 'damaged' && <DamagedWays newest={newest} />}
      {isMissing && newest && <NewestBackup backup={newest} isMain />}
      {isOwn && (kind === 'damaged' || isUnopened(problem)) && backups && <LastRestore state={backups} />}
      <Actions>
        {rescuedFile !== null && (
          <Button kind="main" onClick={() => attempt(openRescuedYard())}>
            {say('problem-page.open-rescued')}
          </Button>
        )}
        <Button
          kind={rescuedFile === null && !info.canStartAfresh ? 'main' : 'quiet'}
          onClick={() => attempt(open())}
        >
          {say('common.try-again')}
        </Button>
        {info.canStartAfresh && <StartNewButton isFileMissing={isMissing} />}
        <Button kind="quiet" onClick={() => attempt(openOther())}>
          {say(isOwn ? 'problem-page.open-demo' : 'problem-page.open-own')}
        </Button>
        <OpenLog kind="quiet" />
      </Actions>
      {canRestore && <BackupsToRestore shown={(isNewestShown && newest) || null} />}
      <Notices />
    </main>
  );
}
