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
