/** Gives the person bytes as a download. */
export function download(bytes: Uint8Array, name: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  link.download = name;
  link.click();
  // The browser reads it after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

const types: Readonly<Record<string, string>> = {
  zip: 'application/zip',
  stl: 'model/stl',
  '3mf': 'model/3mf',
  svg: 'image/svg+xml',
  pdf: 'application/pdf',
  png: 'image/png',
};

/** Hands over a file; its ending says what it is. */
export const downloadFile = (bytes: Uint8Array, name: string): void =>
  download(bytes, name, types[name.slice(name.lastIndexOf('.') + 1)] ?? 'application/octet-stream');
