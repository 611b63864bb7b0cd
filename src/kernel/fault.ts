/** A kernel gave no usable solid. `what` names the solid in the user's words; shells report it, never a stack. */
export class KernelFault extends Error {
  override readonly name = 'KernelFault';
  constructor(
    readonly what: string,
    readonly reason: string,
  ) {
    super(`${what}: ${reason}`);
  }
}

/**
 * The kernel's memory, 4 GiB at most, is used up, or it broke down: whatever it holds is lost and it is not to be used
 * again. `loadKernel` gives another one.
 */
export class KernelExhausted extends Error {
  override readonly name = 'KernelExhausted';
  constructor() {
    super('the kernel broke down; most likely the mold takes more memory than the 4 GiB it can have');
  }
}

/** Whether the kernel itself broke down: nothing a solid could have done. */
export const brokeDown = (error: unknown): boolean => error instanceof WebAssembly.RuntimeError;

/** What the kernel says of an error, in a word where it has one. */
export const codeOf = (error: unknown): string => {
  const code = (error as { code?: unknown } | null)?.code;
  return typeof code === 'string' ? code : error instanceof Error ? error.message : String(error);
};
