import { useEffect, useRef, useState } from 'react';
import type { Code } from '../../../shared-core/words/en/index.ts';
import { goToScanned } from '../../stores/scans.ts';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { useWords } from '../../words.ts';
import { codeReader } from './code-reader.ts';
import styles from './labels.module.css';

/** How often the camera's picture is read, ms. */
const LOOK_MS = 150;

type CameraState = Extract<Code, `labels.camera-${'starting' | 'refused' | 'none' | 'busy'}`>;

/** What a camera that does not start says, by the names of the Media Capture and Streams standard (W3C). */
const troubles: Record<string, CameraState> = {
  NotAllowedError: 'labels.camera-refused',
  NotReadableError: 'labels.camera-busy',
};

/** Reads a label by the camera, for which the person is asked now, and goes to its board. Nothing of it is recorded. */
export function ScanDialog({ onClose }: { onClose: () => void }) {
  const { say } = useWords();
  const video = useRef<HTMLVideoElement>(null);
  const close = useRef(onClose);
  close.current = onClose;
  const [state, setState] = useState<CameraState | null>('labels.camera-starting');
  useEffect(() => {
    let stream: MediaStream | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let isOver = false;
    async function watch(): Promise<void> {
      const picture = video.current;
      if (isOver || !picture) return;
      const scanned = await read(picture).catch(() => null);
      if (isOver) return;
      if (scanned === null) {
        timer = setTimeout(watch, LOOK_MS);
        return;
      }
      close.current();
      await goToScanned(scanned);
    }
    let read: Awaited<ReturnType<typeof codeReader>>;
    async function start(): Promise<void> {
      try {
        read = await codeReader();
        stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: 'environment' } });
        if (isOver) return stop();
        if (video.current) video.current.srcObject = stream;
        setState(null);
        await watch();
      } catch (error) {
        const name = error instanceof DOMException ? error.name : '';
        setState(troubles[name] ?? 'labels.camera-none');
      }
    }
    function stop(): void {
      isOver = true;
      clearTimeout(timer);
      for (const track of stream?.getTracks() ?? []) track.stop();
    }
    void start();
    return stop;
  }, []);
  const isTrouble = state !== null && state !== 'labels.camera-starting';
  return (
    <Dialog title={say('labels.scan')} onClose={onClose}>
      {isTrouble ? (
        <Banner kind="problem">{say(state)}</Banner>
      ) : (
        <>
          <p role="status">{say(state ?? 'labels.scan-hint')}</p>
          <video
            ref={video}
            className={styles.camera}
            aria-label={say('labels.camera-picture')}
            autoPlay
            muted
            playsInline
          />
        </>
      )}
      <Actions>
        <Button onClick={onClose}>{say('common.cancel')}</Button>
      </Actions>
    </Dialog>
  );
}
