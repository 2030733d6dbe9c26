import { useEffect, useState } from 'react';
import type { ShownPicture } from '../../../shared-core/contract/pictures.ts';
import { bridge } from '../../data/bridge.ts';
import { attempt, tellDone } from '../../stores/notices.ts';
import { Actions, Button } from '../../ui/Button.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Failed, Loading } from '../../ui/Screen.tsx';
import { useWords } from '../../words.ts';
import { CaptionDialog } from './CaptionDialog.tsx';
import css from './pictures.module.css';
import { usePictureFile } from './usePictureFile.ts';

/** One picture as large as the window, and the ways to the others. */
export function PictureViewer({
  pictures,
  shown,
  nameOf,
  onShow,
  onClose,
}: {
  pictures: readonly ShownPicture[];
  /** One of them. */
  shown: ShownPicture;
  /** What a screen reader says. */
  nameOf: (picture: ShownPicture) => string;
  onShow: (picture: ShownPicture) => void;
  onClose: () => void;
}) {
  const { say } = useWords();
  const [isWriting, setWriting] = useState(false);
  const count = pictures.length;
  const index = pictures.indexOf(shown);
  const show = (at: number): void => {
    const next = pictures[(at + count) % count];
    if (next && next !== shown) onShow(next);
  };
  useEffect(() => {
    if (isWriting) return;
    const onKey = (event: KeyboardEvent): void => {
      if (event.ctrlKey || event.altKey || event.metaKey || event.shiftKey) return;
      const at = { ArrowLeft: index - 1, ArrowRight: index + 1, Home: 0, End: count - 1 }[event.key];
      if (at === undefined) return;
      event.preventDefault();
      show(at);
    };
    // Before the dialog, which lets no key through.
    addEventListener('keydown', onKey, true);
    return () => removeEventListener('keydown', onKey, true);
  });
  async function remove(): Promise<void> {
    await bridge().command('pictures.delete', { id: shown.id });
    // Its Undo is on the screen below.
    onClose();
    tellDone(say('pictures.deleted'));
  }
  return (
    <Dialog isWide title={say('pictures.position', { number: index + 1, count })} onClose={onClose}>
      <figure className={css.whole}>
        <Whole key={shown.id} picture={shown} name={nameOf(shown)} />
        {shown.caption !== '' && (
          <figcaption translate="no" className={css.caption}>
            {shown.caption}
          </figcaption>
        )}
      </figure>
      <Actions>
        {count > 1 && (
          <>
            <Button shortcut="←" onClick={() => show(index - 1)}>
              {say('pictures.previous')}
            </Button>
            <Button shortcut="→" onClick={() => show(index + 1)}>
              {say('pictures.next')}
            </Button>
          </>
        )}
        <Button onClick={() => setWriting(true)}>{say('pictures.edit-caption')}</Button>
        <Button kind="danger" onClick={() => void attempt(remove())}>
          {say('pictures.delete')}
        </Button>
        <Button onClick={onClose}>{say('common.close')}</Button>
      </Actions>
      {isWriting && <CaptionDialog picture={shown} onClose={() => setWriting(false)} />}
    </Dialog>
  );
}

function Whole({ picture, name }: { picture: ShownPicture; name: string }) {
  const { address, problem, again } = usePictureFile(picture);
  if (problem !== null) return <Failed sentence={problem} again={again} />;
  return address === null ? <Loading /> : <img src={address} alt={name} translate="no" />;
}
