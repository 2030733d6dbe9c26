import { useRef, useState } from 'react';

interface Transfer {
  done: number;
  /** 0 while it is not known. */
  total: number;
}

/** A file on its way: how far it is, and the way to stop it. */
export function useTransfer() {
  const [underWay, setUnderWay] = useState<Transfer | null>(null);
  const isStopped = useRef(false);
  return {
    underWay,
    run: async <T>(work: (onPart: (done: number, total: number) => boolean) => Promise<T>): Promise<T> => {
      isStopped.current = false;
      setUnderWay({ done: 0, total: 0 });
      try {
        return await work((done, total) => {
          setUnderWay({ done, total });
          return !isStopped.current;
        });
      } finally {
        setUnderWay(null);
      }
    },
    stop: (): void => {
      isStopped.current = true;
    },
  };
}
