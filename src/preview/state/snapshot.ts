import { signal } from '@preact/signals';
import { downloadFile } from './download.ts';
import { mold } from './store.ts';

/** How often a picture of the view was asked for; the scene listens. */
export const picturesAsked = signal(0);

export const askPicture = (): void => {
  picturesAsked.value++;
};

/** Hands over what a canvas shows, on the ground of the present light. */
export async function takePicture(canvas: HTMLCanvasElement, ground: string): Promise<void> {
  const sheet = new OffscreenCanvas(canvas.width, canvas.height);
  const pen = sheet.getContext('2d');
  if (!pen) return;
  pen.fillStyle = ground;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.drawImage(canvas, 0, 0);
  const blob = await sheet.convertToBlob({ type: 'image/png' });
  downloadFile(new Uint8Array(await blob.arrayBuffer()), `${mold.peek()?.title ?? 'mold'}.png`);
}
