/** Hands a file to the browser, or to Electron, to save. */
export function download(file: Blob, fileName: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = fileName;
  link.click();
  // The download holds on to the bytes once it has begun.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A PDF that the machine made. */
export function downloadPdf(pdfBase64: string, fileName: string): void {
  const bytes = Uint8Array.from(atob(pdfBase64), (character) => character.charCodeAt(0));
  download(new Blob([bytes], { type: 'application/pdf' }), fileName);
}
