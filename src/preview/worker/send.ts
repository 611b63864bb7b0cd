import wasmUrl from 'manifold-3d/manifold.wasm?url';
import { type Kernel, loadKernel } from '../../kernel/index.ts';
import type { FromWorker, ShownMesh } from './messages.ts';

/** The kernel, with its WASM from beside the page or out of the page itself. */
export const workerKernel = (): Promise<Kernel> =>
  loadKernel({ wasmUrl: wasmUrl.startsWith('data:') ? wasmUrl : new URL(wasmUrl, import.meta.url).href });

/** Sends something to the page; `meshes` are transferred. */
export function send(message: FromWorker, meshes: readonly ShownMesh[] = []): void {
  const transfer = meshes.flatMap(({ positions, normals }) => [positions.buffer, normals.buffer]);
  globalThis.postMessage(message, { transfer: transfer as Transferable[] });
}

/** Lets what has arrived meanwhile be handled. A timer would be slowed down by the browser; a message is not. */
export function yieldToEvents(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(undefined);
  });
}

/** Thrown to leave off work that a newer edit has made useless. */
export class Outdated extends Error {
  override readonly name = 'Outdated';
}

/** Runs the work on an edit: its end by a newer one is no fault, anything else thrown is told as one. */
export async function onEdit(edit: number, run: () => Promise<void>): Promise<void> {
  try {
    await run();
  } catch (error) {
    if (error instanceof Outdated) return;
    send({ kind: 'fault', edit, says: error instanceof Error ? error.message : String(error) });
  }
}
