import plainUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans.ttf?url';
import boldUrl from 'dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf?url';
import type { FontFiles } from '../../export/index.ts';

/** The faces of the shop sheet, from beside the page or out of the page itself. */
export async function readFonts(): Promise<FontFiles> {
  const read = async (url: string): Promise<Uint8Array> => {
    const address = url.startsWith('data:') ? url : new URL(url, import.meta.url).href;
    return new Uint8Array(await (await fetch(address)).arrayBuffer());
  };
  const [plain, bold] = await Promise.all([read(plainUrl), read(boldUrl)]);
  return { plain, bold };
}
