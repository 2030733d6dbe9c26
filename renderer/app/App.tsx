import { useEffect } from 'react';
import { useChanges } from '../data/useChanges.ts';
import { useLink } from '../stores/link.ts';
import { followMeter, loadMeter } from '../stores/meter.ts';
import { followAddress, hrefOf, useNavigation } from '../stores/navigation.ts';
import { attempt } from '../stores/notices.ts';
import { followNotSaved } from '../stores/round.ts';
import { loadSettings } from '../stores/settings.ts';
import { followYard, loadYard, useYard } from '../stores/yard.ts';
import { Banner } from '../ui/Banner.tsx';
import { Failed, Loading } from '../ui/Screen.tsx';
import { useWords } from '../words.ts';
import { Fault } from './Fault.tsx';
import css from './frame.module.css';
import { Notices } from './Notices.tsx';
import { OtherYardBanner } from './OtherYardBanner.tsx';
import { ProblemPage } from './ProblemPage.tsx';
import { screenAt } from './screens.tsx';
import { TopBar } from './TopBar.tsx';
import { useFocusKept } from './useFocusKept.ts';

/** The whole window: the frame that is always there, and the screen of the address. */
export function App() {
  const { say } = useWords();
  const route = useNavigation((navigation) => navigation.route);
  const { info, error } = useYard();
  const link = useLink();
  useFocusKept();

  useEffect(() => {
    const stops = [followAddress(), followYard(), followMeter(), followNotSaved()];
    return () => {
      for (const stop of stops) stop();
    };
  }, []);

  // At the start, and again whenever the machine came back.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the machine's return is the reason to ask again.
  useEffect(() => {
    void loadYard();
    void attempt(loadMeter());
  }, [link.returns]);

  // Each yard has its own settings, and another window may change them.
  const settingsChanges = useChanges('settings');
  const openYard = info && !info.problem ? info.uuid : null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the machine's return and a change are reasons to ask again.
  useEffect(() => {
    if (openYard !== null) void attempt(loadSettings());
  }, [openYard, link.returns, settingsChanges]);

  if (info?.problem) return <ProblemPage info={info} />;
  return (
    <>
      <TopBar route={route} isDemo={info?.kind === 'demo'} />
      {link.state === 'away' && (
        <div className={css.banner}>
          <Banner kind="problem">{say('frame.not-responding')}</Banner>
        </div>
      )}
      <OtherYardBanner />
      <main key={`${info?.uuid} ${hrefOf(route)}`}>
        {info ? (
          <Fault>{screenAt(route)}</Fault>
        ) : (
          <div className="screen">{error ? <Failed sentence={error} again={loadYard} /> : <Loading />}</div>
        )}
      </main>
      <Notices />
    </>
  );
}
