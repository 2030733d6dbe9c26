import { createHash } from 'node:crypto';
import { crc32 } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { cleanPicture } from '../../../shared-core/pictures/picture.ts';
import { pictureFile } from '../app/a-picture.ts';

const text = (letters: string): Buffer => Buffer.from(letters, 'latin1');
const u16 = (value: number): Buffer => Buffer.from([value >> 8, value & 0xff]);
const u32 = (value: number): Buffer => Buffer.concat([u16(value >>> 16), u16(value & 0xffff)]);

/** What a camera tells, as Exif 2.32 (CIPA DC-008) writes it: how the picture is turned, by what, and where it was taken. */
function exif(orientation: number, isLittle = false): Buffer {
  const turn = (value: Buffer) => (isLittle ? Buffer.from(value).reverse() : value);
  const camera = text('Camera-7\0\0');
  const tag = (id: number, type: number, count: number, value: Buffer) =>
    Buffer.concat([turn(u16(id)), turn(u16(type)), turn(u32(count)), value]);
  const short = (value: number) => Buffer.concat([turn(u16(value)), u16(0)]);
  const [cameraAt, gpsAt] = [8 + 2 + 3 * 12 + 4, 8 + 2 + 3 * 12 + 4 + camera.length];
  return Buffer.concat([
    text(isLittle ? 'II' : 'MM'),
    turn(u16(0x2a)),
    turn(u32(8)),
    turn(u16(3)),
    tag(0x010f, 2, camera.length, turn(u32(cameraAt))),
    tag(0x0112, 3, 1, short(orientation)),
    tag(0x8825, 4, 1, turn(u32(gpsAt))),
    turn(u32(0)),
    camera,
    turn(u16(1)),
    tag(0x001d, 2, 11, text('GPS1')),
    turn(u32(0)),
    text('GPS-35.6N'),
  ]);
}

const segment = (marker: number, content: Buffer): Buffer =>
  Buffer.concat([Buffer.from([0xff, marker]), u16(content.length + 2), content]);
/** A JPEG with segments after its start, and with bytes after its end. */
function jpegWith(segments: Buffer[], after: Buffer = Buffer.alloc(0), name = 'board-end.jpg'): Buffer {
  const plain = pictureFile(name);
  return Buffer.concat([plain.subarray(0, 2), ...segments, plain.subarray(2), after]);
}

const chunk = (name: string, content: Buffer): Buffer =>
  Buffer.concat([u32(content.length), text(name), content, u32(0)]);
/** A PNG with chunks after its header. */
function pngWith(chunks: Buffer[]): Buffer {
  const plain = pictureFile('board-end.png');
  return Buffer.concat([plain.subarray(0, 33), ...chunks, plain.subarray(33)]);
}

const riffChunk = (name: string, content: Buffer): Buffer =>
  Buffer.concat([text(name), u32(content.length).reverse(), content, Buffer.alloc(content.length % 2)]);
/** It has a color profile. */
const ICC = 0x20;
/** The WebP with other flags in its VP8X chunk, and with chunks after its picture. */
function webpWith(flags: number, chunks: Buffer[]): Buffer {
  const picture = pictureFile('board-end.webp').subarray(30);
  const size = Buffer.from([23, 0, 0, 15, 0, 0]);
  const body = Buffer.concat([
    riffChunk('VP8X', Buffer.concat([Buffer.from([flags, 0, 0, 0]), size])),
    picture,
    ...chunks,
  ]);
  return Buffer.concat([text('RIFF'), u32(body.length + 4).reverse(), text('WEBP'), body]);
}

function cleaned(bytes: Buffer) {
  const made = cleanPicture(bytes);
  if (!made.ok) throw new Error(made.problem.code);
  return { ...made.value, bytes: Buffer.from(made.value.bytes) };
}
const problemOf = (bytes: Buffer): string => {
  const made = cleanPicture(bytes);
  return made.ok ? 'it is a picture' : made.problem.code;
};

describe('a picture is known by its bytes', () => {
  test.each([
    ['board-end.jpg', 'image/jpeg'],
    ['board-end.png', 'image/png'],
    ['board-end.webp', 'image/webp'],
    ['lossless.webp', 'image/webp'],
    ['alpha.webp', 'image/webp'],
  ])('%s', (name, mediaType) => {
    expect(cleaned(pictureFile(name))).toMatchObject({ mediaType, widthPx: 24, heightPx: 16 });
  });

  test.each([
    ['a page of the web', text('<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>')],
    ['an animation of another format', text('GIF89a')],
    ['nothing', Buffer.alloc(0)],
  ])('%s is none', (_, bytes) => {
    expect(problemOf(bytes)).toBe('refusal.picture-unknown');
  });

  test.each(['board-end.jpg', 'board-end.png', 'board-end.webp'])(
    '%s cut off anywhere is refused',
    (name) => {
      const bytes = pictureFile(name);
      for (let length = 0; length < bytes.length - 1; length++) {
        expect(problemOf(bytes.subarray(0, length))).toMatch(/unknown|incomplete/);
      }
    },
  );

  test('one that no computer has memory for is refused', () => {
    const bytes = pictureFile('board-end.png');
    bytes.writeUInt32BE(50_000, 16);
    bytes.writeUInt32BE(50_000, 20);
    expect(problemOf(bytes)).toBe('refusal.picture-too-many-pixels');
  });
});

describe('what does not belong to a picture is left out', () => {
  const clean = (name: string) => cleaned(pictureFile(name)).bytes;

  test('of a JPEG: place, camera, comments, previews and a film behind it', () => {
    const after = text('film with GPS-35.6N');
    const full = jpegWith(
      [
        segment(0xe1, Buffer.concat([text('Exif\0\0'), exif(1)])),
        segment(0xe1, text('http://ns.adobe.com/xap/1.0/\0GPS-35.6N')),
        segment(0xe2, text('MPF\0GPS-35.6N')),
        segment(0xed, text('Photoshop 3.0\0GPS-35.6N')),
        segment(0xfe, text('Camera-7')),
      ],
      after,
    );
    expect(cleaned(full).bytes).toEqual(clean('board-end.jpg'));
    expect(clean('board-end.jpg').toString('latin1')).not.toMatch(/GPS|Camera/);
  });

  test('of a PNG: the same', () => {
    const full = pngWith([
      chunk('eXIf', exif(1)),
      chunk('tEXt', text('Comment\0Camera-7')),
      chunk('iTXt', text('GPS')),
    ]);
    expect(cleaned(full).bytes).toEqual(clean('board-end.png'));
  });

  test('of a WebP: the same, and it no longer says that it has them', () => {
    const full = webpWith(ICC | 0x0c, [riffChunk('EXIF', exif(1)), riffChunk('XMP ', text('GPS-35.6N'))]);
    expect(cleaned(full).bytes).toEqual(webpWith(ICC, []));
  });

  test('and the color profile stays', () => {
    const profile = segment(0xe2, text('ICC_PROFILE\0\u0001\u0001colors'));
    expect(cleaned(jpegWith([profile])).bytes.includes(profile)).toBe(true);
  });
});

describe('how a picture is turned stays', () => {
  test.each([1, 2, 3, 4, 5, 6, 7, 8])('as Exif orientation %i', (orientation) => {
    for (const isLittle of [false, true]) {
      const block = exif(orientation, isLittle);
      const all = [
        jpegWith([segment(0xe1, Buffer.concat([text('Exif\0\0'), block]))]),
        pngWith([chunk('eXIf', block)]),
        webpWith(ICC | 0x08, [riffChunk('EXIF', block)]),
      ];
      for (const full of all) {
        const { bytes } = cleaned(full);
        expect(bytes.toString('latin1')).not.toMatch(/GPS|Camera/);
        // Tag 0x0112, one SHORT (Exif 2.32, table 4).
        const tag = Buffer.concat([u16(0x0112), u16(3), u32(1), u16(orientation)]);
        expect(bytes.includes(tag)).toBe(orientation !== 1);
      }
    }
  });

  test('in a chunk that PNG takes, whose check is right', () => {
    const { bytes } = cleaned(pngWith([chunk('eXIf', exif(6))]));
    const at = bytes.indexOf('eXIf');
    const length = bytes.readUInt32BE(at - 4);
    // zlib's own CRC-32, which PNG uses (PNG, third edition, 5.5).
    expect(bytes.readUInt32BE(at + 4 + length)).toBe(crc32(bytes.subarray(at, at + 4 + length)));
  });

  test('a picture that is cleaned again is the same, to the bit', () => {
    const once = cleaned(jpegWith([segment(0xe1, Buffer.concat([text('Exif\0\0'), exif(6)]))])).bytes;
    const hash = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');
    expect(hash(cleaned(once).bytes)).toBe(hash(once));
  });
});
