/**
 * Clamps or press are to bear this many times the force that opens the can: heating presses harder than closing did.
 * Our own choice; no published source.
 */
export const holdingReserve = 1.25;
