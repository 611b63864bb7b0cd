const inWords = (words: string): RegExp =>
  new RegExp(`(?<![\\p{L}\\p{N}])${words}(?![\\p{L}\\p{N}])[\\s.-]*`, 'gu');
const highTemperature = inWords('hi(?:gh)?[\\s.-]*temp(?:erature)?');
/** Of a resin; of a filament it may mean heat-treated. */
const highShort = inWords('h\\.?\\s?t');
const resin = /resin|(?<!\p{L})(?:sla|dlp)(?!\p{L})/u;
const nothingElse = /^(?:high-temperature|resin|sla|dlp|[\s,.-])+$/;

/**
 * A material's name as it is looked up: in lower case, words apart by one space, however "high-temperature" is spelled.
 * High-temperature resin has one name.
 */
export function materialName(written: string): string {
  const plain = written
    .normalize('NFC')
    .toLowerCase()
    .replace(/[\s_]+/g, ' ')
    .trim();
  const long = plain.replace(highTemperature, 'high-temperature ');
  const name = (resin.test(plain) ? long.replace(highShort, 'high-temperature ') : long).trim();
  return name.includes('high-temperature') && nothingElse.test(name) ? 'high-temperature resin' : name;
}
