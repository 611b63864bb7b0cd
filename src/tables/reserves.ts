/**
 * Clamps or press are to bear this many times the force that opens the can: heating presses harder than closing did.
 * Our own choice; no published source.
 */
export const holdingReserve = 1.25;

/** What a rigid half may hold on to, mm: about what a casting shrinks away by; common practice, no published source. */
export const rigidUndercut = 0.05;
