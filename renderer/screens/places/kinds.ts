import type { PlaceKind } from '../../../shared-core/contract/yard.ts';

/** A kind of place in words. */
export const placeKindWords: Record<PlaceKind, string> = {
  outdoors: 'Outdoors',
  'open-shed': 'Open shed',
  shop: 'Shop, not heated all year',
  'heated-room': 'Heated room',
};
