/**
 * A plan's title as a folder name that every system accepts: letters, digits and dashes in lower case. Names that
 * Windows keeps for devices get a suffix.
 */
export function folderName(title: string): string {
  const plain = title
    .normalize('NFC')
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 80);
  if (plain === '') return 'mold';
  return /^(con|prn|aux|nul|com\d|lpt\d)$/.test(plain) ? `${plain}-mold` : plain;
}
