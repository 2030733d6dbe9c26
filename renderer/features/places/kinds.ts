import type { PlaceKind } from '../../../shared-core/contract/yard.ts';
import type { Code } from '../../../shared-core/words/en/index.ts';

/** What each kind of place is called, in the order of the form. */
export const placeKinds = {
  outdoors: 'places.kind.outdoors',
  'open-shed': 'places.kind.open-shed',
  shop: 'places.kind.shop',
  'heated-room': 'places.kind.heated-room',
} as const satisfies Record<PlaceKind, Code>;
