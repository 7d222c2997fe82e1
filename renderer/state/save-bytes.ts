/** Hands bytes to the user as a file, by the browser's own download. */
export function saveBytes(fileName: string, bytes: Uint8Array<ArrayBuffer>, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = fileName;
  link.click();
  // The browser needs the address until it has begun to read.
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
