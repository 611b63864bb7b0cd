/** Gives the person bytes as a download. */
export function download(bytes: Uint8Array, name: string, type: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes.slice()], { type }));
  link.download = name;
  link.click();
  // The browser reads it after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

export const takeZip = (zip: Uint8Array, name: string): void => download(zip, name, 'application/zip');
