/** stop: must not be used as it is; warn: likely to spoil a casting; note: worth knowing. */
export type Severity = 'stop' | 'warn' | 'note';

/** From the gravest to the mildest. */
export const severities = ['stop', 'warn', 'note'] as const satisfies readonly Severity[];

export const isMilder = (one: Severity, than: Severity): boolean =>
  severities.indexOf(one) > severities.indexOf(than);
