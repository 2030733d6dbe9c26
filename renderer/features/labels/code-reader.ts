/** What the Shape Detection API (a W3C draft) has where a browser has it. */
interface Detector {
  detect(picture: HTMLVideoElement): Promise<{ rawValue: string }[]>;
}
type DetectorClass = {
  new (options: { formats: string[] }): Detector;
  getSupportedFormats(): Promise<string[]>;
};

/** What is read off the picture of a camera; null for no code. */
type CodeReader = (picture: HTMLVideoElement) => Promise<string | null>;

const FORMATS = ['qr_code', 'code_128'];

/** The browser's own reader of our codes; where there is none, one of QR codes alone. */
export async function codeReader(): Promise<CodeReader> {
  const { BarcodeDetector } = globalThis as { BarcodeDetector?: DetectorClass };
  const formats = ((await BarcodeDetector?.getSupportedFormats()) ?? []).filter((each) =>
    FORMATS.includes(each),
  );
  if (BarcodeDetector && formats.length > 0) {
    const detector = new BarcodeDetector({ formats });
    return async (picture) => {
      if (picture.readyState < picture.HAVE_CURRENT_DATA) return null;
      return (await detector.detect(picture))[0]?.rawValue || null;
    };
  }
  const { default: jsQR } = await import('jsqr');
  const canvas = document.createElement('canvas');
  const context = canvas.getContext('2d', { willReadFrequently: true });
  return async (picture) => {
    const { videoWidth: width, videoHeight: height } = picture;
    if (!context || width === 0) return null;
    Object.assign(canvas, { width, height });
    context.drawImage(picture, 0, 0);
    const { data } = context.getImageData(0, 0, width, height);
    return jsQR(data, width, height, { inversionAttempts: 'dontInvert' })?.data || null;
  };
}
