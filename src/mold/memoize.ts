/**
 * Gives what `make` gives, or what it gave before for equal data: `input` is all that `make` looks at, plain data.
 * The pipeline brings its cache in this form.
 */
export type Memoize = <T>(what: string, input: unknown, make: () => T) => T;

/** For runs that are not going to be repeated. */
export const makeAlways: Memoize = (_what, _input, make) => make();
