import { useEffect, useState } from 'react';
import type { ShownPicture } from '../../../shared-core/contract/pictures.ts';
import { bridge } from '../../data/bridge.ts';
import { sentenceOf } from '../../stores/notices.ts';

type Loaded = Pick<ShownPicture, 'id' | 'bytes' | 'mediaType'>;

/** A whole picture, part by part. @throws Refusal where its file is missing or damaged */
async function readPicture({ id, bytes, mediaType }: Loaded): Promise<Blob> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let offset = 0;
  do {
    const { base64 } = await bridge().query('pictures.read', { id, offset });
    const part = Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
    if (part.length === 0) break;
    parts.push(part);
    offset += part.length;
  } while (offset < bytes);
  return new Blob(parts, { type: mediaType });
}

/** A picture to show, once it is here; or why it cannot be shown. */
export function usePictureFile({ id, bytes, mediaType }: Loaded) {
  const [found, setFound] = useState<{ id: number; address?: string; problem?: string } | null>(null);
  const [tries, setTries] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another try asks again.
  useEffect(() => {
    let isLeft = false;
    let address: string | null = null;
    readPicture({ id, bytes, mediaType }).then(
      (file) => {
        if (isLeft) return;
        address = URL.createObjectURL(file);
        setFound({ id, address });
      },
      (error) => isLeft || setFound({ id, problem: sentenceOf(error) }),
    );
    return () => {
      isLeft = true;
      if (address !== null) URL.revokeObjectURL(address);
    };
  }, [id, bytes, mediaType, tries]);
  return {
    address: (found?.id === id && found.address) || null,
    problem: (found?.id === id && found.problem) || null,
    again: (): void => {
      setFound(null);
      setTries(tries + 1);
    },
  };
}
