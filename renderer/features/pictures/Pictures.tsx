import { useRef, useState } from 'react';
import type { Subject } from '../../../shared-core/contract/notes.ts';
import type { ShownPicture } from '../../../shared-core/contract/pictures.ts';
import { mediaTypeSchema } from '../../../shared-core/pictures/picture.ts';
import { useQuery } from '../../data/useQuery.ts';
import { FileButton } from '../../form/FileButton.tsx';
import { Await } from '../../ui/Await.tsx';
import { Banner } from '../../ui/Banner.tsx';
import { Actions, Button } from '../../ui/Button.tsx';
import { WorkUnderWay } from '../../ui/WorkUnderWay.tsx';
import { useWords } from '../../words.ts';
import { PictureViewer } from './PictureViewer.tsx';
import css from './pictures.module.css';
import { type RefusedFile, useAddPictures } from './useAddPictures.ts';
import { useGivenFiles } from './useGivenFiles.ts';
import { usePictureFile } from './usePictureFile.ts';

/** The pictures of a board, stack, round or reading, and every way to add one: chosen, pasted or dropped. */
export function Pictures({
  subject,
  recordName,
}: {
  subject: Subject;
  /** What they are of: "A12". */
  recordName: string;
}) {
  const { say } = useWords();
  const found = useQuery('pictures.list', { subject });
  const pictures = found.output ?? [];
  const part = useRef<HTMLDivElement>(null);
  const { underWay, stop, refused, forgetRefused, add } = useAddPictures(subject, pictures);
  const isOver = useGivenFiles(part, add);
  const [shownId, setShownId] = useState<number | null>(null);
  const shown = pictures.find(({ id }) => id === shownId);
  const nameOf = (picture: ShownPicture): string =>
    picture.caption ||
    say('pictures.name', {
      number: pictures.indexOf(picture) + 1,
      recordName,
      addedOn: picture.addedAt,
    });
  return (
    <div ref={part} className={isOver ? `column ${css.over}` : 'column'}>
      <Await of={[found]}>
        {(list) =>
          list.length === 0 ? (
            <p className="soft">{say('pictures.none')}</p>
          ) : (
            <ul className={css.grid} aria-label={say('pictures.list', { recordName })}>
              {list.map((picture) => (
                <li key={picture.id}>
                  <button type="button" className={css.tile} onClick={() => setShownId(picture.id)}>
                    <Small picture={picture} name={picture.caption === '' ? nameOf(picture) : ''} />
                    {picture.caption !== '' && (
                      <span translate="no" className={css.caption}>
                        {picture.caption}
                      </span>
                    )}
                  </button>
                </li>
              ))}
            </ul>
          )
        }
      </Await>
      {refused.length > 0 && <NotAdded refused={refused} onClose={forgetRefused} />}
      {underWay ? (
        <WorkUnderWay
          label={say('pictures.adding', { count: underWay.count })}
          done={underWay.done}
          total={underWay.total}
          onCancel={stop}
        />
      ) : (
        <Actions>
          <FileButton
            label={say('pictures.add')}
            multiple
            accept={mediaTypeSchema.options.join()}
            onFiles={add}
          />
          <span className="soft">{say('pictures.ways')}</span>
        </Actions>
      )}
      {shown && (
        <PictureViewer
          pictures={pictures}
          shown={shown}
          nameOf={nameOf}
          onShow={({ id }) => setShownId(id)}
          onClose={() => setShownId(null)}
        />
      )}
    </div>
  );
}

/** @param name  empty where it is said beside it */
function Small({ picture, name }: { picture: ShownPicture; name: string }) {
  if (picture.thumbnail === null) return <FromWhole picture={picture} name={name} />;
  return (
    <img
      className={css.small}
      src={`data:image/jpeg;base64,${picture.thumbnail}`}
      alt={name}
      translate="no"
    />
  );
}

/** One whose small picture did not come with it. */
function FromWhole({ picture, name }: { picture: ShownPicture; name: string }) {
  const { address, problem } = usePictureFile(picture);
  if (problem !== null) return <span className={`soft ${css.problem}`}>{problem}</span>;
  return address === null ? (
    <span className={css.small} />
  ) : (
    <img className={css.small} src={address} alt={name} translate="no" />
  );
}

function NotAdded({ refused, onClose }: { refused: readonly RefusedFile[]; onClose: () => void }) {
  const { say } = useWords();
  return (
    <Banner kind="problem" actions={<Button onClick={onClose}>{say('common.close')}</Button>}>
      {say('pictures.not-added', { count: refused.length })}
      <ul className="list">
        {refused.map(({ fileName, why }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two files may have one name, and none moves.
          <li key={at}>
            <strong translate="no">{fileName}</strong> {say(why)}
          </li>
        ))}
      </ul>
    </Banner>
  );
}
