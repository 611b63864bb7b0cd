import type { UnreadableReason } from '../drawn-paths.ts';

/** Ends the reading of a drawing; never leaves this folder. */
export class SvgFault extends Error {
  constructor(readonly reason: UnreadableReason) {
    super(reason.which);
  }
}
