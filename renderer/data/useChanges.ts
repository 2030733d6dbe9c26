import { useEffect, useState } from 'react';
import { isTouched, type Topic } from '../../shared-core/contract/topics.ts';
import { isShown } from '../stores/yard.ts';
import { bridge } from './bridge.ts';

/** How often something of these topics changed since it is watched: a reason to ask again. */
export function useChanges(...watched: readonly Topic[]): number {
  const [changes, setChanges] = useState(0);
  const key = JSON.stringify(watched);
  useEffect(() => {
    const topics = JSON.parse(key) as Topic[];
    return bridge().on('changed', (change) => {
      if (isShown(change.yard) && isTouched(topics, new Set(change.topics))) setChanges((count) => count + 1);
    });
  }, [key]);
  return changes;
}
