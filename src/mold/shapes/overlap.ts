/** How far a cutter stands out of the faces it opens, mm: faces that only coincide would leave a film. */
export const overlap = 1;
