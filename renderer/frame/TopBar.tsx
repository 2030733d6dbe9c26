import { hrefOf, type Route } from '../stores/navigation.ts';
import { MeterChip } from './MeterChip.tsx';

const places: readonly { label: string; route: Route; holds: readonly Route['name'][] }[] = [
  {
    label: 'Stacks',
    route: { name: 'stacks' },
    holds: ['stacks', 'stack', 'boards', 'board', 'round', 'round-start'],
  },
  { label: 'Meter', route: { name: 'meter' }, holds: ['meter'] },
  { label: 'Labels', route: { name: 'labels', boardIds: [] }, holds: ['labels'] },
  { label: 'Places', route: { name: 'places' }, holds: ['places'] },
  { label: 'Air', route: { name: 'air' }, holds: ['air'] },
  { label: 'Woods', route: { name: 'species-list' }, holds: ['species-list', 'species'] },
  { label: 'Settings', route: { name: 'settings' }, holds: ['settings'] },
];

/** Always at the top: what this is, where one can go, how the meter is. */
export function TopBar({ route }: { route: Route }) {
  return (
    <header className="top-bar">
      <a className="app-name" href={hrefOf({ name: 'stacks' })}>
        <AppMark />
        Pintally
      </a>
      <nav aria-label="Main">
        <ul>
          {places.map((place) => (
            <li key={place.label}>
              <a
                href={hrefOf(place.route)}
                aria-current={place.holds.includes(route.name) ? 'page' : undefined}
              >
                {place.label}
              </a>
            </li>
          ))}
        </ul>
      </nav>
      <MeterChip />
    </header>
  );
}

/** Two pins in the end of a board. */
function AppMark() {
  return (
    <svg className="app-mark" viewBox="0 0 28 28" aria-hidden="true">
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
