import { useId } from 'react';
import type { Code } from '../../shared-core/words/en/index.ts';
import { hrefOf, type Route } from '../stores/navigation.ts';
import { useWords } from '../words.ts';
import { DemoMenu } from './DemoMenu.tsx';
import css from './frame.module.css';
import { MeterChip } from './MeterChip.tsx';

/** The screens one can go to, and what other routes belong to each. */
const destinations: readonly [Extract<Code, `nav.${string}`>, Route, ...Route['name'][]][] = [
  [
    'nav.stacks',
    { name: 'stacks' },
    'stack',
    'boards',
    'board',
    'round',
    'round-start',
    'past-round',
    'tally',
    'report',
    'check',
  ],
  ['nav.dates', { name: 'dates' }],
  ['nav.meter', { name: 'meter' }],
  ['nav.labels', { name: 'labels', boardIds: [] }],
  ['nav.places', { name: 'places' }],
  ['nav.air', { name: 'air' }],
  ['nav.species', { name: 'species-list' }, 'species'],
  ['nav.files', { name: 'files' }, 'import-table', 'history'],
  ['nav.settings', { name: 'settings' }, 'backups'],
  ['nav.help', { name: 'help' }, 'methods', 'licenses'],
];

/** Always at the top: what this is, where one can go, how the meter is. A narrow window has a menu of the screens. */
export function TopBar({ route, isDemo }: { route: Route; isDemo: boolean }) {
  const { say } = useWords();
  const menu = useId();
  return (
    <header className={css.bar}>
      <a className={css.name} href={hrefOf({ name: 'stacks' })} aria-label={say('frame.app-name')}>
        <AppMark />
        <span>{say('frame.app-name')}</span>
      </a>
      <nav aria-label={say('frame.nav')}>
        <button type="button" className={css.menu} popoverTarget={menu}>
          <svg viewBox="0 0 20 14" aria-hidden="true">
            <path d="M1 1h18M1 7h18M1 13h18" />
          </svg>
          {say('frame.menu')}
        </button>
        <ul id={menu} popover="auto" className="popover">
          {destinations.map(([label, to, ...others]) => (
            <li key={label}>
              <a
                className="tab"
                href={hrefOf(to)}
                aria-current={[to.name, ...others].includes(route.name) ? 'page' : undefined}
                onClick={() => document.getElementById(menu)?.hidePopover?.()}
              >
                {say(label)}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      {isDemo && <DemoMenu />}
      <MeterChip />
    </header>
  );
}

/** Two pins in the end of a board. */
function AppMark() {
  return (
    <svg className={css.mark} viewBox="0 0 28 28" aria-hidden="true">
      <rect x="1" y="12" width="26" height="15" rx="2" fill="var(--keep-drying)" />
      <path
        d="M1 24c6-5 20-5 26 0M1 19.5c8-5 18-5 26 0"
        fill="none"
        stroke="var(--sheet)"
        strokeWidth="1.6"
        opacity="0.75"
      />
      <path d="M9 1v17M19 1v17" stroke="var(--ink)" strokeWidth="3" strokeLinecap="round" />
    </svg>
  );
}
