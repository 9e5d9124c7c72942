/** Reads codes off another phone's screen: by the browser's own reader where it has one. */

/** The browser's own reader; TypeScript doesn't know of it, and few browsers have it. */
interface Detector {
  detect(source: ImageBitmapSource): Promise<readonly { readonly rawValue: string }[]>;
}

declare global {
  interface Window {
    readonly BarcodeDetector?: {
      new (options: { formats: readonly string[] }): Detector;
      getSupportedFormats(): Promise<readonly string[]>;
    };
  }
}

/** A picture larger than this is drawn smaller: a phone's camera shows far more than is needed. */
const WIDEST = 1600;

type Reader = (source: ImageBitmap | HTMLVideoElement) => Promise<string | undefined>;

let reader: Promise<Reader> | undefined;

/** Return what reads a picture or a frame of the camera. */
export function codeReader(): Promise<Reader> {
  reader ??= made();
  return reader;
}

/** The text of a code in a picture that was picked. */
export async function codeInPicture(file: File): Promise<string | undefined> {
  const picture = await createImageBitmap(file);
  try {
    return await (await codeReader())(picture);
  } finally {
    picture.close();
  }
}

async function made(): Promise<Reader> {
  const own = window.BarcodeDetector;
  if (own && (await own.getSupportedFormats()).includes("qr_code")) {
    const detector = new own({ formats: ["qr_code"] });
    return async (source) => (await detector.detect(source))[0]?.rawValue;
  }
  // Only fetched where it is needed; it is on the phone like all the rest.
  const { default: decode } = await import("qr/decode.js");
  return async (source) => {
    const image = pixels(source);
    try {
      return decode(image, { timeLimit: 400 });
    } catch {
      return undefined;
    }
  };
}

function pixels(source: ImageBitmap | HTMLVideoElement): ImageData {
  const [wide, high] =
    source instanceof HTMLVideoElement
      ? [source.videoWidth, source.videoHeight]
      : [source.width, source.height];
  const scale = Math.min(1, WIDEST / Math.max(wide, high));
  const canvas = new OffscreenCanvas(Math.round(wide * scale), Math.round(high * scale));
  const drawn = canvas.getContext("2d", { willReadFrequently: true });
  if (!drawn) throw new Error("no canvas");
  drawn.drawImage(source, 0, 0, canvas.width, canvas.height);
  return drawn.getImageData(0, 0, canvas.width, canvas.height);
}
