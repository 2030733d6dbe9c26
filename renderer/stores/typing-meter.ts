import { client, queryOf } from '../data/asking.ts';

/** The meter that this window says typed values are read off, null for none; undefined before it knows. */
export function typingMeterId(): number | null | undefined {
  const meters = client.getQueryData(queryOf('meters.list', {}).queryKey);
  return meters && (meters.find(({ isTypedFrom }) => isTypedFrom)?.id ?? null);
}
