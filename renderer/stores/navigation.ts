import { create } from 'zustand';
import { type ReportKind, reportKindSchema } from '../../shared-core/contract/report.ts';

/** Where in the window a person is. Each route has an address behind the hash that can be saved and typed. */
export type Route =
  | { name: 'stacks' }
  | { name: 'stack'; id: number }
  | {
      name: 'round-start';
      stackId: number | null;
      /** Where the boards are that are read; left out: with the stack. */
      placeId?: number | null;
    }
  | { name: 'round'; id: number }
  /** A page of a notebook with readings of this stack. */
  | { name: 'past-round'; stackId: number }
  | { name: 'boards' }
  /** `tab`: which of its parts is shown. */
  | { name: 'board'; id: number; tab?: string }
  | { name: 'meter' }
  /** Of these boards; where there are none, of this stack's, or of all. */
  | { name: 'labels'; boardIds: number[]; stackId?: number | null }
  /** Of a stack; null: of all. */
  | { name: 'tally'; stackId: number | null }
  /** Of a board or a stack, as its kind has it; `more`: other boards on a sheet for a buyer. */
  | { name: 'report'; kind: ReportKind; id: number; more?: number[] }
  /** `code`: what is checked at once. */
  | { name: 'check'; code?: string }
  | { name: 'places' }
  | { name: 'dates' }
  | { name: 'air' }
  | { name: 'species-list' }
  | { name: 'species'; id: string }
  | { name: 'settings' }
  /** `chapter` of the guide, and the heading in it that is scrolled to. */
  | { name: 'help'; chapter?: string; heading?: string }
  /** `part`: which of its parts is scrolled to. */
  | { name: 'methods'; part?: string }
  | { name: 'licenses' }
  | { name: 'backups' }
  | { name: 'files' }
  | { name: 'import-table' }
  | { name: 'history' }
  | { name: 'nowhere'; hash: string };

/** Of a species as in the core, and of a tab. */
const WORDS_ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;
/** Of a heading of the guide, in any language. */
const HEADING_ID = /^[\p{L}\p{N}]+(-[\p{L}\p{N}]+)*$/u;
const ROW_ID = /^[1-9]\d{0,15}$/;

/** One that no row can have stays one that no row has. */
function rowId(text: string | null | undefined): number | null {
  return text && ROW_ID.test(text) ? Math.min(Number(text), Number.MAX_SAFE_INTEGER) : null;
}

const rowIds = (text: string | null): number[] =>
  (text ?? '')
    .split(',')
    .map(rowId)
    .filter((id) => id !== null);

function tabIn(search: URLSearchParams): { tab?: string } {
  const tab = search.get('tab');
  return tab && WORDS_ID.test(tab) ? { tab } : {};
}

/** Reads an address like `#/stacks/3` or `#/labels?boards=1,2`. Anything else is `nowhere`, never an error. */
export function parseRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#\/?/, '').split('?');
  const search = new URLSearchParams(query);
  const [head = '', tail, ...rest] = path.split('/');
  const nowhere: Route = { name: 'nowhere', hash };
  if (rest.length > 0) return nowhere;
  if (head === 'species') {
    if (tail === undefined) return { name: 'species-list' };
    return WORDS_ID.test(tail) ? { name: 'species', id: tail } : nowhere;
  }
  if (head === 'help') {
    const heading = search.get('at');
    if (tail === undefined) return { name: 'help' };
    if (!WORDS_ID.test(tail)) return nowhere;
    return { name: 'help', chapter: tail, ...(heading && HEADING_ID.test(heading) ? { heading } : {}) };
  }
  const id = rowId(tail);
  if (tail !== undefined && id === null) return nowhere;
  switch (head) {
    case '':
      return { name: 'stacks' };
    case 'stacks':
      return id === null ? { name: 'stacks' } : { name: 'stack', id };
    case 'round':
      return id === null
        ? {
            name: 'round-start',
            stackId: rowId(search.get('stack')),
            ...(search.has('place') && { placeId: rowId(search.get('place')) }),
          }
        : { name: 'round', id };
    case 'past-round':
      return id === null ? nowhere : { name: 'past-round', stackId: id };
    case 'boards':
      return id === null ? { name: 'boards' } : { name: 'board', id, ...tabIn(search) };
    case 'labels':
      return {
        name: 'labels',
        boardIds: rowIds(search.get('boards')),
        stackId: rowId(search.get('stack')),
      };
    case 'check': {
      const code = search.get('code');
      return id === null ? { name: 'check', ...(code ? { code } : {}) } : nowhere;
    }
    case 'report': {
      const kind = reportKindSchema.safeParse(search.get('kind'));
      if (id === null || !kind.success) return nowhere;
      const more = rowIds(search.get('more'));
      return { name: 'report', kind: kind.data, id, ...(more.length > 0 && { more }) };
    }
    case 'tally':
      return id === null ? { name: 'tally', stackId: rowId(search.get('stack')) } : nowhere;
    case 'methods': {
      const part = search.get('part');
      if (id !== null) return nowhere;
      return { name: 'methods', ...(part && WORDS_ID.test(part) ? { part } : {}) };
    }
    case 'meter':
    case 'air':
    case 'places':
    case 'dates':
    case 'settings':
    case 'licenses':
    case 'backups':
    case 'files':
    case 'import-table':
    case 'history':
      return id === null ? { name: head } : nowhere;
    default:
      return nowhere;
  }
}

/** The address of a route; `parseRoute` reads it back. */
export function hrefOf(route: Route): string {
  switch (route.name) {
    case 'stack':
      return `#/stacks/${route.id}`;
    case 'board':
      return route.tab === undefined ? `#/boards/${route.id}` : `#/boards/${route.id}?tab=${route.tab}`;
    case 'species-list':
      return '#/species';
    case 'species':
      return `#/species/${route.id}`;
    case 'round':
      return `#/round/${route.id}`;
    case 'past-round':
      return `#/past-round/${route.stackId}`;
    case 'round-start':
      if (route.stackId === null) return '#/round';
      return `#/round?stack=${route.stackId}${route.placeId == null ? '' : `&place=${route.placeId}`}`;
    case 'labels':
      if (route.boardIds.length > 0) return `#/labels?boards=${route.boardIds.join(',')}`;
      return route.stackId == null ? '#/labels' : `#/labels?stack=${route.stackId}`;
    case 'check':
      return route.code ? `#/check?code=${encodeURIComponent(route.code)}` : '#/check';
    case 'report':
      return `#/report/${route.id}?kind=${route.kind}${route.more?.length ? `&more=${route.more.join(',')}` : ''}`;
    case 'tally':
      return route.stackId === null ? '#/tally' : `#/tally?stack=${route.stackId}`;
    case 'help':
      if (route.chapter === undefined) return '#/help';
      return `#/help/${route.chapter}${route.heading ? `?at=${encodeURIComponent(route.heading)}` : ''}`;
    case 'methods':
      return route.part === undefined ? '#/methods' : `#/methods?part=${route.part}`;
    case 'nowhere':
      return route.hash;
    default:
      return `#/${route.name}`;
  }
}

export const useNavigation = create<{ route: Route; visits: number }>()(() => ({
  route: parseRoute(typeof location === 'undefined' ? '' : location.hash),
  /** How many times the place changed; the first screen does not steal the focus. */
  visits: 0,
}));

/** Goes to a route; the browser's back button leads back. */
export function go(route: Route): void {
  location.hash = hrefOf(route);
}

/**
 * The way on from here, for work whose answer takes time: a person who went elsewhere meanwhile is not pulled away.
 */
export function wayOn(): (route: Route) => void {
  const here = location.hash;
  return (route) => {
    if (location.hash === here) go(route);
  };
}

/** Puts the tab that is shown in the address, and stays where it is. */
export function showTab(route: Route & { name: 'board' }): void {
  history.replaceState(null, '', hrefOf(route));
}

/** Each says whether what it guards would be lost by leaving. */
const guards = new Set<() => boolean>();

/** Asked whenever a person goes back or elsewhere: where the answer is yes, the window stays where it is. */
export function guardLeaving(wouldLose: () => boolean): () => void {
  guards.add(wouldLose);
  return () => void guards.delete(wouldLose);
}

/** Follows the address from now on, and goes where it led while nobody listened yet. */
export function followAddress(): () => void {
  const follow = ({ oldURL }: HashChangeEvent) => {
    if ([...guards].some((wouldLose) => wouldLose())) {
      history.pushState(null, '', oldURL);
      return;
    }
    useNavigation.setState(({ visits }) => ({ route: parseRoute(location.hash), visits: visits + 1 }));
  };
  useNavigation.setState({ route: parseRoute(location.hash) });
  addEventListener('hashchange', follow);
  return () => removeEventListener('hashchange', follow);
}
