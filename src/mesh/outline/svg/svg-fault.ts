/** Ends the reading of a drawing with a clause for the user; never leaves this folder. */
export class SvgFault extends Error {}
