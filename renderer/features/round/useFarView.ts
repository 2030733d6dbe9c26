import { useState } from 'react';

const KEY = 'pintally.far-view';

/** Whether a round is shown so that it can be read from two meters away; remembered in this window's browser. */
export function useFarView(): [isFar: boolean, toggle: () => void] {
  const [isFar, setFar] = useState(() => localStorage.getItem(KEY) === 'yes');
  return [
    isFar,
    () => {
      localStorage.setItem(KEY, isFar ? 'no' : 'yes');
      setFar(!isFar);
    },
  ];
}
