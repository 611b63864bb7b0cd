/**
 * A plan's title as a folder name that every system accepts: letters, digits and dashes in lower case. Names that
 * Windows keeps for devices get a suffix.
 */
export function folderName(title: string): string {
  const plain = title
    .normalize('NFC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-/, '');
  // By letters, so that none is cut in two; 60 of the longest in UTF-8 are 240 bytes, where file systems allow 255.
  const name = [...plain].slice(0, 60).join('').replace(/-$/, '');
  if (name === '') return 'mold';
  return /^(con|prn|aux|nul|com\d|lpt\d)$/.test(name) ? `${name}-mold` : name;
}
