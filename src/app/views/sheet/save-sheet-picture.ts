/** The sheet as it is seen, with its words and its key, as a picture to save. */

import typefaceUrl from '@fontsource-variable/inter/files/inter-latin-wght-normal.woff2?url';
import { toBlob } from 'html-to-image';
import { saveBytes } from '#app/views/save-bytes.ts';

/** What belongs to the hand and not to the picture. */
const LEFT_OUT = ['pick-box', 'hover-card', 'carried'];
/** Twice the pixels of the page: fit to print. */
const FINER = 2;
/** Frames of the page after which a frame of the worker's canvas is surely in it. */
const HANDED_OVER = 3;

/** As the sheet is once it is drawn; false where the browser gives no picture. */
export async function saveSheetPicture(view: HTMLElement, name: string): Promise<boolean> {
  await untilDrawn(view);
  const blob = await toBlob(view, {
    pixelRatio: FINER,
    backgroundColor: getComputedStyle(document.body).backgroundColor,
    fontEmbedCSS: await typefaceStyle(),
    filter: ({ classList }) => !LEFT_OUT.some((each) => classList?.contains(each)),
  });
  if (blob === null) return false;
  saveBytes({ name, mime: blob.type, bytes: new Uint8Array(await blob.arrayBuffer()) });
  return true;
}

/** What the page last asked for stands on the canvas (`start-painter.ts`), and was handed over to the page. */
async function untilDrawn(view: HTMLElement): Promise<void> {
  const isDrawn = () => view.querySelector('.sheet-canvas')?.getAttribute('data-drawn') !== 'false';
  let frames = 0;
  while (frames < HANDED_OVER) {
    await new Promise(requestAnimationFrame);
    frames = isDrawn() ? frames + 1 : 0;
  }
}

/** A picture loads nothing: the typeface goes along in it. */
async function typefaceStyle(): Promise<string> {
  const bytes = new Uint8Array(await (await fetch(typefaceUrl)).arrayBuffer());
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return `@font-face { font-family: "Inter Variable"; font-weight: 100 900; src: url(data:font/woff2;base64,${btoa(letters)}) format("woff2"); }`;
}
