import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';
import { download } from '../../data/download.ts';

/** Makes the labels' PDF and hands it over to be saved. */
export async function savePdf(input: RequestInput<'labels.pdf'>): Promise<string> {
  const { pdfBase64, fileName } = await bridge().query('labels.pdf', input);
  const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
  download(new Blob([bytes], { type: 'application/pdf' }), fileName);
  return fileName;
}
