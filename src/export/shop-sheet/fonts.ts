/** The two faces the sheet is set in, as TrueType bytes: the shell reads them, for the core reads no files. */
export interface FontFiles {
  readonly plain: Uint8Array;
  readonly bold: Uint8Array;
}
