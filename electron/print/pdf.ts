import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import PDFDocument from 'pdfkit';
import {
  BOLD_LINE,
  type DrawnPage,
  type ModulesOperation,
  type Operation,
  type OutlinesOperation,
  shadeColors,
  type TextOperation,
  UNITS_PER_EM,
} from '../../shared-core/drawing/page.ts';
import { MM_PER_POINT } from '../../shared-core/measures.ts';

const packages = createRequire(import.meta.url);
const fontFiles = {
  regular: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf',
  bold: 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf',
};

/**
 * The fonts place every glyph by its advance width alone, which is what the texts were fitted with. The
 * fonts' own kerning, ligatures and fractions are off. (A map, as the font engine takes it; pdfkit's types know lists.)
 */
const plainGlyphs = Object.fromEntries(
  [
    'calt',
    'ccmp',
    'clig',
    'dnom',
    'frac',
    'kern',
    'liga',
    'locl',
    'mark',
    'mkmk',
    'numr',
    'rclt',
    'rlig',
  ].map((feature) => [feature, false]),
) as unknown as PDFKit.Mixins.OpenTypeFeatures[];

export interface PdfMeta {
  title: string;
  /** BCP 47: in what language it is read aloud. */
  locale: string;
  /** Written into the file; the same pages with the same instant give the same bytes. */
  createdAt: Date;
}

/**
 * Pages as a PDF: text that can be searched and copied, outlines as vectors, fonts embedded. It asks viewers
 * to print at actual size, because a sheet scaled to fit misses its labels.
 *
 * @param tell  hears how many pages are done
 */
export function pdfOf(
  pages: readonly DrawnPage[],
  meta: PdfMeta,
  tell: (done: number, total: number) => void = () => undefined,
): Promise<Uint8Array> {
  const document = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    lang: meta.locale,
    info: { Title: meta.title, CreationDate: meta.createdAt, Producer: 'Pintally', Creator: 'Pintally' },
    displayTitle: true,
    // No font of pdfkit's own: it would look for its metrics beside the bundle.
    font: '',
  });
  for (const [face, file] of Object.entries(fontFiles)) {
    document.registerFont(face, readFileSync(packages.resolve(file)));
  }
  askForActualSize(document);
  const chunks: Uint8Array[] = [];
  const written = new Promise<Uint8Array>((resolve, reject) => {
    document.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    document.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    document.on('error', reject);
  });
  for (const [index, page] of pages.entries()) {
    tell(index, pages.length);
    document.addPage({ size: [page.widthMm / MM_PER_POINT, page.heightMm / MM_PER_POINT], margin: 0 });
    for (const operation of page.operations) draw(document, operation);
  }
  document.end();
  return written;
}

/** Viewer preference `PrintScaling` (ISO 32000-1, table 150, from memory), for which pdfkit has no option. */
function askForActualSize(document: PDFKit.PDFDocument): void {
  const root = (document as unknown as { _root: { data: { ViewerPreferences: { data: object } } } })._root;
  Object.assign(root.data.ViewerPreferences.data, { PrintScaling: 'None' });
}

/** Of pdfkit's own, which its types do not have. */
interface EmbeddedFont {
  id: string;
  ref(): unknown;
  /** The glyphs of a text as hexadecimal codes; embeds them. */
  encode(text: string, features: unknown): [codes: string[], positions: unknown];
}
interface Inside {
  _font: EmbeddedFont;
  page: { fonts: Record<string, unknown> };
  addContent(operators: Uint8Array): void;
}
const inside = (document: PDFKit.PDFDocument) => document as unknown as Inside;

/** Operators in one text: pdfkit copies each line of them by itself. */
const addContent = (document: PDFKit.PDFDocument, operators: readonly string[]): void =>
  inside(document).addContent(Buffer.from(`${operators.join('\n')}\n`));

/** A length in points, as finely as pdfkit writes it. */
const points = (mm: number): string => (mm / MM_PER_POINT).toFixed(6);

const codesOf = new WeakMap<EmbeddedFont, Map<string, string>>();

/** Letter by letter, as no glyph depends on its neighbors: laying out whole texts would take most of the time. */
function codes(font: EmbeddedFont, text: string): string {
  const known = codesOf.get(font) ?? new Map<string, string>();
  codesOf.set(font, known);
  let found = '';
  for (const letter of text) {
    const code = known.get(letter) ?? font.encode(letter, plainGlyphs)[0].join('');
    known.set(letter, code);
    found += code;
  }
  return found;
}

/** Operators of ISO 32000-1 (tables 105 to 109, from memory): pdfkit lays out each text twice, for what we do not use. */
function drawText(document: PDFKit.PDFDocument, operation: TextOperation): void {
  const { text, face, sizePt, xMm, baselineMm } = operation;
  document.font(face);
  const { _font: font, page } = inside(document);
  page.fonts[font.id] ??= font.ref();
  // The page has y down, and letters have it up.
  const place = `1 0 0 -1 ${points(xMm)} ${points(baselineMm)}`;
  addContent(document, [
    'BT',
    '0 g',
    `/${font.id} ${sizePt.toFixed(6)} Tf`,
    `${place} Tm`,
    `<${codes(font, text)}> Tj`,
    'ET',
  ]);
}

/** Operators of ISO 32000-1 (tables 51, 57, 59 and 60, from memory). */
function drawModules(document: PDFKit.PDFDocument, operation: ModulesOperation): void {
  const { xMm, yMm, moduleMm, rectangles } = operation;
  const module = points(moduleMm);
  const outlines = rectangles.map(([x, y, width, height]) => `${x} ${y} ${width} ${height} re`);
  const place = `${module} 0 0 ${module} ${points(xMm)} ${points(yMm)} cm`;
  addContent(document, ['q', '0 g', place, ...outlines, 'f', 'Q']);
}

function draw(document: PDFKit.PDFDocument, operation: Operation): void {
  if (operation.kind === 'text') {
    drawText(document, operation);
    return;
  }
  if (operation.kind === 'modules') {
    drawModules(document, operation);
    return;
  }
  if (operation.kind === 'outlines') {
    drawOutlines(document, operation);
    return;
  }
  document
    .save()
    .scale(1 / MM_PER_POINT)
    .path(operation.d);
  const { isFilled, strokeMm, dashMm } = operation;
  const [fill, stroke] = [shadeColors[operation.fill ?? 'black'], shadeColors[operation.stroke ?? 'black']];
  if (strokeMm !== null) document.lineWidth(strokeMm).lineJoin('round');
  // It takes a list as well, which its types do not know.
  if (dashMm !== undefined) document.dash(dashMm as unknown as number, {});
  if (isFilled && strokeMm !== null) document.fillAndStroke(fill, stroke);
  else if (isFilled) document.fill(fill);
  else document.stroke(stroke);
  document.restore();
}

/** Their text can be searched and copied too, where a viewer knows `ActualText` (ISO 32000-1, 14.9.4, from memory). */
function drawOutlines(document: PDFKit.PDFDocument, operation: OutlinesOperation): void {
  const { text, xMm, baselineMm, sizePt, glyphs, face } = operation;
  document.markContent('Span', { actual: text });
  for (const { d, xEm, yEm } of glyphs) {
    if (d === '') continue;
    document
      .save()
      .translate(xMm / MM_PER_POINT + xEm * sizePt, baselineMm / MM_PER_POINT - yEm * sizePt)
      .scale(sizePt / UNITS_PER_EM)
      .path(d);
    if (face === 'bold') document.lineWidth(BOLD_LINE).lineJoin('round').fillAndStroke('black', 'black');
    else document.fill('black');
    document.restore();
  }
  document.endMarkedContent();
}
