import type { RequestInput } from '../../../shared-core/contract/requests.ts';
import { bridge } from '../../data/bridge.ts';

/** Makes the labels' PDF and hands it to the browser, or to Electron, to save. */
export async function savePdf(input: RequestInput<'labels.pdf'>): Promise<string> {
  const { pdfBase64, fileName } = await bridge().query('labels.pdf', input);
  const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
  const address = URL.createObjectURL(new Blob([bytes], { type: 'application/pdf' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download holds on to the bytes once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
  return fileName;
}
