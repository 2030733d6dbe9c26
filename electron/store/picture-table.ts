import type { Subject } from '../../shared-core/contract/notes.ts';
import { type Picture, pictureSchema, type ShownPicture } from '../../shared-core/contract/pictures.ts';
import { type Columns, recordAdder, recordEditor, selected } from './columns.ts';
import { sameBoard } from './lineage.ts';
import type { Db } from './yard-file.ts';

interface SubjectColumns {
  boardId: number | null;
  stackId: number | null;
  roundId: number | null;
  readingId: number | null;
}
type NewPicture = Omit<Picture, 'id' | 'version'> & SubjectColumns;

const ofSubject: Columns<SubjectColumns> = {
  boardId: 'board_id',
  stackId: 'stack_id',
  roundId: 'round_id',
  readingId: 'reading_id',
};
const columns: Columns<NewPicture> = {
  contentHash: 'content_hash',
  mediaType: 'media_type',
  bytes: 'bytes',
  caption: 'caption',
  addedAt: 'added_at',
  ...ofSubject,
};

const subjectOf = ({ kind, id }: Subject): SubjectColumns => ({
  boardId: kind === 'board' ? id : null,
  stackId: kind === 'stack' ? id : null,
  roundId: kind === 'round' ? id : null,
  readingId: kind === 'reading' ? id : null,
});

type PictureRow = Picture & SubjectColumns;

export function pictureReads(db: Db) {
  const select = `SELECT p.id, p.version, ${selected(columns, 'p')}, t.base64 AS thumbnail
    FROM picture p LEFT JOIN thumbnail t ON t.content_hash = p.content_hash`;
  const one = db.prepare<[number], PictureRow>(`${select} WHERE p.id = ?`);
  const where = (condition: string) =>
    db.prepare<{ id: number }, ShownPicture>(`${select} ${condition} ORDER BY p.id`);
  const byKind = (column: string) => where(`WHERE p.${column} = @id`);
  const of = {
    board: where(`WHERE p.board_id IN ${sameBoard('@id')}`),
    stack: byKind('stack_id'),
    round: byKind('round_id'),
    reading: byKind('reading_id'),
  };
  const hashes = db.prepare<[], string>('SELECT DISTINCT content_hash FROM picture').pluck();
  return {
    get: (id: number): (Picture & { subject: Subject }) | undefined => {
      const row = one.get(id);
      if (row === undefined) return undefined;
      const { boardId, stackId, roundId, readingId } = row;
      const kinds = { board: boardId, stack: stackId, round: roundId, reading: readingId };
      const [kind, subjectId] = Object.entries(kinds).find(([, each]) => each !== null) as [
        Subject['kind'],
        number,
      ];
      return { ...pictureSchema.parse(row), subject: { kind, id: subjectId } };
    },
    /** Of all files that a picture refers to. */
    hashes: (): string[] => hashes.all(),
    /** The oldest first; of a board those of all its records. */
    of: ({ kind, id }: Subject): ShownPicture[] =>
      of[kind].all({ id }).map((row) => ({ ...pictureSchema.parse(row), thumbnail: row.thumbnail })),
  };
}

export function pictureWrites(db: Db, { get }: ReturnType<typeof pictureReads>) {
  const add = recordAdder(db, 'picture', columns);
  const edit = recordEditor(db, 'picture', { caption: 'caption' } as Columns<Pick<Picture, 'caption'>>, get);
  const moveToReading = db.prepare(
    'UPDATE picture SET reading_id = @toId, version = version + 1 WHERE reading_id = @fromId',
  );
  const remove = db.prepare('DELETE FROM picture WHERE id = ?');
  const setThumbnail = db.prepare('INSERT OR REPLACE INTO thumbnail VALUES (?, ?)');
  return {
    add: (subject: Subject, picture: Omit<Picture, 'id' | 'version'>): number =>
      add({ ...picture, ...subjectOf(subject) }),
    edit,
    /** Those of a reading are of another one. */
    moveToReading: (fromId: number, toId: number): void => {
      moveToReading.run({ fromId, toId });
    },
    delete: (id: number): void => {
      remove.run(id);
    },
    setThumbnail: (contentHash: string, base64: string): void => {
      setThumbnail.run(contentHash, base64);
    },
  };
}

/** What pictures a file of any layout refers to, by the hashes of their files. */
export function pictureHashesIn(db: Db): string[] {
  const hasAny = db.prepare("SELECT 1 FROM sqlite_schema WHERE type = 'table' AND name = 'picture'").get();
  return hasAny ? (db.prepare('SELECT DISTINCT content_hash FROM picture').pluck().all() as string[]) : [];
}
