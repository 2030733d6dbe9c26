import { useEffect } from 'react';
import { useEach } from '../data/useQuery.ts';
import { useLink } from '../stores/link.ts';
import { followMeter, loadMeter } from '../stores/meter.ts';
import { followAddress, hrefOf, useNavigation } from '../stores/navigation.ts';
import { followDelays, followLeaving } from '../stores/notices.ts';
import { followNotSaved } from '../stores/round-news.ts';
import { followScans } from '../stores/scans.ts';
import { useSettings } from '../stores/settings.ts';
import { followUndoKeys } from '../stores/undoing.ts';
import { followWatching } from '../stores/watching.ts';
import { followWorkOfOther } from '../stores/work-of-other.ts';
import { followYard, loadYard, useYard } from '../stores/yard.ts';
import { Failed, Loading } from '../ui/Screen.tsx';
import { BackupBanner } from './BackupBanner.tsx';
import { Banners } from './Banners.tsx';
import { Fault } from './Fault.tsx';
import { LinkBanner } from './LinkBanner.tsx';
import { LockedPage } from './LockedPage.tsx';
import { Notices } from './Notices.tsx';
import { OtherYardBanner } from './OtherYardBanner.tsx';
import { ProblemPage } from './ProblemPage.tsx';
import { bringScreens, screenAt } from './screens.tsx';
import { TopBar } from './TopBar.tsx';
import { UndoEarlier } from './UndoEarlier.tsx';
import { useFocusKept } from './useFocusKept.ts';
import { WorkOfOther } from './WorkOfOther.tsx';
import { YardNotes } from './YardNotes.tsx';

/** The whole window: the frame that is always there, and the screen of the address. */
export function App() {
  const route = useNavigation((navigation) => navigation.route);
  const { info, other, error } = useYard();
  const link = useLink();
  useFocusKept();

  useEffect(() => {
    const stops = [
      followAddress(),
      followYard(),
      followMeter(),
      followWatching(),
      followNotSaved(),
      followDelays(),
      followLeaving(),
      followScans(),
      followWorkOfOther(),
      followUndoKeys(),
    ];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);

  // At the start, and again whenever the machine came back.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the machine's return is the reason to ask again.
  useEffect(() => {
    void loadYard();
    void loadMeter();
  }, [link.returns]);

  // Each yard has its own settings, and another window may change them.
  const [settings] = useEach('settings.get', info && !info.problem ? [{}] : []);
  useEffect(() => {
    if (settings?.output) useSettings.setState({ settings: settings.output });
  }, [settings?.output]);

  /** What is typed is read in the person's units, so they come first. */
  const hasUnits = Boolean(settings?.output ?? settings?.error);

  const isUsable = info !== null && hasUnits;
  useEffect(() => {
    // A screen that does not come now says so when it is gone to.
    if (isUsable) bringScreens().catch(() => undefined);
  }, [isUsable]);

  if (info?.problem) return <ProblemPage info={info} problem={info.problem} />;
  if (info === null && link.state === 'locked') return <LockedPage />;
  return (
    <>
      <TopBar route={route} isDemo={info?.kind === 'demo'} />
      <Banners isRound={route.name === 'round'}>
        <LinkBanner />
        {settings?.error && !other && <Failed sentence={settings.error} again={settings.again} />}
        <OtherYardBanner />
        <BackupBanner />
        <WorkOfOther />
        <YardNotes />
      </Banners>
      <Notices />
      <UndoEarlier />
      <main key={`${info?.uuid} ${hrefOf(route)}`}>
        {isUsable ? (
          <Fault>{screenAt(route)}</Fault>
        ) : (
          <div className="screen column">
            {error ? <Failed sentence={error} again={loadYard} /> : <Loading />}
          </div>
        )}
      </main>
    </>
  );
}
