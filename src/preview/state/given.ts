/** Files a person gave that are not beside the plan on disk yet, by name. */
export const given = new Map<string, Uint8Array>();
